package chinelog.book.page;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Follows all ways in which a stack of pieces can be made up, side by side. A stack within it that
 * may be parted is made up once for all ways that come to it.
 */
final class WaySearch {

  /** So many paragraphs at most come before a plate that they followed. */
  private static final int MOST_BEFORE = 5;

  /** For each paragraph that a plate comes later. */
  private static final double PRICE_OF_PLACE = 0.002;

  private static final Set<String> HEADINGS = Set.of("h1", "h2", "h3", "h4", "h5", "h6");

  private static final Set<String> LEADING = Set.of("head", "tag", "lead", "date");

  private static final Set<String> PROSE = Set.of("p", "ol", "ul", "blockquote");

  /** Others, such as dates, lead to what follows or belong to what they follow. */
  private static final Set<String> PROSE_KINDS = Set.of("", "leadin", "short");

  private final Guide guide;
  private final Placing placing;
  private final int gapDots;

  /** Pieces with other margins above them than they were measured with. */
  private final Map<Piece, Map<Integer, Piece>> shifted = new IdentityHashMap<>();

  WaySearch(Guide guide, Piece body) {
    this.guide = guide;
    this.placing = new Placing(guide);
    this.gapDots = gap(body);
  }

  private static int gap(Piece piece) {
    if (piece instanceof Piece.Stack stack) {
      return stack.pieces().stream().mapToInt(WaySearch::gap).max().orElse(0);
    }
    return piece.isGap() && piece instanceof Piece.Solid solid
        ? solid.height() - solid.frame().above()
        : 0;
  }

  /** The ways that a body of pages can end; at least one. */
  List<Cursor> ends(Piece body, Cursor start) {
    if (!(body instanceof Piece.Stack stack)) {
      return List.of(placing.place(body, start, Choice.NONE, body.frame().lift()).end());
    }
    Cursor at = placing.upperEdge(body, start, false, "");
    at.y += body.frame().above() - (at.isAtTop() ? body.frame().lostAtHead() : 0);
    Way.Opened outermost = new Way.Opened(null, null, start.y, "");
    return stack(stack, List.of(Way.into(at, outermost))).stream().map(Way::at).toList();
  }

  /** Makes up what is in a stack, on each of the ways into it. */
  private List<Way> stack(Piece.Stack stack, List<Way> into) {
    List<List<Piece>> items = items(stack.pieces());
    List<Way> ways = into;
    for (int i = 0; i < items.size(); i++) {
      BestWays best = new BestWays();
      step(ways, items, i).forEach(best::add);
      ways = best.list();
    }
    return ways.stream().flatMap(way -> show(way, false).stream()).toList();
  }

  /**
   * Plates that follow each other, with the gaps before them, are one item; all else is its own.
   */
  private static List<List<Piece>> items(List<Piece> pieces) {
    List<List<Piece>> items = new ArrayList<>();
    List<Piece> together = new ArrayList<>();
    for (Piece piece : pieces) {
      if (piece.isPlate() || piece.isGap()) {
        together.add(piece);
      } else {
        if (!together.isEmpty()) {
          items.add(List.copyOf(together));
          together.clear();
        }
        items.add(List.of(piece));
      }
    }
    if (!together.isEmpty()) {
      items.add(List.copyOf(together));
    }
    return items;
  }

  private static boolean isOfPlates(List<Piece> item) {
    return item.get(0).isGap() || item.get(0).isPlate();
  }

  private static boolean isProse(Piece piece) {
    return PROSE.contains(piece.frame().tag()) && PROSE_KINDS.contains(piece.frame().kind());
  }

  private List<Way> step(List<Way> ways, List<List<Piece>> items, int index) {
    List<Piece> item = items.get(index);
    if (isOfPlates(item)) {
      List<Integer> laters = laters(item, items, index);
      return ways.stream().flatMap(w -> laters.stream().map(l -> waiting(w, item, l))).toList();
    }
    Piece piece = item.get(0);
    List<Piece> before = index == 0 ? List.of() : items.get(index - 1);
    Piece usualBefore = before.isEmpty() ? null : before.get(before.size() - 1);
    boolean isProse = isProse(piece);
    List<Way> shown = ways.stream().flatMap(way -> show(way, isProse).stream()).toList();
    return add(shown, piece, usualBefore);
  }

  private static Way waiting(Way way, List<Piece> plates, int later) {
    List<Way.Waiting> waiting = new ArrayList<>(way.waiting());
    waiting.add(new Way.Waiting(plates, later));
    Cursor at = way.at().copy();
    if (later > 0) {
      at.add(
          new Layout.Change(firstPlate(plates), Layout.Kind.LATER, later),
          Choice.PRICE + PRICE_OF_PLACE * later);
    }
    return way.waitingFor(waiting, at);
  }

  private static String firstPlate(List<Piece> item) {
    return item.stream().filter(Piece::isPlate).map(p -> p.frame().id()).findFirst().orElse("");
  }

  private List<Integer> laters(List<Piece> item, List<List<Piece>> items, int index) {
    String id = firstPlate(item);
    Layout followed = guide.followed();
    if (followed != null) {
      return List.of(followed.later().getOrDefault(id, 0));
    }
    List<Integer> laters = new ArrayList<>(List.of(0));
    boolean isMarked = item.stream().anyMatch(p -> p.isPlate() && p.frame().is("under"));
    for (int i = index + 1; i < items.size() && laters.size() <= MOST_BEFORE; i++) {
      boolean isOfPlates = isOfPlates(items.get(i));
      if (id.isEmpty() || isMarked || !isOfPlates && !isProse(items.get(i).get(0))) {
        break;
      }
      if (!isOfPlates) {
        laters.add(laters.size());
      }
    }
    return laters;
  }

  /** Shows the plates whose turn it is before the next piece, as the writer of blocks does. */
  private List<Way> show(Way way, boolean isBeforeProse) {
    if (way.waiting().isEmpty()) {
      return List.of(way);
    }
    List<Way> ways = List.of(way);
    List<Way.Waiting> waiting = new ArrayList<>(way.waiting());
    while (!waiting.isEmpty() && (waiting.get(0).later() == 0 || !isBeforeProse)) {
      for (Piece piece : waiting.remove(0).plates()) {
        ways = add(ways, piece, null);
      }
    }
    List<Way.Waiting> left =
        waiting.stream().map(w -> new Way.Waiting(w.plates(), Math.max(0, w.later() - 1))).toList();
    return ways.stream().map(w -> w.waitingFor(left, w.at())).toList();
  }

  /** Adds a piece to ways, as it may be shown on each. */
  private List<Way> add(List<Way> ways, Piece piece, @Nullable Piece usualBefore) {
    if (piece instanceof Piece.Stack stack && !piece.frame().breaks().isKept()) {
      return addStack(ways, stack, usualBefore);
    }
    List<Way> longer = new ArrayList<>();
    for (Way way : ways) {
      Piece due = due(way, piece, usualBefore);
      String lift = lift(way, piece);
      String plate = piece.isPlate() ? piece.frame().id().replaceFirst("^row-", "plate-") : "";
      for (Choice choice : Choice.of(piece, way.at(), guide.followed())) {
        Laid laid = place(due, way.at(), choice, lift);
        if (guide.followed() != null || choice.isWorth(laid)) {
          longer.add(joined(way, new Way.Chosen(due, choice, lift), laid, plate));
        }
      }
    }
    return longer;
  }

  private static String lift(Way way, Piece piece) {
    return piece.frame().tag().equals("p") && !way.lastPlate().isEmpty()
        ? "after-" + way.lastPlate()
        : piece.frame().lift();
  }

  private List<Way> addStack(List<Way> ways, Piece.Stack stack, @Nullable Piece usualBefore) {
    List<Way> into = new ArrayList<>();
    for (Way way : ways) {
      Piece due = due(way, stack, usualBefore);
      into.add(into(way, new Way.Chosen(due, Choice.NONE, lift(way, stack)), false));
    }
    List<Way> longer = new ArrayList<>();
    for (Way end : stack(stack, into)) {
      Way before = end.in().before();
      Way.Chosen chosen = end.in().chosen();
      if (before != null && chosen != null) {
        longer.add(joined(before, chosen, laid(end, stack), ""));
      }
    }
    return longer;
  }

  /** The way into a stack that follows what has been made up. */
  private Way into(Way way, Way.Chosen chosen, boolean onNextPage) {
    Piece.Frame frame = chosen.piece().frame();
    Cursor from = guide.asFound(frame.id(), way.at());
    Cursor at = placing.upperEdge(chosen.piece(), from, onNextPage, chosen.lift());
    int start = at.y;
    guide.note(chosen.piece(), start);
    at.y += frame.above() - (at.isAtTop() ? frame.lostAtHead() : 0);
    boolean staysTogether = way.staysWith(chosen.piece());
    String key = way.in().key() + way.waitingKey() + (staysTogether ? "+/" : "/");
    return Way.into(at, new Way.Opened(way, chosen, start, key));
  }

  private static Laid laid(Way end, Piece stack) {
    Cursor at = end.at().copy();
    at.y += stack.frame().below();
    return new Laid(at, end.in().start(), end.firstEnd(), false);
  }

  /** Makes up a piece in one way: a stack that is kept in one, or is moved, has no other. */
  private Laid place(Piece piece, Cursor from, Choice choice, String lift) {
    if (!(piece instanceof Piece.Stack stack)) {
      return placing.place(piece, from, choice, lift);
    }
    Laid here = placeStack(stack, from, lift, false);
    if (!piece.frame().breaks().isKept() || !here.isParted()) {
      return here;
    }
    Laid next = placeStack(stack, from, lift, true);
    return next.isParted() ? placeStack(stack, from, lift, false) : next;
  }

  private Laid placeStack(Piece.Stack stack, Cursor from, String lift, boolean onNextPage) {
    Way before = Way.into(from, new Way.Opened(null, null, from.y, ""));
    Way into = into(before, new Way.Chosen(stack, Choice.NONE, lift), onNextPage);
    Way best = stack(stack, List.of(into)).stream().min(Way.CHEAPEST).orElseThrow();
    return laid(best, stack);
  }

  /**
   * A piece as it is after the last one. A gap that follows a plate has no height, and one that
   * follows a heading stays with it.
   */
  private Piece due(Way way, Piece piece, @Nullable Piece usualBefore) {
    Piece last = way.last();
    if (last == null || !piece.isGap() && !piece.isPlate() && last == usualBefore) {
      return piece;
    }
    int margin = Math.max(way.margin(), piece.frame().ownTop());
    if (!piece.isGap()) {
      return shifted
          .computeIfAbsent(piece, p -> new TreeMap<>())
          .computeIfAbsent(margin, piece::withMargin);
    }
    boolean isAfterHeading =
        HEADINGS.contains(last.frame().tag()) || LEADING.contains(last.frame().kind());
    return gapAfter(piece, last.isPlate() ? 0 : margin, last.isPlate(), isAfterHeading);
  }

  private Piece gapAfter(Piece gap, int above, boolean isAfterPlate, boolean isAfterHeading) {
    Piece.Frame own =
        new Piece.Frame(
            "",
            gap.frame().kind(),
            gap.frame().tag(),
            "",
            above,
            0,
            0,
            0,
            above,
            0,
            null,
            gap.frame().room(),
            new Piece.Breaks(false, false, isAfterHeading, false),
            Map.of());
    return new Piece.Solid(own, isAfterPlate ? 0 : above + gapDots, null, null);
  }

  /** Joins a piece to a way; if that parts what stays together, all of it goes to the next page. */
  private Way joined(Way way, Way.Chosen chosen, Laid laid, String plate) {
    Piece piece = chosen.piece();
    int margin = way.marginBelow(laid, piece);
    Way.Run run = way.run();
    if (run == null || !way.staysWith(piece)) {
      boolean isFirst = way.last() == null;
      Way.Run own = new Way.Run(way.at(), laid.start(), isFirst, List.of(chosen));
      int firstEnd = isFirst ? laid.firstEnd() : way.firstEnd();
      return new Way(laid.end(), way.in(), piece, own, way.waiting(), plate, firstEnd, margin);
    }
    Way.Run longer = run.with(chosen);
    if (isBetween(way.at(), laid)) {
      Way moved = moved(longer, way, plate, margin);
      if (moved != null) {
        return moved;
      }
    }
    return new Way(
        laid.end(), way.in(), piece, longer, way.waiting(), plate, way.firstEnd(), margin);
  }

  private static boolean isBetween(Cursor before, Laid next) {
    return next.firstEnd() >= next.end().bottom(next.end().pageAt(before.y));
  }

  private @Nullable Way moved(Way.Run run, Way way, String plate, int margin) {
    Cursor at = run.before().copy();
    at.y = at.top(at.pageAt(run.start()) + 1);
    Cursor before = at;
    int start = at.y;
    int firstEnd = way.firstEnd();
    for (int i = 0; i < run.pieces().size(); i++) {
      Way.Chosen chosen = run.pieces().get(i);
      Laid laid = place(chosen.piece(), at, chosen.choice(), chosen.lift());
      if (i > 0 && isBetween(at, laid)) {
        return null;
      }
      firstEnd = i == 0 && run.isFirst() ? laid.firstEnd() : firstEnd;
      at = laid.end();
    }
    Piece last = run.pieces().get(run.pieces().size() - 1).piece();
    Way.Run moved = new Way.Run(before, start, run.isFirst(), run.pieces());
    return new Way(at, way.in(), last, moved, way.waiting(), plate, firstEnd, margin);
  }
}

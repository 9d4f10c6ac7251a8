package chinelog.book.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Makes pages up from measured pieces as the renderer would, and finds by dynamic programming which
 * plates to show smaller or later and which tables to part, so that the least white is left at the
 * feet of the pages. After each piece, of all ways that end at about the same height of a page the
 * best is kept: what follows is the same for all of them.
 *
 * <p>Donald E. Knuth and Michael F. Plass, "Breaking paragraphs into lines", Software: Practice and
 * Experience 11 (1981), does so for lines; Plass's thesis "Optimal pagination techniques for
 * automatic typesetting systems" (Stanford, 1981) for pages.
 */
final class MakeUp {

  /** Ways that end so near to each other are taken to end at one height: a millimetre. */
  private static final int NEAR_DOTS = 80;

  /** So many ways at most are followed side by side. */
  private static final int MOST_WAYS = 120;

  /** A plate is never shown smaller than this part of its usual size. */
  private static final double LEAST = 0.55;

  private static final double STEP = 0.05;

  /** So many paragraphs at most come before a plate that they followed. */
  private static final int MOST_BEFORE = 5;

  /** A table is not parted for less than its head and three rows or so on either page. */
  private static final double LEAST_PART_DOTS = 25 * Fitting.DOTS_PER_MM;

  /** Lower than this below the head of its page, a heading is seen to stand too low. */
  private static final double LEAST_LOW_DOTS = 0.6 * Fitting.DOTS_PER_MM;

  /** Lifted wholly, it might be found on the page before. */
  private static final double SPARE_LOW_DOTS = 0.1 * Fitting.DOTS_PER_MM;

  /** What a change must save at least, in the measure of the white. */
  private static final double PRICE = 0.005;

  /** For each part of its size that a plate loses. */
  private static final double PRICE_OF_SIZE = 0.02;

  /** For each paragraph that a plate comes later. */
  private static final double PRICE_OF_PLACE = 0.002;

  /** Room between a narrow plate and its caption, as a part of the text's width. */
  private static final double BESIDE = 0.035;

  /** The rule below a row stands half in the next. */
  private static final int ROW_SPARE_DOTS = 8;

  private static final Set<String> HEADINGS = Set.of("h1", "h2", "h3", "h4", "h5", "h6");

  private static final Set<String> LEADING = Set.of("head", "tag", "lead", "date");

  private static final Set<String> PROSE = Set.of("p", "ol", "ul", "blockquote");

  /** Others, such as dates, lead to what follows or belong to what they follow. */
  private static final Set<String> PROSE_KINDS = Set.of("", "leadin", "short");

  /** What is known to come out as reckoned, up to a place. */
  private final @Nullable Known known;

  private final int gapDots;

  private boolean isFree;

  /** Where pieces have come to stand, by id, when one way alone is followed. */
  private final Map<String, Integer> places = new HashMap<>();

  /** Where what is in pieces has come to stand. */
  private final Map<String, Integer> inner = new HashMap<>();

  /**
   * What a layout has shown.
   *
   * @param layout as it was laid out
   * @param until the last whose place was not as reckoned; from there on all is open
   * @param found the places of all such, in dots from the head of the body's first page
   * @param cost the white of the pages before that of the last
   */
  record Known(Layout layout, String until, Map<String, Integer> found, double cost) {}

  /**
   * Pages made up.
   *
   * @param layout with the pages counted from the cover
   * @param places of pieces, by id, in dots from the head of the body's first page
   * @param white of the body's pages
   */
  record Made(Layout layout, Map<String, Integer> places, double white) {}

  private MakeUp(Galley galley, @Nullable Known known) {
    this.known = known;
    this.isFree = known == null;
    this.gapDots = gap(galley.body());
  }

  /**
   * Finds the best way.
   *
   * @param known what a layout has shown; null for nothing
   */
  static Made best(Galley galley, @Nullable Known known) {
    List<Laid> ends = new MakeUp(galley, known).place(galley.body(), start(galley), Choice.NONE);
    Cursor best =
        ends.stream().map(Laid::end).min(Comparator.comparing(Cursor::costOfAll)).orElseThrow();
    List<Layout.Change> changes = new ArrayList<>();
    for (Cursor.Done done = best.done; done != null; done = done.before()) {
      changes.add(0, done.change());
    }
    Map<String, Integer> found = known == null ? Map.of() : known.found;
    return followed(galley, Layout.UNKNOWN.with(changes), found);
  }

  /** Makes the pages up as a layout says. */
  private static Made followed(Galley galley, Layout layout, Map<String, Integer> found) {
    MakeUp makeUp = new MakeUp(galley, new Known(layout, "", found, 0));
    Cursor end = makeUp.place(galley.body(), start(galley), Choice.NONE).get(0).end();
    Map<String, Integer> pages = new TreeMap<>();
    makeUp.inner.putAll(makeUp.places);
    makeUp.inner.forEach(
        (id, y) -> pages.put(id, galley.pagesBefore() + y / galley.pageDots() + 1));
    return new Made(layout.with(pages), Map.copyOf(makeUp.places), end.costOfAll());
  }

  private static Cursor start(Galley galley) {
    return new Cursor(galley.pageDots(), galley.noteDots());
  }

  private static int gap(Piece piece) {
    if (piece instanceof Piece.Stack stack) {
      return stack.pieces().stream().mapToInt(MakeUp::gap).max().orElse(0);
    }
    return piece.isGap() && piece instanceof Piece.Solid solid
        ? solid.height() - solid.frame().above()
        : 0;
  }

  /**
   * A piece made up.
   *
   * @param start its upper edge
   * @param firstEnd the end of its first line
   * @param isStranded whether it wants to begin on the next page, for want of lines on this one
   */
  private record Laid(Cursor end, int start, int firstEnd, boolean isStranded) {
    boolean isParted() {
      return end.y >= end.bottom(end.pageAt(start));
    }
  }

  /** What is done with a piece: at what size it is shown, or whether it may be parted. */
  private record Choice(double scale, boolean isParted) {
    static final Choice NONE = new Choice(1, false);
  }

  private record Chosen(Piece piece, Choice choice, String lift) {}

  /** Pieces that stay together, from the last before which a page may end. */
  private record Run(Cursor before, int start, boolean isFirst, List<Chosen> pieces) {}

  /** Plates with the number of paragraphs that come before them still. */
  private record Waiting(List<Piece> plates, int later) {}

  /**
   * Pieces of a stack made up so far.
   *
   * @param last the last piece; null at the beginning
   * @param lastPlate id of the plate that is the last piece; empty if it is none
   * @param firstEnd the end of the first line of the first piece
   * @param margin that the last piece wants below
   */
  private record Way(
      Cursor at,
      @Nullable Piece last,
      @Nullable Run run,
      List<Waiting> waiting,
      String lastPlate,
      int firstEnd,
      int margin) {}

  // ---- One piece ----

  /** Makes up a piece, on the next page if it would be parted and is to be kept in one. */
  private List<Laid> place(Piece piece, Cursor from, Choice choice) {
    return place(piece, from, choice, piece.frame().lift());
  }

  private List<Laid> place(Piece piece, Cursor given, Choice choice, String lift) {
    Cursor from = asFound(piece.frame().id(), given);
    List<Laid> here = lay(piece, from, false, choice, lift);
    boolean isKept = piece.frame().breaks().isKept() && !choice.isParted;
    if (here.stream().noneMatch(l -> l.isStranded || isKept && l.isParted())) {
      return here;
    }
    List<Laid> placed = new ArrayList<>();
    List<Laid> next = lay(piece, from, true, choice, lift);
    for (int i = 0; i < here.size(); i++) {
      Laid laid = here.get(i);
      boolean isStranded = laid.isStranded;
      if (!isStranded && !(isKept && laid.isParted())) {
        placed.add(laid);
      } else if (i < next.size()) {
        boolean isTooHigh = isKept && laid.isParted() && next.get(i).isParted();
        placed.add(isTooHigh ? laid : next.get(i));
      }
    }
    return placed;
  }

  private List<Laid> lay(Piece piece, Cursor from, boolean onNextPage, Choice choice, String lift) {
    Piece.Frame frame = piece.frame();
    Cursor at = from.copy();
    boolean hasNoRoom = at.y + frame.room() > at.bottom(at.pageAt(at.y));
    if (onNextPage || frame.breaks().isForcedBefore() || hasNoRoom) {
      at.toNextPage();
    }
    lift(frame, lift, at);
    int start = at.y;
    boolean isAtTop = at.isAtTop();
    note(piece, start);
    if (piece instanceof Piece.Solid solid) {
      return List.of(solid(solid, at, isAtTop));
    }
    if (piece instanceof Piece.Single single) {
      return List.of(single(single, at, isAtTop, choice));
    }
    at.y += frame.above() - (isAtTop ? frame.lostAtHead() : 0);
    if (piece instanceof Piece.Lines lines) {
      return List.of(lines(lines, at, start));
    }
    if (piece instanceof Piece.Table table) {
      return List.of(table(table, at, start, isAtTop, choice));
    }
    if (piece instanceof Piece.Stack stack) {
      return stack(stack, at, start);
    }
    throw new IllegalStateException("an unknown piece: " + piece);
  }

  private void note(Piece piece, int start) {
    if (!piece.frame().id().isEmpty() && !piece.frame().id().startsWith("after-")) {
      places.put(piece.frame().id(), start);
    }
    piece.frame().ids().forEach((id, below) -> inner.put(id, start + below));
  }

  /** What was reckoned wrongly before is taken as it was found; from there on all is open. */
  private Cursor asFound(String id, Cursor from) {
    Integer y = known == null || isFree || id.isEmpty() ? null : known.found.get(id);
    if (y == null || known == null) {
      return from;
    }
    Cursor at = from.copy();
    at.y = y;
    if (id.equals(known.until)) {
      isFree = true;
      at.page = at.pageAt(y);
      at.cost = known.cost;
      at.filled = y - at.top(at.page);
    }
    return at;
  }

  /** Takes white away that was meant to part a piece from what is now on the page before. */
  private void lift(Piece.Frame frame, String lift, Cursor at) {
    Integer firstTop = frame.firstTop();
    if (lift.isEmpty() || firstTop == null || at.isAtTop()) {
      return;
    }
    int number = at.pageAt(at.y);
    double low = at.y + firstTop - at.top(number);
    if (at.page < number && low > LEAST_LOW_DOTS && at.pageAt(at.y + firstTop) == number) {
      int by = (int) Math.round(low - SPARE_LOW_DOTS);
      at.y -= by;
      at.add(new Layout.Change(lift, Layout.Kind.LIFT, by / Fitting.DOTS_PER_MM), 0);
    }
  }

  private static Laid solid(Piece.Solid solid, Cursor at, boolean isAtTop) {
    int start = at.y;
    int upper = start - (isAtTop ? solid.frame().lostAtHead() : 0);
    Integer lastBottom = solid.lastBottom();
    if (lastBottom != null) {
      at.paint(upper + lastBottom);
    }
    at.y = upper + solid.height();
    Integer firstLine = solid.firstLineEnd();
    return new Laid(at, start, firstLine == null ? at.y : upper + firstLine, false);
  }

  private static Laid single(Piece.Single single, Cursor at, boolean isAtTop, Choice choice) {
    int start = at.y;
    int upper = start - (isAtTop ? single.frame().lostAtHead() : 0);
    int height = height(single, choice.scale);
    Integer below = single.frame().below();
    at.paint(upper + height - below);
    at.y = upper + height;
    if (choice.scale < 1) {
      at.add(
          new Layout.Change(single.frame().id(), Layout.Kind.SCALE, choice.scale),
          PRICE + PRICE_OF_SIZE * (1 - choice.scale));
    }
    return new Laid(at, start, at.y, false);
  }

  /** The height of a plate that is shown at a part of its usual size. */
  private static int height(Piece.Single single, double scale) {
    if (scale == 1) {
      return single.height();
    }
    int picture = (int) (single.picture() * scale);
    boolean wasNarrow = isNarrow(single);
    int usual = wasNarrow ? Math.max(single.picture(), single.caption()) : 0;
    int around =
        wasNarrow
            ? single.height() - usual
            : single.height() - single.picture() - single.captionRoom();
    double room = 1 - single.width() * scale - BESIDE;
    int caption = (int) (single.caption() * single.captionWidth() / room);
    return around + Math.max(picture, caption);
  }

  private static boolean isNarrow(Piece.Single single) {
    return single.width() < PlateRows.NARROW + 0.01;
  }

  private static Laid lines(Piece.Lines lines, Cursor at, int start) {
    Cursor before = at.copy();
    int[] tops = new int[lines.lines().size()];
    set(lines, at, -1, tops);
    boolean isStranded = false;
    int count = tops.length;
    if (count > 1) {
      int first = at.pageAt(tops[0]);
      int onFirst = 0;
      while (onFirst < count && tops[onFirst] < at.bottom(first)) {
        onFirst++;
      }
      if (onFirst < count && onFirst < lines.orphans()) {
        isStranded = true;
      } else if (onFirst < count) {
        int last = at.pageAt(tops[count - 1]);
        int onLast = 0;
        while (onLast < count && tops[count - 1 - onLast] >= at.top(last)) {
          onLast++;
        }
        int breakAfter = count - 1 - lines.widows();
        if (onLast < lines.widows() && breakAfter < lines.orphans()) {
          isStranded = true;
        } else if (onLast < lines.widows()) {
          at = before;
          set(lines, at, breakAfter, tops);
        }
      }
    }
    int firstEnd = count == 0 ? at.y : tops[0] + lines.lines().get(0).height();
    at.y += lines.frame().below();
    return new Laid(at, start, firstEnd, isStranded);
  }

  /**
   * Sets lines one below the other.
   *
   * @param breakAt a line that is to begin a page; below 0 for none
   */
  private static void set(Piece.Lines lines, Cursor at, int breakAt, int[] tops) {
    int y = at.y;
    for (int i = 0; i < tops.length; i++) {
      Piece.Line line = lines.lines().get(i);
      y += line.gap();
      int number = at.pageAt(y);
      Cursor before = line.notes().isEmpty() ? at : at.copy();
      at.addNotes(number, line.notes());
      boolean isOver = y + line.paintBottom() >= at.bottom(number);
      if (isOver || breakAt > 0 && i == breakAt) {
        if (at != before) {
          at.takeNotes(before);
        }
        if ((y + line.paintTop()) != at.top(number)) {
          y = at.top(number + 1) - line.paintTop();
        }
        at.addNotes(at.pageAt(y), line.notes());
      }
      tops[i] = y;
      if (line.height() > 0) {
        at.paint(y + line.height());
      }
      y += line.height();
    }
    at.y = y;
  }

  /** Rows are not parted; where one does not fit, the head is repeated on the next page. */
  private static Laid table(
      Piece.Table table, Cursor at, int start, boolean isAtTop, Choice choice) {
    Integer firstLine = table.firstLineEnd();
    int firstEnd =
        firstLine == null ? at.y : start - (isAtTop ? table.frame().lostAtHead() : 0) + firstLine;
    boolean isStranded = false;
    at.y += table.head();
    for (int i = 0; i < table.rows().size(); i++) {
      Piece.Solid row = table.rows().get(i);
      if (at.y + row.height() + ROW_SPARE_DOTS >= at.bottom(at.pageAt(at.y))) {
        isStranded |= i == 0;
        at.toNextPage();
        at.y += table.head();
      }
      Integer bottom = row.lastBottom();
      if (bottom != null) {
        at.paint(at.y + bottom);
      }
      at.y += row.height();
    }
    at.y += table.frame().below();
    if (choice.isParted) {
      at.add(new Layout.Change(table.frame().id(), Layout.Kind.PART, 1), 2 * PRICE);
    }
    return new Laid(at, start, firstEnd, isStranded);
  }

  // ---- A stack ----

  private List<Laid> stack(Piece.Stack stack, Cursor from, int start) {
    List<List<Piece>> items = items(stack.pieces());
    Map<String, Way> ways = new LinkedHashMap<>();
    ways.put("", new Way(from, null, null, List.of(), "", from.y, 0));
    for (int i = 0; i < items.size(); i++) {
      Map<String, Way> next = new LinkedHashMap<>();
      for (Way way : ways.values()) {
        for (Way longer : step(way, items, i)) {
          keepBest(next, longer);
        }
      }
      ways = cheapest(next);
    }
    List<Laid> laid = new ArrayList<>();
    for (Way way : ways.values()) {
      for (Way end : show(way, false)) {
        Cursor at = end.at;
        at.y += stack.frame().below();
        laid.add(new Laid(at, start, end.firstEnd, false));
      }
    }
    return laid;
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

  /** Of ways that end alike, keeps the one that costs least. */
  private static void keepBest(Map<String, Way> ways, Way way) {
    Cursor at = way.at;
    int number = at.pageAt(at.y);
    StringBuilder key = new StringBuilder();
    key.append(at.y % at.pageDots / NEAR_DOTS)
        .append(' ')
        .append(at.notesOn(number))
        .append(' ')
        .append(number == at.page);
    for (Waiting waiting : way.waiting) {
      key.append(' ').append(waiting.later);
      key.append(waiting.plates.get(waiting.plates.size() - 1).frame().id());
    }
    if (way.run != null && way.run.pieces.size() > 1) {
      key.append(" run ").append(at.pageAt(way.run.start) == number);
    }
    ways.merge(key.toString(), way, (a, b) -> price(b) < price(a) ? b : a);
  }

  private static Map<String, Way> cheapest(Map<String, Way> ways) {
    if (ways.size() <= MOST_WAYS) {
      return ways;
    }
    Map<String, Way> cheapest = new LinkedHashMap<>();
    ways.entrySet().stream()
        .sorted(Comparator.comparing(way -> price(way.getValue())))
        .limit(MOST_WAYS)
        .forEach(way -> cheapest.put(way.getKey(), way.getValue()));
    return cheapest;
  }

  private static double price(Way way) {
    return way.at.cost + way.at.whiteUntil(way.at.pageAt(way.at.y));
  }

  private List<Way> step(Way way, List<List<Piece>> items, int index) {
    List<Piece> item = items.get(index);
    if (!isOfPlates(item)) {
      Piece piece = item.get(0);
      List<Piece> before = index == 0 ? List.of() : items.get(index - 1);
      Piece usualBefore = before.isEmpty() ? null : before.get(before.size() - 1);
      List<Way> ways = new ArrayList<>();
      for (Way shown : show(way, isProse(piece))) {
        ways.addAll(add(shown, piece, usualBefore));
      }
      return ways;
    }
    List<Way> ways = new ArrayList<>();
    for (int later : laters(item, items, index)) {
      List<Waiting> waiting = new ArrayList<>(way.waiting);
      waiting.add(new Waiting(item, later));
      Cursor at = way.at.copy();
      if (later > 0) {
        at.add(
            new Layout.Change(firstPlate(item), Layout.Kind.LATER, later),
            PRICE + PRICE_OF_PLACE * later);
      }
      ways.add(
          new Way(
              at,
              way.last,
              way.run,
              List.copyOf(waiting),
              way.lastPlate,
              way.firstEnd,
              way.margin));
    }
    return ways;
  }

  private static String firstPlate(List<Piece> item) {
    return item.stream().filter(Piece::isPlate).map(p -> p.frame().id()).findFirst().orElse("");
  }

  private List<Integer> laters(List<Piece> item, List<List<Piece>> items, int index) {
    String id = firstPlate(item);
    if (known != null && !isFree) {
      return List.of(known.layout.later().getOrDefault(id, 0));
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

  private static boolean isProse(Piece piece) {
    return PROSE.contains(piece.frame().tag()) && PROSE_KINDS.contains(piece.frame().kind());
  }

  /** Shows the plates whose turn it is before the next piece, as the writer of blocks does. */
  private List<Way> show(Way way, boolean isBeforeProse) {
    List<Way> ways = List.of(way);
    List<Waiting> waiting = new ArrayList<>(way.waiting);
    while (!waiting.isEmpty() && (waiting.get(0).later == 0 || !isBeforeProse)) {
      for (Piece piece : waiting.remove(0).plates) {
        List<Way> longer = new ArrayList<>();
        for (Way shown : ways) {
          longer.addAll(add(shown, piece, null));
        }
        ways = longer;
      }
    }
    List<Waiting> left =
        waiting.stream().map(w -> new Waiting(w.plates, Math.max(0, w.later - 1))).toList();
    return ways.stream()
        .map(w -> new Way(w.at, w.last, w.run, left, w.lastPlate, w.firstEnd, w.margin))
        .toList();
  }

  /** Adds a piece to a stack in each way that it may be shown. */
  private List<Way> add(Way way, Piece piece, @Nullable Piece usualBefore) {
    List<Way> ways = new ArrayList<>();
    Piece due = due(way, piece, usualBefore);
    String lift =
        piece.frame().tag().equals("p") && !way.lastPlate.isEmpty()
            ? "after-" + way.lastPlate
            : piece.frame().lift();
    String plate = piece.isPlate() ? piece.frame().id().replaceFirst("^row-", "plate-") : "";
    for (Choice choice : choices(piece, way.at)) {
      for (Laid laid : place(due, way.at, choice, lift)) {
        Chosen chosen = new Chosen(due, choice, lift);
        Way longer = joined(way, chosen, laid, plate);
        if (isWorth(choice, laid)) {
          ways.add(longer);
        }
      }
    }
    return ways;
  }

  /**
   * A piece as it is after the last one. A gap that follows a plate has no height, and one that
   * follows a heading stays with it.
   */
  private Piece due(Way way, Piece piece, @Nullable Piece usualBefore) {
    Piece last = way.last;
    Piece.Frame frame = piece.frame();
    if (last == null || !piece.isGap() && !piece.isPlate() && last == usualBefore) {
      return piece;
    }
    int margin = Math.max(way.margin, frame.ownTop());
    if (!piece.isGap()) {
      return piece.withMargin(margin);
    }
    boolean isAfterHeading =
        HEADINGS.contains(last.frame().tag()) || LEADING.contains(last.frame().kind());
    Piece.Breaks breaks = new Piece.Breaks(false, false, isAfterHeading, false);
    boolean isAfterPlate = last.isPlate();
    int above = isAfterPlate ? 0 : margin;
    Piece.Frame own =
        new Piece.Frame(
            "",
            frame.kind(),
            frame.tag(),
            "",
            above,
            0,
            0,
            0,
            above,
            0,
            null,
            frame.room(),
            breaks,
            Map.of());
    return new Piece.Solid(own, isAfterPlate ? 0 : above + gapDots, null, null);
  }

  /** The margin below a piece; what has no height hands on that of what stands before it. */
  private static int margin(Way way, Laid laid, Piece piece) {
    boolean isEmpty = laid.end.y == laid.start;
    return isEmpty ? Math.max(way.margin, piece.frame().ownBottom()) : piece.frame().ownBottom();
  }

  private List<Choice> choices(Piece piece, Cursor at) {
    String id = piece.frame().id();
    if (piece instanceof Piece.Single single && !piece.frame().is("full")) {
      return known != null && !isFree
          ? List.of(new Choice(known.layout.scales().getOrDefault(id, 1.0), false))
          : sizes(single, at);
    }
    boolean isOpen = piece instanceof Piece.Table && piece.frame().is("whole") && !id.isEmpty();
    if (!isOpen) {
      return List.of(Choice.NONE);
    }
    if (known != null && !isFree) {
      return List.of(new Choice(1, known.layout.parted().contains(id)));
    }
    return List.of(Choice.NONE, new Choice(1, true));
  }

  private static List<Choice> sizes(Piece.Single single, Cursor at) {
    List<Choice> sizes = new ArrayList<>();
    sizes.add(Choice.NONE);
    // A plate is as wide as the text or clearly narrower: almost as wide looks like an oversight.
    double most = isNarrow(single) ? 1 - STEP : PlateRows.NARROW / single.width();
    for (double scale = most; scale >= LEAST; scale -= STEP) {
      sizes.add(new Choice(scale, false));
    }
    int left = at.bottom(at.pageAt(at.y)) - at.y;
    double fitting =
        single.picture() == 0 ? 1 : 1 - (double) (single.height() - left + 40) / single.picture();
    if (fitting >= LEAST && fitting <= most) {
      sizes.add(new Choice(fitting, false));
    }
    return sizes;
  }

  /** Whether what may be parted is, and is worth it. */
  private boolean isWorth(Choice choice, Laid laid) {
    if (!choice.isParted || known != null && !isFree) {
      return true;
    }
    Cursor at = laid.end;
    int first = at.top(at.pageAt(laid.start) + 1) - laid.start;
    int last = at.y - at.top(at.pageAt(at.y));
    return at.pageAt(at.y) > at.pageAt(laid.start)
        && first > LEAST_PART_DOTS
        && last > LEAST_PART_DOTS;
  }

  /** Joins a piece to a way; if that parts what stays together, all of it goes to the next page. */
  private Way joined(Way way, Chosen chosen, Laid laid, String plate) {
    Piece last = way.last;
    Run run = way.run;
    int margin = margin(way, laid, chosen.piece);
    if (last == null || run == null || !stayTogether(last, chosen.piece)) {
      Run own = new Run(way.at, laid.start, last == null, List.of(chosen));
      int firstEnd = last == null ? laid.firstEnd : way.firstEnd;
      return new Way(laid.end, chosen.piece, own, way.waiting, plate, firstEnd, margin);
    }
    List<Chosen> pieces = new ArrayList<>(run.pieces);
    pieces.add(chosen);
    Run longer = new Run(run.before, run.start, run.isFirst, List.copyOf(pieces));
    if (isBetween(way.at, laid)) {
      Way moved = moved(longer, way, plate, margin);
      if (moved != null) {
        return moved;
      }
    }
    return new Way(laid.end, chosen.piece, longer, way.waiting, plate, way.firstEnd, margin);
  }

  private static boolean isBetween(Cursor before, Laid next) {
    return next.firstEnd >= next.end.bottom(next.end.pageAt(before.y));
  }

  private @Nullable Way moved(Run run, Way way, String plate, int margin) {
    Cursor at = run.before.copy();
    at.y = at.top(at.pageAt(run.start) + 1);
    Cursor before = at;
    int start = at.y;
    int firstEnd = way.firstEnd;
    for (int i = 0; i < run.pieces.size(); i++) {
      Chosen chosen = run.pieces.get(i);
      List<Laid> placed = place(chosen.piece, at, chosen.choice, chosen.lift);
      Laid laid = placed.get(0);
      if (i > 0 && isBetween(at, laid)) {
        return null;
      }
      firstEnd = i == 0 && run.isFirst ? laid.firstEnd : firstEnd;
      at = laid.end;
    }
    Piece last = run.pieces.get(run.pieces.size() - 1).piece;
    return new Way(
        at,
        last,
        new Run(before, start, run.isFirst, run.pieces),
        way.waiting,
        plate,
        firstEnd,
        margin);
  }

  private static boolean stayTogether(Piece before, Piece after) {
    return !after.frame().breaks().isForcedBefore()
        && (before.frame().breaks().isAvoidedAfter() || after.frame().breaks().isAvoidedBefore());
  }
}

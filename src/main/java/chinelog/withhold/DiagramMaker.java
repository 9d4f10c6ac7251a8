package chinelog.withhold;

import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.edition.Diagram;
import chinelog.edition.Drawing;
import chinelog.log.records.Entry;
import chinelog.log.records.Release;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.trade.Sketch;
import chinelog.wording.Catalogue;
import chinelog.wording.Message;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * Shows what reckonings draw to readers who may see all that it was drawn from. A drawing can be
 * measured: whoever has it has what went into it. So no release of a figure frees one; and where a
 * figure of its reckoning is told by a release alone, there is none, since the drawing of what is
 * left would tell by how much the two differ.
 */
final class DiagramMaker {

  private static final double STEPS_PER_UNIT = 10;

  /** The input of {@code planking} that says how many strips are laid. */
  private static final String LAID = "laid";

  private final VisibleLog visible;
  private final WholeLog whole;
  private final Account account;
  private final FigureMaker figures;
  private final Catalogue words;
  private final Catalogue own;
  private final Slugs slugs = new Slugs();
  private final List<Facts.Drawing> drawings;
  private final Map<String, List<Fact>> counts = new HashMap<>();

  /**
   * @param words of what editions say themselves
   */
  DiagramMaker(
      VisibleLog visible, WholeLog whole, Account account, FigureMaker figures, Catalogue words) {
    this.visible = visible;
    this.whole = whole;
    this.account = account;
    this.figures = figures;
    this.own = words;
    this.words = Catalogue.of(Facts.MESSAGES, visible.log().head().locale());
    this.drawings = PatternMaker.drawings(visible);
  }

  List<Drawing> make() {
    Predicate<Facts.Drawing> isDrawn = d -> !d.sketches().isEmpty();
    PatternMaker.drawings(VisibleLog.all(whole)).stream()
        .filter(isDrawn)
        .forEach(d -> account.sees(d.label(), d.place(), Register.Kind.DRAWINGS_OF, d.request()));
    List<Drawing> made = new ArrayList<>();
    drawings.stream()
        .filter(isDrawn)
        .filter(d -> account.sight().allows(d.label()) && !isReleased(d.request()))
        .forEach(d -> d.sketches().forEach(s -> made.add(diagram(d, s))));
    return made;
  }

  /** The shell with what of it is planked by the end of an entry that counted the strips. */
  List<Drawing> of(Entry entry) {
    List<Drawing> made = new ArrayList<>();
    for (Facts.Drawing drawing : drawings) {
      OptionalInt now =
          readings(drawing).stream()
              .filter(f -> entry.id().equals(f.entry()))
              .mapToInt(DiagramMaker::strips)
              .max();
      if (now.isEmpty()
          || !account.sight().allows(drawing.label())
          || isReleased(drawing.request())) {
        continue;
      }
      int before =
          laid(drawing).headMap(entry.date()).values().stream()
              .mapToInt(Integer::intValue)
              .max()
              .orElse(0);
      SortedMap<LocalDate, Integer> laid = new TreeMap<>();
      laid.put(LocalDate.MIN, before);
      laid.put(entry.date(), now.getAsInt());
      Message said =
          before == 0
              ? Message.of("drawing.laid", now.getAsInt())
              : Message.of("drawing.laid.day", now.getAsInt(), now.getAsInt() - before);
      Drawing.Table none = new Drawing.Table(List.of(), List.of(), false);
      drawing.sketches().stream()
          .filter(s -> s.shapes().stream().anyMatch(Sketch.Strip.class::isInstance))
          .forEach(
              s -> made.add(diagram(drawing, s, " " + entry.date(), own.text(said), laid, none)));
    }
    return made;
  }

  /** Whether a figure of the reckoning was released to these readers, from whatever agreement. */
  private boolean isReleased(String request) {
    return visible.log().releases().stream()
        .filter(r -> r.kind() == Release.Kind.FACT && new FactId.Named(r.name()).isOf(request))
        .anyMatch(r -> r.readers().contains(account.sight().readers()));
  }

  private Diagram diagram(Facts.Drawing drawing, Sketch sketch) {
    // It shows all that its reckoning takes and yields, so that readers have these figures.
    visible.facts().byName().values().stream()
        .filter(f -> f.id().isOf(drawing.request()) || drawing.inputs().contains(f.name()))
        .map(Fact::name)
        .forEach(figures::show);
    SortedMap<LocalDate, Integer> laid = laid(drawing);
    Drawing.Table table =
        new Drawing.Table(
            sketch.head().stream().map(words::text).toList(),
            sketch.rows().stream().map(r -> r.stream().map(words::text).toList()).toList(),
            sketch.isKeyed());
    String said = words.text(sketch.description()) + (laid.isEmpty() ? "" : " " + said(laid));
    return diagram(drawing, sketch, "", said, laid, laid.isEmpty() ? table : laidTable(laid));
  }

  /**
   * A drawing for readers.
   *
   * @param apart what tells its id from that of another of the same
   */
  private Diagram diagram(
      Facts.Drawing drawing,
      Sketch sketch,
      String apart,
      String said,
      SortedMap<LocalDate, Integer> laid,
      Drawing.Table table) {
    return new Diagram(
        slugs.make(sketch.name() + " " + drawing.request() + apart),
        drawing.request(),
        words.text(sketch.title()),
        said,
        rounded(sketch.height()),
        sketch.shapes().stream().map(s -> shape(s, laid)).toList(),
        table,
        account.sight().under(drawing.label()));
  }

  /** How many strips were laid by each day on which that was counted. */
  private SortedMap<LocalDate, Integer> laid(Facts.Drawing drawing) {
    SortedMap<LocalDate, Integer> laid = new TreeMap<>();
    readings(drawing)
        .forEach(
            f -> {
              figures.show(f);
              LocalDate day = f.date() == null ? LocalDate.MIN : f.date();
              laid.merge(day, strips(f), Math::max);
            });
    return laid;
  }

  private List<Fact> readings(Facts.Drawing drawing) {
    String counted = drawing.named().get(LAID);
    return counted == null
        ? List.of()
        : counts.computeIfAbsent(
            counted,
            c ->
                visible.facts().byName().values().stream()
                    .filter(f -> isReadingOf(f.id(), c))
                    .filter(figures::sees)
                    .sorted(Comparator.comparing(Fact::name))
                    .toList());
  }

  private static int strips(Fact count) {
    return (int) Math.round(count.value().coherent());
  }

  private static boolean isReadingOf(FactId id, String counted) {
    return id.name().equals(counted)
        || id instanceof FactId.Reading reading && reading.of().name().equals(counted);
  }

  private String said(SortedMap<LocalDate, Integer> laid) {
    int most = laid.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    return own.text("drawing.laid", most);
  }

  private Drawing.Table laidTable(SortedMap<LocalDate, Integer> laid) {
    List<List<String>> rows = new ArrayList<>();
    laid.forEach(
        (day, strips) ->
            rows.add(
                List.of(day.equals(LocalDate.MIN) ? "" : own.date(day), String.valueOf(strips))));
    return new Drawing.Table(
        List.of(own.text("drawing.laid.by"), own.text("drawing.laid.strips")), rows, true);
  }

  private Diagram.Shape shape(Sketch.Shape shape, SortedMap<LocalDate, Integer> laid) {
    if (shape instanceof Sketch.Line line) {
      return new Diagram.Line(line.ink(), line.closed(), points(line.points()));
    }
    if (shape instanceof Sketch.Disc disc) {
      return new Diagram.Disc(
          disc.ink(), disc.at().rounded(STEPS_PER_UNIT), rounded(disc.radius()));
    }
    if (shape instanceof Sketch.Strip strip) {
      return new Diagram.Line(state(strip.turn(), laid), true, points(strip.points()));
    }
    Sketch.Note note = (Sketch.Note) shape;
    return new Diagram.Note(
        words.text(note.text()), note.at().rounded(STEPS_PER_UNIT), note.anchor(), note.quiet());
  }

  /** Strips laid by one day are told from those of the next. */
  private static Ink state(int strip, SortedMap<LocalDate, Integer> laid) {
    boolean next = false;
    for (int upTo : laid.values()) {
      if (strip <= upTo) {
        return next ? Ink.DONE_NEXT : Ink.DONE;
      }
      next = !next;
    }
    return Ink.COMING;
  }

  private static List<Spot> points(List<Spot> points) {
    return points.stream().map(p -> p.rounded(STEPS_PER_UNIT)).toList();
  }

  private static double rounded(double units) {
    return Math.round(units * STEPS_PER_UNIT) / STEPS_PER_UNIT;
  }
}

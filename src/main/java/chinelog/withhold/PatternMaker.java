package chinelog.withhold;

import chinelog.drawn.Stroke;
import chinelog.edition.Pattern;
import chinelog.edition.Patterns;
import chinelog.label.Label;
import chinelog.log.records.CutFrom;
import chinelog.log.records.Log;
import chinelog.log.records.PatternSheets;
import chinelog.log.records.Readers;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.trade.Part;
import chinelog.wording.Catalogue;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Hands out patterns to readers who may see all that they were drawn from. A drawing can be
 * measured: whoever has it has the offsets. So no release of a figure frees one, and where it may
 * not be seen, there is none.
 */
final class PatternMaker {

  private static final double STEPS_PER_MM = 100;

  /** The figure of a reckoning that counts the strips to be bought. */
  private static final String PIECES = "pieces";

  private final VisibleLog visible;
  private final WholeLog whole;
  private final Account account;
  private final Catalogue words;
  private final FigureMaker figures;

  PatternMaker(VisibleLog visible, WholeLog whole, Account account, FigureMaker figures) {
    this.figures = figures;
    this.visible = visible;
    this.whole = whole;
    this.account = account;
    this.words = Catalogue.of(Facts.MESSAGES, visible.log().head().locale());
  }

  Patterns make(Readers readers) {
    if (!readers.outputs().contains(Readers.Output.PATTERNS)) {
      return Patterns.NONE;
    }
    List<Pattern> parts = new ArrayList<>();
    for (Facts.Drawing drawing : drawings(VisibleLog.all(whole))) {
      if (drawing.parts().isEmpty()) {
        continue;
      }
      account.sees(drawing.label(), drawing.place(), Register.Kind.PATTERNS_OF, drawing.request());
    }
    Slugs slugs = new Slugs();
    Map<CutFrom, List<String>> cutFrom = new HashMap<>();
    for (Facts.Drawing drawing : drawings(visible)) {
      if (account.sight().allows(drawing.label())) {
        List<String> under = account.sight().under(drawing.label());
        for (Part part : drawing.parts()) {
          String id = slugs.make(drawing.request() + " " + part.name());
          parts.add(pattern(id, part, under));
          visible
              .log()
              .head()
              .patternSheets()
              .findCutFrom(drawing.request(), part.name())
              .ifPresent(from -> cutFrom.computeIfAbsent(from, f -> new ArrayList<>()).add(id));
        }
      }
    }
    Log log = visible.log();
    return on(
        log.head().patternSheets(),
        parts,
        log.head().patternSheets().cutFrom().stream()
            .map(from -> stock(from, cutFrom.getOrDefault(from, List.of())))
            .toList());
  }

  /** With the labels of all that decides what is drawn. */
  static List<Facts.Drawing> drawings(VisibleLog log) {
    Labels labels = new Labels(log);
    List<Facts.Drawing> labelled = new ArrayList<>();
    for (Facts.Drawing drawing : log.facts().drawings()) {
      Label label = drawing.label();
      for (String input : drawing.inputs()) {
        label = label.join(log.facts().find(input).map(labels::of).orElse(Label.NONE));
      }
      labelled.add(drawing.under(label));
    }
    return labelled;
  }

  private Patterns.Stock stock(CutFrom from, List<String> parts) {
    String title =
        visible.facts().materials().stream()
            .filter(m -> m.material().equals(from.material()))
            .filter(m -> account.sight().allows(m.label()))
            .map(Facts.MaterialSum::title)
            .findFirst()
            .orElse(from.material());
    Optional<Fact> bought = find(from.material(), FactId.Balance.BOUGHT);
    Optional<Fact> paid = find(from.material(), FactId.Balance.PAID);
    long strips =
        from.isStrip()
            ? visible.log().requests().stream()
                .filter(r -> from.parts().contains(r.prefix()))
                .map(r -> new FactId.Yielded(r.prefix(), r.reckoning().value(), PIECES))
                .flatMap(id -> figures.find(id.name()).stream())
                .mapToLong(f -> (long) Math.ceil(shown(f).coherent()))
                .sum()
            : 0;
    Quantity each =
        bought.isPresent() && paid.isPresent()
            ? each(shown(paid.get()), shown(bought.get()))
            : null;
    return new Patterns.Stock(
        title,
        from.lengthMm(),
        from.widthMm(),
        parts,
        strips,
        bought.map(f -> shown(f).value()).orElse(null),
        each == null ? null : each.value(),
        each == null ? "" : each.unit().symbol());
  }

  /** What counts pieces and what was paid for them, as far as readers may see both. */
  private Optional<Fact> find(String material, FactId.Balance balance) {
    return figures
        .find(new FactId.Stock(material, balance).name())
        .filter(f -> f.value().unit().equals(Unit.ONE) || f.value().unit().isMoney());
  }

  private Quantity shown(Fact fact) {
    figures.show(fact);
    return fact.value();
  }

  private static @Nullable Quantity each(Quantity paid, Quantity pieces) {
    try {
      return pieces.value().signum() > 0 ? paid.dividedBy(pieces) : null;
    } catch (QuantityException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  private Pattern pattern(String id, Part part, List<String> under) {
    return new Pattern(
        id,
        words.text(part.title()),
        part.strokes().stream().map(PatternMaker::rounded).toList(),
        part.letters().stream()
            .map(
                n ->
                    new Pattern.Note(
                        words.text(n.text()), n.at().rounded(STEPS_PER_MM), n.height()))
            .toList(),
        under,
        null);
  }

  private static Stroke rounded(Stroke stroke) {
    return new Stroke(
        stroke.line(),
        stroke.closed(),
        stroke.points().stream().map(p -> p.rounded(STEPS_PER_MM)).toList());
  }

  private static Patterns on(
      PatternSheets sheets, List<Pattern> parts, List<Patterns.Stock> stock) {
    double width =
        switch (sheets.stock()) {
          case A4 -> 210;
          case LETTER -> 215.9;
          case A3 -> 297;
          case ROLL -> sheets.rollMm();
        };
    double height =
        switch (sheets.stock()) {
          case A4 -> 297;
          case LETTER -> 279.4;
          case A3 -> 420;
          case ROLL -> 0;
        };
    return new Patterns(
        parts,
        width,
        height,
        sheets.overlapMm(),
        sheets.kerfMm(),
        sheets.acrossMm(),
        sheets.upMm(),
        stock);
  }
}

package chinelog.withhold;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.edition.Pattern;
import chinelog.edition.Patterns;
import chinelog.edition.Picture;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PatternSheets;
import chinelog.log.records.Readers;
import chinelog.log.records.Sheet;
import chinelog.photo.derivatives.Darkroom;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts the pages of sheets that were brought to scale among the patterns, at the size that the log
 * asks for. The drawings themselves are for the workshop alone.
 */
final class ScanMaker {

  /** Whoever wants more has most likely taken lengths of full size for those of the model. */
  private static final double LONGEST_MM = 4000;

  private static final double STEPS_PER_MM = 100;

  private final VisibleLog visible;
  private final Sight sight;
  private final PictureSource pictures;
  private final Catalogue words;
  private final List<Problem> problems = new ArrayList<>();
  private final List<Pattern> parts = new ArrayList<>();

  ScanMaker(VisibleLog visible, Account account, PictureSource pictures) {
    this.visible = visible;
    this.sight = account.sight();
    this.pictures = pictures;
    this.words = Catalogue.of(Facts.MESSAGES, visible.log().head().locale());
  }

  /** Why a sheet that should be printed is not. */
  List<Problem> problems() {
    return problems;
  }

  /** The patterns with the scans behind them. */
  Patterns addTo(Patterns patterns, Readers readers) throws IOException {
    Log log = visible.log();
    PatternSheets.Scans wanted = log.head().patternSheets().scans();
    if (wanted == PatternSheets.Scans.NONE
        || !readers.outputs().contains(Readers.Output.PATTERNS)
        || !log.isPartyToAll(readers)) {
      return patterns;
    }
    parts.addAll(patterns.parts());
    Marked<BigDecimal> scale = log.head().scale();
    double divisor =
        wanted == PatternSheets.Scans.FULL && scale != null ? scale.value().doubleValue() : 1;
    for (Sheet sheet : log.sheets()) {
      for (int page = 1; page <= pictures.pages(sheet); page++) {
        OptionalDouble across = factor(sheet, page, "factor_x");
        if (across.isPresent()) {
          double up = factor(sheet, page, "factor_y").orElse(across.getAsDouble());
          scan(sheet, page, across.getAsDouble() / divisor, up / divisor);
        }
      }
    }
    return patterns.with(parts);
  }

  private OptionalDouble factor(Sheet sheet, int page, String which) {
    Optional<Fact> fact = visible.facts().find(Sheet.scanPrefix(sheet.path(), page) + "." + which);
    return fact.isEmpty() || !fact.get().value().unit().equals(Unit.ONE)
        ? OptionalDouble.empty()
        : OptionalDouble.of(fact.get().value().value().doubleValue());
  }

  private void scan(Sheet sheet, int page, double across, double up) throws IOException {
    List<Darkroom.Print> prints = pictures.print(sheet, page).prints();
    Darkroom.Print print = prints.get(prints.size() - 1);
    double mmPerPx = pictures.longEdgeMm(sheet, page) / Math.max(print.widthPx(), print.heightPx());
    double width = rounded(print.widthPx() * mmPerPx * across);
    double height = rounded(print.heightPx() * mmPerPx * up);
    if (Math.max(width, height) > LONGEST_MM) {
      problems.add(
          Problem.error(
              sheet.place(),
              Sentence.of(
                  "Printed to scale, this sheet would be {0} m long.",
                  Math.round(Math.max(width, height) / 1000)),
              "If its true lengths are those of full size, write into log.yaml: patterns: {scans:"
                  + " full}."));
      return;
    }
    List<Spot> edge =
        List.of(new Spot(0, 0), new Spot(width, 0), new Spot(width, height), new Spot(0, height));
    Picture.Rendition rendition =
        new Picture.Rendition(print.widthPx(), print.heightPx(), new PictureFile(print.jpeg()));
    String id = id(sheet, page);
    parts.add(
        new Pattern(
            id,
            words.text("pattern.scan", sheet.title(), page),
            List.of(new Stroke(LineUse.GUIDE, true, edge)),
            List.of(),
            sight.under(sheet.label(page)),
            new Pattern.Scan(new Picture(id, List.of(rendition), List.of()), width, height)));
  }

  /** An id that no pattern has. */
  private String id(Sheet sheet, int page) {
    String name = "sheet " + sheet.title() + " " + page;
    Slugs slugs = new Slugs();
    String id = slugs.make(name);
    while (isTaken(id)) {
      id = slugs.make(name);
    }
    return id;
  }

  private boolean isTaken(String id) {
    return parts.stream().anyMatch(p -> p.id().equals(id));
  }

  private static double rounded(double mm) {
    return Math.round(mm * STEPS_PER_MM) / STEPS_PER_MM;
  }
}

package chinelog.withhold;

import chinelog.edition.Pattern;
import chinelog.edition.Patterns;
import chinelog.edition.Picture;
import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PatternSheets;
import chinelog.log.records.Readers;
import chinelog.log.records.Sheet;
import chinelog.photo.derivatives.Darkroom;
import chinelog.problem.Problem;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.trade.Part;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Hands out patterns to readers who may see all that they were drawn from. A drawing can be
 * measured: whoever has it has the offsets. So no release of a figure frees one, and where it may
 * not be seen, there is none.
 */
final class PatternMaker {

  private static final double STEPS_PER_MM = 100;

  /** Whoever wants more has most likely taken lengths of full size for those of the model. */
  private static final double LONGEST_SCAN_MM = 4000;

  private final VisibleLog visible;
  private final WholeLog whole;
  private final Account account;
  private final Catalogue words;
  private final PictureSource pictures;
  private final List<Problem> problems = new ArrayList<>();

  PatternMaker(VisibleLog visible, WholeLog whole, Account account, PictureSource pictures) {
    this.pictures = pictures;
    this.visible = visible;
    this.whole = whole;
    this.account = account;
    this.words = Catalogue.of(Facts.MESSAGES, visible.log().head().locale());
  }

  /** Why a sheet that should be printed is not. */
  List<Problem> problems() {
    return problems;
  }

  Patterns make(Readers readers) throws IOException {
    if (!readers.outputs().contains(Readers.Output.PATTERNS)) {
      return Patterns.NONE;
    }
    List<Pattern> parts = new ArrayList<>();
    for (Facts.Drawing drawing : drawings(VisibleLog.all(whole))) {
      account.sees(drawing.label(), drawing.place(), Register.Kind.PATTERNS_OF, drawing.request());
    }
    Slugs slugs = new Slugs();
    for (Facts.Drawing drawing : drawings(visible)) {
      if (account.sight().allows(drawing.label())) {
        List<String> under = account.sight().under(drawing.label());
        for (Part part : drawing.parts()) {
          parts.add(pattern(slugs.make(drawing.request() + " " + part.name()), part, under));
        }
      }
    }
    Log log = visible.log();
    // The drawings themselves are for the workshop alone.
    if (log.isPartyToAll(readers)) {
      scans(log, slugs, parts);
    }
    return on(log.head().patternSheets(), parts);
  }

  /** The pages of sheets that were put to scale, at the size that the log asks for. */
  private void scans(Log log, Slugs slugs, List<Pattern> parts) throws IOException {
    PatternSheets.Scans wanted = log.head().patternSheets().scans();
    if (wanted == PatternSheets.Scans.NONE) {
      return;
    }
    Marked<BigDecimal> scale = log.head().scale();
    double divisor =
        wanted == PatternSheets.Scans.FULL && scale != null ? scale.value().doubleValue() : 1;
    for (Sheet sheet : log.sheets()) {
      for (int page = 1; page <= pictures.pages(sheet); page++) {
        OptionalDouble across = factor(sheet, page, "factor_x");
        if (across.isPresent()) {
          double up = factor(sheet, page, "factor_y").orElse(across.getAsDouble());
          scan(sheet, page, across.getAsDouble() / divisor, up / divisor, slugs, parts);
        }
      }
    }
  }

  private OptionalDouble factor(Sheet sheet, int page, String which) {
    Optional<Fact> fact = visible.facts().find(Sheet.scanPrefix(sheet.path(), page) + "." + which);
    return fact.isEmpty() || !fact.get().value().unit().equals(Unit.ONE)
        ? OptionalDouble.empty()
        : OptionalDouble.of(fact.get().value().value().doubleValue());
  }

  private void scan(
      Sheet sheet, int page, double across, double up, Slugs slugs, List<Pattern> parts)
      throws IOException {
    List<Darkroom.Print> prints = pictures.print(sheet, page).prints();
    Darkroom.Print print = prints.get(prints.size() - 1);
    double mmPerPx = pictures.longEdgeMm(sheet, page) / Math.max(print.widthPx(), print.heightPx());
    double width = rounded(print.widthPx() * mmPerPx * across);
    double height = rounded(print.heightPx() * mmPerPx * up);
    if (Math.max(width, height) > LONGEST_SCAN_MM) {
      problems.add(
          Problem.error(
              sheet.place(),
              "Printed to scale, this sheet would be "
                  + Math.round(Math.max(width, height) / 1000)
                  + " m long.",
              "If its true lengths are those of full size, write into log.yaml: patterns: {scans:"
                  + " full}."));
      return;
    }
    List<Pattern.Point> edge =
        List.of(
            new Pattern.Point(0, 0),
            new Pattern.Point(width, 0),
            new Pattern.Point(width, height),
            new Pattern.Point(0, height));
    String title = words.text("pattern.scan", sheet.title(), page);
    Picture.Rendition rendition =
        new Picture.Rendition(print.widthPx(), print.heightPx(), new PictureFile(print.jpeg()));
    String id = slugs.make("sheet " + sheet.title() + " " + page);
    parts.add(
        new Pattern(
            id,
            title,
            List.of(new Pattern.Stroke(Pattern.Line.GUIDE, true, edge)),
            List.of(),
            account.sight().under(sheet.label(page)),
            new Pattern.Scan(new Picture(id, List.of(rendition)), width, height)));
  }

  /** With the labels of all that decides what is drawn. */
  private static List<Facts.Drawing> drawings(VisibleLog log) {
    Labels labels = new Labels(log);
    List<Facts.Drawing> labelled = new ArrayList<>();
    for (Facts.Drawing drawing : log.facts().drawings()) {
      Label label = drawing.label();
      for (String input : drawing.inputs()) {
        label = label.join(log.facts().find(input).map(labels::of).orElse(Label.NONE));
      }
      labelled.add(
          new Facts.Drawing(
              drawing.request(), drawing.parts(), drawing.inputs(), label, drawing.place()));
    }
    return labelled;
  }

  private Pattern pattern(String id, Part part, List<String> under) {
    return new Pattern(
        id,
        words.text(part.title()),
        part.strokes().stream().map(PatternMaker::stroke).toList(),
        part.letters().stream()
            .map(n -> new Pattern.Note(words.text(n.text()), rounded(n.at()), n.height()))
            .toList(),
        under,
        null);
  }

  private static Pattern.Stroke stroke(Part.Stroke stroke) {
    Pattern.Line line =
        switch (stroke.line()) {
          case CUT -> Pattern.Line.CUT;
          case SCORE -> Pattern.Line.SCORE;
          case CENTRE -> Pattern.Line.CENTRE;
          case GUIDE -> Pattern.Line.GUIDE;
        };
    return new Pattern.Stroke(
        line, stroke.closed(), stroke.points().stream().map(PatternMaker::rounded).toList());
  }

  private static Pattern.Point rounded(Part.Point point) {
    return new Pattern.Point(rounded(point.x()), rounded(point.y()));
  }

  private static double rounded(double mm) {
    return Math.round(mm * STEPS_PER_MM) / STEPS_PER_MM;
  }

  private static Patterns on(PatternSheets sheets, List<Pattern> parts) {
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
        sheets.upMm());
  }
}

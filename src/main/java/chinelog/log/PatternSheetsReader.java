package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Kind;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Yaml;
import chinelog.log.records.CutFrom;
import chinelog.log.records.Marked;
import chinelog.log.records.PatternSheets;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Reads how patterns are printed: {@code patterns} and {@code printer} of log.yaml. */
record PatternSheetsReader(Fields log, Scope scope) {

  private static final Unit MM = millimetre();
  private static final Kind LENGTH = new Kind("a length", MM, "10 mm");
  private static final List<String> SIZES = List.of("a4", "letter", "a3", "roll");

  private static final List<String> OF_SCANS = List.of("model", "full");

  PatternSheets read() {
    PatternSheets usual = PatternSheets.USUAL;
    Yaml patterns = log.find("patterns");
    Yaml printer = log.find("printer");
    double across = usual.acrossMm();
    double up = usual.upMm();
    if (printer != null) {
      Fields fields = Fields.of(printer, scope, Label.NONE, "across", "up");
      across = length(fields, "across", across, 90, 110);
      up = length(fields, "up", up, 90, 110);
    }
    if (patterns == null) {
      return new PatternSheets(
          usual.stock(),
          usual.rollMm(),
          usual.overlapMm(),
          usual.kerfMm(),
          across,
          up,
          usual.cutFrom(),
          usual.scans());
    }
    Fields fields =
        Fields.of(patterns, scope, Label.NONE, "paper", "overlap", "kerf", "cut-from", "scans");
    List<CutFrom> cutFrom = cutFrom(fields);
    double overlap = length(fields, "overlap", usual.overlapMm(), 4, 50);
    double kerf = length(fields, "kerf", usual.kerfMm(), 0, 5);
    PatternSheets.Scans scans = scans(fields);
    Yaml.Scalar word = fields.scalar("paper");
    String paper = word == null ? "a4" : word.text().strip().toLowerCase(Locale.ROOT);
    if (word != null && paper.startsWith("roll ")) {
      double width = roll(word, paper.substring("roll ".length()));
      return new PatternSheets(
          PatternSheets.Stock.ROLL, width, overlap, kerf, across, up, cutFrom, scans);
    }
    if (word != null && (paper.equals("roll") || !SIZES.contains(paper))) {
      scope
          .problems()
          .error(
              word.place(),
              paper.equals("roll")
                  ? "This does not say how wide the roll is."
                  : Sentence.of("\"{0}\" is not a paper for patterns.", word.text()),
              "Write a4, letter, a3, or a roll with its width, such as roll 610 mm.");
      paper = "a4";
    }
    return new PatternSheets(
        PatternSheets.Stock.valueOf(paper.toUpperCase(Locale.ROOT)),
        0,
        overlap,
        kerf,
        across,
        up,
        cutFrom,
        scans);
  }

  private PatternSheets.Scans scans(Fields fields) {
    Yaml.Scalar word = fields.scalar("scans");
    String known =
        word == null
            ? null
            : fields.values().known(word, OF_SCANS, "what a sheet's lengths are of");
    return known == null
        ? PatternSheets.Scans.NONE
        : PatternSheets.Scans.valueOf(known.toUpperCase(Locale.ROOT));
  }

  private List<CutFrom> cutFrom(Fields patterns) {
    List<CutFrom> all = new ArrayList<>();
    for (Yaml item : patterns.items("cut-from")) {
      Fields fields =
          Fields.of(item, scope, Label.NONE, "material", "length", "width", "for", "except");
      Yaml material = fields.require("material", "birch_ply_3, a material of stock.yaml");
      Yaml length = fields.require("length", "600 mm, along the grain");
      Yaml parts = fields.require("for", "[moulds], reckonings of facts.yaml");
      if (material instanceof Yaml.Scalar word && length != null && parts != null) {
        all.add(
            new CutFrom(
                word.text().strip(),
                length(fields, "length", 1, 1, 20_000),
                length(fields, "width", 0, 1, 5_000),
                words(fields, "for"),
                words(fields, "except"),
                fields.place()));
      }
    }
    return all;
  }

  private static List<String> words(Fields fields, String key) {
    return fields.words(key).stream().map(w -> w.text().strip()).toList();
  }

  private double roll(Yaml.Scalar word, String width) {
    try {
      double mm = Quantity.parse(width).doubleIn(MM);
      if (mm >= 200 && mm <= 2000) {
        return mm;
      }
    } catch (QuantityException e) {
      // Said below.
    }
    scope
        .problems()
        .error(
            word.place(),
            Sentence.of("\"{0}\" is not the width of a roll.", width),
            "Write from 200 mm to 2 m, such as roll 610 mm.");
    return 610;
  }

  double length(Fields fields, String key, double otherwise, double least, double most) {
    Marked<Quantity> written = fields.quantity(key, LENGTH);
    if (written == null) {
      return otherwise;
    }
    Double mm = inMillimetres(written.value());
    if (mm != null && mm >= least && mm <= most) {
      return mm;
    }
    scope
        .problems()
        .error(
            written.place(),
            Sentence.of("\"{0}\" is {1}.", key, written.value()),
            Sentence.of("Write from {0} mm to {1} mm.", plain(least), plain(most)));
    return otherwise;
  }

  private static @Nullable Double inMillimetres(Quantity quantity) {
    try {
      return quantity.doubleIn(MM);
    } catch (QuantityException e) {
      return null;
    }
  }

  private static String plain(double mm) {
    return mm == Math.rint(mm) ? String.valueOf(Math.round(mm)) : String.valueOf(mm);
  }

  private static Unit millimetre() {
    try {
      return Unit.parse("mm");
    } catch (QuantityException e) {
      throw new IllegalStateException("mm is not in the table of units", e);
    }
  }
}

package chinelog.quantity;

import chinelog.problem.Sentence;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads quantities as a maker writes them. */
final class QuantityText {

  private static final String GLYPHS = "½⅓⅔¼¾⅛⅜⅝⅞";
  private static final List<String> GLYPH_VALUES =
      List.of("1/2", "1/3", "2/3", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8");

  private static final Pattern NUMBER =
      Pattern.compile(
          "\\s*(?<sign>[+-]?)\\s*(?:"
              + "(?:(?<whole>[0-9]+)(?:[ -]\\s*))?(?<n>[0-9]+)/(?<d>[0-9]+)"
              + "|(?<glyphWhole>[0-9]+)?\\s?(?<glyph>["
              + GLYPHS
              + "])"
              + "|(?<dec>[0-9]+(?:\\.[0-9]+)?(?:[eE][+-]?[0-9]{1,2})?))(?![0-9.])\\s*");

  /** Where the next step of a quantity in several steps begins. */
  private static final Pattern NEXT_STEP =
      Pattern.compile("(?<=\\s)(?=[0-9" + GLYPHS + "])(?!1/[^0-9])|(?<=['\"′″])(?=[0-9])");

  private static final int MOST_DIGITS = 40;

  /** What was written and the size of its last digit. */
  record Written(Quantity quantity, Quantity lastDigit) {}

  private record Number(BigDecimal value, int digits, BigDecimal lastDigit, int end) {}

  private QuantityText() {}

  static Written parse(String original) throws QuantityException {
    String text = plain(original);
    if (text.strip().startsWith("P")) {
      return duration(text.strip());
    }
    int sign = text.indexOf('±');
    int width = 1;
    if (sign < 0) {
      sign = text.indexOf("+/-");
      width = 3;
    }
    if (sign < 0) {
      return steps(text, 0);
    }
    Written nominal = steps(text.substring(0, sign), 0);
    Quantity spread = steps(text.substring(sign + width), sign + width).quantity();
    if (spread.value().signum() < 0) {
      throw new QuantityException(
          "A tolerance cannot be negative.", "Write it without a sign.", sign + width);
    }
    Quantity value = nominal.quantity();
    // Of a share in percent, so many percent more or less; of all else, so many percent of it.
    boolean isPart = spread.unit().symbol().equals("%") && !value.unit().equals(spread.unit());
    try {
      Quantity own =
          isPart
              ? Quantity.of(spread.valueIn(Unit.ONE).multiply(value.value()).abs(), value.unit())
              : spread.unit().equals(Unit.ONE) ? Quantity.of(spread.value(), value.unit()) : spread;
      return new Written(value.withTolerance(own), nominal.lastDigit());
    } catch (QuantityException e) {
      throw new QuantityException(
          Sentence.of("The tolerance is of another kind than the figure: {0}", e.what()),
          Sentence.of("Write it in {0} or in %.", value.unit()),
          sign + width);
    }
  }

  /** Other signs for the same thing, one for one so that offsets stay true. */
  private static String plain(String text) {
    return text.replace('\u00a0', ' ')
        .replace('\u202f', ' ')
        .replace('\u2009', ' ')
        .replace('\u2212', '-')
        .replace('\u2044', '/');
  }

  private static Written duration(String text) throws QuantityException {
    try {
      Duration time = Duration.parse(text);
      BigDecimal seconds = BigDecimal.valueOf(time.toNanos(), 9).stripTrailingZeros();
      Quantity exact = Quantity.written(seconds, Unit.known("s"), Quantity.EXACT);
      return new Written(exact.in(Unit.MINUTE), Quantity.of(1, Unit.MINUTE));
    } catch (DateTimeParseException | ArithmeticException e) {
      throw new QuantityException(
          Sentence.of("\"{0}\" is not a duration.", text),
          "Write such as 2 h 30 min or PT2H30M.",
          0);
    }
  }

  private static Written steps(String text, int offset) throws QuantityException {
    List<Written> steps = new ArrayList<>();
    int start = 0;
    while (start < text.length() || steps.isEmpty()) {
      Number number = number(text, start, offset);
      Matcher next = NEXT_STEP.matcher(text);
      int end = next.find(Math.min(number.end, text.length())) ? next.start() : text.length();
      Unit unit = unit(text.substring(number.end, end), offset + number.end);
      boolean exact = isExact(number, unit);
      Quantity step = Quantity.written(number.value, unit, exact ? Quantity.EXACT : number.digits);
      steps.add(new Written(step, Quantity.of(number.lastDigit, unit)));
      start = end;
    }
    return steps.size() == 1 ? steps.get(0) : joined(steps, text, offset);
  }

  /** Fractions, counts, money, and round whole numbers such as the 1 of 1 g/cm³ are exact. */
  private static boolean isExact(Number number, Unit unit) {
    boolean whole = number.lastDigit.compareTo(BigDecimal.ONE) == 0;
    boolean round = number.value.stripTrailingZeros().precision() == 1;
    return number.digits >= Quantity.EXACT
        || whole && (round || unit.equals(Unit.ONE) || unit.isMoney());
  }

  private static Unit unit(String text, int offset) throws QuantityException {
    try {
      return Unit.parse(text.strip());
    } catch (QuantityException e) {
      throw text.startsWith(",")
          ? new QuantityException(
              "A comma stands in a number.",
              "Write a decimal point, and nothing between thousands.",
              offset + e.index())
          : e.movedBy(offset);
    }
  }

  private static Number number(String text, int start, int offset) throws QuantityException {
    Matcher m = NUMBER.matcher(text);
    if (!m.find(start) || m.start() != start) {
      throw QuantityException.general(
          Sentence.of("\"{0}\" does not begin with a number.", text.substring(start).strip()),
          "Write a number and a unit, such as 12.5 mm or 1 3/16 in.",
          offset + start);
    }
    if (m.group().length() > MOST_DIGITS) {
      throw new QuantityException(
          "This number has more digits than anything can be measured to.",
          "Write at most 30 digits.",
          offset + start);
    }
    BigDecimal value;
    int digits = Quantity.EXACT;
    BigDecimal lastDigit;
    if (m.group("dec") != null) {
      value = new BigDecimal(m.group("dec"));
      digits = value.precision();
      lastDigit = BigDecimal.ONE.scaleByPowerOfTen(-value.scale());
    } else {
      boolean glyph = m.group("glyph") != null;
      String[] fraction =
          glyph
              ? GLYPH_VALUES.get(GLYPHS.indexOf(m.group("glyph"))).split("/", -1)
              : new String[] {m.group("n"), m.group("d")};
      String whole = m.group(glyph ? "glyphWhole" : "whole");
      BigDecimal below = new BigDecimal(fraction[1]);
      if (below.signum() == 0) {
        throw new QuantityException(
            "A fraction cannot have 0 below its line.", "Write such as 3/16 in.", offset + start);
      }
      value =
          new BigDecimal(fraction[0])
              .divide(below, Unit.PRECISION)
              .add(new BigDecimal(whole == null ? "0" : whole));
      lastDigit = BigDecimal.ONE.divide(below, Unit.PRECISION);
    }
    return new Number(
        "-".equals(m.group("sign")) ? value.negate() : value, digits, lastDigit, m.end());
  }

  /** Adds the steps of such as {@code 5 ft 3 1/2 in}, in the unit of the last. */
  private static Written joined(List<Written> steps, String text, int offset)
      throws QuantityException {
    Written last = steps.get(steps.size() - 1);
    Unit unit = last.quantity().unit();
    for (int i = 0; i + 1 < steps.size(); i++) {
      Quantity step = steps.get(i).quantity();
      Quantity next = steps.get(i + 1).quantity();
      boolean smaller =
          step.unit().isCompatible(next.unit())
              && !step.unit().isMoney()
              && next.value().signum() >= 0
              && next.compareTo(Quantity.of(1, step.unit())) < 0;
      if (!smaller || step.value().stripTrailingZeros().scale() > 0) {
        throw QuantityException.general(
            Sentence.of("\"{0}\" does not go down in steps.", text.strip()),
            "Write whole larger units first, such as 2 h 30 min or 5 ft 3 1/2 in.",
            offset);
      }
    }
    boolean negative = steps.get(0).quantity().value().signum() < 0;
    BigDecimal sum = BigDecimal.ZERO;
    for (Written step : steps) {
      sum = sum.add(step.quantity().valueIn(unit).abs());
    }
    Unit shown =
        Compound.findBySymbol(steps.get(0).quantity().unit() + " " + unit)
            .filter(c -> c != Compound.HOURS_AND_MINUTES)
            .map(c -> Unit.known(c.symbol()))
            .orElse(unit);
    Quantity whole = Quantity.written(negative ? sum.negate() : sum, shown, Quantity.EXACT);
    return new Written(whole, last.lastDigit());
  }
}

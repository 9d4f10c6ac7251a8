package chinelog.quantity;

import chinelog.problem.Sentence;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * A number of a unit, with an optional tolerance, such as {@code 1.19 m ± 2 mm} or {@code 1 3/16
 * in}.
 *
 * <p>Immutable. Arithmetic is decimal to 34 digits; nothing is rounded before it is shown.
 * Tolerances are carried at their worst case, to first order: those of a sum add, those of a
 * product add as relative errors, and two uses of one quantity count twice. The number of
 * significant digits goes along for showing only.
 *
 * <p>A result beyond 10⁶⁰ or nearer to nothing than 10⁻⁶⁰ is an {@link ArithmeticException}.
 */
public final class Quantity implements Comparable<Quantity> {

  static final int EXACT = 1000;
  private static final int LARGEST_EXPONENT = 60;

  private final BigDecimal value;
  private final Unit unit;
  private final @Nullable BigDecimal tolerance;
  private final int digits;
  private final boolean chosenUnit;

  /** As told before; NaN until somebody asks. */
  private double coherent = Double.NaN;

  private Quantity(
      BigDecimal value, Unit unit, @Nullable BigDecimal tolerance, int digits, boolean chosenUnit) {
    this.value = bounded(value, 2 * LARGEST_EXPONENT);
    this.unit = unit;
    this.tolerance = tolerance == null ? null : bounded(tolerance, 2 * LARGEST_EXPONENT);
    this.digits = Math.max(1, Math.min(digits, EXACT));
    this.chosenUnit = chosenUnit;
  }

  /** Refuses what no reckoning of a model can mean; a change of unit has some room beyond it. */
  private static BigDecimal bounded(BigDecimal number, int exponent) {
    if (number.signum() != 0 && Math.abs(magnitude(number)) > exponent) {
      throw new ArithmeticException(
          "A number comes out "
              + (magnitude(number) > 0 ? "larger" : "smaller")
              + " than anything that can be made.");
    }
    return number;
  }

  /** How many digits stand before the point; 0 or less for a number below 0.1. */
  static int magnitude(BigDecimal number) {
    return number.precision() - number.scale();
  }

  /** As many of {@code unit} as {@code value} says, its digits being significant. */
  public static Quantity of(BigDecimal value, Unit unit) {
    return new Quantity(value, unit, null, value.precision(), true);
  }

  /** As many of {@code unit} as was reckoned: shown to four significant digits, kept whole. */
  public static Quantity reckoned(BigDecimal value, Unit unit) {
    return new Quantity(value, unit, null, NumberStyle.DIGITS_OF_RECKONED, true);
  }

  /** Exactly {@code value} of {@code unit}. */
  public static Quantity of(long value, Unit unit) {
    return new Quantity(BigDecimal.valueOf(value), unit, null, EXACT, true);
  }

  static Quantity written(BigDecimal value, Unit unit, int digits) {
    return new Quantity(value, unit, null, digits, true);
  }

  /**
   * The quantity written {@code text}: a number (decimal point, no separators; or a fraction), a
   * unit, and optionally {@code ±} (or {@code +/-}) and a tolerance with its own unit or in per
   * cent. Steps of one kind may follow each other: {@code 2 h 30 min}, {@code 5 ft 3 1/2 in};
   * durations may be written as ISO 8601 has them: {@code PT2H30M}.
   *
   * @throws QuantityException saying what is wrong and at which offset
   */
  public static Quantity parse(String text) throws QuantityException {
    return QuantityText.parse(text).quantity();
  }

  /**
   * The size of the last digit written in {@code text}: 0.01 m for {@code 1.19 m}, 1/16 in for
   * {@code 1 3/16 in}.
   */
  public static Quantity lastDigit(String text) throws QuantityException {
    return QuantityText.parse(text).lastDigit();
  }

  public BigDecimal value() {
    return value;
  }

  public Unit unit() {
    return unit;
  }

  /** Half the width of the tolerance in {@link #unit()}, or null if none is known. */
  public @Nullable BigDecimal tolerance() {
    return tolerance;
  }

  /** How many digits are significant; more than 34 for exact numbers. */
  int digits() {
    return digits;
  }

  /** Whether somebody chose the unit, so that it is kept on show. */
  boolean hasChosenUnit() {
    return chosenUnit;
  }

  /** This with a tolerance, given as a quantity of the same kind. */
  public Quantity withTolerance(Quantity spread) throws QuantityException {
    BigDecimal t = spread.unit.convertDifference(spread.value, unit).abs();
    return new Quantity(value, unit, t, digits, chosenUnit);
  }

  /** This without its tolerance. */
  public Quantity withoutTolerance() {
    return tolerance == null ? this : new Quantity(value, unit, null, digits, chosenUnit);
  }

  /** The number of {@code target} in this. */
  public BigDecimal valueIn(Unit target) throws QuantityException {
    return unit.convert(value, target);
  }

  public double doubleIn(Unit target) throws QuantityException {
    return valueIn(target).doubleValue();
  }

  /**
   * The number of coherent units: m, m², m³, kg, s, K and their products; money in its own unit.
   * For comparing and solving, not for showing.
   */
  public double coherent() {
    double told = coherent;
    if (Double.isNaN(told)) {
      told = unit.coherent(value);
      coherent = told;
    }
    return told;
  }

  public Quantity in(Unit target) throws QuantityException {
    BigDecimal t = tolerance;
    return new Quantity(
        valueIn(target),
        target,
        t == null ? null : unit.convertDifference(t, target),
        digits,
        true);
  }

  /**
   * The sum, in this unit. To a reading such as 20 °C only a difference can be added; two readings
   * have no sum.
   */
  public Quantity plus(Quantity other) throws QuantityException {
    if (unit.isReading() && other.unit.isReading()) {
      throw new QuantityException(
          "Two temperatures cannot be added.", "Write one of them as a difference, in Δ°C.", 0);
    }
    if (other.unit.isReading()) {
      return other.plus(this);
    }
    return sum(other.unit.convertDifference(other.value, unit), other);
  }

  /** The difference, in this unit; that of two readings is in Δ°C or Δ°F. */
  public Quantity minus(Quantity other) throws QuantityException {
    if (other.unit.isReading()) {
      Unit step = Unit.known("Δ" + other.unit.symbol());
      if (!unit.isReading()) {
        throw new QuantityException(
            "A temperature cannot be taken from a difference.", "Write both in °C.", 0);
      }
      Quantity apart = sum(other.valueIn(unit).negate(), other);
      return new Quantity(unit.convertDifference(apart.value, step), step, null, apart.digits, true)
          .withSpread(apart, unit);
    }
    return sum(other.unit.convertDifference(other.value, unit).negate(), other);
  }

  private Quantity withSpread(Quantity from, Unit fromUnit) throws QuantityException {
    BigDecimal t = from.tolerance;
    return t == null
        ? this
        : new Quantity(value, unit, fromUnit.convertDifference(t, unit), digits, chosenUnit);
  }

  private Quantity sum(BigDecimal addend, Quantity other) throws QuantityException {
    BigDecimal sum = bounded(value.add(addend, Unit.PRECISION), LARGEST_EXPONENT);
    BigDecimal theirs = other.tolerance;
    BigDecimal spread =
        theirs == null
            ? tolerance
            : tolerance == null
                ? other.unit.convertDifference(theirs, unit)
                : tolerance.add(other.unit.convertDifference(theirs, unit), Unit.PRECISION);
    int places = Math.min(places(value, digits), places(addend, other.digits));
    return new Quantity(
        sum, unit, spread, places > EXACT / 2 ? EXACT : magnitude(sum) + places, chosenUnit);
  }

  private static int places(BigDecimal number, int digits) {
    return digits >= EXACT || number.signum() == 0 ? EXACT : digits - magnitude(number);
  }

  public Quantity negated() {
    return new Quantity(value.negate(), unit, tolerance, digits, chosenUnit);
  }

  public Quantity abs() {
    return value.signum() < 0 ? negated() : this;
  }

  /** Product; tolerances add as relative errors (worst case, first order). */
  public Quantity times(Quantity other) {
    requireScale(this);
    requireScale(other);
    Unit mine = unit.simple();
    Unit theirs = other.unit.simple().inTheManner(mine);
    BigDecimal theirValue = convertLike(other.value, other.unit.simple(), theirs);
    BigDecimal theirSpread = convertLike(orZero(other.tolerance), other.unit.simple(), theirs);
    BigDecimal spread =
        tolerance == null && other.tolerance == null
            ? null
            : value
                .abs()
                .multiply(theirSpread, Unit.PRECISION)
                .add(theirValue.abs().multiply(orZero(tolerance), Unit.PRECISION));
    boolean plain = other.unit.equals(Unit.ONE);
    return reduced(
        value.multiply(theirValue, Unit.PRECISION),
        plain ? unit : mine.times(theirs),
        spread,
        Math.min(digits, other.digits),
        false);
  }

  public Quantity times(BigDecimal factor) {
    return times(written(factor, Unit.ONE, EXACT));
  }

  /**
   * Quotient; tolerances add as relative errors.
   *
   * @throws QuantityException if {@code other} is zero, or may be within its tolerance
   */
  public Quantity dividedBy(Quantity other) throws QuantityException {
    if (other.value.signum() == 0) {
      throw new QuantityException("This divides by zero.", "Give the divisor a value.", 0);
    }
    if (orZero(other.tolerance).compareTo(other.value.abs()) >= 0) {
      throw new QuantityException(
          Sentence.of("This divides by {0}, which may be zero.", other),
          "Give the divisor a tolerance that is smaller than its value.",
          0);
    }
    requireScale(this);
    requireScale(other);
    Unit mine = unit.simple();
    Unit theirs = other.unit.simple().inTheManner(mine);
    BigDecimal divisor = convertLike(other.value, other.unit.simple(), theirs);
    BigDecimal ratio = value.divide(divisor, Unit.PRECISION);
    BigDecimal theirSpread = convertLike(orZero(other.tolerance), other.unit.simple(), theirs);
    BigDecimal spread =
        tolerance == null && other.tolerance == null
            ? null
            : orZero(tolerance)
                .add(ratio.abs().multiply(theirSpread, Unit.PRECISION))
                .divide(divisor.abs(), Unit.PRECISION);
    boolean plain = other.unit.equals(Unit.ONE);
    return reduced(
        ratio,
        plain ? unit : mine.dividedBy(theirs),
        spread,
        Math.min(digits, other.digits),
        false);
  }

  /** Folds what is left of units that cancel, such as L/m³ or the % of 5 % × 200 g. */
  private static Quantity reduced(
      BigDecimal value, Unit unit, @Nullable BigDecimal spread, int digits, boolean chosen) {
    Unit kept = unit;
    if (unit.isDimensionless()) {
      boolean lone = unit.terms().size() == 1 && unit.terms().get(0).power() == 1;
      kept = lone ? unit : Unit.ONE;
    } else {
      for (Unit.Term term : unit.terms()) {
        if (term.measure().dimension().isEmpty()) {
          kept = kept.dividedBy(new Unit(java.util.List.of(term)));
        }
      }
    }
    kept = Folding.of(kept);
    return new Quantity(
        bounded(convertLike(value, unit, kept), LARGEST_EXPONENT),
        kept,
        spread == null ? null : convertLike(spread, unit, kept),
        digits,
        chosen);
  }

  /**
   * This to an integer power from -9 to 9.
   *
   * @throws QuantityException for another power, or for a negative one of zero
   */
  public Quantity power(int n) throws QuantityException {
    if (Math.abs(n) > 9) {
      throw new QuantityException(
          Sentence.of("The power {0} is out of reach.", n), "Write a power from -9 to 9.", 0);
    }
    Quantity product = of(1, Unit.ONE);
    for (int i = 0; i < Math.abs(n); i++) {
      product = product.times(this);
    }
    return n < 0 ? of(1, Unit.ONE).dividedBy(product) : product;
  }

  /**
   * The square root.
   *
   * @throws QuantityException if this is negative, or its unit is not a square such as m²
   */
  public Quantity root() throws QuantityException {
    if (value.signum() < 0) {
      throw new QuantityException(
          "A negative number has no square root.", "Check the signs of the formula.", 0);
    }
    if (unit.terms().stream().anyMatch(t -> t.power() % 2 != 0) && !unit.isDimensionless()) {
      throw new QuantityException(
          Sentence.of("\"{0}\" is not the square of a unit.", unit),
          "Take the root of an area, a plain number, or another square.",
          0);
    }
    Unit square = unit.isDimensionless() ? Unit.ONE : unit;
    BigDecimal root = convertLike(value, unit, square).sqrt(Unit.PRECISION);
    Unit half =
        new Unit(
            square.terms().stream().map(t -> new Unit.Term(t.measure(), t.power() / 2)).toList());
    BigDecimal t = tolerance;
    BigDecimal spread =
        t == null || root.signum() == 0
            ? t
            : convertLike(t, unit, square)
                .divide(root.multiply(BigDecimal.valueOf(2)), Unit.PRECISION);
    return new Quantity(root, half, spread, digits, false);
  }

  /**
   * This to the nearest multiple of {@code step}, in this unit. {@link RoundingMode#HALF_UP} takes
   * a tie away from zero.
   *
   * @throws QuantityException if the step is zero or of another kind
   */
  public Quantity rounded(Quantity step, RoundingMode mode) throws QuantityException {
    BigDecimal size = step.valueIn(unit);
    if (size.signum() == 0) {
      throw new QuantityException(
          "Nothing can be rounded to a step of zero.", "Write a step such as 1 mm.", 0);
    }
    BigDecimal count = value.divide(size, Unit.PRECISION).setScale(0, mode);
    return new Quantity(count.multiply(size, Unit.PRECISION), unit, tolerance, EXACT, chosenUnit);
  }

  /** Converts between units that are known to be of one kind. */
  private static BigDecimal convertLike(BigDecimal number, Unit from, Unit to) {
    try {
      return from.convertDifference(number, to);
    } catch (QuantityException e) {
      throw new IllegalStateException(from + " and " + to + " were of one kind", e);
    }
  }

  private static void requireScale(Quantity q) {
    if (q.unit.isReading()) {
      throw new ArithmeticException(
          "A temperature in "
              + q.unit
              + " cannot be multiplied or divided, as its zero is not nothing.");
    }
  }

  private static BigDecimal orZero(@Nullable BigDecimal number) {
    return number == null ? BigDecimal.ZERO : number;
  }

  /**
   * Compares values, not tolerances, exactly.
   *
   * @throws IllegalArgumentException if the dimensions differ
   */
  @Override
  public int compareTo(Quantity other) {
    try {
      return unit.compare(value, other.value, other.unit);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  /**
   * All that there is to know of it, such as how many digits count: two that read the same here are
   * the same in every respect, while those that are equal may be shown otherwise.
   */
  public String inFull() {
    return value + " " + unit.symbol() + " " + tolerance + " " + digits + " " + chosenUnit;
  }

  /**
   * The quantity of which {@link #inFull} told all there is to know.
   *
   * @throws QuantityException if its unit cannot be written so that it is read again
   * @throws IllegalArgumentException if it is no such text
   */
  public static Quantity ofFull(String text) throws QuantityException {
    int unit = text.indexOf(' ');
    int chosen = text.lastIndexOf(' ');
    int digits = text.lastIndexOf(' ', chosen - 1);
    int tolerance = text.lastIndexOf(' ', digits - 1);
    if (unit < 0 || tolerance <= unit - 1) {
      throw new IllegalArgumentException(text);
    }
    String spread = text.substring(tolerance + 1, digits);
    return new Quantity(
        new BigDecimal(text.substring(0, unit)),
        Unit.parse(text.substring(Math.min(unit + 1, tolerance), tolerance)),
        spread.equals("null") ? null : new BigDecimal(spread),
        Integer.parseInt(text.substring(digits + 1, chosen)),
        Boolean.parseBoolean(text.substring(chosen + 1)));
  }

  /** Whether unit, value and tolerance are the same, however the number was written. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Quantity q
        && q.unit.equals(unit)
        && q.value.compareTo(value) == 0
        && (tolerance == null) == (q.tolerance == null)
        && orZero(tolerance).compareTo(orZero(q.tolerance)) == 0;
  }

  @Override
  public int hashCode() {
    return 31 * value.stripTrailingZeros().hashCode() + unit.hashCode();
  }

  /** Every digit, in plain text that {@link #parse} reads, such as {@code 12.5 ± 0.2 mm}. */
  @Override
  public String toString() {
    String plain = plain(value);
    BigDecimal t = tolerance;
    String name = unit.simple().symbol();
    return (plain + " " + name).strip()
        + (t == null ? "" : (" ± " + plain(t) + " " + name).stripTrailing());
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}

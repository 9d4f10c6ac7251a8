package chinelog.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BinaryOperator;
import java.util.function.Function;

/**
 * How quantities are shown to readers, such as {@code 1.19 m ± 0.002 m}, {@code 1 3⁄16 in}, {@code
 * 2 h 30 min}, {@code £21.60}.
 *
 * <p>A number is rounded once, half up (ties go away from zero), when it is shown: to its tolerance
 * if it has one, else to its significant digits, at least three. A tolerance is shown to one
 * significant digit, or to two where it begins with 1 or where rounding it up to one would add a
 * tenth or more; it is never rounded down. Of what is rounded nothing finer than hundredths of a mm
 * is shown, unless it would lose its second digit. A maker's own unit is kept; a reckoned length,
 * area, volume or mass is shown in the metric unit that suits its size (lengths from 1 m on in m).
 *
 * @param locale of decimal signs and grouping
 * @param inchDenominator inches are shown as fractions with this denominator, a power of two; 0
 *     shows them as decimals. A fraction that is not exact is marked {@code ≈}; one that is off by
 *     more than a tenth of the tolerance, or 2 % where there is none, is shown in decimals, as is
 *     one that was written in decimals.
 */
public record NumberStyle(Locale locale, int inchDenominator) {

  static final char NARROW_SPACE = '\u202f';
  private static final Unit MILLIMETRE = Unit.known("mm");
  private static final char MINUS = '\u2212';
  private static final BigDecimal HUNDREDTH = new BigDecimal("0.01");

  /**
   * Four digits are not grouped, in any language. BIPM, The International System of Units, 9th
   * edition (2019), 5.4.4: it is customary not to set a single digit apart.
   */
  private static final BigDecimal FIRST_GROUPED = new BigDecimal(10000);

  private static final int FEWEST_DIGITS = 3;
  private static final int MOST_DIGITS = 9;
  static final int DIGITS_OF_RECKONED = 4;

  /**
   * What would need more decimals than these is what a sum of doubles leaves where it is nought.
   */
  private static final int MOST_PLACES = 15;

  /** An exact figure of more digits was reckoned from exact ones, such as a scale's cube. */
  private static final int MOST_OF_EXACT = 6;

  private static final BigDecimal CLOSE_ENOUGH = new BigDecimal("0.02");
  private static final BigDecimal MOST_ADDED_TO_TOLERANCE = new BigDecimal("0.1");
  private static final BigDecimal PART_OF_TOLERANCE = new BigDecimal("0.1");

  /** What a sum of doubles may leave behind a tolerance's last digit. */
  private static final int DIGITS_OF_TOLERANCE = 9;

  private static final Map<Locale, NumberFormat> NUMBERS = new ConcurrentHashMap<>();
  private static final Map<Locale, NumberFormat> MONEY = new ConcurrentHashMap<>();
  private static final Map<Locale, NumberFormat> PERCENT = new ConcurrentHashMap<>();

  public NumberStyle {
    if (inchDenominator < 0 || Integer.bitCount(inchDenominator) > 1) {
      throw new IllegalArgumentException("not a power of two: " + inchDenominator);
    }
  }

  /** The quantity to the digits it deserves, with its tolerance if it has one. */
  public String show(Quantity quantity) {
    Quantity q = Rescaling.suited(quantity);
    BigDecimal t = q.tolerance();
    if (t != null && t.signum() > 0) {
      return showWithTolerance(q, t);
    }
    return showPlain(q);
  }

  /** The quantity without its tolerance, rounded as {@link #show} rounds it. */
  public String showValue(Quantity quantity) {
    Quantity q = Rescaling.suited(quantity);
    BigDecimal t = q.tolerance();
    return t != null && t.signum() > 0 && isDecimal(q)
        ? withUnit(number(q.value(), tolerancePlaces(t), true), q.unit())
        : showPlain(q);
  }

  /**
   * The value to so many significant digits, without its tolerance, for whoever wants to reckon on
   * with it; as {@link #showValue} where that rounds nothing away. Fractions of an inch, hours and
   * minutes and money are told in decimals where they would else be rounded.
   */
  public String showToDigits(Quantity quantity, int digits) {
    Quantity q = Rescaling.suited(quantity);
    if (isInSteps(q)) {
      return showValue(q);
    }
    BigDecimal plain = q.value().stripTrailingZeros();
    int wanted = digits - Quantity.magnitude(plain);
    int places = wanted > MOST_PLACES ? 0 : Math.min(Math.max(0, plain.scale()), wanted);
    return withUnit(number(q.value(), Math.max(0, places), false), q.unit());
  }

  /** The value of the last digit that {@link #showToDigits} writes at most. */
  public Quantity stepToDigits(Quantity quantity, int digits) {
    Quantity q = Rescaling.suited(quantity);
    Quantity finest =
        Quantity.of(
            BigDecimal.ONE.scaleByPowerOfTen(Quantity.magnitude(q.value()) - digits), q.unit());
    Quantity shown = step(quantity);
    return finest.coherent() < shown.coherent() ? finest : shown;
  }

  /** Whether a quantity is a whole number of what {@link #show} shows it to. */
  private boolean isInSteps(Quantity q) {
    double steps = q.coherent() / step(q).coherent();
    return Math.abs(steps - Math.rint(steps)) <= 1e-9 * Math.max(1, Math.abs(steps));
  }

  /**
   * The full-size counterpart of a model's figure, without its tolerance: as {@link #showValue} has
   * it, but no length from 1 mm on finer than whole mm, unless it would lose its second digit.
   */
  public String showFullSize(Quantity quantity) {
    Quantity q = Rescaling.suited(quantity);
    boolean metres = q.unit().equals(Unit.METRE);
    if (!metres && !q.unit().equals(MILLIMETRE)) {
      return showValue(quantity);
    }
    BigDecimal t = q.tolerance();
    boolean tolerant = t != null && t.signum() > 0;
    int places = t != null && tolerant ? tolerancePlaces(t) : places(q);
    int finest = metres ? 3 : places(q.value(), 0);
    return withUnit(number(q.value(), Math.min(places, finest), tolerant), q.unit());
  }

  /** The unit in which a quantity is shown, where that is one of its own. */
  public String unit(Quantity quantity) {
    return Rescaling.suited(quantity).unit().symbol();
  }

  /** The tolerance alone, such as {@code ± 2 mm}; empty where there is none. */
  public String showTolerance(Quantity quantity) {
    String all = show(quantity);
    int at = all.indexOf('±');
    return at < 0 ? "" : all.substring(at);
  }

  /**
   * An inch fraction with what it is off by, such as {@code 3⁄64 in less 0.0052 in}; as {@link
   * #show} for all else.
   *
   * @param less how a fraction is said to be too large by something, such as {@code a less b}
   * @param more how it is said to be too small
   */
  public String showWithError(
      Quantity quantity, BinaryOperator<String> less, BinaryOperator<String> more) {
    Quantity q = Rescaling.suited(quantity);
    if (!isFraction(q)) {
      return show(q);
    }
    BigDecimal error = q.value().subtract(InchFraction.nearest(q.value(), inchDenominator).value());
    String shown = InchFraction.nearest(q.value(), inchDenominator).text() + NARROW_SPACE + "in";
    if (error.signum() == 0) {
      return shown;
    }
    int places = 2 - Quantity.magnitude(error);
    return (error.signum() < 0 ? less : more)
        .apply(shown, withUnit(number(error.abs(), places, false), Unit.INCH));
  }

  /**
   * The value of the last digit or fraction that {@link #show} writes: 0.01 m for 1.19 m, a minute
   * for hours and minutes, a hundredth of the unit of money.
   */
  public Quantity step(Quantity quantity) {
    if (quantity.unit().isMoney()) {
      return Quantity.of(HUNDREDTH, quantity.unit());
    }
    Quantity q = Rescaling.suited(quantity);
    Optional<Compound> compound = compound(q.unit());
    if (compound.filter(Compound.HOURS_AND_MINUTES::equals).isPresent()) {
      return Quantity.of(1, Unit.MINUTE);
    }
    if (suitsFraction(q) || isFeet(q)) {
      return Quantity.of(BigDecimal.ONE.divide(BigDecimal.valueOf(inchDenominator)), Unit.INCH);
    }
    if (compound.isPresent()) {
      return Quantity.of(HUNDREDTH, Unit.known(compound.get().small));
    }
    BigDecimal t = q.tolerance();
    int places = t != null && t.signum() > 0 ? tolerancePlaces(t) : places(q);
    return Quantity.of(BigDecimal.ONE.movePointLeft(Math.max(0, places)), q.unit());
  }

  private String showWithTolerance(Quantity q, BigDecimal t) {
    if (!isDecimal(q)) {
      String value = showPlain(q);
      String shown = value.startsWith("≈") ? value.substring(2) : value;
      return shown + " ±" + NARROW_SPACE + spreadBeside(q, t);
    }
    String value = number(q.value(), tolerancePlaces(t), true);
    return withUnit(value, q.unit()) + " ±" + NARROW_SPACE + spread(t, q.unit());
  }

  /** A tolerance in decimals, never rounded down. */
  private String spread(BigDecimal t, Unit unit) {
    return withUnit(number(roundedUp(t), tolerancePlaces(t), true), unit);
  }

  private static BigDecimal roundedUp(BigDecimal t) {
    return clean(t).setScale(tolerancePlaces(t), RoundingMode.CEILING);
  }

  /** A tolerance beside a fraction of an inch, or beside money, hours or feet and inches. */
  private String spreadBeside(Quantity q, BigDecimal t) {
    Unit unit = isFeet(q) ? Unit.INCH : q.unit();
    Quantity spread = Quantity.written(t, unit, Quantity.EXACT);
    return isFraction(spread) && !isExactFraction(t) ? spread(t, unit) : showPlain(spread);
  }

  private boolean isFraction(Quantity q) {
    return inchDenominator > 0 && q.unit().equals(Unit.INCH);
  }

  private boolean isExactFraction(BigDecimal inches) {
    return InchFraction.nearest(inches, inchDenominator).value().compareTo(inches) == 0;
  }

  /** Whether a fraction tells the inches well enough, and was not written in decimals. */
  private boolean suitsFraction(Quantity q) {
    if (!isFraction(q)) {
      return false;
    }
    BigDecimal value = q.value();
    BigDecimal error = InchFraction.nearest(value, inchDenominator).value().subtract(value).abs();
    if (error.signum() == 0) {
      return true;
    }
    boolean asWritten = q.hasChosenUnit() && value.precision() <= q.digits() && isPlainDecimal(q);
    BigDecimal t = q.tolerance();
    BigDecimal most =
        t != null && t.signum() > 0
            ? t.multiply(PART_OF_TOLERANCE)
            : value.abs().multiply(CLOSE_ENOUGH);
    return !asWritten && error.compareTo(most) <= 0;
  }

  /** Whether the number was written with a decimal point, not as a fraction or a count. */
  private static boolean isPlainDecimal(Quantity q) {
    return q.digits() < Quantity.EXACT;
  }

  private boolean isFeet(Quantity q) {
    return inchDenominator > 0 && q.unit().symbol().equals(Compound.FEET_AND_INCHES.symbol());
  }

  private boolean isDecimal(Quantity q) {
    return !suitsFraction(q) && compound(q.unit()).isEmpty() && q.unit().currency() == null;
  }

  private static Optional<Compound> compound(Unit unit) {
    return unit.equals(Unit.HOUR) || unit.equals(Unit.MINUTE)
        ? Optional.of(Compound.HOURS_AND_MINUTES)
        : Compound.findBySymbol(unit.symbol());
  }

  private String showPlain(Quantity q) {
    String currency = q.unit().currency();
    if (currency != null) {
      return money(q, currency);
    }
    if (suitsFraction(q)) {
      return inches(q.value()) + NARROW_SPACE + "in";
    }
    return compound(q.unit())
        .map(c -> steps(q, c))
        .orElseGet(() -> withUnit(number(q.value(), places(q), false), q.unit()));
  }

  private String inches(BigDecimal value) {
    InchFraction nearest = InchFraction.nearest(value, inchDenominator);
    boolean exact = nearest.value().compareTo(value) == 0;
    return (exact ? "" : "≈" + NARROW_SPACE) + nearest.text();
  }

  /** Larger and smaller unit, such as {@code 2 h 30 min}; the larger is left out if it is 0. */
  private String steps(Quantity q, Compound c) {
    BigDecimal small = q.value().abs();
    if (q.unit().equals(Unit.HOUR)) {
      small = small.multiply(BigDecimal.valueOf(c.ratio));
    }
    boolean fraction = c == Compound.FEET_AND_INCHES && inchDenominator > 0;
    int places = c == Compound.HOURS_AND_MINUTES ? 0 : 2;
    BigDecimal rounded =
        fraction
            ? InchFraction.nearest(small, inchDenominator).value()
            : small.setScale(places, RoundingMode.HALF_UP);
    boolean exact = !fraction || rounded.compareTo(small) == 0;
    BigDecimal[] parts =
        rounded.divideToIntegralValue(BigDecimal.valueOf(c.ratio)).signum() == 0
            ? new BigDecimal[] {BigDecimal.ZERO, rounded}
            : rounded.divideAndRemainder(BigDecimal.valueOf(c.ratio));
    String rest =
        fraction
            ? InchFraction.nearest(parts[1], inchDenominator).textAfterFeet(parts[0].signum() != 0)
            : number(parts[1].stripTrailingZeros(), places, false);
    StringBuilder shown = new StringBuilder(exact ? "" : "≈" + NARROW_SPACE);
    if (q.value().signum() < 0 && rounded.signum() != 0) {
      shown.append(MINUS);
    }
    boolean hours = c == Compound.HOURS_AND_MINUTES;
    boolean large = parts[0].signum() != 0 || !hours && parts[1].signum() == 0;
    if (large) {
      shown.append(number(parts[0], 0, false)).append(NARROW_SPACE).append(c.large);
    }
    boolean wholeHours = hours && parts[1].signum() == 0 && (large || q.unit().equals(Unit.HOUR));
    if (wholeHours) {
      return large
          ? shown.toString()
          : shown.append("0").append(NARROW_SPACE).append("h").toString();
    }
    return shown
        .append(large ? " " : "")
        .append(rest)
        .append(NARROW_SPACE)
        .append(c.small)
        .toString();
  }

  private String money(Quantity q, String code) {
    NumberFormat format = own(MONEY, NumberFormat::getCurrencyInstance);
    Currency currency = Currency.getInstance(code);
    format.setCurrency(currency);
    int digits = Math.max(0, currency.getDefaultFractionDigits());
    format.setMinimumFractionDigits(digits);
    format.setMaximumFractionDigits(digits);
    format.setRoundingMode(RoundingMode.HALF_UP);
    Unit per = Unit.known(code).dividedBy(q.unit());
    if (per.equals(Unit.MINUTE)) {
      // Nobody is paid by the minute.
      return money(inHours(q, code), code);
    }
    String amount = signed(format.format(rounded(q.value(), digits)));
    return per.equals(Unit.ONE) ? amount : amount + "/" + per.symbol();
  }

  private static Quantity inHours(Quantity perMinute, String code) {
    try {
      return perMinute.in(Unit.known(code).dividedBy(Unit.HOUR));
    } catch (QuantityException e) {
      throw new IllegalStateException("an hour is a time", e);
    }
  }

  private String withUnit(String number, Unit unit) {
    String symbol = unit.symbol();
    if (symbol.isEmpty() || symbol.equals("°") || symbol.equals("%") && percentIsClose()) {
      return number + symbol;
    }
    return number + NARROW_SPACE + symbol;
  }

  private boolean percentIsClose() {
    String pattern = own(PERCENT, NumberFormat::getPercentInstance).format(0.5);
    return pattern.indexOf('%') > 0 && Character.isDigit(pattern.charAt(pattern.indexOf('%') - 1));
  }

  private static int places(Quantity q) {
    BigDecimal value = q.value();
    int digits = q.digits();
    if (digits > MOST_DIGITS) {
      digits = value.precision() > MOST_OF_EXACT ? DIGITS_OF_RECKONED : MOST_DIGITS;
    }
    int magnitude = Quantity.magnitude(value);
    int wanted = Math.max(FEWEST_DIGITS, digits) - magnitude;
    if (q.unit().equals(MILLIMETRE) && value.stripTrailingZeros().scale() > wanted) {
      wanted = Math.min(wanted, places(value, 2));
    }
    // Zeros at the end say something only among the first few digits.
    int told = Math.max(value.stripTrailingZeros().scale(), DIGITS_OF_RECKONED - magnitude);
    return Math.max(0, Math.min(wanted, Math.min(told, value.scale())));
  }

  /** Decimals for a length: {@code fewest}, or as many as tell its second digit. */
  private static int places(BigDecimal value, int fewest) {
    return Math.max(fewest, 2 - Quantity.magnitude(value));
  }

  private static int tolerancePlaces(BigDecimal t) {
    BigDecimal clean = clean(t);
    BigDecimal one = clean.round(new MathContext(1, RoundingMode.CEILING));
    boolean beginsWithOne = clean.unscaledValue().toString().startsWith("1");
    boolean addsTooMuch =
        one.subtract(clean).compareTo(clean.multiply(MOST_ADDED_TO_TOLERANCE)) >= 0;
    int digits = Math.min(beginsWithOne || addsTooMuch ? 2 : 1, clean.precision());
    return digits - Quantity.magnitude(clean);
  }

  private static BigDecimal clean(BigDecimal t) {
    return t.round(new MathContext(DIGITS_OF_TOLERANCE)).stripTrailingZeros();
  }

  private String number(BigDecimal value, int places, boolean padded) {
    NumberFormat format = own(NUMBERS, NumberFormat::getNumberInstance);
    BigDecimal rounded = rounded(value, places);
    int decimals = Math.max(0, places);
    format.setGroupingUsed(rounded.abs().compareTo(FIRST_GROUPED) >= 0);
    format.setMaximumFractionDigits(decimals);
    format.setMinimumFractionDigits(
        padded ? decimals : Math.min(decimals, Math.max(0, rounded.scale())));
    return signed(format.format(rounded));
  }

  /** A format to set up as it is wanted; to find one takes long, to copy it does not. */
  private NumberFormat own(Map<Locale, NumberFormat> found, Function<Locale, NumberFormat> find) {
    return (NumberFormat) found.computeIfAbsent(locale, find).clone();
  }

  private static BigDecimal rounded(BigDecimal value, int places) {
    BigDecimal rounded =
        value.scale() > places ? value.setScale(places, RoundingMode.HALF_UP) : value;
    return rounded.signum() == 0 ? rounded.abs() : rounded;
  }

  private static String signed(String number) {
    return number.replace('-', MINUS);
  }
}

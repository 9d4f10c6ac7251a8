package chinelog.quantity;

import chinelog.problem.Sentence;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Currency;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/**
 * The units a maker may write, by symbol. Factors: NIST SP 811 (2008), appendix B, taken as the
 * exact definitions (1 in = 25.4 mm, 1 lb = 453.59237 g, 1 imp gal = 4.54609 L, 1 US gal = 231
 * in³).
 */
final class UnitTable {

  private static final Map<String, Measure> BY_SYMBOL = new TreeMap<>();
  private static final Map<String, String> OTHER_SPELLINGS = new HashMap<>();

  /** Words that name different sizes in different places, with what to write instead. */
  private static final Map<String, String> AMBIGUOUS =
      Map.ofEntries(
          Map.entry("gal", "Write \"US gal\" or \"imp gal\"."),
          Map.entry("fl oz", "Write \"US fl oz\" or \"imp fl oz\"."),
          Map.entry("pt", "Write \"US pt\" or \"imp pt\"."),
          Map.entry("qt", "Write \"US qt\" or \"imp qt\"."),
          Map.entry("ton", "Write \"t\", \"long ton\" or \"short ton\"."),
          Map.entry("mile", "Write \"mi\" or \"nmi\"."),
          Map.entry("gauge", "Write awg(18), swg(20) or msg(18)."),
          Map.entry("awg", "Write its number in brackets, such as awg(18)."),
          Map.entry("swg", "Write its number in brackets, such as swg(20)."),
          Map.entry("msg", "Write its number in brackets, such as msg(18)."),
          Map.entry("fl", "Write \"US fl oz\" or \"imp fl oz\"."),
          Map.entry("NM", "Write \"N·m\" for a torque, \"nmi\" for a sea mile."),
          Map.entry("sq", "Write a square as ft², in², yd² or m²."),
          Map.entry("cu", "Write a cube as ft³, in³, yd³ or m³."),
          Map.entry("stone", "Write it in lb: one stone is 14 lb."),
          Map.entry("dozen", "Write the number without a unit, such as 12."),
          Map.entry("µ", "Write \"µm\"."),
          Map.entry("pounds", "Write \"lb\" for a mass, \"GBP\" for money."),
          Map.entry("pound", "Write \"lb\" for a mass, \"GBP\" for money."),
          Map.entry("kWh", "Write it in Wh: 1 kWh is 1000 Wh."),
          Map.entry("Nm", "Write \"N·m\" for a torque, \"nmi\" for a sea mile."),
          Map.entry("kts", "Write \"kn\"."),
          Map.entry("kt", "Write \"kn\"."),
          Map.entry("gsm", "Write \"g/m²\"."),
          Map.entry("cc", "Write \"cm³\" or \"mL\"."),
          Map.entry(
              "hp",
              "Write it in W: one metric horsepower is 735.5 W, one of 550 ft·lbf/s 745.7 W."),
          Map.entry("sq ft", "Write \"ft²\"."),
          Map.entry("sq in", "Write \"in²\"."),
          Map.entry("sq m", "Write \"m²\"."),
          Map.entry("sqm", "Write \"m²\"."),
          Map.entry("cu ft", "Write \"ft³\"."),
          Map.entry("cu in", "Write \"in³\"."));

  private static final Set<String> CURRENCIES =
      Currency.getAvailableCurrencies().stream()
          .map(Currency::getCurrencyCode)
          .collect(Collectors.toUnmodifiableSet());

  /** To 50 digits, from memory; {@link Math#PI} agrees as far as it goes. */
  private static final BigDecimal PI =
      new BigDecimal("3.14159265358979323846264338327950288419716939937511");

  private static final SortedMap<String, Integer> NONE = dimension(0, 0, 0, 0);
  private static final SortedMap<String, Integer> LENGTH = dimension(1, 0, 0, 0);
  private static final SortedMap<String, Integer> AREA = dimension(2, 0, 0, 0);
  private static final SortedMap<String, Integer> VOLUME = dimension(3, 0, 0, 0);
  private static final SortedMap<String, Integer> MASS = dimension(0, 1, 0, 0);
  private static final SortedMap<String, Integer> TIME = dimension(0, 0, 1, 0);
  private static final SortedMap<String, Integer> FREQUENCY = dimension(0, 0, -1, 0);
  private static final SortedMap<String, Integer> SPEED = dimension(1, 0, -1, 0);
  private static final SortedMap<String, Integer> FORCE = dimension(1, 1, -2, 0);
  private static final SortedMap<String, Integer> PRESSURE = dimension(-1, 1, -2, 0);
  private static final SortedMap<String, Integer> ENERGY = dimension(2, 1, -2, 0);
  private static final SortedMap<String, Integer> POWER = dimension(2, 1, -3, 0);
  private static final SortedMap<String, Integer> VOLTAGE = dimension(2, 1, -3, -1);
  private static final SortedMap<String, Integer> CURRENT = dimension(0, 0, 0, 1);
  private static final SortedMap<String, Integer> CHARGE = dimension(0, 0, 1, 1);

  private static final BigFraction INCH = BigFraction.of(254, 10000);
  private static final BigFraction CUBIC_INCH = INCH.pow(3);
  private static final BigFraction LITRE = BigFraction.of(1, 1000);
  private static final BigFraction US_GALLON = CUBIC_INCH.multiply(231);
  private static final BigFraction IMPERIAL_GALLON = LITRE.multiply(BigFraction.of(454609, 100000));
  private static final BigFraction POUND = BigFraction.of(45359237, 100_000_000);

  /** Standard gravity in m/s², exact. */
  private static final BigFraction GRAVITY = BigFraction.of(980665, 100000);

  static {
    lengths();
    masses();
    volumes();
    timeAndMotion();
    forcesAndPower();
    temperatures();
    put("%", NONE, of(1, 100));
    put("‰", NONE, of(1, 1000));
    // Kept as a dimension of its own, so that 12° cannot be added to a plain number unseen.
    SortedMap<String, Integer> angle = new TreeMap<>(Map.of("angle", 1));
    put("rad", angle, BigFraction.ONE);
    BigFraction pi = BigFraction.of(PI.unscaledValue(), BigInteger.TEN.pow(PI.scale()));
    put("°", angle, pi.divide(180), "deg", "degree", "degrees");
  }

  private UnitTable() {}

  private static void lengths() {
    put("m", LENGTH, BigFraction.ONE);
    put("mm", LENGTH, of(1, 1000));
    put("cm", LENGTH, of(1, 100));
    put("dm", LENGTH, of(1, 10));
    put("km", LENGTH, of(1000, 1));
    put("µm", LENGTH, of(1, 1_000_000), "um", "μm", "micron", "microns");
    put("nm", LENGTH, of(1, 1_000_000_000));
    put("in", LENGTH, INCH, "inch", "inches", "\"", "″");
    put("ft", LENGTH, INCH.multiply(12), "foot", "feet", "'", "′");
    put("yd", LENGTH, INCH.multiply(36), "yard", "yards");
    put("mil", LENGTH, INCH.divide(1000), "thou");
    put("mi", LENGTH, INCH.multiply(63360));
    put("nmi", LENGTH, of(1852, 1));
    put("fathom", LENGTH, INCH.multiply(72), "fathoms");
    put("US survey ft", LENGTH, of(1200, 3937));
    // Counted in inches, shown as feet and inches.
    put(Compound.FEET_AND_INCHES.symbol(), LENGTH, INCH);
    put("ha", AREA, of(10000, 1));
  }

  private static void masses() {
    put("kg", MASS, BigFraction.ONE);
    put("g", MASS, of(1, 1000), "gram", "grams");
    put("mg", MASS, of(1, 1_000_000));
    put("t", MASS, of(1000, 1), "tonne", "tonnes");
    put("lb", MASS, POUND, "lbs");
    put("oz", MASS, POUND.divide(16));
    put("gr", MASS, POUND.divide(7000));
    put("long ton", MASS, POUND.multiply(2240), "long tons");
    put("short ton", MASS, POUND.multiply(2000), "short tons");
    put(Compound.POUNDS_AND_OUNCES.symbol(), MASS, POUND.divide(16));
  }

  private static void volumes() {
    put("L", VOLUME, LITRE, "l", "litre", "litres");
    put("mL", VOLUME, LITRE.divide(1000), "ml");
    put("cL", VOLUME, LITRE.divide(100), "cl");
    put("dL", VOLUME, LITRE.divide(10), "dl");
    put("US gal", VOLUME, US_GALLON);
    put("US qt", VOLUME, US_GALLON.divide(4));
    put("US pt", VOLUME, US_GALLON.divide(8));
    put("US fl oz", VOLUME, US_GALLON.divide(128));
    put("imp gal", VOLUME, IMPERIAL_GALLON);
    put("imp qt", VOLUME, IMPERIAL_GALLON.divide(4));
    put("imp pt", VOLUME, IMPERIAL_GALLON.divide(8));
    put("imp fl oz", VOLUME, IMPERIAL_GALLON.divide(160));
    put("board ft", VOLUME, CUBIC_INCH.multiply(144), "board foot", "board feet", "bd ft");
  }

  private static void timeAndMotion() {
    put("s", TIME, BigFraction.ONE, "sec");
    put("min", TIME, of(60, 1), "minute", "minutes");
    put("h", TIME, of(3600, 1), "hour", "hours", "hr", "hrs");
    put("d", TIME, of(86400, 1), "day", "days");
    put("week", TIME, of(604800, 1), "weeks");
    put("kn", SPEED, of(1852, 3600), "knots", "knot");
    put("mph", SPEED, INCH.multiply(63360).divide(3600));
    put("Hz", FREQUENCY, BigFraction.ONE);
    put("rpm", FREQUENCY, of(1, 60));
  }

  private static void forcesAndPower() {
    put("N", FORCE, BigFraction.ONE);
    put("kN", FORCE, of(1000, 1));
    put("kgf", FORCE, GRAVITY);
    put("lbf", FORCE, GRAVITY.multiply(POUND));
    put("Pa", PRESSURE, BigFraction.ONE);
    put("kPa", PRESSURE, of(1000, 1));
    put("MPa", PRESSURE, of(1_000_000, 1));
    put("bar", PRESSURE, of(100_000, 1));
    put("psi", PRESSURE, GRAVITY.multiply(POUND).divide(INCH.pow(2)));
    put("J", ENERGY, BigFraction.ONE);
    put("Wh", ENERGY, of(3600, 1));
    put("W", POWER, BigFraction.ONE);
    put("kW", POWER, of(1000, 1));
    put("V", VOLTAGE, BigFraction.ONE);
    put("A", CURRENT, BigFraction.ONE);
    put("mA", CURRENT, of(1, 1000));
    put("Ah", CHARGE, of(3600, 1));
    put("mAh", CHARGE, of(36, 10));
  }

  private static void temperatures() {
    SortedMap<String, Integer> temperature = new TreeMap<>(Map.of("temperature", 1));
    BigFraction fahrenheit = of(5, 9);
    put("K", temperature, BigFraction.ONE);
    put("Δ°C", temperature, BigFraction.ONE);
    put("Δ°F", temperature, fahrenheit);
    // 0 °C lies 273.15 K, and 0 °F 459.67 of its degrees, above absolute zero.
    add(new Measure("°C", BigFraction.ONE, of(27315, 100), temperature), "degC", "℃");
    BigFraction zero = fahrenheit.multiply(of(45967, 100));
    add(new Measure("°F", fahrenheit, zero, temperature), "degF", "℉");
  }

  static @Nullable Measure find(String symbol) {
    Measure unit = BY_SYMBOL.get(canonical(symbol));
    if (unit != null) {
      return unit;
    }
    return CURRENCIES.contains(symbol)
        ? new Measure(symbol, BigFraction.ONE, BigFraction.ZERO, new TreeMap<>(Map.of(symbol, 1)))
        : null;
  }

  /** Every symbol but those of money and of figures in two steps, such as ft and in. */
  static Set<String> symbols() {
    return BY_SYMBOL.keySet().stream()
        .filter(s -> Compound.findBySymbol(s).isEmpty())
        .collect(Collectors.toUnmodifiableSet());
  }

  private static String canonical(String symbol) {
    return OTHER_SPELLINGS.getOrDefault(symbol, symbol);
  }

  static boolean isCurrency(String symbol) {
    return CURRENCIES.contains(symbol);
  }

  /** What to write instead of a symbol that is nearly right. */
  static Optional<CharSequence> findRemedy(String symbol) {
    return Optional.<CharSequence>ofNullable(AMBIGUOUS.get(symbol))
        .or(
            () ->
                BY_SYMBOL.keySet().stream()
                    .filter(s -> s.equalsIgnoreCase(symbol))
                    .findFirst()
                    .map(s -> Sentence.of("Write \"{0}\".", s)));
  }

  private static void put(
      String symbol,
      SortedMap<String, Integer> dimension,
      BigFraction size,
      String... otherSpellings) {
    add(new Measure(symbol, size, BigFraction.ZERO, dimension), otherSpellings);
  }

  private static void add(Measure measure, String... otherSpellings) {
    BY_SYMBOL.put(measure.symbol(), measure);
    for (String other : otherSpellings) {
      OTHER_SPELLINGS.put(other, measure.symbol());
    }
  }

  private static BigFraction of(int dividend, int divisor) {
    return BigFraction.of(dividend, divisor);
  }

  /** The powers of length, mass, time and current of a unit; those that are 0 are left out. */
  private static SortedMap<String, Integer> dimension(int length, int mass, int time, int current) {
    SortedMap<String, Integer> powers = new TreeMap<>();
    powers.put("length", length);
    powers.put("mass", mass);
    powers.put("time", time);
    powers.put("current", current);
    powers.values().removeIf(n -> n == 0);
    return powers;
  }
}

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
import javax.measure.Dimension;
import javax.measure.IncommensurableException;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.TransformedUnit;
import tech.units.indriya.unit.Units;

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
          Map.entry("Nm", "Write \"N·m\" for a torque, \"nmi\" for a sea mile."),
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

  static {
    lengths();
    masses();
    volumes();
    timeAndMotion();
    forcesAndWarmth();
    put("%", times(AbstractUnit.ONE, 1, 100));
    put("‰", times(AbstractUnit.ONE, 1, 1000));
    // Kept as a dimension of its own, so that 12° cannot be added to a plain number unseen.
    angle("rad", RationalNumber.ONE);
    RationalNumber degree =
        RationalNumber.of(PI.unscaledValue(), BigInteger.TEN.pow(PI.scale()))
            .divide(RationalNumber.ofInteger(180));
    angle("°", degree, "deg", "degree", "degrees");
  }

  private UnitTable() {}

  private static void lengths() {
    put("m", Units.METRE);
    put("mm", MetricPrefix.MILLI(Units.METRE));
    put("cm", MetricPrefix.CENTI(Units.METRE));
    put("dm", MetricPrefix.DECI(Units.METRE));
    put("km", MetricPrefix.KILO(Units.METRE));
    put("µm", MetricPrefix.MICRO(Units.METRE), "um", "μm", "micron", "microns");
    put("nm", MetricPrefix.NANO(Units.METRE));
    Unit<?> inch = times(Units.METRE, 254, 10000);
    put("in", inch, "inch", "inches", "\"", "″");
    put("ft", times(inch, 12, 1), "foot", "feet", "'", "′");
    put("yd", times(inch, 36, 1), "yard", "yards");
    put("mil", times(inch, 1, 1000), "thou");
    put("mi", times(inch, 63360, 1));
    put("nmi", times(Units.METRE, 1852, 1));
    put("fathom", times(inch, 72, 1), "fathoms");
    put("US survey ft", times(Units.METRE, 1200, 3937));
    // Counted in inches, shown as feet and inches.
    put(Compound.FEET_AND_INCHES.symbol(), inch);
    put("ha", times(Units.METRE.pow(2), 10000, 1));
  }

  private static void masses() {
    put("g", Units.GRAM, "gram", "grams");
    put("kg", Units.KILOGRAM);
    put("mg", MetricPrefix.MILLI(Units.GRAM));
    put("t", times(Units.KILOGRAM, 1000, 1), "tonne", "tonnes");
    Unit<?> pound = times(Units.KILOGRAM, 45359237, 100000000);
    put("lb", pound, "lbs");
    put("oz", times(pound, 1, 16));
    put("gr", times(pound, 1, 7000));
    put("long ton", times(pound, 2240, 1), "long tons");
    put("short ton", times(pound, 2000, 1), "short tons");
    put(Compound.POUNDS_AND_OUNCES.symbol(), times(pound, 1, 16));
  }

  private static void volumes() {
    Unit<?> litre = times(Units.METRE.pow(3), 1, 1000);
    put("L", litre, "l", "litre", "litres");
    put("mL", times(litre, 1, 1000), "ml");
    put("cL", times(litre, 1, 100), "cl");
    put("dL", times(litre, 1, 10), "dl");
    Unit<?> cubicInch = times(Units.METRE.pow(3), 16387064, 1_000_000_000_000L);
    Unit<?> usGallon = times(cubicInch, 231, 1);
    put("US gal", usGallon);
    put("US qt", times(usGallon, 1, 4));
    put("US pt", times(usGallon, 1, 8));
    put("US fl oz", times(usGallon, 1, 128));
    Unit<?> imperialGallon = times(litre, 454609, 100000);
    put("imp gal", imperialGallon);
    put("imp qt", times(imperialGallon, 1, 4));
    put("imp pt", times(imperialGallon, 1, 8));
    put("imp fl oz", times(imperialGallon, 1, 160));
    put("board ft", times(cubicInch, 144, 1), "board foot", "board feet", "bd ft");
  }

  private static void timeAndMotion() {
    put("s", Units.SECOND, "sec");
    put("min", times(Units.SECOND, 60, 1), "minute", "minutes");
    put("h", times(Units.SECOND, 3600, 1), "hour", "hours", "hr", "hrs");
    put("d", times(Units.SECOND, 86400, 1), "day", "days");
    put("week", times(Units.SECOND, 604800, 1), "weeks");
    put("kn", times(Units.METRE.divide(Units.SECOND), 1852, 3600), "knots", "knot");
    put("mph", times(Units.METRE.divide(Units.SECOND), 1609344, 3600000));
    put("Hz", Units.HERTZ);
    put("rpm", times(Units.HERTZ, 1, 60));
  }

  private static void forcesAndWarmth() {
    put("N", Units.NEWTON);
    put("kN", MetricPrefix.KILO(Units.NEWTON));
    put("Pa", Units.PASCAL);
    put("kPa", MetricPrefix.KILO(Units.PASCAL));
    put("MPa", MetricPrefix.MEGA(Units.PASCAL));
    put("bar", times(Units.PASCAL, 100000, 1));
    put("J", Units.JOULE);
    put("W", Units.WATT);
    put("kW", MetricPrefix.KILO(Units.WATT));
    put("V", Units.VOLT);
    put("A", Units.AMPERE);
    put("mA", MetricPrefix.MILLI(Units.AMPERE));
    put("Ah", times(Units.COULOMB, 3600, 1));
    put("mAh", times(Units.COULOMB, 36, 10));
    put("Wh", times(Units.JOULE, 3600, 1));
    // Standard gravity 9.80665 m/s² exactly.
    Unit<?> poundForce = times(Units.NEWTON, 44482216152605L, 10_000_000_000_000L);
    put("kgf", times(Units.NEWTON, 980665, 100000));
    put("lbf", poundForce);
    put("psi", times(Units.PASCAL, 44482216152605L, 6451600000L));
    put("K", Units.KELVIN);
    // 0 °C lies 273.15 K, and 0 °F 459.67 of its degrees, above absolute zero.
    temperature("°C", "Δ°C", RationalNumber.ONE, RationalNumber.of(27315, 100), "degC", "℃");
    RationalNumber fahrenheit = RationalNumber.of(5, 9);
    RationalNumber zeroFahrenheit = fahrenheit.multiply(RationalNumber.of(45967, 100));
    temperature("°F", "Δ°F", fahrenheit, zeroFahrenheit, "degF", "℉");
  }

  static @Nullable Measure find(String symbol) {
    Measure unit = BY_SYMBOL.get(canonical(symbol));
    if (unit != null) {
      return unit;
    }
    return CURRENCIES.contains(symbol)
        ? new Measure(
            symbol, RationalNumber.ONE, RationalNumber.ZERO, new TreeMap<>(Map.of(symbol, 1)))
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

  private static void put(String symbol, Unit<?> unit, String... otherSpellings) {
    try {
      Number size = unit.getConverterToAny(unit.getSystemUnit()).convert(1);
      add(
          new Measure(symbol, rational(size), RationalNumber.ZERO, dimension(unit.getDimension())),
          otherSpellings);
    } catch (IncommensurableException e) {
      throw new IllegalStateException(symbol + " is not of its own system", e);
    }
  }

  private static void temperature(
      String reading,
      String difference,
      RationalNumber kelvin,
      RationalNumber zero,
      String... otherSpellings) {
    SortedMap<String, Integer> dimension = dimension(Units.KELVIN.getDimension());
    add(new Measure(reading, kelvin, zero, dimension), otherSpellings);
    add(new Measure(difference, kelvin, RationalNumber.ZERO, dimension));
  }

  private static void angle(String symbol, RationalNumber radians, String... otherSpellings) {
    add(
        new Measure(symbol, radians, RationalNumber.ZERO, new TreeMap<>(Map.of("angle", 1))),
        otherSpellings);
  }

  private static void add(Measure measure, String... otherSpellings) {
    BY_SYMBOL.put(measure.symbol(), measure);
    for (String other : otherSpellings) {
      OTHER_SPELLINGS.put(other, measure.symbol());
    }
  }

  private static SortedMap<String, Integer> dimension(Dimension dimension) {
    SortedMap<String, Integer> powers = new TreeMap<>();
    Map<? extends Dimension, Integer> bases = dimension.getBaseDimensions();
    if (bases != null) {
      bases.forEach((base, power) -> powers.merge(base.toString(), power, Integer::sum));
    } else if (!dimension.equals(AbstractUnit.ONE.getDimension())) {
      powers.put(dimension.toString(), 1);
    }
    return powers;
  }

  private static RationalNumber rational(Number n) {
    if (n instanceof RationalNumber r) {
      return r;
    }
    return RationalNumber.of(new BigDecimal(n.toString()));
  }

  private static Unit<?> times(Unit<?> base, long dividend, long divisor) {
    return new TransformedUnit<>(null, base, MultiplyConverter.ofRational(dividend, divisor));
  }
}

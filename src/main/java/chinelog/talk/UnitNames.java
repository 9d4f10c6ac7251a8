package chinelog.talk;

import chinelog.wording.Catalogue;
import com.ibm.icu.number.FormattedNumber;
import com.ibm.icu.number.LocalizedNumberFormatter;
import com.ibm.icu.number.NumberFormatter;
import com.ibm.icu.text.ConstrainedFieldPosition;
import com.ibm.icu.text.NumberFormat;
import com.ibm.icu.util.MeasureUnit;
import com.ibm.icu.util.ULocale;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/** Names of units in full, such as "millimetres" or "Gramm pro Quadratmeter" (Unicode CLDR). */
final class UnitNames {

  /** Symbols, and what ICU calls their units; own words stand in the table of words. */
  private static final Map<String, String> UNITS = new TreeMap<>();

  static {
    put("mm millimeter cm centimeter dm decimeter m meter km kilometer µm micrometer nm nanometer");
    put("in inch ft foot yd yard mi mile nmi nautical-mile fathom fathom \u2033 inch \" inch");
    put("mm² square-millimeter cm² square-centimeter dm² square-decimeter m² square-meter");
    put("in² square-inch ft² square-foot yd² square-yard ha hectare");
    put("mm³ cubic-millimeter cm³ cubic-centimeter dm³ cubic-decimeter m³ cubic-meter");
    put("in³ cubic-inch ft³ cubic-foot mL milliliter cL centiliter dL deciliter L liter l liter");
    put("g gram kg kilogram mg milligram t metric-ton lb pound oz ounce gr grain");
    put("s second min minute h hour d day week week");
    put("kn knot mph mile-per-hour m/s meter-per-second km/h kilometer-per-hour");
    put("ft/s foot-per-second Hz hertz rpm revolution-per-minute");
    put("N newton kN kilonewton Pa pascal kPa kilopascal MPa megapascal bar bar J joule");
    put("W watt kW kilowatt V volt A ampere mA milliampere N·m newton-meter");
    put("lbf pound-force psi pound-force-per-square-inch kgf kilogram-force");
    put("K kelvin °C celsius °F fahrenheit ° degree % percent ‰ permille");
    put("g/m² gram-per-square-meter kg/m² kilogram-per-square-meter g/m gram-per-meter");
    put("kg/m³ kilogram-per-cubic-meter g/cm³ gram-per-cubic-centimeter g/mL gram-per-milliliter");
    put("N/m newton-per-meter N/mm² newton-per-square-millimeter oz/yd² ounce-per-square-yard");
  }

  /** Named by the table of words, since CLDR turns their parts round. */
  private static final List<String> OWN = List.of("Ah", "mAh", "Wh");

  private final LocalizedNumberFormatter formatter;
  private final Catalogue words;
  private final Map<String, String> genders = new ConcurrentHashMap<>();

  UnitNames(Locale locale, Catalogue words) {
    this.words = words;
    this.formatter =
        NumberFormatter.withLocale(ULocale.forLocale(locale))
            .unitWidth(NumberFormatter.UnitWidth.FULL_NAME)
            .grouping(NumberFormatter.GroupingStrategy.OFF);
  }

  private static void put(String pairs) {
    String[] words = pairs.split(" ");
    for (int i = 0; i < words.length; i += 2) {
      UNITS.put(words[i], words[i + 1]);
    }
  }

  /** All symbols that have a name, the longest first. */
  static List<String> symbols() {
    return java.util.stream.Stream.of(UNITS.keySet(), OWN)
        .flatMap(Collection::stream)
        .sorted(Comparator.comparing(String::length).reversed().thenComparing(s -> s))
        .toList();
  }

  /** A number of them, with {@code {0}} for the number itself, such as "{0} millimetres". */
  String frame(String symbol, BigDecimal number) {
    String own = number.compareTo(BigDecimal.ONE) == 0 ? ".one" : ".other";
    Optional<String> name = words.find("unit." + symbol + own);
    if (name.isPresent()) {
      return "{0} " + name.get();
    }
    FormattedNumber shown = formatter.unit(unit(symbol)).format(number.abs());
    String text = shown.toString();
    ConstrainedFieldPosition at = new ConstrainedFieldPosition();
    int from = text.length();
    int to = 0;
    while (shown.nextPosition(at)) {
      if (at.getField() == NumberFormat.Field.INTEGER
          || at.getField() == NumberFormat.Field.FRACTION) {
        from = Math.min(from, at.getStart());
        to = Math.max(to, at.getLimit());
      }
    }
    return text.substring(0, from) + "{0}" + text.substring(to).replace('\u00a0', ' ');
  }

  /** Its name alone for one of it, such as "millimetre". */
  String one(String symbol) {
    return frame(symbol, BigDecimal.ONE).replace("{0}", "").strip();
  }

  /** Its name alone for several of it. */
  String several(String symbol) {
    return frame(symbol, BigDecimal.TEN).replace("{0}", "").strip();
  }

  /** Of its name; empty where names have none. */
  @SuppressWarnings("deprecation") // for its own use, says ICU; nothing else tells CLDR's genders
  String gender(String symbol) {
    if (OWN.contains(symbol)) {
      return words.find("unit." + symbol + ".gender").orElse("");
    }
    return genders.computeIfAbsent(
        symbol, s -> formatter.unit(unit(s)).format(BigDecimal.ONE).getGender());
  }

  private static MeasureUnit unit(String symbol) {
    String identifier = UNITS.get(symbol);
    if (identifier == null) {
      throw new IllegalArgumentException("no name for " + symbol);
    }
    return MeasureUnit.forIdentifier(identifier);
  }
}

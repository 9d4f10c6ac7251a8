package chinelog.audit;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Withheld quantities, looked for in whatever unit they are written.
 *
 * <p>The rule, so that no chance likeness stops a maker: a quantity is looked for only if it is
 * written with at least three digits that count ("412 g" and "11.20 m", not "500 mm"; in a table,
 * or reckoned, four) and no figure that the readers see rounds to the same. It is found where a
 * printed figure is the same to its last digit; in another system of units (mm and in, g and oz)
 * the printed figure must be as fine as one part in a thousand. Hours and plain numbers recur too
 * often to be looked for: what they give away is for the derivability check.
 */
final class FigureNet {

  private static final String DIGITS =
      "\\d{1,3}(?:[ \u00a0\u202f\u2009,.’']\\d{3})+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)?";
  private static final Pattern FIGURE =
      Pattern.compile(
          "(?<![\\p{L}\\d.,/:-])(?<money>[£€$])?\\s?(?<number>"
              + DIGITS
              + ")(?:[\\s\u00a0\u202f\u2009-]{1,2}(?<over>\\d+)[/⁄](?<under>\\d+))?"
              + "[\\s\u00a0\u202f\u2009\f]{0,3}(?<unit>[\\p{L}µ°\"″£€$%]+[²³⁴]?(?:/[\\p{L}]+[²³⁴]?)?)?(?<per>/[\\p{L}]+[²³]?)?");
  private static final Map<String, String> WORDS =
      Map.ofEntries(
          Map.entry("metres", "m"),
          Map.entry("metre", "m"),
          Map.entry("meters", "m"),
          Map.entry("millimetres", "mm"),
          Map.entry("millimeters", "mm"),
          Map.entry("centimetres", "cm"),
          Map.entry("centimeters", "cm"),
          Map.entry("grams", "g"),
          Map.entry("grammes", "g"),
          Map.entry("kilograms", "kg"),
          Map.entry("ounces", "oz"),
          Map.entry("pounds", "lb"),
          Map.entry("£", "GBP"),
          Map.entry("€", "EUR"),
          Map.entry("$", "USD"));
  private static final Set<String> INCHES =
      Set.of(
          "in", "inch", "inches", "\"", "″", "ft", "feet", "foot", "yd", "oz", "lb", "mil", "thou");
  private static final int FINE_ENOUGH = 100;
  private static final int FINE_ABROAD = 1000;

  /** Far more than a double is off by. */
  private static final double NEAR = 1e-9;

  private final List<Withheld> withheld = new ArrayList<>();
  private final Map<Pattern, Sentence> scales = new java.util.LinkedHashMap<>();
  private final Map<String, NavigableMap<Double, List<Withheld>>> byUnit =
      new ConcurrentHashMap<>();

  /**
   * A quantity looked for.
   *
   * @param fineness how fine a printed figure must be to be taken for it
   * @param what it is, for the private report
   */
  private record Withheld(Quantity quantity, boolean imperial, int fineness, Sentence what) {}

  /**
   * A figure as printed somewhere.
   *
   * @param step the value of its last digit, or of its fraction's denominator
   */
  private record Printed(double number, double step, String unit) {
    double fineness() {
      return Math.abs(number) / step;
    }
  }

  /** Looks for {@code quantity}, if it can be told from others. */
  boolean add(Quantity quantity, boolean named, Sentence what) {
    int digits = quantity.value().stripTrailingZeros().precision();
    boolean wholeTens = quantity.value().stripTrailingZeros().scale() < 0;
    // Prices are round, and nothing else is told in money.
    boolean distinct =
        digits >= (named ? 3 : 4) && !wholeTens
            || named && digits >= 3 && quantity.unit().isMoney();
    if (!distinct || isTooCommon(quantity.unit())) {
      return false;
    }
    withheld.add(
        new Withheld(
            quantity,
            INCHES.contains(quantity.unit().symbol()),
            named ? FINE_ENOUGH : FINE_ABROAD,
            what));
    byUnit.clear();
    return true;
  }

  /** Looks for a scale as makers write it: 1:16. */
  void addScale(BigDecimal denominator, Sentence what) {
    String digits = denominator.stripTrailingZeros().toPlainString();
    scales.put(
        Pattern.compile("(?<![\\d:.])1\\s?[:∶]\\s?" + Pattern.quote(digits) + "(?![\\d:])"), what);
  }

  private static boolean isTooCommon(Unit unit) {
    return unit.symbol().isEmpty()
        || unit.symbol().equals("%")
        || unit.isCompatible(Unit.HOUR)
        || unit.symbol().equals("deg");
  }

  int size() {
    return withheld.size() + scales.size();
  }

  /** What is looked for, each quantity with how fine a printed figure must be. */
  Stream<String> pieces() {
    return Stream.concat(
        withheld.stream()
            .map(w -> w.quantity.value() + " " + w.quantity.unit().symbol() + " " + w.fineness),
        scales.keySet().stream().map(Pattern::pattern));
  }

  /** Forgets every quantity that a figure in {@code text} shows, or that {@code shown} equals. */
  void exempt(String text, List<Quantity> shown) {
    scales.keySet().removeIf(scale -> scale.matcher(text).find());
    Set<Withheld> seen = new LinkedHashSet<>();
    printed(text).forEach(p -> seen.addAll(matches(p)));
    for (Quantity q : shown) {
      double value = q.coherent();
      for (Withheld w : withheld) {
        // To compare exactly takes long, and few are even near.
        if (Math.abs(value - w.quantity.coherent()) <= NEAR * Math.abs(value)
            && q.unit().isCompatible(w.quantity.unit())
            && q.compareTo(w.quantity) == 0) {
          seen.add(w);
        }
      }
    }
    withheld.removeAll(seen);
    byUnit.clear();
  }

  /** What is written with its unit in {@code text}, as quantities. */
  static List<Quantity> quantities(String text) {
    List<Quantity> found = new ArrayList<>();
    for (Printed p : printed(text)) {
      try {
        int scale = (int) Math.max(0, Math.ceil(-Math.log10(p.step)));
        BigDecimal value =
            BigDecimal.valueOf(p.number).setScale(scale, java.math.RoundingMode.HALF_UP);
        found.add(Quantity.of(value, Unit.parse(p.unit)));
      } catch (QuantityException e) {
        // A word follows the number, not a unit.
      }
    }
    return found;
  }

  Set<Sentence> find(String text) {
    Set<Sentence> found = new LinkedHashSet<>();
    scales.forEach(
        (scale, what) -> {
          if (scale.matcher(text).find()) {
            found.add(what);
          }
        });
    if (!withheld.isEmpty()) {
      for (Printed p : printed(text)) {
        matches(p).forEach(w -> found.add(w.what));
      }
    }
    return found;
  }

  private List<Withheld> matches(Printed printed) {
    if (printed.fineness() < FINE_ENOUGH) {
      return List.of();
    }
    NavigableMap<Double, List<Withheld>> values =
        byUnit.computeIfAbsent(printed.unit, this::convertTo);
    if (values.isEmpty()) {
      return List.of();
    }
    List<Withheld> found = new ArrayList<>();
    double reach = printed.step / 2 * (1 + 1e-9);
    boolean imperial = INCHES.contains(printed.unit);
    for (List<Withheld> equal :
        values.subMap(printed.number - reach, true, printed.number + reach, true).values()) {
      for (Withheld w : equal) {
        if (printed.fineness() >= (w.imperial == imperial ? w.fineness : FINE_ABROAD)) {
          found.add(w);
        }
      }
    }
    return found;
  }

  private NavigableMap<Double, List<Withheld>> convertTo(String symbol) {
    Unit unit;
    try {
      unit = Unit.parse(symbol);
    } catch (QuantityException e) {
      return new TreeMap<>();
    }
    NavigableMap<Double, List<Withheld>> values = new TreeMap<>();
    for (Withheld w : withheld) {
      Unit own = w.quantity.unit();
      if (unit.isMoney() && own.symbol().startsWith(symbol + "/")) {
        // "£34.75 an hour" names its unit in words.
        put(w.quantity.value().doubleValue(), w, values);
      } else if (own.isCompatible(unit)) {
        try {
          put(w.quantity.doubleIn(unit), w, values);
        } catch (QuantityException e) {
          throw new IllegalStateException("units of one kind", e);
        }
      }
    }
    return values;
  }

  private static void put(
      double value, Withheld withheld, NavigableMap<Double, List<Withheld>> values) {
    values.computeIfAbsent(value, v -> new ArrayList<>()).add(withheld);
  }

  private static List<Printed> printed(String text) {
    List<Printed> found = new ArrayList<>();
    Matcher m = FIGURE.matcher(text);
    while (m.find()) {
      String unit = m.group("money") != null ? m.group("money") : m.group("unit");
      if (unit == null) {
        continue;
      }
      String per = m.group("per") == null ? "" : m.group("per");
      String symbol = WORDS.getOrDefault(unit.toLowerCase(Locale.ROOT), unit) + per;
      String number = m.group("number");
      if (m.group("over") != null) {
        double under = Double.parseDouble(m.group("under"));
        if (under > 0) {
          double value =
              plain(number, '.').doubleValue() + Double.parseDouble(m.group("over")) / under;
          found.add(new Printed(value, 1 / under, symbol));
        }
        continue;
      }
      add(plain(number, '.'), symbol, found);
      if (number.indexOf(',') >= 0 || number.indexOf('.') >= 0) {
        add(plain(number, ','), symbol, found);
      }
    }
    return found;
  }

  private static void add(BigDecimal value, String symbol, List<Printed> found) {
    if (value.signum() != 0) {
      found.add(new Printed(value.doubleValue(), Math.pow(10, -value.scale()), symbol));
    }
  }

  /** The number with {@code point} for its decimal sign and everything else grouping. */
  private static BigDecimal plain(String number, char point) {
    int last = number.lastIndexOf(point);
    StringBuilder digits = new StringBuilder(number.length());
    for (int i = 0; i < number.length(); i++) {
      char c = number.charAt(i);
      if (i == last) {
        digits.append('.');
      } else if (c >= '0' && c <= '9') {
        digits.append(c);
      }
    }
    return new BigDecimal(digits.toString());
  }
}

package chinelog.reckon.formula;

import chinelog.problem.Sentence;
import chinelog.quantity.Gauge;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** The functions of formulas. */
public final class Functions {

  /** Of a figure and a unit: written {@code 1 mi in m}, never called by name. */
  public static final String IN = "in";

  private static final String ONE = "one figure";
  private static final String MANY = "at least one figure";
  private static final String STEPPED = "one figure or two";
  private static final MathContext DOUBLE = new MathContext(16);
  private static final SortedMap<String, Function> ALL = new TreeMap<>();

  /** Those that take a whole column of a table. */
  private static final List<String> OF_COLUMNS =
      List.of("sum", "mean", "min", "max", "count", "spread");

  static {
    many("sum", "them added up", "sum(1 g, 2 g)", Functions::sum);
    many("mean", "their mean", "mean(10 s, 12 s)", Functions::mean);
    many("min", "the least of them", "min(3 mm, 1/8 in)", a -> extreme(a, -1));
    many("max", "the greatest of them", "max(3 mm, 1/8 in)", a -> extreme(a, 1));
    many("count", "how many they are", "count(10 s, 12 s)", a -> Quantity.of(a.size(), Unit.ONE));
    add(
        new Function(
            "spread",
            "at least two figures",
            2,
            Function.ANY,
            "their standard deviation, as a sample: the root of the squares of what each is off"
                + " the mean, over one less than their number",
            "spread(10 s, 12 s)",
            Functions::spread));
    add(
        new Function(
            "nearest",
            "a figure and the sizes to choose from",
            2,
            Function.ANY,
            "the size nearest to the figure; of two, the earlier",
            "nearest(2.6 mm, 2 mm, 3 mm)",
            a -> nearest(a.get(0), a.subList(1, a.size()))));
    one("abs", "the figure without its sign", "abs(2 mm - 3 mm)", a -> a.get(0).abs());
    one("sqrt", "its square root", "sqrt(4 m²)", a -> a.get(0).root());
    rounding("round", "nearest", RoundingMode.HALF_UP);
    rounding("ceil", "next higher", RoundingMode.CEILING);
    rounding("floor", "next lower", RoundingMode.FLOOR);
    angle("sin", "sine", StrictMath::sin);
    angle("cos", "cosine", StrictMath::cos);
    angle("tan", "tangent", StrictMath::tan);
    arc("asin", "sine", StrictMath::asin);
    arc("acos", "cosine", StrictMath::acos);
    arc("atan", "tangent", StrictMath::atan);
    plain("exp", "e to its power", "exp(1)", StrictMath::exp);
    plain("ln", "its natural logarithm", "ln(2)", StrictMath::log);
    Map<Gauge, String> gauges =
        Map.of(
            Gauge.AWG, "diameter of wire of this American gauge",
            Gauge.SWG, "diameter of wire of this British standard gauge",
            Gauge.MSG, "thickness of steel sheet of this manufacturers’ gauge",
            Gauge.GRIT, "median grain of an abrasive of this P number");
    for (Gauge gauge : Gauge.values()) {
      String name = gauge.name().toLowerCase(Locale.ROOT);
      String what = gauges.getOrDefault(gauge, "size of this gauge");
      one(
          name,
          "the " + what,
          name + (gauge == Gauge.GRIT ? "(320)" : "(20)"),
          a -> gauge.size(whole(a.get(0))));
    }
  }

  private Functions() {}

  public static SortedSet<String> names() {
    return new TreeSet<>(ALL.keySet());
  }

  public static List<Function> all() {
    return List.copyOf(ALL.values());
  }

  public static boolean takesColumn(String function) {
    return OF_COLUMNS.contains(function);
  }

  public static void checkCount(String function, int count, int index) throws QuantityException {
    function(function).checkCount(count, index);
  }

  static Quantity apply(String function, List<Quantity> arguments) throws QuantityException {
    return function.equals(IN)
        ? arguments.get(0).in(arguments.get(1).unit())
        : function(function).rule().apply(arguments);
  }

  private static Function function(String name) {
    Function function = ALL.get(name);
    if (function == null) {
      throw new IllegalStateException(name);
    }
    return function;
  }

  private static void add(Function function) {
    ALL.put(function.name(), function);
  }

  private static void one(String name, String yields, String example, Function.Rule rule) {
    add(new Function(name, ONE, 1, 1, yields, example, rule));
  }

  private static void many(String name, String yields, String example, Function.Rule rule) {
    add(new Function(name, MANY, 1, Function.ANY, yields, example, rule));
  }

  private static void rounding(String name, String which, RoundingMode mode) {
    add(
        new Function(
            name,
            STEPPED,
            1,
            2,
            "the " + which + " multiple of the second figure, or whole number of its unit",
            name + "(12.34 mm, 0.5 mm)",
            a ->
                a.get(0)
                    .rounded(a.size() == 2 ? a.get(1) : Quantity.of(1, a.get(0).unit()), mode)));
  }

  private interface Curve {
    double of(double x);
  }

  /** What a double leaves of the cosine of a right angle. */
  private static final double UPRIGHT = 1e-12;

  private static void angle(String name, String called, Curve curve) {
    one(
        name,
        "the " + called + " of an angle",
        name + "(30 deg)",
        a -> {
          Quantity angle = a.get(0);
          if (!angle.unit().isCompatible(Unit.known("rad"))) {
            throw new QuantityException(
                Sentence.of("{0}(…) takes an angle.", name), "Write its unit, such as 12 deg.", 0);
          }
          double radians = angle.doubleIn(Unit.known("rad"));
          if (name.equals("tan") && Math.abs(Math.cos(radians)) < UPRIGHT) {
            throw new QuantityException(
                "The tangent of a right angle has no value.",
                "Look at the figure in its brackets.",
                0);
          }
          return curved(radians, curve, Unit.ONE, name);
        });
  }

  private static void arc(String name, String called, Curve curve) {
    one(
        name,
        "the angle whose " + called + " is the number",
        name + "(0.5)",
        a -> curved(number(a.get(0), name), curve, Unit.known("rad"), name).in(Unit.known("°")));
  }

  private static void plain(String name, String yields, String example, Curve curve) {
    one(name, yields, example, a -> curved(number(a.get(0), name), curve, Unit.ONE, name));
  }

  private static double number(Quantity q, String name) throws QuantityException {
    if (!q.unit().isDimensionless()) {
      throw new QuantityException(
          Sentence.of("{0}(…) takes a plain number.", name),
          "Divide it by a quantity of its own kind.",
          0);
    }
    return q.doubleIn(Unit.ONE);
  }

  private static Quantity curved(double x, Curve curve, Unit unit, String name)
      throws QuantityException {
    double y = curve.of(x);
    if (!Double.isFinite(y)) {
      throw new QuantityException(
          Sentence.of("{0}({1}) has no value.", name, x), "Look at the figure in its brackets.", 0);
    }
    return Quantity.reckoned(BigDecimal.valueOf(y).round(DOUBLE), unit);
  }

  static Quantity sum(List<Quantity> arguments) throws QuantityException {
    Quantity sum = arguments.get(0);
    for (Quantity next : arguments.subList(1, arguments.size())) {
      sum = sum.plus(next);
    }
    return sum;
  }

  private static Quantity mean(List<Quantity> arguments) throws QuantityException {
    return sum(arguments).dividedBy(Quantity.of(arguments.size(), Unit.ONE));
  }

  private static Quantity spread(List<Quantity> arguments) throws QuantityException {
    List<Quantity> squares = new ArrayList<>();
    Quantity mean = mean(arguments);
    for (Quantity each : arguments) {
      Quantity off = each.minus(mean);
      squares.add(off.times(off));
    }
    Quantity root = sum(squares).dividedBy(Quantity.of(arguments.size() - 1, Unit.ONE)).root();
    return Quantity.reckoned(root.value(), root.unit()).in(arguments.get(0).unit().difference());
  }

  private static Quantity extreme(List<Quantity> arguments, int sign) throws QuantityException {
    Quantity best = arguments.get(0);
    for (Quantity next : arguments.subList(1, arguments.size())) {
      BigDecimal same = next.valueIn(best.unit());
      best = same.compareTo(best.value()) * sign > 0 ? next : best;
    }
    return best;
  }

  private static Quantity nearest(Quantity wanted, List<Quantity> sizes) throws QuantityException {
    Quantity best = sizes.get(0);
    for (Quantity size : sizes) {
      boolean nearer = size.minus(wanted).abs().compareTo(best.minus(wanted).abs()) < 0;
      best = nearer ? size : best;
    }
    return best;
  }

  private static int whole(Quantity number) throws QuantityException {
    try {
      return number.valueIn(Unit.ONE).intValueExact();
    } catch (ArithmeticException e) {
      throw new QuantityException("A gauge number is a whole number.", "Write such as swg(20).", 0);
    }
  }
}

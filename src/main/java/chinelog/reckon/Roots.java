package chinelog.reckon;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the tolerance of a fact comes from: how far each written figure that it rests on may move
 * it. A figure that goes in twice, as in {@code a - a} or {@code (a - b) / a}, moves it by the sum
 * of what it does in either place, sign and all: first-order propagation by the derivative, worst
 * case over the figures.
 */
final class Roots {

  private static final int DEEPEST = 200;
  private static final MathContext DIGITS = new MathContext(12);

  private static final double NOISE = 1e-12;

  private final Ledger ledger;
  private final Map<String, Map<String, Double>> known = new HashMap<>();

  Roots(Ledger ledger) {
    this.ledger = ledger;
  }

  /** A formula's value with the tolerance of figures that go in more than once put right. */
  Quantity correlated(Expression tree, Quantity value) {
    if (value.tolerance() == null || Formula.nameParts(tree).size() < 2) {
      return value;
    }
    Map<String, Double> seen = new HashMap<>();
    boolean shared = false;
    for (Expression.Name part : Formula.nameParts(tree)) {
      for (String root : of(part.name(), 0).keySet()) {
        shared |= seen.put(root, 1.0) != null;
      }
    }
    if (!shared) {
      return value;
    }
    double spread = 0;
    for (double moved : moved(tree, 0).values()) {
      spread += Math.abs(moved);
    }
    // What is left of terms that cancel is the noise of computing.
    return withSpread(value, spread < NOISE * Math.abs(value.coherent()) ? 0 : spread);
  }

  private static Quantity withSpread(Quantity value, double coherent) {
    try {
      Unit unit = value.unit().difference();
      double size = Quantity.of(1, unit).coherent();
      return value.withTolerance(
          Quantity.of(BigDecimal.valueOf(coherent / size).round(DIGITS), unit));
    } catch (QuantityException e) {
      throw new IllegalStateException("a unit did not agree with itself", e);
    }
  }

  /** By how much each root moves the fact, in coherent units; the fact itself where it is one. */
  private Map<String, Double> of(String name, int depth) {
    Map<String, Double> found = known.get(name);
    if (found == null) {
      Fact fact = ledger.require(name);
      Expression formula = fact.formula();
      found =
          fact.value().tolerance() == null
              ? Map.of()
              : formula == null || depth > DEEPEST || Formula.nameParts(formula).size() > DEEPEST
                  ? Map.of(name, ownSpread(fact.value()))
                  : moved(formula, depth + 1);
      known.put(name, found);
    }
    return found;
  }

  private static double ownSpread(Quantity q) {
    BigDecimal t = q.tolerance();
    return t == null ? 0 : t.doubleValue() * Quantity.of(1, q.unit().difference()).coherent();
  }

  private Map<String, Double> moved(Expression tree, int depth) {
    Slope slope = tree.accept(new Slopes());
    Map<String, Double> all = new TreeMap<>();
    slope.by.forEach(
        (name, derivative) ->
            of(name, depth).forEach((root, t) -> all.merge(root, derivative * t, Double::sum)));
    slope.literals.forEach((literal, t) -> all.merge(literal, t, Double::sum));
    return all;
  }

  /**
   * A value in coherent units and its derivatives by the names in it.
   *
   * @param literals what the tolerances of figures in the formula itself come to
   */
  private record Slope(double value, Map<String, Double> by, Map<String, Double> literals) {

    static Slope constant(double value) {
      return new Slope(value, Map.of(), Map.of());
    }

    Slope times(double factor, double newValue) {
      Map<String, Double> scaled = new TreeMap<>();
      by.forEach((n, d) -> scaled.put(n, d * factor));
      Map<String, Double> moved = new TreeMap<>();
      literals.forEach((n, d) -> moved.put(n, d * factor));
      return new Slope(newValue, scaled, moved);
    }

    Slope plus(Slope other) {
      Map<String, Double> sum = new TreeMap<>(by);
      other.by.forEach((n, d) -> sum.merge(n, d, Double::sum));
      Map<String, Double> moved = new TreeMap<>(literals);
      other.literals.forEach((n, d) -> moved.merge(n, d, Double::sum));
      return new Slope(value + other.value, sum, moved);
    }
  }

  private final class Slopes implements Expression.Visitor<Slope> {

    private int literals;

    @Override
    public Slope literal(Expression.Literal literal) {
      double spread = ownSpread(literal.value());
      double value = literal.value().coherent();
      // A name no fact can have: each figure written is a root of its own.
      return spread == 0
          ? Slope.constant(value)
          : new Slope(value, Map.of(), Map.of("#" + literals++, spread));
    }

    @Override
    public Slope name(Expression.Name name) {
      return new Slope(
          ledger.require(name.name()).value().coherent(), Map.of(name.name(), 1.0), Map.of());
    }

    @Override
    public Slope negation(Expression.Negation negation) {
      Slope of = negation.of().accept(this);
      return of.times(-1, -of.value);
    }

    @Override
    public Slope binary(Expression.Binary binary) {
      Slope a = binary.left().accept(this);
      Slope b = binary.right().accept(this);
      return switch (binary.operator()) {
        case '+' -> a.plus(b);
        case '-' -> a.plus(b.times(-1, -b.value));
        case '*' -> product(a, b);
        case '/' -> product(a, b.times(-1 / (b.value * b.value), 1 / b.value));
        default -> {
          double power = Math.pow(a.value, b.value);
          yield a.times(b.value * Math.pow(a.value, b.value - 1), power);
        }
      };
    }

    private static Slope product(Slope a, Slope b) {
      Slope sum = a.times(b.value, 0).plus(b.times(a.value, 0));
      return new Slope(a.value * b.value, sum.by, sum.literals);
    }

    @Override
    public Slope call(Expression.Call call) {
      List<Slope> of = call.arguments().stream().map(a -> a.accept(this)).toList();
      Slope first = of.get(0);
      double v = first.value;
      return switch (call.function()) {
        case "sum", "mean" -> {
          Slope sum = of.stream().reduce(Slope.constant(0), Slope::plus);
          double share = call.function().equals("sum") ? 1 : 1.0 / of.size();
          yield sum.times(share, sum.value * share);
        }
        case "min" -> chosen(of, of.stream().mapToDouble(Slope::value).min().orElse(v));
        case "max" -> chosen(of, of.stream().mapToDouble(Slope::value).max().orElse(v));
        case "abs" -> first.times(Math.signum(v), Math.abs(v));
        case "sqrt" -> first.times(v == 0 ? 0 : 0.5 / Math.sqrt(v), Math.sqrt(v));
        case "sin" -> first.times(Math.cos(v), Math.sin(v));
        case "cos" -> first.times(-Math.sin(v), Math.cos(v));
        case "tan" -> first.times(1 + Math.tan(v) * Math.tan(v), Math.tan(v));
        case "asin" -> first.times(1 / Math.sqrt(1 - v * v), Math.asin(v));
        case "acos" -> first.times(-1 / Math.sqrt(1 - v * v), Math.acos(v));
        case "atan" -> first.times(1 / (1 + v * v), Math.atan(v));
        case "exp" -> first.times(Math.exp(v), Math.exp(v));
        case "ln" -> first.times(1 / v, Math.log(v));
        case "spread" -> spread(of);
        case "count" -> Slope.constant(of.size());
        default -> first;
      };
    }

    private static Slope chosen(List<Slope> of, double value) {
      return of.stream().filter(s -> s.value == value).findFirst().orElseThrow();
    }

    private static Slope spread(List<Slope> of) {
      double mean = of.stream().mapToDouble(Slope::value).sum() / of.size();
      double squares = of.stream().mapToDouble(s -> Math.pow(s.value - mean, 2)).sum();
      double spread = Math.sqrt(squares / (of.size() - 1));
      Slope sum = Slope.constant(0);
      for (Slope s : of) {
        sum = sum.plus(s.times(spread == 0 ? 0 : (s.value - mean) / ((of.size() - 1) * spread), 0));
      }
      return new Slope(spread, sum.by, sum.literals);
    }
  }
}

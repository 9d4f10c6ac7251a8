package chinelog.reckon.formula;

import chinelog.quantity.Gauge;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** What the functions of formulas yield. */
final class Functions {

  private static final List<String> OF_MANY = List.of("sum", "min", "max", "mean");

  /** Of a figure and the sizes that can be had: the size nearest to it, the earlier of two. */
  private static final String NEAREST = "nearest";

  private static final List<String> OF_ONE = List.of("abs", "sqrt");

  /** Of a figure and, optionally, the step to which it is rounded; the step is 1 if left out. */
  private static final List<String> ROUNDING = List.of("round", "ceil", "floor");

  private Functions() {}

  static SortedSet<String> names() {
    SortedSet<String> names = new TreeSet<>(OF_MANY);
    names.addAll(OF_ONE);
    names.add(NEAREST);
    names.addAll(ROUNDING);
    for (Gauge gauge : Gauge.values()) {
      names.add(gauge.name().toLowerCase(Locale.ROOT));
    }
    return names;
  }

  static void checkCount(String function, int count, int index) throws QuantityException {
    boolean many = OF_MANY.contains(function);
    int least = function.equals(NEAREST) ? 2 : 1;
    int most =
        many || function.equals(NEAREST) ? Integer.MAX_VALUE : ROUNDING.contains(function) ? 2 : 1;
    if (count < least || count > most) {
      String wanted =
          function.equals(NEAREST)
              ? "a figure and the sizes to choose from"
              : many
                  ? "at least one figure"
                  : ROUNDING.contains(function) ? "one figure or two" : "one figure";
      throw new QuantityException(
          function + "(…) takes " + wanted + ", not " + count + ".",
          "Write " + wanted + " between its brackets.",
          index);
    }
  }

  static Quantity apply(String function, List<Quantity> arguments) throws QuantityException {
    Quantity first = arguments.get(0);
    Optional<Gauge> gauge = Gauge.find(function);
    if (gauge.isPresent()) {
      return gauge.get().size(whole(first));
    }
    return switch (function) {
      case "sum" -> sum(arguments);
      case "mean" -> sum(arguments).dividedBy(Quantity.of(arguments.size(), Unit.ONE));
      case "min" -> extreme(arguments, -1);
      case "max" -> extreme(arguments, 1);
      case NEAREST -> nearest(first, arguments.subList(1, arguments.size()));
      case "abs" -> first.abs();
      case "sqrt" -> first.root();
      case "round" -> first.rounded(step(arguments), RoundingMode.HALF_UP);
      case "ceil" -> first.rounded(step(arguments), RoundingMode.CEILING);
      case "floor" -> first.rounded(step(arguments), RoundingMode.FLOOR);
      default -> throw new IllegalStateException(function);
    };
  }

  private static Quantity step(List<Quantity> arguments) {
    return arguments.size() == 2 ? arguments.get(1) : Quantity.of(1, arguments.get(0).unit());
  }

  static Quantity sum(List<Quantity> arguments) throws QuantityException {
    Quantity sum = arguments.get(0);
    for (Quantity next : arguments.subList(1, arguments.size())) {
      sum = sum.plus(next);
    }
    return sum;
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

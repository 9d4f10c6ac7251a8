package chinelog.reckon.formula;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Reckons a formula's tree, the values of its names being given. */
public final class Evaluator implements Expression.Visitor<Quantity> {

  /** A part of a formula that has no value; carries the part, as the tree knows no places. */
  public static final class Fault extends RuntimeException {
    private final transient Expression part;
    private final QuantityException reason;

    public Fault(Expression part, QuantityException reason) {
      super(reason.getMessage(), reason);
      this.part = part;
      this.reason = reason;
    }

    public Expression part() {
      return part;
    }

    public QuantityException reason() {
      return reason;
    }
  }

  private interface Step {
    Quantity take() throws QuantityException;
  }

  private final Function<String, Quantity> values;

  private Evaluator(Function<String, Quantity> values) {
    this.values = values;
  }

  /**
   * The value of a tree.
   *
   * @param values of all the names in it
   * @throws Fault if there is none, such as for a division by zero
   */
  public static Quantity evaluate(Expression tree, Function<String, Quantity> values) {
    return tree.accept(new Evaluator(values));
  }

  @Override
  public Quantity literal(Expression.Literal literal) {
    return literal.value();
  }

  @Override
  public Quantity name(Expression.Name name) {
    return values.apply(name.name());
  }

  @Override
  public Quantity negation(Expression.Negation negation) {
    return negation.of().accept(this).negated();
  }

  @Override
  public Quantity binary(Expression.Binary binary) {
    Quantity left = binary.left().accept(this);
    Quantity right = binary.right().accept(this);
    return step(
        binary,
        () ->
            switch (binary.operator()) {
              case '+' -> left.plus(right);
              case '-' -> left.minus(right);
              case '*' -> left.times(right);
              case '/' -> left.dividedBy(right);
              case '^' -> power(left, right);
              default -> throw new IllegalStateException(String.valueOf(binary.operator()));
            });
  }

  @Override
  public Quantity call(Expression.Call call) {
    List<Quantity> arguments = new ArrayList<>();
    call.arguments().forEach(a -> arguments.add(a.accept(this)));
    return step(call, () -> Functions.apply(call.function(), arguments));
  }

  private static Quantity power(Quantity base, Quantity exponent) throws QuantityException {
    if (!exponent.unit().isDimensionless()) {
      throw new QuantityException("A power must be a plain number.", "Write it without a unit.", 0);
    }
    BigDecimal n = exponent.valueIn(Unit.ONE).stripTrailingZeros();
    if (n.scale() <= 0 && n.precision() - n.scale() <= 3) {
      return base.power(n.intValueExact());
    }
    if (n.compareTo(new BigDecimal("0.5")) == 0) {
      return base.root();
    }
    if (!base.unit().isDimensionless()) {
      throw new QuantityException(
          Sentence.of("A quantity with a unit has no power of {0}.", n.toPlainString()),
          "Write a whole power, or 0.5 for the square root.",
          0);
    }
    double result = StrictMath.pow(base.doubleIn(Unit.ONE), n.doubleValue());
    if (!Double.isFinite(result)) {
      throw new QuantityException("This power has no value.", "Check base and power.", 0);
    }
    return Quantity.of(BigDecimal.valueOf(result), Unit.ONE);
  }

  private static Quantity step(Expression part, Step step) {
    try {
      return step.take();
    } catch (QuantityException e) {
      throw new Fault(part, e);
    } catch (ArithmeticException e) {
      throw new Fault(
          part,
          new QuantityException(
              String.valueOf(e.getMessage()), "Check the figures and their units.", 0));
    }
  }
}

package chinelog.withhold.derive;

import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Makes a {@link RangedFormula} of an {@link Expression}. */
record FormulaBuilder(Map<String, Integer> indexes, ToDoubleFunction<Quantity> inSi)
    implements Expression.Visitor<RangedFormula> {

  @Override
  public RangedFormula literal(Expression.Literal literal) {
    return new RangedFormula.Constant(inSi.applyAsDouble(literal.value()));
  }

  @Override
  public RangedFormula name(Expression.Name name) {
    Integer index = indexes.get(name.name());
    if (index == null) {
      throw new IllegalArgumentException("no quantity is named " + name.name());
    }
    return new RangedFormula.Variable(index);
  }

  @Override
  public RangedFormula negation(Expression.Negation negation) {
    return new RangedFormula.Sum(List.of(negation.of().accept(this)), new double[] {-1});
  }

  @Override
  public RangedFormula binary(Expression.Binary binary) {
    RangedFormula left = binary.left().accept(this);
    RangedFormula right = binary.right().accept(this);
    return switch (binary.operator()) {
      case '+' -> new RangedFormula.Sum(List.of(left, right), new double[] {1, 1});
      case '-' -> new RangedFormula.Sum(List.of(left, right), new double[] {1, -1});
      case '*' -> new RangedFormula.Product(left, right);
      case '/' -> new RangedFormula.Quotient(left, right);
      case '^' -> power(left, binary.right());
      default -> throw new IllegalArgumentException("no operator is written " + binary.operator());
    };
  }

  private static RangedFormula power(RangedFormula base, Expression exponent) {
    if (exponent instanceof Expression.Literal literal) {
      return new RangedFormula.Power(base, literal.value().value().doubleValue());
    }
    if (exponent instanceof Expression.Negation n && n.of() instanceof Expression.Literal literal) {
      return new RangedFormula.Power(base, -literal.value().value().doubleValue());
    }
    throw new IllegalArgumentException("an exponent must be a number");
  }

  @Override
  public RangedFormula call(Expression.Call call) {
    List<RangedFormula> arguments = new ArrayList<>();
    call.arguments().forEach(a -> arguments.add(a.accept(this)));
    double[] factors = new double[arguments.size()];
    return switch (call.function()) {
      case "sum" -> {
        Arrays.fill(factors, 1);
        yield new RangedFormula.Sum(arguments, factors);
      }
      case "mean" -> {
        Arrays.fill(factors, 1.0 / factors.length);
        yield new RangedFormula.Sum(arguments, factors);
      }
      case "min", "max" -> new RangedFormula.Extreme(arguments, call.function().equals("max"));
      case "sqrt" -> new RangedFormula.Power(arguments.get(0), 0.5);
      case "abs", "round", "ceil", "floor" ->
          new RangedFormula.Step(call.function(), arguments.get(0));
      case "in" -> arguments.get(0);
      case "count" -> new RangedFormula.Constant(arguments.size());
      default -> new Curve(call.function(), arguments);
    };
  }
}

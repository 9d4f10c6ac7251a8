package chinelog.withhold.derive;

import chinelog.reckon.formula.Expression;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/** Formulas in words for the maker: {@code hull.beam 190 mm × scale 16}. */
final class ExpressionWords implements Expression.Visitor<ExpressionWords.Words> {

  private static final int SUM = 1;
  private static final int PRODUCT = 2;
  private static final int ATOM = 3;

  /** More terms than this are counted, not named. */
  private static final int MOST_TERMS = 5;

  private final UnaryOperator<String> named;

  /**
   * @param named how a quantity is written, by its name
   */
  ExpressionWords(UnaryOperator<String> named) {
    this.named = named;
  }

  /**
   * A piece of a formula.
   *
   * @param binding how strongly its parts hold together
   */
  record Words(String text, int binding) {
    String in(int least) {
      return binding < least ? "(" + text + ")" : text;
    }
  }

  static Set<String> names(Expression expression) {
    Set<String> names = new LinkedHashSet<>();
    expression.accept(
        new ExpressionWords(
            name -> {
              names.add(name);
              return name;
            }));
    return names;
  }

  String write(Expression expression) {
    return expression.accept(this).text();
  }

  /** The formula turned round: {@code unknown} in terms of {@code target} and the rest. */
  String solve(String target, Expression formula, String unknown) {
    if (target.equals(unknown)) {
      return write(formula);
    }
    Words words = solve(new Words(named.apply(target), ATOM), formula, unknown);
    return words == null
        ? target + " = " + write(formula) + ", solved for " + unknown
        : words.text();
  }

  private @org.jspecify.annotations.Nullable Words solve(
      Words result, Expression formula, String unknown) {
    if (formula instanceof Expression.Name) {
      return result;
    }
    if (formula instanceof Expression.Negation negation) {
      return solve(new Words("−" + result.in(PRODUCT), PRODUCT), negation.of(), unknown);
    }
    if (formula instanceof Expression.Binary binary) {
      boolean left = names(binary.left()).contains(unknown);
      if (left && names(binary.right()).contains(unknown)) {
        return null;
      }
      Expression part = left ? binary.left() : binary.right();
      Words other = (left ? binary.right() : binary.left()).accept(this);
      Words turned = turned(binary.operator(), left, result, other);
      return turned == null ? null : solve(turned, part, unknown);
    }
    if (formula instanceof Expression.Call call) {
      return solveCall(result, call, unknown);
    }
    return null;
  }

  private static @org.jspecify.annotations.Nullable Words turned(
      char operator, boolean left, Words result, Words other) {
    return switch (operator) {
      case '+' -> sum(result, "−", other);
      case '-' -> left ? sum(result, "+", other) : sum(other, "−", result);
      case '*' -> product(result, "÷", other);
      case '/' -> left ? product(result, "×", other) : product(other, "÷", result);
      case '^' ->
          left ? new Words("the root (" + other.text() + ") of " + result.in(ATOM), SUM) : null;
      default -> null;
    };
  }

  private @org.jspecify.annotations.Nullable Words solveCall(
      Words result, Expression.Call call, String unknown) {
    List<Expression> with =
        call.arguments().stream().filter(a -> names(a).contains(unknown)).toList();
    if (with.size() != 1) {
      return null;
    }
    List<Expression> others = new ArrayList<>(call.arguments());
    others.remove(with.get(0));
    Words left =
        switch (call.function()) {
          case "sum" -> less(result, others);
          case "mean" ->
              less(product(result, "×", new Words("" + call.arguments().size(), ATOM)), others);
          case "sqrt" -> new Words(result.in(ATOM) + "²", ATOM);
          case "round", "ceil", "floor", "abs" ->
              new Words("what " + call.function() + " makes " + result.in(ATOM), SUM);
          default -> null;
        };
    return left == null ? null : solve(left, with.get(0), unknown);
  }

  private Words less(Words result, List<Expression> others) {
    if (others.size() > MOST_TERMS) {
      return new Words(result.in(SUM) + " − the " + others.size() + " others", SUM);
    }
    Words rest = result;
    for (Expression other : others) {
      rest = sum(rest, "−", other.accept(this));
    }
    return rest;
  }

  private static Words sum(Words a, String sign, Words b) {
    return new Words(a.in(SUM) + " " + sign + " " + b.in(sign.equals("−") ? PRODUCT : SUM), SUM);
  }

  private static Words product(Words a, String sign, Words b) {
    return new Words(
        a.in(PRODUCT) + " " + sign + " " + b.in(sign.equals("÷") ? ATOM : PRODUCT), PRODUCT);
  }

  @Override
  public Words literal(Expression.Literal literal) {
    return new Words(literal.value().toString(), ATOM);
  }

  @Override
  public Words name(Expression.Name name) {
    return new Words(named.apply(name.name()), ATOM);
  }

  @Override
  public Words negation(Expression.Negation negation) {
    return new Words("−" + negation.of().accept(this).in(PRODUCT), PRODUCT);
  }

  @Override
  public Words binary(Expression.Binary binary) {
    Words left = binary.left().accept(this);
    Words right = binary.right().accept(this);
    return switch (binary.operator()) {
      case '+' -> sum(left, "+", right);
      case '-' -> sum(left, "−", right);
      case '*' -> product(left, "×", right);
      case '/' -> product(left, "÷", right);
      default -> new Words(left.in(ATOM) + "^" + right.in(ATOM), ATOM);
    };
  }

  @Override
  public Words call(Expression.Call call) {
    List<String> arguments = new ArrayList<>();
    call.arguments().forEach(a -> arguments.add(a.accept(this).text()));
    String all =
        arguments.size() > MOST_TERMS
            ? arguments.get(0) + ", … " + arguments.size() + " in all"
            : String.join(", ", arguments);
    return new Words(call.function() + "(" + all + ")", ATOM);
  }
}

package chinelog.withhold;

import chinelog.reckon.formula.Expression;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.function.UnaryOperator;

/** Finds the facts that a formula names. */
final class Names implements Expression.Visitor<Void> {

  private final Set<String> names = new LinkedHashSet<>();

  private Names() {}

  static Set<String> in(Expression formula) {
    Names found = new Names();
    formula.accept(found);
    return found.names;
  }

  /** The formula with other names in it. */
  static Expression rename(Expression formula, UnaryOperator<String> names) {
    return formula.accept(new Renaming(names));
  }

  @Override
  public Void literal(Expression.Literal literal) {
    return null;
  }

  @Override
  public Void name(Expression.Name name) {
    names.add(name.name());
    return null;
  }

  @Override
  public Void negation(Expression.Negation negation) {
    return negation.of().accept(this);
  }

  @Override
  public Void binary(Expression.Binary binary) {
    binary.left().accept(this);
    return binary.right().accept(this);
  }

  @Override
  public Void call(Expression.Call call) {
    call.arguments().forEach(a -> a.accept(this));
    return null;
  }

  /** Copies a formula with other names in it. */
  static class Renaming implements Expression.Visitor<Expression> {
    private final UnaryOperator<String> names;

    Renaming(UnaryOperator<String> names) {
      this.names = names;
    }

    @Override
    public Expression literal(Expression.Literal literal) {
      return literal;
    }

    @Override
    public Expression name(Expression.Name name) {
      return new Expression.Name(names.apply(name.name()));
    }

    @Override
    public Expression negation(Expression.Negation negation) {
      return new Expression.Negation(negation.of().accept(this));
    }

    @Override
    public Expression binary(Expression.Binary binary) {
      return new Expression.Binary(
          binary.operator(), binary.left().accept(this), binary.right().accept(this));
    }

    @Override
    public Expression call(Expression.Call call) {
      return new Expression.Call(
          call.function(), call.arguments().stream().map(a -> a.accept(this)).toList());
    }
  }
}

package chinelog.reckon.formula;

import chinelog.quantity.Quantity;
import java.util.List;
import java.util.function.UnaryOperator;

/** A formula's tree, such as that of {@code full.loa / scale}. */
public sealed interface Expression {

  <R> R accept(Visitor<R> visitor);

  /** What it is made of, in its order. */
  default List<Expression> parts() {
    return List.of();
  }

  /** The same with its parts changed, such as by other names in them. */
  default Expression withParts(UnaryOperator<Expression> change) {
    return this;
  }

  /**
   * A figure that stands in the formula itself.
   *
   * @param cell of the table that it was taken from, such as {@code tables/parts.csv:4:2}; empty
   *     for one that was typed
   */
  record Literal(Quantity value, String cell) implements Expression {
    public Literal(Quantity value) {
      this(value, "");
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.literal(this);
    }
  }

  /** The fact of that name. */
  record Name(String name) implements Expression {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.name(this);
    }
  }

  record Negation(Expression of) implements Expression {
    @Override
    public List<Expression> parts() {
      return List.of(of);
    }

    @Override
    public Expression withParts(UnaryOperator<Expression> change) {
      return new Negation(change.apply(of));
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.negation(this);
    }
  }

  /**
   * An operation on two.
   *
   * @param operator one of + - * / ^
   */
  record Binary(char operator, Expression left, Expression right) implements Expression {
    @Override
    public List<Expression> parts() {
      return List.of(left, right);
    }

    @Override
    public Expression withParts(UnaryOperator<Expression> change) {
      return new Binary(operator, change.apply(left), change.apply(right));
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.binary(this);
    }
  }

  /** A function, such as {@code sum(mass.hull, mass.mast)}. */
  record Call(String function, List<Expression> arguments) implements Expression {
    @Override
    public List<Expression> parts() {
      return arguments;
    }

    @Override
    public Expression withParts(UnaryOperator<Expression> change) {
      return new Call(function, arguments.stream().map(change).toList());
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.call(this);
    }
  }

  /** One method for each kind, so that the compiler finds a forgotten one. */
  interface Visitor<R> {
    R literal(Literal literal);

    R name(Name name);

    R negation(Negation negation);

    R binary(Binary binary);

    R call(Call call);
  }
}

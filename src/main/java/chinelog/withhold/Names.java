package chinelog.withhold;

import chinelog.reckon.Expression;
import java.util.LinkedHashSet;
import java.util.Set;

/** Finds the facts that a formula names. */
final class Names implements Expression.Visitor<Void> {

  private final Set<String> names = new LinkedHashSet<>();

  private Names() {}

  static Set<String> in(Expression formula) {
    Names found = new Names();
    formula.accept(found);
    return found.names;
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
}

package chinelog.reckon.formula;

import chinelog.quantity.QuantityException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;

/**
 * A formula as written, such as {@code full.loa / scale}, with where each part of it stands.
 *
 * @param index offset of each part of the tree into {@code text}
 */
public record Formula(String text, Expression tree, Map<Expression, Integer> index) {

  public Formula {
    // By identity, as two parts that look alike stand at different places.
    Map<Expression, Integer> copy = new IdentityHashMap<>(index);
    index = Collections.unmodifiableMap(copy);
  }

  public static Formula parse(String text) throws QuantityException {
    return FormulaParser.parse(text);
  }

  public int indexOf(Expression part) {
    return index.getOrDefault(part, 0);
  }

  public List<String> names() {
    return names(tree);
  }

  /** The names in a formula, each once, in its order. */
  public static List<String> names(Expression tree) {
    LinkedHashSet<String> names = new LinkedHashSet<>();
    nameParts(tree).forEach(n -> names.add(n.name()));
    return List.copyOf(names);
  }

  /** The parts of a formula that are names, in its order. */
  public static List<Expression.Name> nameParts(Expression tree) {
    List<Expression.Name> found = new ArrayList<>();
    walk(tree, found, new ArrayList<>());
    return found;
  }

  /** Whether figures stand in a formula besides the facts that it names. */
  public static boolean hasLiterals(Expression tree) {
    List<Expression.Literal> found = new ArrayList<>();
    walk(tree, new ArrayList<>(), found);
    return !found.isEmpty();
  }

  private static void walk(
      Expression tree, List<Expression.Name> found, List<Expression.Literal> literals) {
    tree.accept(
        new Expression.Visitor<Boolean>() {
          @Override
          public Boolean literal(Expression.Literal literal) {
            return literals.add(literal);
          }

          @Override
          public Boolean name(Expression.Name name) {
            return found.add(name);
          }

          @Override
          public Boolean negation(Expression.Negation negation) {
            return negation.of().accept(this);
          }

          @Override
          public Boolean binary(Expression.Binary binary) {
            return binary.left().accept(this) & binary.right().accept(this);
          }

          @Override
          public Boolean call(Expression.Call call) {
            call.arguments().forEach(a -> a.accept(this));
            return true;
          }
        });
  }
}

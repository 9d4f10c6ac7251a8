package chinelog.reckon.formula;

import chinelog.quantity.QuantityException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

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
    return nameParts(tree).stream().map(Expression.Name::name).distinct().toList();
  }

  /** The parts of a formula that are names, in its order. */
  public static List<Expression.Name> nameParts(Expression tree) {
    List<Expression.Name> found = new ArrayList<>();
    gatherNames(tree, found);
    return found;
  }

  /** Whether figures stand in a formula besides the facts that it names. */
  public static boolean hasLiterals(Expression tree) {
    return tree instanceof Expression.Literal
        || tree.parts().stream().anyMatch(Formula::hasLiterals);
  }

  /** A formula with other names in it. */
  public static Expression rename(Expression tree, UnaryOperator<String> names) {
    return tree instanceof Expression.Name name
        ? new Expression.Name(names.apply(name.name()))
        : tree.withParts(part -> rename(part, names));
  }

  private static void gatherNames(Expression tree, List<Expression.Name> found) {
    if (tree instanceof Expression.Name name) {
      found.add(name);
    }
    tree.parts().forEach(part -> gatherNames(part, found));
  }
}

package chinelog.reckon.formula;

import chinelog.quantity.NumberStyle;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Writes a formula's tree with as few brackets as it needs: {@code (a + b) × c}. */
public final class FormulaWriter implements Expression.Visitor<String> {

  private static final Map<Character, String> SIGNS =
      Map.of('+', " + ", '-', " − ", '*', " × ", '/', " ÷ ", '^', "^");

  private final UnaryOperator<String> names;
  private final NumberStyle style;

  private FormulaWriter(UnaryOperator<String> names, NumberStyle style) {
    this.names = names;
    this.style = style;
  }

  /**
   * The formula as text.
   *
   * @param names what to write for the fact of a name
   */
  public static String write(Expression tree, UnaryOperator<String> names, NumberStyle style) {
    return tree.accept(new FormulaWriter(names, style));
  }

  @Override
  public String literal(Expression.Literal literal) {
    return literal.value() == FormulaParser.PI ? "π" : style.show(literal.value());
  }

  @Override
  public String name(Expression.Name name) {
    return names.apply(name.name());
  }

  @Override
  public String negation(Expression.Negation negation) {
    return "−" + bracketed(negation.of(), 3);
  }

  @Override
  public String binary(Expression.Binary binary) {
    int rank = rank(binary.operator());
    boolean ordered = binary.operator() == '-' || binary.operator() == '/';
    boolean power = binary.operator() == '^';
    return bracketed(binary.left(), power ? rank + 1 : rank)
        + SIGNS.get(binary.operator())
        + bracketed(binary.right(), ordered ? rank + 1 : rank);
  }

  @Override
  public String call(Expression.Call call) {
    if (call.function().equals(Functions.IN)) {
      Expression.Literal unit = (Expression.Literal) call.arguments().get(1);
      return bracketed(call.arguments().get(0), 1) + " in " + unit.value().unit();
    }
    List<String> arguments = call.arguments().stream().map(a -> a.accept(this)).toList();
    return call.function().equals("sum")
        ? String.join(" + ", arguments)
        : call.function() + arguments.stream().collect(Collectors.joining(", ", "(", ")"));
  }

  private String bracketed(Expression part, int needed) {
    String text = part.accept(this);
    return rankOf(part) < needed ? "(" + text + ")" : text;
  }

  private static int rankOf(Expression part) {
    if (part instanceof Expression.Binary b) {
      return rank(b.operator());
    }
    if (part instanceof Expression.Negation) {
      return 2;
    }
    if (part instanceof Expression.Literal l && !l.value().unit().symbol().isEmpty()) {
      return 4;
    }
    if (part instanceof Expression.Call c && c.function().equals(Functions.IN)) {
      return 0;
    }
    boolean sum =
        part instanceof Expression.Call c && c.function().equals("sum") && c.arguments().size() > 1;
    return sum ? 1 : 5;
  }

  private static int rank(char operator) {
    return switch (operator) {
      case '+', '-' -> 1;
      case '*', '/' -> 2;
      default -> 4;
    };
  }
}

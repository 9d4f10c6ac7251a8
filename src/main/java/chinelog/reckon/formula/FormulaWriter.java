package chinelog.reckon.formula;

import chinelog.quantity.NumberStyle;
import chinelog.wording.Fragment;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Writes a formula's tree with as few brackets as it needs: {@code (a + b) × c}. */
public final class FormulaWriter implements Expression.Visitor<List<Fragment>> {

  private final Function<String, List<Fragment>> names;
  private final NumberStyle style;

  private FormulaWriter(Function<String, List<Fragment>> names, NumberStyle style) {
    this.names = names;
    this.style = style;
  }

  /**
   * The formula as text.
   *
   * @param names what to write for the fact of a name
   */
  public static String write(Expression tree, UnaryOperator<String> names, NumberStyle style) {
    return fragments(tree, n -> List.of(Fragment.words(names.apply(n))), style).stream()
        .map(Fragment::text)
        .collect(Collectors.joining());
  }

  /**
   * The formula, its figures apart from the signs between them.
   *
   * @param names what to write for the fact of a name
   */
  public static List<Fragment> fragments(
      Expression tree, Function<String, List<Fragment>> names, NumberStyle style) {
    return tree.accept(new FormulaWriter(names, style));
  }

  @Override
  public List<Fragment> literal(Expression.Literal literal) {
    return List.of(
        literal.value() == FormulaParser.PI
            ? Fragment.sign("π")
            : Fragment.figure(style.show(literal.value()), style.unit(literal.value())));
  }

  @Override
  public List<Fragment> name(Expression.Name name) {
    return names.apply(name.name());
  }

  @Override
  public List<Fragment> negation(Expression.Negation negation) {
    return put("−", List.of(bracketed(negation.of(), 3)), "", "");
  }

  @Override
  public List<Fragment> binary(Expression.Binary binary) {
    int rank = rank(binary.operator());
    boolean ordered = binary.operator() == '-' || binary.operator() == '/';
    boolean power = binary.operator() == '^';
    List<List<Fragment>> sides =
        List.of(
            bracketed(binary.left(), power ? rank + 1 : rank),
            bracketed(binary.right(), ordered ? rank + 1 : rank));
    return put("", sides, sign(binary.operator()), "");
  }

  @Override
  public List<Fragment> call(Expression.Call call) {
    if (call.function().equals(Functions.IN)) {
      Expression.Literal unit = (Expression.Literal) call.arguments().get(1);
      List<Fragment> shown = bracketed(call.arguments().get(0), 1);
      return put("", List.of(shown), "", " in " + unit.value().unit());
    }
    List<List<Fragment>> arguments = call.arguments().stream().map(a -> a.accept(this)).toList();
    return call.function().equals("sum")
        ? put("", arguments, " + ", "")
        : put(call.function() + "(", arguments, ", ", ")");
  }

  private List<Fragment> bracketed(Expression part, int needed) {
    List<Fragment> written = part.accept(this);
    return rankOf(part) < needed ? put("(", List.of(written), "", ")") : written;
  }

  /** Parts with signs before, between and behind them. */
  private static List<Fragment> put(
      String before, List<List<Fragment>> parts, String between, String behind) {
    List<Fragment> all = new ArrayList<>();
    all.add(Fragment.sign(before));
    for (List<Fragment> part : parts) {
      if (all.size() > 1) {
        all.add(Fragment.sign(between));
      }
      all.addAll(part);
    }
    all.add(Fragment.sign(behind));
    return all;
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

  private static String sign(char operator) {
    return switch (operator) {
      case '-' -> " − ";
      case '*' -> " × ";
      case '/' -> " ÷ ";
      case '^' -> "^";
      default -> " " + operator + " ";
    };
  }

  private static int rank(char operator) {
    return switch (operator) {
      case '+', '-' -> 1;
      case '*', '/' -> 2;
      default -> 4;
    };
  }
}

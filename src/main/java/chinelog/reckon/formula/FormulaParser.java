package chinelog.reckon.formula;

import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads formulas by recursive descent, one method for each rule:
 *
 * <pre>
 * formula = sum [ "in" unit ]
 * rule    = sum comparison sum
 * sum     = product { ("+" | "-") product }
 * product = signed { ("*" | "/") signed }
 * signed  = ("-" | "+") signed | power
 * power   = primary [ "^" signed ]
 * primary = literal | "pi" | name | function "(" sum { "," sum } ")" | "(" sum ")"
 * </pre>
 */
public final class FormulaParser {

  private static final int DEEPEST = 100;

  /** A unit to tell the whole in; an "in" at the very end is an inch. */
  private static final Pattern IN_UNIT =
      Pattern.compile("(?<what>.*\\S)\\s+in\\s+(?<unit>[\\p{L}°%].*)");

  static final Quantity PI =
      Quantity.reckoned(new BigDecimal("3.14159265358979323846264338327950288"), Unit.ONE);

  private final String text;
  private final List<Token> tokens;
  private final Map<Expression, Integer> index = new IdentityHashMap<>();
  private int at;
  private int depth;

  private FormulaParser(String text) throws QuantityException {
    this.text = text;
    this.tokens = FormulaScanner.scan(text);
  }

  static Formula parse(String text) throws QuantityException {
    Matcher in = IN_UNIT.matcher(text);
    boolean converts = in.matches();
    FormulaParser parser = new FormulaParser(converts ? in.group("what") : text);
    Expression tree = parser.sum();
    parser.end();
    if (converts) {
      tree = parser.converted(tree, in);
    }
    return new Formula(text, tree, parser.index);
  }

  private Expression converted(Expression of, Matcher in) throws QuantityException {
    int at = in.start("unit");
    try {
      Expression unit = new Expression.Literal(Quantity.of(1, Unit.parse(in.group("unit"))));
      index.put(unit, at);
      Expression call = new Expression.Call(Functions.IN, List.of(of, unit));
      index.put(call, in.end("what"));
      return call;
    } catch (QuantityException e) {
      throw new QuantityException(e.what(), e.remedy(), at + e.index());
    }
  }

  /** A limit's rule: two sides and the comparison between them. */
  public record Rule(Formula left, String comparison, Formula right) {}

  public static Rule parseRule(String text) throws QuantityException {
    FormulaParser parser = new FormulaParser(text);
    Expression left = parser.sum();
    Token comparison = parser.next();
    if (comparison.kind() != Token.Kind.COMPARISON) {
      throw new QuantityException(
          "A limit needs a comparison.", "Write such as hull.loa <= 36 in.", comparison.index());
    }
    Expression right = parser.sum();
    parser.end();
    return new Rule(
        new Formula(text, left, parser.index),
        comparison.text(),
        new Formula(text, right, parser.index));
  }

  private Expression sum() throws QuantityException {
    Expression left = product();
    while (peek().is("+") || peek().is("-")) {
      Token operator = next();
      left = placed(new Expression.Binary(operator.text().charAt(0), left, product()), operator);
    }
    return left;
  }

  private Expression product() throws QuantityException {
    Expression left = signed();
    while (peek().is("*") || peek().is("/")) {
      Token operator = next();
      left = placed(new Expression.Binary(operator.text().charAt(0), left, signed()), operator);
    }
    return left;
  }

  private Expression signed() throws QuantityException {
    Token sign = peek();
    if (!sign.is("-") && !sign.is("+")) {
      return power();
    }
    next();
    deeper(sign);
    Expression of = signed();
    depth--;
    return sign.is("-") ? placed(new Expression.Negation(of), sign) : of;
  }

  private Expression power() throws QuantityException {
    Expression base = primary();
    if (!peek().is("^")) {
      return base;
    }
    Token operator = next();
    deeper(operator);
    Expression exponent = signed();
    depth--;
    return placed(new Expression.Binary('^', base, exponent), operator);
  }

  private Expression primary() throws QuantityException {
    Token token = next();
    Quantity literal = token.literal();
    if (literal != null) {
      return placed(new Expression.Literal(literal), token);
    }
    if (token.kind() == Token.Kind.NAME
        && token.text().equals("pi")
        && peek().kind() != Token.Kind.OPEN) {
      return placed(new Expression.Literal(PI), token);
    }
    if (token.kind() == Token.Kind.NAME) {
      return peek().kind() == Token.Kind.OPEN
          ? call(token)
          : placed(new Expression.Name(token.text()), token);
    }
    if (token.kind() != Token.Kind.OPEN) {
      throw unexpected(token);
    }
    deeper(token);
    Expression inner = sum();
    depth--;
    close();
    return inner;
  }

  private Expression call(Token name) throws QuantityException {
    if (!Functions.names().contains(name.text())) {
      throw new QuantityException(
          Sentence.of("\"{0}\" is not a function.", name.text()),
          Suggestion.remedy(name.text(), Functions.names()),
          name.index());
    }
    deeper(name);
    next();
    List<Expression> arguments = new ArrayList<>();
    if (peek().kind() != Token.Kind.CLOSE) {
      arguments.add(sum());
      while (peek().kind() == Token.Kind.COMMA) {
        next();
        arguments.add(sum());
      }
    }
    close();
    depth--;
    boolean column = arguments.size() == 1 && arguments.get(0) instanceof Expression.Name;
    if (!column || !Functions.takesColumn(name.text())) {
      Functions.checkCount(name.text(), arguments.size(), name.index());
    }
    return placed(new Expression.Call(name.text(), List.copyOf(arguments)), name);
  }

  private void close() throws QuantityException {
    Token token = next();
    if (token.kind() != Token.Kind.CLOSE) {
      throw new QuantityException("A bracket is not closed.", "Write \")\".", token.index());
    }
  }

  private void end() throws QuantityException {
    if (peek().kind() != Token.Kind.END) {
      throw unexpected(peek());
    }
  }

  private void deeper(Token token) throws QuantityException {
    if (++depth > DEEPEST) {
      throw new QuantityException(
          "This formula has too many brackets inside each other.",
          "Give parts of it names of their own.",
          token.index());
    }
  }

  private static QuantityException unexpected(Token token) {
    return token.kind() == Token.Kind.END
        ? new QuantityException(
            "The formula ends too early.", "Write a number or a name there.", token.index())
        : new QuantityException(
            Sentence.of("\"{0}\" does not belong here.", token.text()),
            token.text().equalsIgnoreCase("x")
                ? "Write * for times."
                : "Write an operator between two figures, and nothing else.",
            token.index());
  }

  private <E extends Expression> E placed(E part, Token token) {
    index.put(part, token.index());
    return part;
  }

  private Token peek() {
    return tokens.get(at);
  }

  private Token next() {
    Token token = tokens.get(at);
    at = Math.min(at + 1, tokens.size() - 1);
    return token;
  }

  @Override
  public String toString() {
    return text;
  }
}

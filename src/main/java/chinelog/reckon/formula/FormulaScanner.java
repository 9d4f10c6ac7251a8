package chinelog.reckon.formula;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.QuantityScanner;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Divides a formula into its words. */
final class FormulaScanner {

  static final int LONGEST = 4000;

  private static final Pattern NAME =
      Pattern.compile("[\\p{L}_][\\p{L}0-9_]*(?:\\.[\\p{L}0-9_]+)*");
  private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}(?![0-9.])");
  private static final Pattern COMPARISON = Pattern.compile("<=|>=|<|>|==|=|≤|≥");

  private final String text;
  private final List<Token> tokens = new ArrayList<>();

  private FormulaScanner(String text) {
    this.text = text;
  }

  static List<Token> scan(String text) throws QuantityException {
    if (text.length() > LONGEST) {
      throw new QuantityException(
          "This formula is longer than " + LONGEST + " characters.",
          "Give parts of it names of their own.",
          0);
    }
    return new FormulaScanner(text).scan();
  }

  private List<Token> scan() throws QuantityException {
    int at = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      at = Character.isWhitespace(c) || c == '\u00a0' || c == '\u202f' ? at + 1 : word(c, at);
    }
    add(Token.Kind.END, "", text.length());
    return List.copyOf(tokens);
  }

  /** Reads the word at {@code at} and returns where it ends. */
  private int word(char c, int at) throws QuantityException {
    if (c >= '0' && c <= '9' || "½⅓⅔¼¾⅛⅜⅝⅞".indexOf(c) >= 0) {
      return literal(at);
    }
    Matcher name = NAME.matcher(text).region(at, text.length());
    if (name.lookingAt()) {
      add(Token.Kind.NAME, name.group(), at);
      return name.end();
    }
    Matcher comparison = COMPARISON.matcher(text).region(at, text.length());
    if (comparison.lookingAt()) {
      String sign =
          comparison.group().replace("≤", "<=").replace("≥", ">=").replaceAll("^==$", "=");
      add(Token.Kind.COMPARISON, sign, at);
      return comparison.end();
    }
    switch (c) {
      case '(' -> add(Token.Kind.OPEN, "(", at);
      case ')' -> add(Token.Kind.CLOSE, ")", at);
      case ',' -> add(Token.Kind.COMMA, ",", at);
      case '+', '-', '*', '/', '^' -> add(Token.Kind.OPERATOR, String.valueOf(c), at);
      case '×', '·', '⋅' -> add(Token.Kind.OPERATOR, "*", at);
      case '÷' -> add(Token.Kind.OPERATOR, "/", at);
      case '−' -> add(Token.Kind.OPERATOR, "-", at);
      default ->
          throw new QuantityException(
              "\"" + text.substring(at, text.offsetByCodePoints(at, 1)) + "\" has no meaning here.",
              "Write a formula of numbers with units, names, + - * / ^ and brackets.",
              at);
    }
    return at + 1;
  }

  private int literal(int at) throws QuantityException {
    Matcher date = DATE.matcher(text).region(at, text.length());
    if (date.lookingAt()) {
      throw new QuantityException(
          "\"" + date.group() + "\" is a day, not a figure.",
          "Write the day a figure is from under on:, beside is:; put spaces round a minus.",
          at);
    }
    int end = QuantityScanner.end(text, at);
    try {
      Quantity quantity = Quantity.parse(text.substring(at, end));
      tokens.add(new Token(Token.Kind.LITERAL, text.substring(at, end), quantity, at));
    } catch (QuantityException e) {
      throw new QuantityException(e.what(), e.remedy(), at + e.index());
    }
    return end;
  }

  private void add(Token.Kind kind, String word, int at) {
    tokens.add(new Token(kind, word, null, at));
  }
}

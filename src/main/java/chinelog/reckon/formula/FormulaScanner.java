package chinelog.reckon.formula;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.QuantityScanner;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Divides a formula into its words. */
final class FormulaScanner {

  static final int LONGEST = 4000;

  private static final Pattern NAME =
      Pattern.compile("[\\p{L}_][\\p{L}0-9_]*(?:\\.[\\p{L}0-9_]+)*");
  private static final Pattern DATE =
      Pattern.compile(
          "(?:[0-9]{4}-[0-9]{2}-[0-9]{2}|[0-9]{1,2}([./])[0-9]{1,2}\\1[0-9]{4})(?![0-9.])");
  private static final String GROUPED = "[0-9]{1,3}(?:[ .’'\u00a0\u202f\u2009][0-9]{3})+";
  private static final Pattern COMMA_NUMBER =
      Pattern.compile("(" + GROUPED + "|[0-9]+),(?=([0-9]+))");
  private static final Pattern MARKED = Pattern.compile("[0-9]{1,3}(?:[’'][0-9]{3})+(?![0-9])");
  private static final Pattern HYPHENED =
      Pattern.compile("([0-9]+)-([0-9]+[/⁄][0-9]+)(?=\\s*(?:in\\b|inch|\"|″))");

  /** Feet, inches and eighths of an inch. */
  private static final Pattern EIGHTHS =
      Pattern.compile("([0-9]{1,3})-([0-9]|1[01])-([0-7])(?![0-9.,-])");

  private static final Pattern CLOCK = Pattern.compile("[0-9]{1,2}:[0-9]{2}");
  private static final String MONEY = "£€$";
  private static final List<String> CODES = List.of("GBP", "EUR", "USD");

  /** With a stroke, or without one where only the figure before has a unit. */
  private static final Pattern UNEVEN =
      Pattern.compile(
          "\\s*(?<value>[0-9.]*[0-9])\\s*(?<unit>\\p{L}*)\\s*\\+\\s*(?<up>[0-9.]*[0-9])\\s*\\p{L}*\\s*/"
              + "\\s*[-−]\\s*(?<down>[0-9.]*[0-9])\\s*(?<last>\\p{L}*)\\s*");

  private static final Pattern UNEVEN_WITHOUT_STROKE =
      Pattern.compile(
          "\\s*(?<value>[0-9.]*[0-9])\\s*(?<unit>\\p{L}+)\\s*\\+\\s*(?<up>[0-9.]*[0-9])"
              + "\\s*[-−]\\s*(?<down>[0-9.]*[0-9])(?<last>)\\s*");

  private static final Pattern COMPARISON = Pattern.compile("<=|>=|<|>|==|=|≤|≥");

  private final String text;
  private final List<Token> tokens = new ArrayList<>();

  private FormulaScanner(String text) {
    this.text = text;
  }

  static List<Token> scan(String text) throws QuantityException {
    if (text.length() > LONGEST) {
      throw new QuantityException(
          Sentence.of("This formula is longer than {0} characters.", LONGEST),
          "Give parts of it names of their own.",
          0);
    }
    return new FormulaScanner(text).scan();
  }

  private List<Token> scan() throws QuantityException {
    refuseUnevenTolerance();
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
      case ',' -> {
        refuseDecimalComma(at);
        add(Token.Kind.COMMA, ",", at);
      }
      case '+', '-', '*', '/', '^' -> add(Token.Kind.OPERATOR, String.valueOf(c), at);
      case '×', '·', '⋅' -> add(Token.Kind.OPERATOR, "*", at);
      case '÷' -> add(Token.Kind.OPERATOR, "/", at);
      case '−' -> add(Token.Kind.OPERATOR, "-", at);
      case '£', '€', '$' ->
          throw new QuantityException(
              Sentence.of("\"{0}\" has no meaning here.", c),
              Sentence.of(
                  "Write money with its code behind the number, such as 15 {0}.",
                  CODES.get(MONEY.indexOf(c))),
              at);
      default ->
          throw new QuantityException(
              Sentence.of(
                  "\"{0}\" has no meaning here.",
                  text.substring(at, text.offsetByCodePoints(at, 1))),
              "Write a formula of numbers with units, names, + - * / ^ and brackets.",
              at);
    }
    return at + 1;
  }

  /** Between brackets it stands between the figures of a function. */
  private void refuseDecimalComma(int at) throws QuantityException {
    long open = tokens.stream().filter(t -> t.kind() == Token.Kind.OPEN).count();
    long closed = tokens.stream().filter(t -> t.kind() == Token.Kind.CLOSE).count();
    Matcher number = COMMA_NUMBER.matcher(text);
    while (open == closed && number.find()) {
      if (number.start(2) == at + 1) {
        throw new QuantityException(
            "A comma stands in a number.",
            Sentence.of(
                "Write a decimal point, whatever the log's language: {0}.{1}.",
                number.group(1).replaceAll("[^0-9]", ""), number.group(2)),
            at);
      }
    }
  }

  /** Such as 20 mm +0.2/-0.1 mm, whose middle is 20.05 mm and half of whose width is 0.15 mm. */
  private void refuseUnevenTolerance() throws QuantityException {
    Matcher m = UNEVEN.matcher(text);
    if (!m.matches()) {
      m = UNEVEN_WITHOUT_STROKE.matcher(text);
    }
    if (m.matches()) {
      BigDecimal up = new BigDecimal(m.group("up"));
      BigDecimal down = new BigDecimal(m.group("down"));
      BigDecimal two = BigDecimal.valueOf(2);
      String unit = m.group("last").isEmpty() ? m.group("unit") : m.group("last");
      throw new QuantityException(
          "This tolerance is not the same up and down.",
          Sentence.of(
              "Write the middle and half the width: {0}{1} ± {2}{1}.",
              new BigDecimal(m.group("value")).add(up.subtract(down).divide(two)).toPlainString(),
              unit.isEmpty() ? "" : " " + unit,
              up.add(down).divide(two).toPlainString()),
          m.start("up"));
    }
  }

  private int literal(int at) throws QuantityException {
    Matcher date = DATE.matcher(text).region(at, text.length());
    if (date.lookingAt()) {
      throw new QuantityException(
          Sentence.of("\"{0}\" is a day, not a figure.", date.group()),
          "Write the day a figure is from under on:, beside is:; put spaces round a minus or stroke.",
          at);
    }
    refuse(
        MARKED,
        at,
        "\"{0}\" has a mark between its thousands.",
        m -> Sentence.of("Write {0}.", m.group().replaceAll("[^0-9]", "")));
    refuse(
        EIGHTHS,
        at,
        "\"{0}\" is read as feet, inches and eighths in tables of offsets alone.",
        m ->
            Sentence.of(
                "Write {0} ft {1} {2}/8 in; or put spaces round a minus.",
                m.group(1), m.group(2), m.group(3)));
    refuse(
        HYPHENED,
        at,
        "\"{0}\" takes a fraction away.",
        m -> Sentence.of("Write {0} {1}, or spaces round the minus.", m.group(1), m.group(2)));
    refuse(
        CLOCK,
        at,
        "\"{0}\" is a time of day.",
        m -> Sentence.of("Write how long it was, such as 1 h 30 min."));
    int end = QuantityScanner.end(text, at);
    try {
      Quantity quantity = Quantity.parse(text.substring(at, end));
      tokens.add(new Token(Token.Kind.LITERAL, text.substring(at, end), quantity, at));
    } catch (QuantityException e) {
      throw new QuantityException(e.what(), e.remedy(), at + e.index());
    }
    return end;
  }

  private void refuse(Pattern wrong, int at, String what, Function<Matcher, Sentence> remedy)
      throws QuantityException {
    Matcher m = wrong.matcher(text).region(at, text.length());
    if (m.lookingAt()) {
      throw new QuantityException(Sentence.of(what, m.group()), remedy.apply(m), at);
    }
  }

  private void add(Token.Kind kind, String word, int at) {
    tokens.add(new Token(kind, word, null, at));
  }
}

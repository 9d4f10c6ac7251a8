package chinelog.quantity;

import chinelog.problem.Sentence;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads and writes units. Grammar: {@code product = factor { ("·" | "*" | "/") factor }}, {@code
 * factor = "(" product ")" | symbol [ power ] | "1"}.
 */
final class UnitText {

  private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  private static final Pattern POWERED =
      Pattern.compile("(?<base>.+?)(?:\\^?(?<plain>-?[0-9])|(?<raised>⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]))?");

  /** A log has few units, and asks for them again and again. */
  private static final Map<String, Unit> KNOWN = new ConcurrentHashMap<>();

  private static final int MOST_KNOWN = 1000;

  private final String text;
  private int at;

  private UnitText(String text) {
    this.text = text;
  }

  static Unit parse(String text) throws QuantityException {
    if (text.isBlank()) {
      return Unit.ONE;
    }
    Unit known = KNOWN.get(text);
    if (known != null) {
      return known;
    }
    UnitText parser = new UnitText(text);
    Unit unit = parser.product();
    if (parser.at < text.length()) {
      throw parser.wrong(
          Sentence.of("\"{0}\" is left over.", text.substring(parser.at)), "Remove it.");
    }
    if (KNOWN.size() < MOST_KNOWN) {
      KNOWN.put(text, unit);
    }
    return unit;
  }

  private Unit product() throws QuantityException {
    Unit product = factor();
    while (at < text.length() && "·⋅*/".indexOf(text.charAt(at)) >= 0) {
      boolean divide = text.charAt(at++) == '/';
      Unit next = factor();
      product = divide ? product.dividedBy(next) : product.times(next);
    }
    return product;
  }

  private Unit factor() throws QuantityException {
    if (at < text.length() && text.substring(at).stripLeading().startsWith("(")) {
      at = text.indexOf('(', at) + 1;
      Unit inner = product();
      if (at >= text.length() || text.charAt(at) != ')') {
        throw wrong("A bracket is not closed.", "Write \")\".");
      }
      at++;
      skipSpace();
      return inner;
    }
    int start = at;
    while (at < text.length() && "·⋅*/()".indexOf(text.charAt(at)) < 0) {
      at++;
    }
    String word = text.substring(start, at).strip().replaceAll("\\s+", " ");
    if (word.equals("1")) {
      return Unit.ONE;
    }
    Measure exact = UnitTable.find(word);
    if (exact != null) {
      return new Unit(List.of(new Unit.Term(exact, 1)));
    }
    Matcher m = POWERED.matcher(word);
    if (m.matches()) {
      Measure measure = UnitTable.find(m.group("base"));
      int power = power(m);
      if (measure != null && power != 0 && !measure.hasOffset()) {
        return new Unit(List.of(new Unit.Term(measure, power)));
      }
    }
    at = start;
    CharSequence what =
        word.isEmpty() ? "A unit is missing." : Sentence.of("\"{0}\" is not a unit.", word);
    Optional<CharSequence> remedy = UnitTable.findRemedy(word);
    throw remedy.isPresent()
        ? wrong(what, remedy.get())
        : QuantityException.general(
            what,
            "Write a standard symbol, such as mm, in, g, oz, h, g/m², or an ISO 4217 code.",
            at);
  }

  private static int power(Matcher m) {
    if (m.group("plain") != null) {
      return Integer.parseInt(m.group("plain"));
    }
    String raised = m.group("raised");
    if (raised == null) {
      return 1;
    }
    int digit = RAISED.indexOf(raised.charAt(raised.length() - 1));
    return raised.startsWith("⁻") ? -digit : digit;
  }

  private void skipSpace() {
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
  }

  private QuantityException wrong(CharSequence what, CharSequence remedy) {
    return new QuantityException(what, remedy, at);
  }

  /** Numerators, then what they are divided by: {@code kg/m³}, {@code 1/s}, {@code g/(m²·mm)}. */
  static String symbol(List<Unit.Term> terms) {
    StringBuilder above = new StringBuilder();
    StringBuilder below = new StringBuilder();
    int divisors = 0;
    for (Unit.Term term : terms) {
      StringBuilder side = term.power() > 0 ? above : below;
      divisors += term.power() > 0 ? 0 : 1;
      side.append(side.isEmpty() ? "" : "·").append(term.measure().symbol());
      side.append(raised(Math.abs(term.power())));
    }
    if (below.isEmpty()) {
      return above.toString();
    }
    String divisor = divisors > 1 ? "(" + below + ")" : below.toString();
    return (above.isEmpty() ? "1" : above) + "/" + divisor;
  }

  private static String raised(int power) {
    StringBuilder digits = new StringBuilder();
    if (power != 1) {
      Integer.toString(power).chars().forEach(c -> digits.append(RAISED.charAt(c - '0')));
    }
    return digits.toString();
  }
}

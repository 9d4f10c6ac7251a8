package chinelog.quantity;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Finds where a quantity ends inside a longer text, such as a formula. */
public final class QuantityScanner {

  private static final Pattern NUMBER =
      Pattern.compile(
          "[0-9]+ +[0-9]+[/⁄][0-9]+|[0-9]* ?[½⅓⅔¼¾⅛⅜⅝⅞]|(?<slash>[0-9]+[/⁄][0-9]+)(?![0-9.])"
              + "|[0-9]+(?:\\.[0-9]+)?(?:[eE][+-]?[0-9]{1,2}(?![0-9]))?");
  private static final Pattern SPACE = Pattern.compile("[ \\u00a0\\u202f\\u2009]*");
  private static final Pattern LONG_UNIT =
      Pattern.compile(
          "(?:US|imp) (?:survey |fl )?[a-z]+|(?:sq|cu) (?:in|ft|yd|mm|cm|m)\\b|(?:long|short) tons?|(?:board|bd) f[a-z]+");
  private static final String WORD = "(?:Δ?°[CF]|[°%‰\"'′″]|[\\p{L}]+)";
  private static final String POWER = "(?:\\^-?[0-9]|[0-9]|⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹])?";
  private static final Pattern UNIT = Pattern.compile(WORD + POWER);
  private static final Pattern DIVISOR =
      Pattern.compile("[/·⋅](" + WORD + POWER + ")(?![\\p{L}0-9_.(])");
  private static final Pattern SIGN = Pattern.compile("\\s*(?:±|\\+/-)\\s*");

  private final String text;
  private int at;

  private QuantityScanner(String text, int start) {
    this.text = text;
    this.at = start;
  }

  /**
   * The offset just after the quantity that begins at {@code start} with a digit. A unit's {@code
   * /} or {@code ^} is written without spaces; {@code 3/16} is one number only before a unit.
   */
  public static int end(String text, int start) {
    QuantityScanner scanner = new QuantityScanner(text, start);
    scanner.steps();
    Matcher sign = scanner.match(SIGN);
    if (sign != null) {
      scanner.at = sign.end();
      scanner.steps();
    }
    return scanner.at;
  }

  private void steps() {
    boolean more = true;
    while (more) {
      Matcher number = match(NUMBER);
      if (number == null) {
        return;
      }
      int numberEnd = number.end();
      at = numberEnd;
      boolean unit = unit();
      if (!unit && number.group("slash") != null) {
        at = number.start() + number.group().replaceAll("[/⁄].*", "").length();
        return;
      }
      if (!unit) {
        at = numberEnd;
        return;
      }
      Matcher space =
          Pattern.compile(" +(?=[0-9½⅓⅔¼¾⅛⅜⅝⅞])").matcher(text).region(at, text.length());
      more = space.lookingAt();
      at = more ? space.end() : at;
    }
  }

  private boolean unit() {
    Matcher space = match(SPACE);
    int before = at;
    at = space == null ? at : space.end();
    Matcher unit = match(LONG_UNIT);
    if (unit == null) {
      unit = match(UNIT);
    }
    if (unit == null) {
      at = before;
      return false;
    }
    at = unit.end();
    Matcher divisor = match(DIVISOR);
    while (divisor != null && isUnit(divisor.group(1))) {
      at = divisor.end();
      divisor = match(DIVISOR);
    }
    return true;
  }

  private static boolean isUnit(String word) {
    try {
      return !Unit.parse(word).equals(Unit.ONE);
    } catch (QuantityException e) {
      return false;
    }
  }

  private @Nullable Matcher match(Pattern pattern) {
    Matcher m = pattern.matcher(text).region(at, text.length());
    m.useTransparentBounds(true);
    return m.lookingAt() ? m : null;
  }
}

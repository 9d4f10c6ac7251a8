package chinelog.markup;

import java.util.regex.Pattern;

/** Keeps a number, its unit and its tolerance on one line: {@code 700 mm ± 2 mm} does not break. */
public final class NumbersBound {

  private static final String UNITS =
      "mm|cm|m|km|in|ft|yd|nm|g|kg|t|oz|lb|mL|ml|L|l|mm²|cm²|m²|m³|h|min|s|V|A|Ah|mAh|W|N|Pa|Hz|rpm"
          + "|kn|m/s|°C|°F|°|%|£|€|\\$";

  private static final Pattern APART =
      Pattern.compile("(?<=[\\d\u00bc-\u00be\u2150-\u215e]) (?=(?:" + UNITS + ")(?![\\p{L}\\d]))");

  /** Between the whole and the fraction of a number of inches. */
  private static final Pattern WHOLE_APART = Pattern.compile("(?<=\\d) (?=\\d{1,3}[/\u2044]\\d)");

  private static final Pattern TOLERANCE_APART = Pattern.compile(" ±([ \u00a0\u202f]?)(?=\\d)");

  private static final String NO_BREAK = "\u00a0";

  private NumbersBound() {}

  /** The text with its numbers bound to their units. */
  public static String in(String text) {
    if (text.indexOf(' ') < 0) {
      return text;
    }
    String whole = WHOLE_APART.matcher(text).replaceAll(NO_BREAK);
    String bound = APART.matcher(whole).replaceAll(NO_BREAK);
    return TOLERANCE_APART
        .matcher(bound)
        .replaceAll(found -> NO_BREAK + "±" + found.group(1).replace(" ", NO_BREAK));
  }
}

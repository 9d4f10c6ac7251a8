package chinelog.markup;

import java.util.regex.Pattern;

/** Fractions as printers set them: {@code 27 9/16 in} becomes {@code 27 9⁄16 in}. */
final class Fractions {

  /** Halves to 128ths, as inches are divided: no date, and no ratio such as 60/40. */
  private static final Pattern WRITTEN =
      Pattern.compile(
          "(?<![\\d./,])(?:(\\d{1,4})[ \\u00a0\\u202f])?(\\d{1,3})/(2|4|8|16|32|64|128)(?![\\d/]|[.,]\\d)");

  private static final char FRACTION_SLASH = '\u2044';
  private static final char NARROW_SPACE = '\u202f';

  private Fractions() {}

  /** The text with its fractions set; what is no proper fraction stays as it is. */
  static String set(String text) {
    if (text.indexOf('/') < 0) {
      return text;
    }
    return WRITTEN
        .matcher(text)
        .replaceAll(
            found -> {
              boolean isProper =
                  Integer.parseInt(found.group(2)) < Integer.parseInt(found.group(3));
              String whole = found.group(1) == null ? "" : found.group(1) + NARROW_SPACE;
              return isProper
                  ? whole + found.group(2) + FRACTION_SLASH + found.group(3)
                  : found.group();
            });
  }
}

package chinelog.markup;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A column of numbers that stand below each other by their decimal sign: the unit goes into the
 * head, and blanks as wide as a digit fill up what a number is shorter than others behind its
 * decimal sign. Without a unit that all share, the numbers are left as they are.
 *
 * @param unit for the head; empty if they have none, or not the same
 * @param cells the numbers, each with its tolerance
 */
public record AlignedNumbers(String unit, List<String> cells) {

  /** In place of the unit of what is no number. */
  private static final String NO_NUMBER = "?";

  private static final String DIGIT_WIDE = "\u2007";
  private static final String SIGN_WIDE = "\u00a0";
  private static final String BETWEEN = "\u00a0±\u00a0";
  private static final String NONE_BETWEEN = SIGN_WIDE + DIGIT_WIDE + SIGN_WIDE;

  private static final String BLANK = "[ \u00a0\u202f]?";

  /** A number, and its unit, in letters or by a sign of its own. */
  private static final Pattern NUMBER =
      Pattern.compile(
          "([\u2212-]?[0-9](?:[0-9.,\u2019]|[ \u00a0\u202f](?=[0-9]))*)"
              + "(?:"
              + BLANK
              + "([^0-9\u2044\\s\u00a0\u202f][^\\s\u00a0\u202f]*))?");

  /**
   * Aligns numbers as shown; an empty one stays so.
   *
   * @param tolerances such as {@code ± 2 mm}, or empty, for each of them
   * @param decimal the sign between whole numbers and decimals
   */
  public static AlignedNumbers of(List<String> values, List<String> tolerances, char decimal) {
    List<String> numbers = new ArrayList<>();
    List<String> errors = new ArrayList<>();
    List<String> units = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String tolerance = tolerances.get(i).replaceFirst("^±" + BLANK, "");
      numbers.add(number(values.get(i), units));
      errors.add(number(tolerance, units));
    }
    if (units.stream().distinct().count() > 1 || units.contains(NO_NUMBER)) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < values.size(); i++) {
        cells.add((values.get(i) + " " + tolerances.get(i)).strip());
      }
      return new AlignedNumbers("", List.copyOf(cells));
    }
    filled(numbers, decimal);
    filled(errors, decimal);
    int most = errors.stream().mapToInt(String::length).max().orElse(0);
    errors.replaceAll(e -> e.isEmpty() ? e : DIGIT_WIDE.repeat(most - e.length()) + e);
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String error = errors.get(i);
      String tolerance =
          error.isEmpty() ? (most == 0 ? "" : NONE_BETWEEN + blank(errors)) : BETWEEN + error;
      cells.add(values.get(i).isEmpty() ? "" : numbers.get(i) + tolerance);
    }
    return new AlignedNumbers(units.isEmpty() ? "" : units.get(0), List.copyOf(cells));
  }

  /** Aligns numbers as shown that are told without tolerances. */
  static AlignedNumbers of(List<String> values, char decimal) {
    return of(values, values.stream().map(v -> "").toList(), decimal);
  }

  private static String number(String shown, List<String> units) {
    if (shown.isEmpty()) {
      return "";
    }
    Matcher number = NUMBER.matcher(shown);
    boolean isNumber = number.matches();
    String unit = isNumber && number.group(2) != null ? number.group(2) : "";
    units.add(isNumber ? unit : NO_NUMBER);
    return isNumber ? number.group(1) : shown;
  }

  /** Fills up behind the decimal sign, for right-aligned cells. */
  private static void filled(List<String> numbers, char decimal) {
    int most = numbers.stream().mapToInt(n -> decimals(n, decimal)).max().orElse(0);
    numbers.replaceAll(
        number -> {
          int own = decimals(number, decimal);
          return number.isEmpty() || own == most
              ? number
              : number + (own == 0 ? SIGN_WIDE : "") + DIGIT_WIDE.repeat(most - own);
        });
  }

  /** As wide as any of them, which are as wide as each other. */
  private static String blank(List<String> errors) {
    String any = errors.stream().filter(e -> !e.isEmpty()).findFirst().orElse("");
    return any.replaceAll("[^.,]", DIGIT_WIDE).replaceAll("[.,]", SIGN_WIDE);
  }

  /** How many digits stand behind the decimal sign. */
  private static int decimals(String number, char decimal) {
    int at = number.lastIndexOf(decimal);
    return at < 0 ? 0 : number.length() - at - 1;
  }
}

package chinelog.talk;

import chinelog.wording.Catalogue;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Set;

/**
 * Fractions in words, alone and of a unit, such as "three sixteenths of an inch" or "deux pouces et
 * demi". The names of the parts are the ordinals of CLDR where the language makes them so, and
 * stand in the table of words where it does not; how they are put together is from grammar, no one
 * source.
 */
record FractionWords(Numerals numerals, UnitNames units, Catalogue words) {

  private static final Set<Integer> KNOWN =
      Set.of(2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 32, 64, 100, 128, 1000);

  /**
   * A fraction.
   *
   * @param whole before it, or 0
   * @param over from 1
   * @param under more than {@code over}
   */
  record Fraction(int whole, int over, int under) {
    boolean isKnown() {
      return over > 0 && over < under && KNOWN.contains(under);
    }
  }

  /** By itself, such as "one and three sixteenths". */
  String plain(Fraction f) {
    String parts = parts(f);
    return f.whole == 0
        ? parts
        : words.text("fraction.mixed", numerals.plain(BigDecimal.valueOf(f.whole)), parts);
  }

  /** Of a unit, such as "one and three sixteenths inches". */
  String of(Fraction f, String symbol) {
    String gender = units.gender(symbol);
    String one = units.one(symbol);
    String several = units.several(symbol);
    String parts = parts(f);
    boolean half = f.over == 1 && f.under == 2;
    String whole = numerals.counting(BigDecimal.valueOf(f.whole), gender);
    if (f.whole == 0) {
      return switch (words.language()) {
        case "en" -> half ? "half " + article(one) : parts + " of " + article(one);
        case "de" ->
            half
                ? half(gender, "ein halber ", "eine halbe ", "ein halbes ") + one
                : parts + " " + several;
        case "nl" ->
            half ? half(gender, "een halve ", "een halve ", "een half ") + one : parts + " " + one;
        case "fr" -> half ? half(gender, "un demi-", "une demi-", "") + one : parts + " de " + one;
        default -> half ? half(gender, "medio ", "media ", "") + one : parts + " de " + one;
      };
    }
    return switch (words.language()) {
      case "en" -> whole + " and " + (half ? "a half" : parts) + " " + several;
      case "de" ->
          half
              ? numerals.counting(BigDecimal.valueOf(f.whole), "masculine") + "einhalb " + several
              : words.text("fraction.mixed", whole, parts) + " " + several;
      case "nl" -> words.text("fraction.mixed", whole, half ? "een halve" : parts) + " " + one;
      case "fr" ->
          whole
              + " "
              + (f.whole == 1 ? one : several)
              + (half ? half(gender, " et demi", " et demie", "") : " " + parts);
      default ->
          whole
              + " "
              + (f.whole == 1 ? one : several)
              + (half ? half(gender, " y medio", " y media", "") : " y " + parts);
    };
  }

  private static String half(String gender, String masculine, String feminine, String neuter) {
    return switch (gender) {
      case "feminine" -> feminine;
      case "neuter" -> neuter;
      default -> masculine;
    };
  }

  private static String article(String one) {
    return (one.matches("(?i)([aeiou]|hour).*") ? "an " : "a ") + one;
  }

  /** Such as "three sixteenths". */
  private String parts(Fraction f) {
    String gender =
        words
            .find("fraction." + f.under + ".gender")
            .orElse(words.language().equals("de") ? "neuter" : "masculine");
    String number = numerals.counting(BigDecimal.valueOf(f.over), gender);
    String form = f.over == 1 ? ".one" : ".other";
    return number + " " + words.find("fraction." + f.under + form).orElseGet(() -> part(f));
  }

  private String part(Fraction f) {
    boolean many = f.over > 1;
    return switch (words.language()) {
      case "en" -> numerals.ordinal(f.under, "") + (many ? "s" : "");
      case "de" -> capital(numerals.ordinal(f.under, "")) + "l";
      case "nl" -> numerals.ordinal(f.under, "");
      case "fr" -> numerals.ordinal(f.under, many ? "-masculine-plural" : "-masculine");
      default -> numerals.ordinal(f.under, many ? "-masculine-plural" : "-masculine");
    };
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }
}

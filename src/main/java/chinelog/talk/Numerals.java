package chinelog.talk;

import com.ibm.icu.text.RuleBasedNumberFormat;
import com.ibm.icu.util.ULocale;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;

/**
 * Numbers in words, such as "eleven point two", by the rules for spelling of a language (Unicode
 * CLDR, rule-based number formats).
 */
final class Numerals {

  private static final String SOFT_HYPHEN = "\u00ad";

  /** More than this nobody says in words. */
  private static final BigDecimal MOST = BigDecimal.valueOf(999_999_999);

  private final RuleBasedNumberFormat rules;
  private final List<String> names;
  private final String verbose;

  Numerals(Locale locale) {
    this.rules =
        new RuleBasedNumberFormat(ULocale.forLocale(locale), RuleBasedNumberFormat.SPELLOUT);
    this.names = List.of(rules.getRuleSetNames());
    // "One hundred and five"; "one hundred five" in the United States.
    this.verbose =
        locale.getLanguage().equals("en") && !locale.getCountry().equals("US") ? "-verbose" : "";
  }

  /** By itself, as in counting: eins, not ein. */
  String plain(BigDecimal number) {
    return spell(number, "%spellout-numbering" + verbose);
  }

  /**
   * Before the name of what is counted.
   *
   * @param gender of that name, such as {@code feminine}; empty where names have none
   */
  String counting(BigDecimal number, String gender) {
    boolean whole = number.stripTrailingZeros().scale() <= 0;
    String gendered = "%spellout-cardinal-" + (gender.equals("neuter") ? "neuter" : gender);
    if (whole && names.contains(gendered)) {
      return spell(number, gendered);
    }
    if (whole && names.contains("%spellout-cardinal-masculine")) {
      return spell(number, "%spellout-cardinal-masculine");
    }
    return plain(number);
  }

  String year(int year) {
    return clean(rules.format((long) year, "%spellout-numbering-year"));
  }

  /**
   * Such as "fourteenth".
   *
   * @param kind what the language calls its form, such as {@code -n}; may be empty
   */
  String ordinal(long number, String kind) {
    return clean(rules.format(number, "%spellout-ordinal" + kind));
  }

  private String spell(BigDecimal number, String set) {
    BigDecimal plain = number.stripTrailingZeros();
    if (plain.abs().compareTo(MOST) > 0) {
      return number.toPlainString();
    }
    String spelled =
        plain.scale() <= 0
            ? rules.format(plain.longValueExact(), set)
            : rules.format(plain.doubleValue(), set);
    return clean(spelled);
  }

  private static String clean(String spelled) {
    return spelled.replace(SOFT_HYPHEN, "");
  }
}

package chinelog.talk;

import chinelog.talk.FractionWords.Fraction;
import chinelog.wording.Catalogue;
import java.math.BigDecimal;
import java.text.DecimalFormatSymbols;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What is written, as it is said: figures, units, fractions, dates and what is written short in
 * words, such as "seven hundred millimetres" for {@code 700 mm}. In a language whose words are not
 * known here, all stays as it is written.
 */
final class Speech {

  private static final String GAP = "[ \u00a0\u202f\u2009]";
  private static final String NARROW = "[\u00a0\u202f\u2009]";
  private static final String NO_LETTER = "(?![\\p{L}\\d²³])";
  private static final String VULGAR = "½1/2¼1/4¾3/4⅛1/8⅜3/8⅝5/8⅞7/8⅓1/3⅔2/3";

  private final Locale locale;
  private final Catalogue words;
  private final boolean isKnown;
  private final Numerals numerals;
  private final UnitNames units;
  private final FractionWords fractions;
  private final Abbreviations abbreviations;
  private final char point;
  private final String number;
  private final List<Rule> rules = new ArrayList<>();

  /** What looks like this is said like that; all that comes out is without digits. */
  private record Rule(Pattern pattern, Function<MatchResult, String> said) {}

  Speech(Locale locale) {
    this.locale = locale;
    this.words = Catalogue.of("chinelog.talk.words", locale);
    this.isKnown = words.language().equals(locale.getLanguage());
    this.numerals = new Numerals(locale);
    this.units = new UnitNames(locale, words);
    this.fractions = new FractionWords(numerals, units, words);
    this.abbreviations = new Abbreviations(words.text("abbreviations"));
    this.point = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
    String group = point == ',' ? "[.  \u202f]" : "[,  \u202f]";
    this.number =
        "\\d{1,3}(?:" + group + "\\d{3})+(?!\\d)(?:[" + point + "]\\d+)?|\\d+(?:[.,]\\d+)?";
    if (isKnown) {
      dates();
      scale();
      money();
      quantities();
      times();
      signs();
    }
  }

  Catalogue words() {
    return words;
  }

  Abbreviations abbreviations() {
    return abbreviations;
  }

  String say(String written) {
    if (!isKnown) {
      return written;
    }
    String text = withPlainFractions(written.replace('\u2212', '-'));
    text = abbreviations.open(text);
    for (Rule rule : rules) {
      text =
          rule.pattern.matcher(text).replaceAll(m -> Matcher.quoteReplacement(rule.said.apply(m)));
    }
    return text.replaceAll("[\u00a0\u202f\u2009]", " ").replaceAll(" {2,}", " ").strip();
  }

  private static String withPlainFractions(String text) {
    String plain = text.replace('\u2044', '/');
    for (int i = 0; i < VULGAR.length(); i += 4) {
      plain = plain.replaceAll("(?<=\\d)" + VULGAR.charAt(i), " " + VULGAR.substring(i + 1, i + 4));
      plain = plain.replace(VULGAR.substring(i, i + 1), VULGAR.substring(i + 1, i + 4));
    }
    return plain;
  }

  private void rule(String pattern, Function<MatchResult, String> said) {
    rules.add(new Rule(Pattern.compile(pattern, Pattern.UNICODE_CASE), said));
  }

  private BigDecimal value(String written) {
    boolean grouped = written.matches("\\d{1,3}(?:[.,  \u202f]\\d{3})+.*");
    char own = point;
    int sign = written.lastIndexOf(own);
    if (sign < 0 && !(grouped && written.indexOf(own == ',' ? '.' : ',') > 0)) {
      sign = Math.max(written.lastIndexOf('.'), written.lastIndexOf(','));
    }
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < written.length(); i++) {
      char c = written.charAt(i);
      if (i == sign) {
        plain.append('.');
      } else if (c >= '0' && c <= '9') {
        plain.append(c);
      }
    }
    return new BigDecimal(plain.toString());
  }

  // Dates

  private void dates() {
    rule(
        "(?<![\\d-])([12]\\d{3})-(\\d\\d)-(\\d\\d)(?![\\d-])",
        m ->
            date(
                m.group(),
                Integer.parseInt(m.group(3)),
                Integer.parseInt(m.group(2)),
                Integer.parseInt(m.group(1)),
                ""));
    List<String> months = new ArrayList<>();
    for (Month month : Month.values()) {
      months.add(month.getDisplayName(TextStyle.FULL, locale));
    }
    String before = locale.getLanguage().equals("de") ? "(\\b(?:am|vom|dem|zum|den|bis) )?" : "()";
    rule(
        before
            + "(?<!\\d)(\\d{1,2})(?:\\.|er|st|nd|rd|th)?"
            + GAP
            + "(?:de )?("
            + String.join("|", months)
            + ")(?:(?: de)?"
            + GAP
            + "([12]\\d{3}))?(?!\\d)",
        m ->
            date(
                m.group(),
                Integer.parseInt(m.group(2)),
                months.indexOf(m.group(3)) + 1,
                m.group(4) == null ? 0 : Integer.parseInt(m.group(4)),
                m.group(1) == null ? "" : m.group(1)));
  }

  private String date(String written, int day, int month, int year, String before) {
    try {
      LocalDate.of(year == 0 ? 2000 : year, month, day);
    } catch (DateTimeException e) {
      return written;
    }
    String name = Month.of(month).getDisplayName(TextStyle.FULL, locale);
    String number =
        switch (locale.getLanguage()) {
          case "en" -> numerals.ordinal(day, "");
          case "de" -> numerals.ordinal(day, before.isEmpty() ? "-r" : "-n");
          case "fr" ->
              day == 1
                  ? numerals.ordinal(1, "-masculine")
                  : numerals.plain(BigDecimal.valueOf(day));
          default -> numerals.plain(BigDecimal.valueOf(day));
        };
    return before
        + (year == 0
            ? words.text("date.day", number, name)
            : words.text("date", number, name, numerals.year(year)));
  }

  private void scale() {
    rule(
        "(?<![\\d:.,])1" + GAP + "?[:∶]" + GAP + "?(\\d{1,4}(?:[.,]\\d+)?)(?![\\d:])",
        m -> words.text("scale", numerals.plain(value(m.group(1)))));
  }

  // Money

  private void money() {
    String per = "(?:/(" + quoted(List.of("h", "m", "kg", "L", "m²")) + ")" + NO_LETTER + ")?";
    String amount = "(" + number + ")";
    rule(
        "([£€$])" + GAP + "?" + amount + per,
        m -> money(m.group(1), value(m.group(2)), m.group(3)));
    rule(
        "(?<![\\d.,])" + amount + GAP + "?([£€$]|GBP|EUR|USD)(?!\\p{L})" + per,
        m -> money(m.group(2), value(m.group(1)), m.group(3)));
  }

  private String money(String sign, BigDecimal amount, @Nullable String per) {
    String code =
        switch (sign) {
          case "£" -> "GBP";
          case "€" -> "EUR";
          case "$" -> "USD";
          default -> sign;
        };
    String gender = words.find("money." + code + ".gender").orElse("masculine");
    BigDecimal whole = new BigDecimal(amount.toBigInteger());
    BigDecimal rest = amount.subtract(whole).movePointRight(2);
    String name = words.text("money." + code + (whole.equals(BigDecimal.ONE) ? ".one" : ".other"));
    String counted = numerals.counting(whole, gender);
    String said =
        rest.signum() == 0
            ? counted + " " + name
            : rest.stripTrailingZeros().scale() > 0
                ? numerals.plain(amount) + " " + name
                : words.text("money.parts", counted, name, numerals.plain(rest));
    return per == null ? said : words.text("per", said, units.one(per));
  }

  // Quantities

  private void quantities() {
    String wide = "(?:" + GAP + "?(" + quoted(UnitNames.symbols()) + ")" + NO_LETTER + ")";
    String fraction = "(?:(\\d+)[ \u00a0\u202f-])?(?<![\\d.,/])(\\d{1,3})/(\\d{1,4})";
    rule("(?<![\\d.,/])" + fraction + "(?![\\d/])" + wide + "?", m -> fraction(m));
    // A length in inches stands close to its unit, or "700 in April" would be one.
    String inch =
        "|"
            + NARROW
            + "(in)"
            + NO_LETTER
            + "| (in)(?=[.,;:)]|$| (?:wide|long|high|thick|deep|tall|apart|off|by)\\b)";
    String others = quoted(UnitNames.symbols().stream().filter(s -> !s.equals("in")).toList());
    String unit = "(?:" + GAP + "?(" + others + ")" + NO_LETTER + inch + ")";
    String amount = "(" + number + ")";
    String start = "(?<![\\d.,/\\p{L}_])";
    rule(
        start + amount + GAP + "?[×x]" + GAP + "?" + amount + "(?:" + GAP + "?[×x]" + GAP + "?"
            + amount + ")?" + unit + "?",
        this::dimensions);
    rule(
        start + "(-?)" + amount + GAP + "?(?:–|\\.\\.\\.|…)" + GAP + "?" + amount + unit,
        this::range);
    rule("([±])" + GAP + "?" + amount + unit + "?", m -> words.text("plusminus", counted(m, 2)));
    rule(start + "(?<!\\p{L}|\\d)(-?)" + amount + unit, m -> signed(m.group(1), counted(m, 2)));
  }

  private static String quoted(List<String> words) {
    return words.stream().map(Pattern::quote).collect(Collectors.joining("|"));
  }

  private static String unit(MatchResult m, int from) {
    for (int i = from; i < from + 3 && i <= m.groupCount(); i++) {
      if (m.group(i) != null) {
        return m.group(i);
      }
    }
    return "";
  }

  /** The number in a group with the unit in one of those after it. */
  private String counted(MatchResult m, int group) {
    return counted(m.group(group), unit(m, group + 1));
  }

  private String counted(String written, String symbol) {
    BigDecimal value = value(written);
    if (symbol.isEmpty()) {
      return numerals.plain(value);
    }
    boolean thousandths =
        symbol.equals("in") && value.scale() == 3 && value.compareTo(BigDecimal.ONE) < 0;
    if (thousandths) {
      return fractions.of(new Fraction(0, value.movePointRight(3).intValue(), 1000), symbol);
    }
    return units
        .frame(symbol, value)
        .replace("{0}", numerals.counting(value, units.gender(symbol)));
  }

  private String signed(String sign, String said) {
    return sign.isEmpty() ? said : words.text("minus", said);
  }

  private String range(MatchResult m) {
    return signed(
        m.group(1), words.text("range", numerals.plain(value(m.group(2))), counted(m, 3)));
  }

  private String dimensions(MatchResult m) {
    boolean three = m.group(3) != null;
    String last = counted(m.group(three ? 3 : 2), unit(m, 4));
    String first = numerals.plain(value(m.group(1)));
    return three
        ? words.text("by", words.text("by", first, numerals.plain(value(m.group(2)))), last)
        : words.text("by", first, last);
  }

  private String fraction(MatchResult m) {
    int whole = m.group(1) == null ? 0 : Integer.parseInt(m.group(1));
    Fraction f = new Fraction(whole, Integer.parseInt(m.group(2)), Integer.parseInt(m.group(3)));
    String symbol = unit(m, 4);
    if (!f.isKnown()) {
      return m.group();
    }
    return symbol.isEmpty() ? fractions.plain(f) : fractions.of(f, symbol);
  }

  // The rest

  private void times() {
    String time = "([01]?\\d|2[0-3]):([0-5]\\d)(?![\\d:])";
    rule(
        "(?<![\\d:])" + time + GAP + "?[-–]" + GAP + "?" + time,
        m ->
            words.text(
                "range",
                time(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2))),
                time(Integer.parseInt(m.group(3)), Integer.parseInt(m.group(4)))));
    rule(
        "(?<![\\d:])" + time,
        m -> time(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2))));
    rule("(?<![\\d.,/:\\p{L}_-])(" + number + ")(?![\\d/]|[.,:]\\d|-\\d|_|\\p{L})", this::number);
  }

  private String time(int hour, int minute) {
    String gender = locale.getLanguage().matches("fr|es") ? "feminine" : "masculine";
    String h = numerals.counting(BigDecimal.valueOf(hour), gender);
    if (minute == 0) {
      return words.text(hour > 12 ? "time.late" : "time.full", h);
    }
    String key = minute < 10 ? "time.few" : "time.minutes";
    return words.text(key, h, numerals.plain(BigDecimal.valueOf(minute)));
  }

  /** What follows may be of any gender: who reads aloud knows, and finds the figure. */
  private String number(MatchResult m) {
    BigDecimal value = value(m.group(1));
    boolean whole = value.scale() <= 0;
    int last = whole ? value.remainder(BigDecimal.valueOf(100)).intValue() : 0;
    boolean gendered =
        switch (locale.getLanguage()) {
          case "de" -> value.compareTo(BigDecimal.ONE) == 0;
          case "fr" -> whole && last % 10 == 1 && last != 11 && last != 71 && last != 91;
          case "es" ->
              whole
                  && (last % 10 == 1 && last != 11
                      || value.compareTo(BigDecimal.valueOf(200)) >= 0
                          && value.intValue() % 1000 >= 200);
          default -> false;
        };
    return gendered ? m.group() : numerals.plain(value);
  }

  private void signs() {
    rule("[≈~]" + GAP + "?(?=\\p{L})", m -> words.text("approximately", ""));
    rule("≤" + GAP + "?", m -> words.text("atmost", ""));
    rule("≥" + GAP + "?", m -> words.text("atleast", ""));
  }
}

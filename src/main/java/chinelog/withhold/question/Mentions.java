package chinelog.withhold.question;

import chinelog.quantity.NumberWords;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the figures of a text: in digits with either decimal sign, with fractions, in words, with
 * units as symbols or words, with the sign of a currency before them, and of two units, such as "36
 * ft 9 in" or "2 m 99".
 */
final class Mentions {

  private static final String DIGITS =
      "\\d{1,3}(?:[ \u00a0\u202f\u2009,.’']\\d{3})+(?!\\d)(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)?|[.,]\\d+";
  private static final Pattern FIGURE =
      Pattern.compile(
          "(?<![\\p{L}\\d.,/:#])(?<money>[£€$]|GBP|EUR|USD)?\\s?(?<number>"
              + DIGITS
              + ")(?<fraction>[\\s\u00a0\u202f-]{0,2}[½¼¾⅛⅜⅝⅞⅓⅔]|[\\s\u00a0\u202f-]{1,2}\\d+\\s?[/⁄]\\s?\\d+|\\s?[/⁄]\\s?\\d+(?![/\\d]))?");
  private static final Pattern LONE_FRACTION = Pattern.compile("(?<![\\p{L}\\d])[½¼¾⅛⅜⅝⅞⅓⅔]");
  private static final Pattern SYMBOL =
      Pattern.compile(
          "[\\s\u00a0\u202f\u2009-]{0,2}(?<symbol>[\\p{L}µ°\"″'′£€$%]+[²³23]?(?:/[\\p{L}]+[²³]?)?)");

  /** Feet, inches and eighths, such as 2-7-4. */
  private static final Pattern EIGHTHS =
      Pattern.compile("(?<![\\p{L}\\d.,/:#-])(\\d{1,3})-(\\d|1[01])-([0-7])[+-]?(?![\\d-])");

  private static final Pattern THOUSAND =
      Pattern.compile(
          "[\\s\u00a0\u202f]?k\\b|[\\s\u00a0](?:thousand|tausend|duizend|mille|mil)\\b");

  /** What may follow a whole number in words, run together, by what it adds. */
  private static final Map<String, Double> PARTS =
      Map.ofEntries(
          Map.entry("andahalf", 0.5),
          Map.entry("andaquarter", 0.25),
          Map.entry("andthreequarters", 0.75),
          Map.entry("undeinhalb", 0.5),
          Map.entry("einhalb", 0.5),
          Map.entry("eneenhalf", 0.5),
          Map.entry("eneenhalve", 0.5),
          Map.entry("eneenkwart", 0.25),
          Map.entry("etdemi", 0.5),
          Map.entry("etdemie", 0.5),
          Map.entry("etquart", 0.25),
          Map.entry("ymedio", 0.5),
          Map.entry("ymedia", 0.5),
          Map.entry("ycuarto", 0.25));

  private static final List<String> HALVES =
      List.of("undeinhalb", "einhalb", "eneenhalf", "eneenhalve", "enhalf", "enhalve");
  private static final int INCHES = 12;
  private static final Map<String, String> MONEY = Map.of("£", "GBP", "€", "EUR", "$", "USD");
  private static final int MOST_WORDS = 14;

  private final String text;
  private final List<Letters.Word> words;
  private final List<NumberWords> languages;
  private final List<Mention> found = new ArrayList<>();

  private Mentions(String text, List<Letters.Word> words, List<NumberWords> languages) {
    this.text = text;
    this.words = words;
    this.languages = languages;
  }

  /**
   * @param words all words of the text
   */
  static List<Mention> in(String text, List<Letters.Word> words, List<NumberWords> languages) {
    Mentions mentions = new Mentions(text, words, languages);
    mentions.digits();
    mentions.words();
    mentions.compounds();
    return mentions.found;
  }

  private void digits() {
    Matcher m = FIGURE.matcher(text);
    while (m.find()) {
      String number = m.group("number");
      String fraction = m.group("fraction");
      int from = m.group("money") == null ? m.start("number") : m.start();
      if (fraction != null && fraction.strip().matches("[/⁄]\\s?\\d+")) {
        double under = Double.parseDouble(fraction.replaceAll("\\D", ""));
        if (under > 1 && number.matches("\\d+")) {
          add(
              from,
              m.end(),
              Double.parseDouble(number) / under,
              1 / under,
              m.group("money"),
              false);
        }
      } else if (fraction != null) {
        double[] part = fraction(fraction);
        if (part[1] > 0 && number.matches("\\d+")) {
          double value = Double.parseDouble(number) + part[0] / part[1];
          add(from, m.end(), value, 1 / part[1], m.group("money"), false);
        }
      } else {
        plain(number, '.', from, m.end(), m.group("money"));
        if (number.indexOf(',') >= 0 || number.indexOf('.') >= 0) {
          plain(number, ',', from, m.end(), m.group("money"));
        }
      }
    }
    Matcher eighths = EIGHTHS.matcher(text);
    while (eighths.find()) {
      double inches = Integer.parseInt(eighths.group(2)) + Integer.parseInt(eighths.group(3)) / 8.0;
      double feet = Integer.parseInt(eighths.group(1)) + inches / INCHES;
      Unit unit = UnitWords.find("ft").orElseThrow();
      found.add(new Mention(eighths.start(), eighths.end(), feet, 1.0 / 8 / INCHES, unit, false));
    }
    Matcher lone = LONE_FRACTION.matcher(text);
    while (lone.find()) {
      double[] part = fraction(lone.group());
      add(lone.start(), lone.end(), part[0] / part[1], 1 / part[1], null, false);
    }
  }

  private static double[] fraction(String text) {
    String plain = Normalizer.normalize(text, Normalizer.Form.NFKD).replaceAll("[^\\d/⁄]", "");
    String[] parts = plain.split("[/⁄]");
    return parts.length == 2
        ? new double[] {Double.parseDouble(parts[0]), Double.parseDouble(parts[1])}
        : new double[] {0, 0};
  }

  /** The number with {@code point} for its decimal sign and everything else grouping. */
  private void plain(String number, char point, int start, int end, @Nullable String money) {
    int last = number.lastIndexOf(point);
    StringBuilder digits = new StringBuilder();
    int decimals = 0;
    for (int i = 0; i < number.length(); i++) {
      char c = number.charAt(i);
      if (i == last) {
        digits.append('.');
      } else if (c >= '0' && c <= '9') {
        digits.append(c);
        decimals += last >= 0 && i > last ? 1 : 0;
      }
    }
    double value = Double.parseDouble(digits.toString());
    if (value > 0) {
      add(start, end, value, Math.pow(10, -decimals), money, false);
    }
  }

  private void add(
      int start, int end, double value, double step, @Nullable String money, boolean spelled) {
    Matcher thousand = THOUSAND.matcher(text).region(end, text.length());
    if (thousand.useTransparentBounds(true).lookingAt()) {
      addUnit(start, thousand.end(), 1000 * value, 1000 * step, money, spelled);
    } else {
      addUnit(start, end, value, step, money, spelled);
    }
  }

  private void addUnit(
      int start, int end, double value, double step, @Nullable String money, boolean spelled) {
    if (money != null) {
      Unit unit = UnitWords.find(MONEY.getOrDefault(money, money)).orElse(null);
      found.add(new Mention(start, end, value, step, unit, spelled));
      return;
    }
    Matcher symbol = SYMBOL.matcher(text).region(end, text.length());
    List<Unit> units = new ArrayList<>();
    int to = end;
    boolean word = false;
    if (symbol.lookingAt()) {
      String written = symbol.group("symbol");
      word = isWord(written);
      String plain = written.replaceAll("(?<=m)2$", "²").replaceAll("(?<=m)3$", "³");
      units.addAll(UnitWords.named(Letters.fold(written)));
      if (units.isEmpty()) {
        UnitWords.find(MONEY.getOrDefault(plain, plain)).ifPresent(units::add);
      }
      to = symbol.end();
      if (units.isEmpty()) {
        to = ofTwoWords(end, units, to);
      }
    }
    if (units.isEmpty() || word) {
      found.add(new Mention(start, end, value, step, null, spelled));
    }
    for (Unit unit : units) {
      found.add(new Mention(start, to, value, step, unit, spelled));
    }
  }

  /** Whether a unit's symbol is an everyday word as well. */
  private static boolean isWord(String symbol) {
    return List.of("in", "a", "A", "d").contains(symbol);
  }

  /** "square metres", "mètres carrés". */
  private int ofTwoWords(int from, List<Unit> units, int otherwise) {
    for (int i = 0; i + 1 < words.size(); i++) {
      if (words.get(i).start() >= from) {
        String both = words.get(i).letters() + words.get(i + 1).letters();
        if (words.get(i).start() - from <= 2) {
          units.addAll(UnitWords.named(both));
        }
        return units.isEmpty() ? otherwise : words.get(i + 1).end();
      }
    }
    return otherwise;
  }

  private void words() {
    for (NumberWords language : languages) {
      for (int i = 0; i < words.size(); i++) {
        Letters.Word word = words.get(i);
        String stem = withoutHalf(word.letters());
        int whole = stem.equals(word.letters()) ? 0 : language.find(stem);
        if (whole > 0) {
          add(word.start(), word.end(), whole + 0.5, 0.5, null, true);
          continue;
        }
        int length = spelled(language, i);
        i += Math.max(0, length - 1);
      }
    }
  }

  /** How many words from {@code at} on spell a number, which is then added. */
  private int spelled(NumberWords language, int at) {
    int[] whole = longest(language, at);
    if (whole[0] == 0) {
      return 0;
    }
    double value = whole[1];
    double step = 1;
    int next = at + whole[0];
    if (next + 1 < words.size() && language.isPoint(words.get(next).letters())) {
      int digit = next + 1;
      StringBuilder decimals = new StringBuilder();
      while (digit < words.size() && decimals.length() < 6) {
        int[] rest = decimals.isEmpty() ? longest(language, digit) : new int[] {0, 0};
        if (rest[1] > 9 && rest[1] < 100) {
          decimals.append(rest[1]);
          digit += rest[0];
          break;
        }
        String word = words.get(digit).letters();
        int n = word.equals("oh") || word.equals("nought") ? 0 : language.find(word);
        if (n < 0 || n > 9) {
          break;
        }
        decimals.append(n);
        digit++;
      }
      if (!decimals.isEmpty()) {
        value += Double.parseDouble("0." + decimals);
        step = Math.pow(10, -decimals.length());
        next = digit;
      }
    }
    StringBuilder part = new StringBuilder();
    for (int i = next; step == 1 && i < words.size() && i < next + 3; i++) {
      part.append(words.get(i).letters());
      Double adds = PARTS.get(part.toString());
      if (adds != null) {
        value += adds;
        step = adds == 0.5 ? 0.5 : 0.25;
        next = i + 1;
      }
    }
    add(words.get(at).start(), words.get(next - 1).end(), value, step, null, true);
    return next - at;
  }

  /** The word before "einhalb" or "eneenhalf", if the whole is one word: "dreieinhalb". */
  private static String withoutHalf(String word) {
    for (String half : HALVES) {
      if (word.endsWith(half) && word.length() > half.length()) {
        return word.substring(0, word.length() - half.length());
      }
    }
    return word;
  }

  private int[] longest(NumberWords language, int at) {
    StringBuilder letters = new StringBuilder();
    int[] best = {0, 0};
    for (int i = at; i < words.size() && i - at < MOST_WORDS; i++) {
      String word = words.get(i).letters();
      if (word.chars().anyMatch(Character::isDigit)) {
        break;
      }
      if (i > at && language.joins(word)) {
        continue;
      }
      letters.append(word);
      if (!language.mayBegin(letters)) {
        break;
      }
      int n = language.find(letters.toString());
      if (n >= 0) {
        best = new int[] {i - at + 1, n};
      }
    }
    return best;
  }

  /** Adds what two neighbours make together: "36 ft 9 in", "2 m 99", "2 metres ninety-nine". */
  private void compounds() {
    List<Mention> single = List.copyOf(found);
    for (Mention first : single) {
      Unit unit = first.unit();
      if (unit == null || first.step() < 1) {
        continue;
      }
      for (Mention second : single) {
        int gap = second.start() - first.end();
        if (gap >= 0
            && gap <= 5
            && Letters.all(text.substring(first.end(), second.start())).size() <= 1) {
          compound(first, unit, second);
        }
      }
    }
  }

  private void compound(Mention first, Unit unit, Mention second) {
    Unit smaller = second.unit();
    if (smaller == null
        && (unit.symbol().equals("m") || unit.isMoney())
        && second.value() < 100
        && second.fineness() >= 1) {
      found.add(
          new Mention(
              first.start(),
              second.end(),
              first.value() + second.value() / 100,
              second.step() / 100,
              unit,
              first.spelled()));
    } else if (smaller == null
        && unit.symbol().equals("ft")
        && second.value() < INCHES
        && second.step() <= 1) {
      found.add(
          new Mention(
              first.start(),
              second.end(),
              first.value() + second.value() / INCHES,
              second.step() / INCHES,
              unit,
              first.spelled()));
    } else if (smaller != null && smaller.isCompatible(unit) && !smaller.equals(unit)) {
      try {
        double part = Quantity.of(1, smaller).doubleIn(unit);
        if (part < 1) {
          found.add(
              new Mention(
                  first.start(),
                  second.end(),
                  first.value() + second.value() * part,
                  second.step() * part,
                  unit,
                  first.spelled()));
        }
      } catch (QuantityException e) {
        throw new IllegalStateException("units of one kind", e);
      }
    }
  }
}

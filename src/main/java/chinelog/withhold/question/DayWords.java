package chinelog.withhold.question;

import chinelog.quantity.NumberWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads days whose month is a word: "2 April 2026", "April 2nd", "the fourteenth of March", "am
 * vierzehnten M\u00e4rz", "le quatorze mars", "de veertiende maart", "el catorce de marzo".
 */
final class DayWords {

  private static final int DAYS = 31;

  private static final List<NumberWords> LANGUAGES =
      Stream.of("en", "de", "nl", "fr", "es")
          .map(l -> NumberWords.upTo(DAYS, Locale.forLanguageTag(l)))
          .toList();

  /** In digits, as in "2nd", "14ten" and "1er". */
  private static final Pattern DIGITS = Pattern.compile("(\\d{1,2})(\\p{L}{0,3})");

  /** What makes the place in a row of a number. */
  private static final Pattern ENDING = Pattern.compile("(?:s?te[nrs]?|th|de)$");

  /** Places that are not their number and an ending, as the last part of a word. */
  private static final Map<String, String> IRREGULAR =
      Map.ofEntries(
          Map.entry("first", "one"),
          Map.entry("second", "two"),
          Map.entry("third", "three"),
          Map.entry("fifth", "five"),
          Map.entry("eighth", "eight"),
          Map.entry("ninth", "nine"),
          Map.entry("twelfth", "twelve"),
          Map.entry("tieth", "ty"),
          Map.entry("erste", "eins"),
          Map.entry("ersten", "eins"),
          Map.entry("erster", "eins"),
          Map.entry("dritte", "drei"),
          Map.entry("dritten", "drei"),
          Map.entry("dritter", "drei"),
          Map.entry("siebte", "sieben"),
          Map.entry("siebten", "sieben"),
          Map.entry("siebter", "sieben"),
          Map.entry("achte", "acht"),
          Map.entry("achten", "acht"),
          Map.entry("achter", "acht"),
          Map.entry("eerste", "een"),
          Map.entry("derde", "drie"),
          Map.entry("premier", "un"),
          Map.entry("primero", "uno"));

  /** May stand between the day and the month. */
  private static final Set<String> BETWEEN =
      Set.of(
          "of", "the", "in", "this", "month", "de", "du", "mois", "van", "des", "monats", "mes",
          "maand");

  /** Months that are everyday words where they are written small. */
  private static final Set<String> VERBS = Set.of("may", "march", "mar");

  private static final int MOST_WORDS = 3;

  /** In English the day may come second, where a small number may as well count something. */
  private static final int NO_COUNT = 12;

  private static final int APART = 3;

  private final String text;
  private final List<Letters.Word> words;

  private DayWords(String text) {
    this.text = text;
    this.words = Letters.all(text);
  }

  /**
   * @param months the number of a month by its name, folded
   */
  static List<DayWatch.Written> in(String text, Map<String, Integer> months) {
    DayWords days = new DayWords(text);
    List<DayWatch.Written> found = new ArrayList<>();
    for (int i = 0; i < days.words.size(); i++) {
      Letters.Word word = days.words.get(i);
      Integer month = months.get(word.letters());
      if (month != null && (word.hasCapital() || !VERBS.contains(word.letters()))) {
        days.before(i, month, found);
        days.after(i, month, found);
      }
    }
    return found;
  }

  private void before(int month, int number, List<DayWatch.Written> found) {
    int last = month - 1;
    while (last >= 0 && BETWEEN.contains(words.get(last).letters()) && isBeside(last)) {
      last--;
    }
    for (int first = Math.max(0, last - MOST_WORDS + 1); first <= last; first++) {
      int day = isRun(first, last + 1) ? day(first, last, 0) : 0;
      if (day > 0) {
        add(first, month, number, day, found);
        return;
      }
    }
  }

  private void after(int month, int number, List<DayWatch.Written> found) {
    int first = month + 1;
    if (first < words.size() && words.get(first).letters().equals("the") && isBeside(month)) {
      first++;
    }
    for (int last = Math.min(words.size(), first + MOST_WORDS) - 1; last >= first; last--) {
      int day = isRun(first - 1, last) ? day(first, last, NO_COUNT) : 0;
      if (day > 0 && !isDecimal(last)) {
        add(month, last, number, day, found);
        return;
      }
    }
  }

  private void add(int first, int last, int month, int day, List<DayWatch.Written> found) {
    int next = last + 1;
    if (next < words.size() && words.get(next).letters().equals("de")) {
      next++;
    }
    boolean year =
        next < words.size() && isRun(last, next) && words.get(next).letters().matches("\\d{4}");
    int end = words.get(year ? next : last).end();
    int of = year ? Integer.parseInt(words.get(next).letters()) : 0;
    found.add(new DayWatch.Written(words.get(first).start(), end, of, month, day));
  }

  private boolean isDecimal(int at) {
    int end = words.get(at).end();
    return end + 1 < text.length()
        && ".,".indexOf(text.charAt(end)) >= 0
        && Character.isDigit(text.charAt(end + 1));
  }

  private boolean isRun(int first, int last) {
    for (int i = first; i < last; i++) {
      if (!isBeside(i)) {
        return false;
      }
    }
    return true;
  }

  /** Whether nothing but blanks and joints parts a word from the next. */
  private boolean isBeside(int at) {
    String gap = text.substring(words.get(at).end(), words.get(at + 1).start());
    return gap.length() <= APART && gap.indexOf('|') < 0 && gap.indexOf(Passage.CUT) < 0;
  }

  /**
   * The day that a run of words spells; 0 if it spells none.
   *
   * @param count a plain number up to this is none
   */
  private int day(int first, int last, int count) {
    StringBuilder letters = new StringBuilder();
    for (int i = first; i <= last; i++) {
      String word = words.get(i).letters();
      if (i == first || !word.equals("et") && !word.equals("y")) {
        letters.append(word);
      }
    }
    Matcher digits = DIGITS.matcher(letters);
    if (digits.matches()) {
      int day = Integer.parseInt(digits.group(1));
      return day > DAYS ? 0 : day;
    }
    if (letters.chars().anyMatch(Character::isDigit)) {
      return 0;
    }
    int plain = cardinal(letters.toString());
    return plain == 0 ? cardinal(withoutPlace(letters.toString())) : plain > count ? plain : 0;
  }

  private static int cardinal(String letters) {
    return LANGUAGES.stream()
        .mapToInt(l -> l.find(letters))
        .filter(n -> n > 0)
        .findFirst()
        .orElse(0);
  }

  /** The number's own word: "fourteen" for "fourteenth". */
  private static String withoutPlace(String letters) {
    for (Map.Entry<String, String> place : IRREGULAR.entrySet()) {
      if (letters.endsWith(place.getKey())) {
        String stem = letters.substring(0, letters.length() - place.getKey().length());
        if (cardinal(stem + place.getValue()) > 0) {
          return stem + place.getValue();
        }
      }
    }
    return ENDING.matcher(letters).replaceFirst("");
  }
}

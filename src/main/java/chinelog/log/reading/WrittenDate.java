package chinelog.log.reading;

import chinelog.problem.Sentence;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates as people write them, such as {@code 14/3/2026} or {@code 14 March 2026}. */
public final class WrittenDate {

  private static final Pattern YEAR_FIRST =
      Pattern.compile("([0-9]{4})(?:([-./_ ])([0-9]{1,2})\\2([0-9]{1,2})|([0-9]{2})([0-9]{2}))");
  private static final Pattern YEAR_LAST =
      Pattern.compile("([0-9]{1,2})([-./_ ])([0-9]{1,2})\\2([0-9]{4}|[0-9]{2})");
  private static final Pattern DAY_IN_WORDS =
      Pattern.compile(
          "(?:\\p{L}+[.,]*[ _-]+)?([0-9]{1,2})(?:st|nd|rd|th|er|[.])?[ _-]*(?:of |de )?"
              + "(\\p{L}{3,})[.,]*(?: de)?[ _-]+([0-9]{4})");
  private static final Pattern MONTH_FIRST =
      Pattern.compile("(\\p{L}{3,})[.]?[ _-]+([0-9]{1,2})(?:st|nd|rd|th)?,?[ _-]+([0-9]{4})");
  private static final Pattern FIRST_WORD = Pattern.compile("(\\p{L}+)[.,]*\\s+");
  private static final List<Locale> LANGUAGES =
      List.of(
          Locale.ENGLISH,
          Locale.GERMAN,
          Locale.forLanguageTag("nl"),
          Locale.FRENCH,
          Locale.forLanguageTag("es"));

  private WrittenDate() {}

  /** Every day that the whole of a text may mean; none if it is no date. */
  static SortedSet<LocalDate> readings(String text) {
    return readings(text.strip(), true);
  }

  /** Every day that the beginning of a file's name may mean; none if it begins with no date. */
  public static SortedSet<LocalDate> atStart(String name) {
    return readings(name, false);
  }

  /**
   * A date that words begin with, such as {@code Friday 20 March 2026, the keel}.
   *
   * @param days every day that it may mean
   * @param rest what follows it, such as "the keel"
   */
  public record Beginning(SortedSet<LocalDate> days, String rest) {}

  /** The date that a heading begins with, after the name of a weekday or none. */
  public static Optional<Beginning> beginning(String heading) {
    Matcher m = FIRST_WORD.matcher(heading);
    boolean named = m.lookingAt() && isWeekday(m.group(1));
    String dated = named ? heading.substring(m.end()) : heading;
    for (Pattern form : List.of(YEAR_FIRST, YEAR_LAST, DAY_IN_WORDS, MONTH_FIRST)) {
      Matcher date = form.matcher(dated);
      boolean starts = date.lookingAt();
      // The word before a day must be a weekday's, which has been taken off.
      if (starts && (form != DAY_IN_WORDS || Character.isDigit(dated.charAt(0)))) {
        SortedSet<LocalDate> days = readings(dated.substring(0, date.end()), true);
        String rest = dated.substring(date.end());
        if (!days.isEmpty() && !rest.matches("(?s)[\\p{Alnum}].*")) {
          return Optional.of(new Beginning(days, rest.replaceFirst("^[\\s\\p{Punct}–—]+", "")));
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isWeekday(String word) {
    String begun = word.toLowerCase(Locale.ROOT);
    return begun.length() > 1 && WEEKDAYS.stream().anyMatch(name -> name.startsWith(begun));
  }

  private static final List<String> WEEKDAYS =
      LANGUAGES.stream()
          .flatMap(l -> Arrays.stream(DayOfWeek.values()).map(d -> name(d, l)))
          .distinct()
          .toList();

  private static String name(DayOfWeek day, Locale language) {
    return day.getDisplayName(TextStyle.FULL, language).toLowerCase(Locale.ROOT);
  }

  private static SortedSet<LocalDate> readings(String text, boolean whole) {
    SortedSet<LocalDate> found = new TreeSet<>();
    Matcher m = YEAR_FIRST.matcher(text);
    if (fits(m, text, whole)) {
      boolean parted = m.group(3) != null;
      add(found, m.group(1), m.group(parted ? 3 : 5), m.group(parted ? 4 : 6));
      return found;
    }
    m = YEAR_LAST.matcher(text);
    // A name may begin with the number of a section, such as 1.2.10.
    if (fits(m, text, whole) && (whole || m.group(4).length() == 4)) {
      add(found, m.group(4), m.group(3), m.group(1));
      // With dots, the day comes first wherever dates are written so.
      if (!m.group(2).equals(".")) {
        add(found, m.group(4), m.group(1), m.group(3));
      }
      return found;
    }
    m = DAY_IN_WORDS.matcher(text);
    if (fits(m, text, whole)) {
      addInWords(found, m.group(3), m.group(2), m.group(1));
      return found;
    }
    m = MONTH_FIRST.matcher(text);
    if (fits(m, text, whole)) {
      addInWords(found, m.group(3), m.group(1), m.group(2));
    }
    return found;
  }

  private static boolean fits(Matcher m, String text, boolean whole) {
    return m.lookingAt()
        && (whole
            ? m.end() == text.length()
            : m.end() == text.length() || !Character.isDigit(text.charAt(m.end())));
  }

  private static void add(SortedSet<LocalDate> found, String year, String month, String day) {
    int full = Integer.parseInt(year) + (year.length() == 2 ? 2000 : 0);
    try {
      found.add(LocalDate.of(full, Integer.parseInt(month), Integer.parseInt(day)));
    } catch (DateTimeException e) {
      // No day of the calendar.
    }
  }

  private static void addInWords(SortedSet<LocalDate> found, String year, String word, String day) {
    String begun = word.toLowerCase(Locale.ROOT);
    for (Month month : Month.values()) {
      boolean meant =
          LANGUAGES.stream()
              .map(l -> month.getDisplayName(TextStyle.FULL, l).toLowerCase(Locale.ROOT))
              .anyMatch(name -> name.startsWith(begun));
      if (meant || begun.equals("sept") && month == Month.SEPTEMBER) {
        add(found, year, Integer.toString(month.getValue()), day);
      }
    }
  }

  /** What to write for a date that cannot be read as it is. */
  static CharSequence remedy(String text) {
    List<LocalDate> found = List.copyOf(readings(text));
    return switch (found.size()) {
      case 0 -> "Write year-month-day, such as 2026-03-14.";
      case 1 -> Sentence.of("Write year-month-day: {0}.", found.get(0));
      default ->
          Sentence.of(
              "Write year-month-day: {0} or {1}.", found.get(0), found.get(found.size() - 1));
    };
  }
}

package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.problem.Sentence;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Looks for days on which something withheld happened: of notes that are withheld whole, and of
 * agreements. A day on which an open note was written tells nothing.
 */
final class DayWatch {

  private static final List<Locale> LANGUAGES =
      List.of(Locale.ENGLISH, Locale.GERMAN, Locale.FRENCH, new Locale("nl"), new Locale("es"));
  private static final Map<String, Integer> MONTHS = months();

  /** In digits, the year first or last. */
  private static final Pattern DIGITS =
      Pattern.compile(
          "(?<![\\d.,/-])(?:(?<year>\\d{4})[-./](?<m>\\d{1,2})[-./](?<d>\\d{1,2})"
              + "|(?<a>\\d{1,2})(?:[./-](?<b>\\d{1,2})[./-](?<last>\\d{4}|\\d{2})|[ \u2013](?<bb>\\d{1,2})[ \u2013](?<llast>20\\d{2}))"
              + "|(?<c>\\d{1,2})\\.\\s?(?<e>\\d{1,2})\\.|(?<run>20\\d{2}[01]\\d[0-3]\\d)"
              + "|(?<=\\b(?:on|am|vom|seit|bis|op|le|du|el|del|since|until) )(?<f>\\d{1,2})/(?<g>\\d{1,2}))(?![\\d/])");

  private final SortedMap<LocalDate, Secret> secrets = new TreeMap<>();
  private final Set<LocalDate> shown = new HashSet<>();

  private record Secret(CharSequence what, Label label) {}

  /** Notes a day that these readers see by right. */
  void show(LocalDate day) {
    shown.add(day);
  }

  void withhold(@Nullable LocalDate day, CharSequence what, Label label) {
    if (day != null) {
      secrets.putIfAbsent(day, new Secret(Sentence.of("{0}, {1}", Sentence.of(what), day), label));
    }
  }

  /** Notes the days that a withheld text names with their years. */
  void withholdDaysIn(String text, CharSequence what, Label label) {
    for (Written w : written(text)) {
      try {
        if (w.year > 0) {
          withhold(LocalDate.of(w.year, w.month, w.day), what, label);
        }
      } catch (DateTimeException e) {
        // Digits that are no day tell of none.
        continue;
      }
    }
  }

  /**
   * A day that stands in a text.
   *
   * @param year 0 where none is written
   */
  record Written(int start, int end, int year, int month, int day) {}

  List<Hit> find(SeenText text) {
    List<Hit> hits = new ArrayList<>();
    if (secrets.keySet().stream().allMatch(shown::contains)) {
      return hits;
    }
    written(text.text()).forEach(w -> add(w, hits));
    return hits;
  }

  /** Days in a text; one whose day and month may change places, both ways. */
  private static List<Written> written(String text) {
    List<Written> found = new ArrayList<>();
    Matcher digits = DIGITS.matcher(text);
    while (digits.find()) {
      int start = digits.start();
      int end = digits.end();
      if (digits.group("m") != null) {
        int year = number(digits, "year");
        found.add(new Written(start, end, year, number(digits, "m"), number(digits, "d")));
      } else if (digits.group("c") != null) {
        found.add(new Written(start, end, 0, number(digits, "e"), number(digits, "c")));
      } else if (digits.group("run") != null) {
        int run = number(digits, "run");
        found.add(new Written(start, end, run / 10_000, run / 100 % 100, run % 100));
      } else if (digits.group("f") != null) {
        found.add(new Written(start, end, 0, number(digits, "g"), number(digits, "f")));
        found.add(new Written(start, end, 0, number(digits, "f"), number(digits, "g")));
      } else {
        boolean signs = digits.group("b") != null;
        int last = number(digits, signs ? "last" : "llast");
        int year = last < 100 ? 2000 + last : last;
        int first = number(digits, "a");
        int second = number(digits, signs ? "b" : "bb");
        found.add(new Written(start, end, year, second, first));
        found.add(new Written(start, end, year, first, second));
      }
    }
    found.addAll(DayWords.in(text, MONTHS));
    return found;
  }

  private static int number(Matcher m, String group) {
    return Integer.parseInt(m.group(group));
  }

  private void add(Written written, List<Hit> hits) {
    for (Map.Entry<LocalDate, Secret> secret : secrets.entrySet()) {
      LocalDate date = secret.getKey();
      boolean same =
          date.getMonthValue() == written.month
              && date.getDayOfMonth() == written.day
              && (written.year == 0 || date.getYear() == written.year);
      if (same && !isShown(written.year, written.month, written.day)) {
        Secret s = secret.getValue();
        hits.add(new Hit(Question.Kind.DAY, written.start, written.end, s.what, s.label));
        return;
      }
    }
  }

  private boolean isShown(int year, int month, int day) {
    try {
      return year > 0
          ? shown.contains(LocalDate.of(year, month, day))
          : shown.stream().anyMatch(d -> d.getMonthValue() == month && d.getDayOfMonth() == day);
    } catch (DateTimeException e) {
      return false;
    }
  }

  private static Map<String, Integer> months() {
    Map<String, Integer> months = new HashMap<>();
    for (Locale language : LANGUAGES) {
      for (Month month : Month.values()) {
        for (TextStyle style :
            List.of(
                TextStyle.FULL,
                TextStyle.FULL_STANDALONE,
                TextStyle.SHORT,
                TextStyle.SHORT_STANDALONE)) {
          String name = Letters.fold(month.getDisplayName(style, language));
          if (name.length() >= 3 && name.chars().allMatch(Character::isLetter)) {
            months.putIfAbsent(name, month.getValue());
          }
        }
      }
    }
    return months;
  }
}

package chinelog.log;

import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Several days told in one note: each dated heading, such as {@code ## 2026-03-25 Keel plank} or
 * {@code ## 25 March 2026}, begins a day, and an undated heading above it, such as {@code #
 * Planking}, names the stage.
 */
final class Diary {

  private static final String MONTH =
      "(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\\p{Alpha}*";
  private static final Pattern DATED =
      Pattern.compile(
          "(\\d{4}-\\d{2}-\\d{2}|\\d{1,2} "
              + MONTH
              + " \\d{4})(?!\\p{Alnum})[\\s\\p{Punct}–—]*(.*)",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  /** A heading that only parts the calendar. */
  private static final Pattern CALENDAR =
      Pattern.compile("(?:" + MONTH + " )?\\d{4}", Pattern.CASE_INSENSITIVE);

  private static final List<DateTimeFormatter> FORMS =
      List.of(DateTimeFormatter.ISO_LOCAL_DATE, inWords("MMMM"), inWords("MMM"));

  private Diary() {}

  /**
   * One day.
   *
   * @param stage the words of the heading above it; empty where there is none
   * @param title the words of its heading after the date; may be empty
   */
  record Day(LocalDate date, String stage, String title, List<Block> text) {}

  /**
   * The days in the order written, with all of the text; none where no heading is dated.
   *
   * @param today a day after it is none
   */
  static List<Day> days(List<Block> blocks, LocalDate today) {
    int level = levelOfDays(blocks, today);
    boolean titled = isTitled(blocks, level);
    List<Day> days = new ArrayList<>();
    List<Block> ahead = new ArrayList<>();
    List<Block> text = ahead;
    String stage = "";
    for (Block block : level == 0 ? List.<Block>of() : blocks) {
      Block.Heading heading = block instanceof Block.Heading h && h.level() <= level ? h : null;
      LocalDate date = heading == null ? null : date(heading, today);
      if (heading != null && date != null) {
        ahead.removeIf(b -> b instanceof Block.Heading h && h.level() < level);
        text = ahead;
        ahead = new ArrayList<>();
        days.add(new Day(date, stage, title(heading), text));
        continue;
      }
      if (heading != null && heading.level() < level) {
        text = ahead;
        stage = titled || CALENDAR.matcher(words(heading)).matches() ? "" : words(heading);
      }
      text.add(block);
    }
    if (!days.isEmpty()) {
      days.get(days.size() - 1).text.addAll(ahead);
    }
    return days;
  }

  private static int levelOfDays(List<Block> blocks, LocalDate today) {
    return blocks.stream()
        .filter(b -> b instanceof Block.Heading heading && date(heading, today) != null)
        .mapToInt(b -> ((Block.Heading) b).level())
        .findFirst()
        .orElse(0);
  }

  /** Whether the one heading above the days is that of the whole note. */
  private static boolean isTitled(List<Block> blocks, int level) {
    List<Block> above =
        blocks.stream().filter(b -> b instanceof Block.Heading h && h.level() < level).toList();
    return above.size() == 1 && above.get(0) == blocks.get(0);
  }

  private static @Nullable LocalDate date(Block.Heading heading, LocalDate today) {
    Matcher matcher = DATED.matcher(words(heading));
    for (DateTimeFormatter form : matcher.matches() ? FORMS : List.<DateTimeFormatter>of()) {
      try {
        LocalDate date = LocalDate.parse(matcher.group(1), form);
        return date.isAfter(today) ? null : date;
      } catch (DateTimeException e) {
        // Written in another form, or no day at all.
        continue;
      }
    }
    return null;
  }

  private static String title(Block.Heading heading) {
    Matcher matcher = DATED.matcher(words(heading));
    return matcher.matches() ? matcher.group(2).strip() : "";
  }

  private static String words(Block.Heading heading) {
    return Inline.plainText(heading.text()).strip();
  }

  private static DateTimeFormatter inWords(String month) {
    return new DateTimeFormatterBuilder()
        .parseCaseInsensitive()
        .appendPattern("d " + month + " uuuu")
        .toFormatter(Locale.ENGLISH)
        .withResolverStyle(ResolverStyle.STRICT);
  }
}

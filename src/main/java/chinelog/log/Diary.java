package chinelog.log;

import chinelog.log.reading.WrittenDate;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Several days told in one note: each dated heading, such as {@code ## 2026-03-25 Keel plank},
 * {@code ## 25.03.2026} or {@code ## Wednesday 25 March 2026}, begins a day, and an undated heading
 * above it, such as {@code # Planking}, names the stage.
 */
final class Diary {

  private static final String MONTH =
      "(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\\p{Alpha}*";

  /** A heading that only parts the calendar. */
  private static final Pattern CALENDAR =
      Pattern.compile("(?:" + MONTH + " )?\\d{4}", Pattern.CASE_INSENSITIVE);

  private Diary() {}

  /**
   * One day.
   *
   * @param stage the words of the heading above it; empty where there is none
   * @param title the words of its heading after the date; may be empty
   * @param place of its heading
   */
  record Day(LocalDate date, String stage, String title, List<Block> text, Place place) {}

  /** A heading whose date may be any of several days. */
  record Unclear(SortedSet<LocalDate> days, Place place) {}

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
        days.add(new Day(date, stage, title(heading), text, heading.place()));
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
    return WrittenDate.beginning(words(heading))
        .map(WrittenDate.Beginning::days)
        .filter(days -> days.size() == 1 && !days.first().isAfter(today))
        .map(SortedSet::first)
        .orElse(null);
  }

  /** The first heading whose date may be either of two days. */
  static Optional<Unclear> findUnclear(List<Block> blocks) {
    return blocks.stream()
        .flatMap(b -> b instanceof Block.Heading h ? unclear(h).stream() : Stream.empty())
        .findFirst();
  }

  private static Optional<Unclear> unclear(Block.Heading heading) {
    return WrittenDate.beginning(words(heading))
        .filter(b -> b.days().size() > 1)
        .map(b -> new Unclear(b.days(), heading.place()));
  }

  private static String title(Block.Heading heading) {
    return WrittenDate.beginning(words(heading)).map(b -> b.rest().strip()).orElse("");
  }

  private static String words(Block.Heading heading) {
    return Inline.plainText(heading.text()).strip();
  }
}

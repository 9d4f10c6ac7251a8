package chinelog.photo.album;

import chinelog.log.records.Entry;
import chinelog.log.records.PhotoFile;
import chinelog.log.text.Inline;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Finds the entry that a photograph belongs to. */
public final class Matching {

  private static final Pattern DAY =
      Pattern.compile("(?<!\\d)((?:19|20)\\d\\d)([-_.]?)(\\d\\d)\\2(\\d\\d)(?!\\d)");

  private final List<Entry> entries;
  private final Map<String, String> shownBy = new TreeMap<>();
  private final SortedMap<LocalDate, List<Entry>> days = new TreeMap<>();

  public Matching(List<Entry> entries) {
    this.entries = entries;
    for (Entry entry : entries) {
      for (Inline.Image image : entry.images()) {
        shownBy.putIfAbsent(image.path(), entry.id());
      }
    }
  }

  /** Id of the first entry whose text shows the photograph. */
  @Nullable String shownBy(String path) {
    return shownBy.get(path);
  }

  /**
   * The entry of the day: of several the one whose stage names a folder above the photograph, else
   * the one whose hours of work are nearest to the time, else the first. Hours that are under more
   * agreements than their entry do not count, or they would show in where photographs stand.
   */
  public @Nullable String byDay(PhotoFile file, LocalDate day, @Nullable LocalDateTime taken) {
    List<Entry> sameDay = on(day);
    if (sameDay.isEmpty()) {
      return null;
    }
    List<String> folders = Arrays.asList(file.path().split("/"));
    for (Entry entry : sameDay) {
      if (!entry.stage().isEmpty()
          && folders.subList(0, folders.size() - 1).contains(entry.stage())) {
        return entry.id();
      }
    }
    return sameDay.stream()
        .min(Comparator.comparingLong(e -> secondsFromWork(e, taken)))
        .map(Entry::id)
        .orElse(null);
  }

  private List<Entry> on(LocalDate day) {
    return days.computeIfAbsent(
        day, d -> entries.stream().filter(e -> e.date().equals(d)).toList());
  }

  private static long secondsFromWork(Entry entry, @Nullable LocalDateTime taken) {
    long nearest = Long.MAX_VALUE;
    for (Entry.Worked worked : entry.worked()) {
      if (!entry.label().join(worked.label()).equals(entry.label())) {
        continue;
      }
      ZonedDateTime from = worked.from();
      ZonedDateTime to = worked.to();
      if (taken != null && from != null && to != null) {
        ZonedDateTime time = taken.atZone(from.getZone());
        long before = from.toEpochSecond() - time.toEpochSecond();
        long after = time.toEpochSecond() - to.toEpochSecond();
        nearest = Math.min(nearest, Math.max(0, Math.max(before, after)));
      }
    }
    return nearest;
  }

  /** A day written in the names of file or folders, such as {@code photos/2026-03-14/a.jpg}. */
  public static @Nullable LocalDate dayInName(String path) {
    LocalDate day = null;
    Matcher matcher = DAY.matcher(path);
    while (matcher.find()) {
      try {
        day =
            LocalDate.of(
                Integer.parseInt(matcher.group(1)),
                Integer.parseInt(matcher.group(3)),
                Integer.parseInt(matcher.group(4)));
      } catch (DateTimeException e) {
        // Eight digits that are no day.
        continue;
      }
    }
    return day;
  }
}

package chinelog.photo.album;

import chinelog.log.records.Entry;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Says which notes a photograph may belong to that no note names: by its day or the night after it,
 * or by a folder that is named after day, stage or note.
 */
public final class Belonging {

  /** Work may go on past midnight for so many hours. */
  private static final int NIGHT_HOURS = 6;

  private static final Pattern BETWEEN_DIGITS = Pattern.compile("(?<=\\d)[-_./ ](?=\\d)");
  private static final DateTimeFormatter YEAR_FIRST = DateTimeFormatter.ofPattern("uuuuMMdd");
  private static final DateTimeFormatter YEAR_LAST = DateTimeFormatter.ofPattern("ddMMuuuu");

  private Belonging() {}

  /** Whether no note shows the photograph, so that what it belongs to is a guess. */
  public static boolean isGuessed(Photograph photograph) {
    return photograph.link() == Photograph.Link.BY_TIME
        || photograph.link() == Photograph.Link.UNPLACED;
  }

  /** Whether a photograph that no note shows may belong to this one. */
  public static boolean isPossible(Photograph photograph, Entry entry) {
    String path = photograph.file().path();
    List<String> parts = Arrays.asList(path.split("/"));
    List<String> folders = parts.subList(1, Math.max(1, parts.size() - 1));
    boolean stage = !entry.stage().isEmpty() && folders.contains(entry.stage());
    boolean named =
        folders.stream().anyMatch(f -> f.equals(entry.id()) || entry.id().endsWith("/" + f));
    return stage
        || named
        || isOfDay(photograph.taken(), entry.date())
        || isNamedAfter(path, entry.date());
  }

  private static boolean isOfDay(@Nullable LocalDateTime taken, LocalDate day) {
    return taken != null
        && !taken.isBefore(day.atStartOfDay())
        && taken.isBefore(day.plusDays(1).atTime(NIGHT_HOURS, 0));
  }

  /**
   * Whether folders or the file bear the day, its year first or last, with or without signs between
   * its parts.
   */
  private static boolean isNamedAfter(String path, LocalDate day) {
    String digits = BETWEEN_DIGITS.matcher(path).replaceAll("");
    return digits.contains(YEAR_FIRST.format(day)) || digits.contains(YEAR_LAST.format(day));
  }
}

package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Release;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Looks for photographs that no note shows and that may belong to a note that is withheld: taken on
 * its day or in the night after it, or in a folder that is named after its day, stage or file.
 */
final class PhotoWatch {

  /** Work may go on past midnight for so many hours. */
  private static final int NIGHT_HOURS = 6;

  private PhotoWatch() {}

  static List<Question> find(Log log, Album album, Eyes eyes) {
    List<Question> questions = new ArrayList<>();
    List<Entry> hidden =
        log.entries().stream()
            .filter(e -> !eyes.see(Release.Kind.ENTRY, e.id(), e.label()))
            .toList();
    for (Photograph photograph : album.photographs()) {
      boolean unnamed =
          photograph.link() == Photograph.Link.BY_TIME
              || photograph.link() == Photograph.Link.UNPLACED;
      String path = photograph.file().path();
      boolean withheld =
          hidden.stream()
              .anyMatch(e -> e.id().equals(photograph.entry()) && isAlone(e, log, hidden));
      if (unnamed && !withheld && eyes.see(Release.Kind.PHOTO, path, photograph.file().label())) {
        for (Entry entry : hidden) {
          if (mayBeOf(photograph, entry)) {
            questions.add(question(log, photograph, entry));
            break;
          }
        }
      }
    }
    return questions;
  }

  /**
   * Whether no open note is of the day of a withheld one: else the hours of the two decide where a
   * photograph goes, and would show in whether it does.
   */
  private static boolean isAlone(Entry entry, Log log, List<Entry> hidden) {
    return log.entries().stream()
        .noneMatch(e -> e.date().equals(entry.date()) && !hidden.contains(e));
  }

  private static boolean mayBeOf(Photograph photograph, Entry entry) {
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

  /** Whether a folder or the file bears the day, with or without signs between its parts. */
  private static boolean isNamedAfter(String path, LocalDate day) {
    String digits = day.toString().replace("-", "");
    return path.replaceAll("(?<=\\d)[-_. ](?=\\d)", "").contains(digits);
  }

  private static Question question(Log log, Photograph photograph, Entry entry) {
    Label label = entry.label();
    return Question.of(
        Question.Kind.PICTURE,
        log,
        photograph.file().place(),
        "the photograph " + photograph.file().path(),
        photograph.sha256(),
        "the note " + entry.id() + ", which it may belong to by its day or folder",
        label);
  }
}

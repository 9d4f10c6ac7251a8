package chinelog.photo.album;

import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.photo.PhotoProgress;
import chinelog.photo.pixels.PhotoLoader;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The photographs of a log, linked to its entries.
 *
 * @param photographs by time taken, then path; those without a time last
 */
public record Album(List<Photograph> photographs, List<Problem> problems) {

  public Album {
    photographs = List.copyOf(photographs);
    problems = List.copyOf(problems);
  }

  /**
   * The day on which a photograph was taken: as photos.yaml, else its camera, else its name says;
   * null if none does or it cannot be read.
   */
  public static @Nullable LocalDate day(Path folder, PhotoFile file, Head head) {
    LocalDateTime taken = file.taken();
    try {
      taken = taken == null ? Exif.of(PhotoLoader.load(folder, file.path())).taken(head) : taken;
    } catch (IOException e) {
      // That it cannot be read is said when the album is opened.
    }
    return taken == null ? Matching.dayInName(file.path()) : taken.toLocalDate();
  }

  /** Reads metadata of all photographs, new ones on all cores, and links each to its entry. */
  public static Album open(Log log, PhotoProgress progress) {
    return new AlbumOpening(log).open(progress);
  }
}

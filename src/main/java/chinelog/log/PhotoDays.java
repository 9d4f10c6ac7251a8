package chinelog.log;

import chinelog.log.records.Head;
import chinelog.log.records.PhotoFile;
import java.nio.file.Path;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Tells when photographs were taken; opening their files is not the business of this package. */
@FunctionalInterface
public interface PhotoDays {

  /** For those who only want what is written. */
  PhotoDays UNKNOWN = (folder, photo, head) -> null;

  /**
   * The day on which a photograph was taken, or null if neither photos.yaml nor its file tells.
   *
   * @param folder of the log
   * @param head whose zone and clocks put the camera's time right
   */
  @Nullable LocalDate find(Path folder, PhotoFile photo, Head head);
}

package chinelog.keep;

import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;

/** A copy that is still being written. It becomes a bag (RFC 8493) when it is finished. */
sealed interface Bag permits FolderBag, ZipBag {

  /**
   * @param suggestion a name that is likely to be free
   * @throws ProblemException if something stands in its place that is no unfinished copy
   */
  void requireFree(String suggestion) throws IOException;

  /** Writes all, and sees to it that the disk has it. */
  void write(SortedMap<String, byte[]> tags, List<KeptFile> files, Keep.Progress progress)
      throws IOException;

  /** Reads back what was written. */
  Keep.Checked check(Keep.Progress progress) throws IOException;

  /** Gives the verified copy its name. */
  void finish() throws IOException;

  /** Removes what can be of no use for another attempt. */
  void abandon() throws IOException;

  static ProblemException taken(Path place, String suggestion) {
    return new ProblemException(
        Place.of(place.toString()),
        "This is there already, and nothing of yours is overwritten.",
        Sentence.of("Name a new folder or zip, such as \u201c{0}\u201d.", suggestion));
  }

  /**
   * @param folder that the copy comes to lie in
   * @throws ProblemException if its disk has no room for so many bytes
   */
  static void requireRoom(Path folder, Path place, long bytes) throws IOException {
    FileStore disk = Files.getFileStore(folder);
    long free = disk.getUsableSpace();
    if (disk.getTotalSpace() > 0 && free < bytes) {
      throw new ProblemException(
          Place.of(place.toString()),
          Sentence.of(
              "The disk is full: the copy takes {0}, and {1} are free.", mega(bytes), mega(free)),
          "Make room on it, or name a place on another; then run this again.");
    }
  }

  /** Such as {@code 12.3 MB}; a megabyte has 1,000,000 bytes. */
  private static String mega(long bytes) {
    return String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
  }
}

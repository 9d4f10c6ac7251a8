package chinelog.desk.files;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Set;

/** Which files may be read and written: plain files of the log, reached through no link. */
final class Bounds {

  /** What the program makes itself. */
  static final Set<String> MADE = Set.of("published", "records", "workshop");

  private final Path folder;

  Bounds(Path folder) {
    this.folder = folder;
  }

  /** The path below the folder, with '/' between its parts. */
  String name(Path file) {
    return folder.relativize(folder.resolve(file).normalize()).toString().replace('\\', '/');
  }

  /**
   * The file itself.
   *
   * @throws ProblemException if it lies outside of the log, is made by the program, or is reached
   *     through a link
   */
  Path require(Path file) throws IOException {
    Path inside = folder.resolve(file).normalize();
    String name = name(file);
    if (!inside.startsWith(folder) || inside.equals(folder)) {
      throw refused(name, "This file does not lie in the log's folder.");
    }
    Path below = folder.relativize(inside);
    for (Path part : below) {
      if (part.toString().startsWith(".")) {
        throw refused(name, "Files whose names begin with a stop are no part of a log.");
      }
    }
    if (MADE.contains(below.getName(0).toString())) {
      throw refused(name, "This file is made by the program, and made anew when you publish.");
    }
    Path at = folder;
    for (Path part : below) {
      at = at.resolve(part);
      if (Files.isSymbolicLink(at)) {
        throw refused(name, "This is a link to somewhere else.");
      }
    }
    if (Files.exists(inside, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(inside)) {
      throw refused(name, "This is no file.");
    }
    return inside;
  }

  private static ProblemException refused(String name, String what) {
    return new ProblemException(
        Problem.error(
            Place.of(name), what, "Choose a file of the log itself, such as entries/….md."));
  }
}

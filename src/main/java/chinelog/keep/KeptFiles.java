package chinelog.keep;

import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The files of a log that cannot be made again.
 *
 * <p>All that chinelog does not make itself is one of them, whether it reads it or not: a maker's
 * own files beside the notes, or the history that version control keeps, are as dear.
 *
 * @param files by path below the log's folder, with '/' between its parts
 * @param leftOut how many files can be made again, by folder
 */
record KeptFiles(SortedMap<String, Path> files, SortedMap<String, Integer> leftOut) {

  /** Caches, and editions: the log makes both again. */
  private static final Set<String> MADE_AGAIN = Set.of(".chinelog", "published");

  /**
   * @throws ProblemException if something in the folder cannot be copied
   */
  static KeptFiles of(Path log) throws IOException {
    SortedMap<String, Path> files = new TreeMap<>();
    SortedMap<String, Integer> leftOut = new TreeMap<>();
    Files.walkFileTree(
        log,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            List<String> parts = new ArrayList<>();
            log.relativize(file).forEach(part -> parts.add(part.toString()));
            String name = String.join("/", parts);
            if (isMadeAgain(log, parts)) {
              leftOut.merge(parts.get(0), 1, Integer::sum);
            } else {
              requirePlain(name, attributes);
              files.put(name, file);
            }
            return FileVisitResult.CONTINUE;
          }
        });
    return new KeptFiles(files, leftOut);
  }

  /** Of a folder "workshop", only the editions that chinelog recorded can be made again. */
  private static boolean isMadeAgain(Path log, List<String> parts) {
    return MADE_AGAIN.contains(parts.get(0)) && parts.size() > 1
        || parts.get(0).equals("workshop")
            && parts.size() > 2
            && Files.isDirectory(log.resolve("records").resolve(parts.get(1)));
  }

  private static void requirePlain(String name, BasicFileAttributes attributes)
      throws ProblemException {
    if (attributes.isSymbolicLink()) {
      throw new ProblemException(
          Place.of(name),
          "This is a link to somewhere else, and a copy would not hold what it leads to.",
          "Put the file itself here, so that the log is whole.");
    }
    if (!attributes.isRegularFile()) {
      throw new ProblemException(
          Place.of(name), "This is neither a file nor a folder.", "Remove it.");
    }
    if (name.indexOf('\ufffd') >= 0) {
      throw new ProblemException(
          Place.of(name),
          "The name of this file holds characters that cannot be used.",
          "Rename it, with letters, digits, spaces and hyphens.");
    }
  }
}

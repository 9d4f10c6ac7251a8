package chinelog.audit;

import chinelog.problem.Sentence;
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
import java.util.TreeSet;

/** The files that stand below a folder, held against those that should. */
final class FileSet {

  private FileSet() {}

  /** Regular files by their path below {@code folder}; anything amiss goes to {@code findings}. */
  static SortedMap<String, Path> list(Path folder, Set<String> expected, List<Finding> findings)
      throws IOException {
    SortedMap<String, Path> files = new TreeMap<>();
    List<Finding> amiss = new ArrayList<>();
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
            if (!dir.equals(folder)) {
              String name = name(dir);
              if (hasOddName(dir)) {
                amiss.add(finding(name, Sentence.of("This folder is not the edition's.")));
              } else if (expected.stream().noneMatch(f -> f.startsWith(name + "/"))) {
                amiss.add(finding(name, Sentence.of("This folder holds nothing of the edition.")));
              }
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            String name = name(file);
            if (!attributes.isRegularFile()) {
              amiss.add(finding(name, Sentence.of("This is a link or a device, not a file.")));
            } else {
              if (hasOddName(file)) {
                amiss.add(
                    finding(
                        name, Sentence.of("A file of this name does not belong in an edition.")));
              }
              if (!expected.contains(name)) {
                amiss.add(finding(name, Sentence.of("The edition did not write this file.")));
              }
              files.put(name, file);
            }
            return FileVisitResult.CONTINUE;
          }

          private String name(Path path) {
            StringBuilder name = new StringBuilder();
            folder.relativize(path).forEach(p -> name.append(name.isEmpty() ? "" : "/").append(p));
            return name.toString();
          }
        });
    for (String name : new TreeSet<>(expected)) {
      if (!files.containsKey(name)) {
        amiss.add(finding(name, Sentence.of("The edition wrote this file, but it is not there.")));
      }
    }
    findings.addAll(amiss);
    return files;
  }

  /** Dot files, editors' copies, and names that some systems change or cannot hold. */
  private static boolean hasOddName(Path path) {
    return !path.getFileName().toString().matches("[A-Za-z0-9_][A-Za-z0-9_.+-]*")
        || path.getFileName()
            .toString()
            .matches("(?i).*(\\.bak|\\.tmp|\\.orig|\\.swp|thumbs\\.db)");
  }

  private static Finding finding(String file, Sentence what) {
    return new Finding(file, Sentence.of("the folder"), what);
  }
}

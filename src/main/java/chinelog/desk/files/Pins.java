package chinelog.desk.files;

import chinelog.digest.Sha256;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;

/**
 * Pins regions to the files that they were drawn on, where their maker has not: the digest of the
 * photograph as it is now is written beside them. What cannot be pinned stays as it is, and the
 * reading of the log then says so and stops the publishing.
 */
public final class Pins {

  private static final String REMARKS = "photos.yaml";

  private Pins() {}

  /**
   * Pins all regions of a log that are pinned to no file yet.
   *
   * @return a reminder for each photograph that was pinned, by place
   * @throws IOException if the folder cannot be gone through
   */
  public static List<Problem> pin(Path folder) throws IOException {
    Path log = folder.toRealPath();
    List<Path> remarks = new ArrayList<>();
    Files.walkFileTree(
        log,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path inside, BasicFileAttributes attributes) {
            String name = log.relativize(inside).toString();
            boolean over =
                !inside.equals(log)
                    && (String.valueOf(inside.getFileName()).startsWith(".")
                        || Bounds.MADE.contains(name));
            return over ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (attributes.isRegularFile() && file.endsWith(REMARKS)) {
              remarks.add(log.relativize(file));
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException e) {
            // The reader of the log says what is wrong with it.
            return FileVisitResult.CONTINUE;
          }
        });
    remarks.sort(null);
    List<Problem> pinned = new ArrayList<>();
    for (Path file : remarks) {
      try {
        pinned.addAll(pin(log, file));
      } catch (IOException e) {
        // Regions that are not pinned stop the publishing, and the reader says why.
      }
    }
    return pinned;
  }

  private static List<Problem> pin(Path log, Path file) throws IOException {
    Bounds bounds = new Bounds(log);
    Path remarks = bounds.require(file);
    byte[] before = Files.readAllBytes(remarks);
    FileVersion version = FileVersion.of(bounds.name(file), before);
    if (!version.utf8() || !version.text().contains("regions")) {
      return List.of();
    }
    YamlText yaml = YamlText.of(version);
    List<Problem> pinned = new ArrayList<>();
    for (String photo : yaml.keys(List.of())) {
      List<String> pin = List.of(photo, "sha256");
      if (yaml.size(List.of(photo, "regions")) > 0 && !yaml.has(pin)) {
        Path picture = picture(bounds, file.resolveSibling(photo));
        yaml = yaml.with(pin, YamlValue.text(digest(picture)));
        pinned.add(reminder(version.path(), bounds.name(log.relativize(picture))));
      }
    }
    Disk disk = new Disk();
    Path beside = remarks.resolveSibling("." + REMARKS + ".next");
    if (!pinned.isEmpty()) {
      try {
        disk.write(beside, yaml.text().getBytes(StandardCharsets.UTF_8));
        if (!FileVersion.of(version.path(), Files.readAllBytes(remarks)).equals(version)) {
          return List.of();
        }
        disk.swap(beside, remarks);
      } finally {
        disk.drop(beside);
      }
    }
    return pinned;
  }

  private static Path picture(Bounds bounds, Path photo) throws IOException {
    Path picture = bounds.require(photo);
    if (!Files.isRegularFile(picture, LinkOption.NOFOLLOW_LINKS)) {
      throw new ProblemException(
          Problem.error(
              Place.of(bounds.name(photo)), "There is no such photograph.", "Correct the name."));
    }
    return picture;
  }

  private static String digest(Path picture) throws IOException {
    try (InputStream in = Files.newInputStream(picture)) {
      return Sha256.of(in);
    }
  }

  private static Problem reminder(String remarks, String photo) {
    return Problem.reminder(
        Place.of(remarks),
        Sentence.of(
            "The regions of {0} are pinned to it as it is now; its sha256 was written" + " here.",
            photo),
        "If it was altered after they were drawn, see that they lie right.");
  }
}

package chinelog.log;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Lays down a new log that teaches how to write one. */
public final class NewLog {

  private NewLog() {}

  /**
   * Writes log.yaml, facts.yaml, stock.yaml, quotation.yaml, photos.yaml, a first entry of today,
   * and the folders photos and sheets, all of which read without an error. Between them they show
   * every key there is, most of them as remarks.
   *
   * @param folder made if it is not there
   * @throws FileAlreadyExistsException if it is a file
   * @throws DirectoryNotEmptyException if anything is in it; nothing is written then
   * @throws IOException if it cannot be written
   */
  public static void layDown(Path folder, LocalDate today) throws IOException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new FileAlreadyExistsException(folder.toString());
    }
    Files.createDirectories(folder);
    if (findAnything(folder).isPresent()) {
      throw new DirectoryNotEmptyException(folder.toString());
    }
    for (String part : new String[] {"entries", "photos", "sheets"}) {
      Files.createDirectory(folder.resolve(part));
    }
    Map<String, String> files = new LinkedHashMap<>();
    files.put("log.yaml", "log.yaml");
    files.put("facts.yaml", "facts.yaml");
    files.put("stock.yaml", "stock.yaml");
    files.put("quotation.yaml", "quotation.yaml");
    files.put("photos/photos.yaml", "photos/photos.yaml");
    files.put("entries/first.md", "entries/" + today + "-the-log-is-begun.md");
    for (Map.Entry<String, String> file : files.entrySet()) {
      try (InputStream in =
          NewLog.class.getResourceAsStream("/chinelog/new-log/" + file.getKey())) {
        if (in == null) {
          throw new IllegalStateException("the resource " + file.getKey() + " is missing");
        }
        Files.copy(in, folder.resolve(file.getValue()));
      }
    }
  }

  private static Optional<Path> findAnything(Path folder) throws IOException {
    try (Stream<Path> children = Files.list(folder)) {
      return children.findAny();
    }
  }
}

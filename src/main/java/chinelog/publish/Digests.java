package chinelog.publish;

import chinelog.digest.ContentHash;
import chinelog.digest.Sha256;
import chinelog.edition.Picture;
import chinelog.photo.FileStamp;
import chinelog.withhold.PictureFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;

/**
 * The SHA-256 of files, read once and then remembered in the log's private cache for as long as a
 * file's stamp stays the same. May be used from several threads.
 */
final class Digests {

  private static final String HEAD = "digests 1";
  private static final String SEPARATOR = "\t";

  private final Path log;
  private final Path kept;
  private final Map<String, Known> before = new ConcurrentHashMap<>();
  private final Map<String, Known> now = new ConcurrentHashMap<>();

  /** Names of the files that were read this time, by size. */
  private final Map<Long, Queue<String>> read = new ConcurrentHashMap<>();

  /** Names of the files that were asked for, by size. */
  private final Map<Long, Queue<String>> asked = new ConcurrentHashMap<>();

  private record Known(FileStamp stamp, String sha256) {}

  private Digests(Path log) {
    this.log = log;
    this.kept = log.resolve(".chinelog").resolve("digests");
  }

  static Digests open(Path log) throws IOException {
    Digests digests = new Digests(log);
    List<String> lines = CacheLines.read(digests.kept);
    if (!lines.isEmpty() && lines.get(0).equals(HEAD)) {
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(SEPARATOR, -1);
        digests.before.put(cells[2], new Known(new FileStamp(cells[1], 0), cells[0]));
      }
    }
    return digests;
  }

  /** The SHA-256 of a file below the log's folder, in hexadecimal. */
  String of(Path file) throws IOException {
    String name = log.relativize(file).toString();
    Known known = now.get(name);
    if (known != null) {
      return known.sha256;
    }
    FileStamp stamp = FileStamp.of(file);
    known = before.get(name);
    if (known == null || !known.stamp.text().equals(stamp.text())) {
      try (InputStream in = Files.newInputStream(file)) {
        known = new Known(stamp, Sha256.of(in));
      }
      read.computeIfAbsent(Files.size(file), size -> new ConcurrentLinkedQueue<>()).add(name);
    } else {
      known = new Known(stamp, known.sha256);
    }
    if (now.put(name, known) == null) {
      asked.computeIfAbsent(Files.size(file), size -> new ConcurrentLinkedQueue<>()).add(name);
    }
    return known.sha256;
  }

  /** The SHA-256 of a file that was asked for and holds these very bytes; null if there is none. */
  @Nullable String find(byte[] bytes) throws IOException {
    for (String name : asked.getOrDefault((long) bytes.length, new ConcurrentLinkedQueue<>())) {
      Path file = log.resolve(name);
      Known known = now.get(name);
      if (known != null
          && known.stamp.equals(FileStamp.of(file))
          && Arrays.equals(bytes, Files.readAllBytes(file))) {
        return known.sha256;
      }
    }
    return null;
  }

  /**
   * The SHA-256 of a file that may be a copy of one that was read this time: to compare the two is
   * quicker.
   */
  String ofCopy(Path copy) throws IOException {
    for (String name : read.getOrDefault(Files.size(copy), new ConcurrentLinkedQueue<>())) {
      Path file = log.resolve(name);
      Known known = now.get(name);
      if (known != null
          && known.stamp.equals(FileStamp.of(file))
          && Files.mismatch(file, copy) < 0) {
        return known.sha256;
      }
    }
    try (InputStream in = Files.newInputStream(copy)) {
      return Sha256.of(in);
    }
  }

  /** The SHA-256 of the bytes of a picture. */
  String of(Picture.Bytes jpeg) throws IOException {
    if (jpeg instanceof PictureFile kept) {
      return of(kept.file());
    }
    try (InputStream in = jpeg.open()) {
      return Sha256.of(in);
    }
  }

  /** Digests of what editions hold, pictures by their bytes. */
  ContentHash ofEditions() {
    return new ContentHash(value -> value instanceof Picture.Bytes jpeg ? ofPicture(jpeg) : null);
  }

  private String ofPicture(Picture.Bytes jpeg) {
    try {
      return of(jpeg);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Remembers what is certain: a file written a moment ago may still change unseen. */
  void save() throws IOException {
    Path fresh = Files.createTempFile(Files.createDirectories(kept.getParent()), "now", ".new");
    long sure = FileStamp.of(fresh).changedMillis() - FileStamp.UNSURE_MILLIS;
    Files.delete(fresh);
    List<String> lines = new ArrayList<>();
    now.forEach(
        (name, known) -> {
          if (known.stamp.changedMillis() < sure
              && name.chars().noneMatch(Character::isISOControl)) {
            lines.add(known.sha256 + SEPARATOR + known.stamp.text() + SEPARATOR + name);
          }
        });
    before.forEach(
        (name, known) -> {
          if (!now.containsKey(name) && Files.isRegularFile(log.resolve(name))) {
            lines.add(known.sha256 + SEPARATOR + known.stamp.text() + SEPARATOR + name);
          }
        });
    lines.sort(null);
    lines.add(0, HEAD);
    CacheLines.write(kept, lines);
  }
}

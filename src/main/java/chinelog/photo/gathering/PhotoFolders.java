package chinelog.photo.gathering;

import chinelog.digest.Sha256;
import chinelog.photo.FileStamp;
import chinelog.photo.album.Exposure;
import chinelog.photo.album.PhotoIndex;
import chinelog.photo.pixels.PhotoKind;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The photographs a log holds already, and the way new ones get among them. */
final class PhotoFolders {

  private static final String PART = ".part";

  /** In bytes of UTF-8; most systems allow 255, with what is put before and after. */
  private static final int LONGEST_NAME = 200;

  private final Path log;
  private final Path parts;
  private final boolean dry;
  private final Map<String, String> byHash = new HashMap<>();

  /** In lower case, as some systems do not tell names apart by case. */
  private final Set<String> names = new HashSet<>();

  /**
   * @param dry whether nothing is to be written
   */
  PhotoFolders(Path log, boolean dry) throws IOException {
    this.log = log;
    this.parts = log.resolve(".chinelog").resolve("gather");
    this.dry = dry;
    PhotoIndex index = PhotoIndex.open(log);
    for (Path file : files(log.resolve("photos"))) {
      String path = log.relativize(file).toString().replace('\\', '/');
      Exposure known = index.find(path, FileStamp.of(file).text());
      String sha256 = known == null ? Sha256.of(Files.readAllBytes(file)) : known.sha256();
      byHash.putIfAbsent(sha256, path);
      names.add(path.toLowerCase(Locale.ROOT));
    }
    if (!dry) {
      clearParts();
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> found = Files.walk(folder)) {
      return found.filter(p -> Files.isRegularFile(p, LinkOption.NOFOLLOW_LINKS)).sorted().toList();
    }
  }

  /** What a run that was cut short left half written. */
  private void clearParts() throws IOException {
    for (Path part : files(parts)) {
      if (part.toString().endsWith(PART)) {
        Files.delete(part);
      }
    }
  }

  Optional<String> find(String sha256) {
    return Optional.ofNullable(byHash.get(sha256));
  }

  /**
   * A path below the log's folder that is still free: under the file's own name, or with a number
   * where another picture has that name.
   *
   * @param folder such as {@code 2026-03-14}
   * @param kind of the picture, whose ending the name gets if it has none by which it would be read
   */
  String pathFor(String folder, String name, PhotoKind kind) {
    String safe = safe(name);
    boolean read = safe.matches("(?i).*[.](jpe?g|png|tiff?|webp|gif|heic)");
    return freePath("photos/" + folder + "/", read ? safe : safe + "." + kind.ending());
  }

  /**
   * Puts a file where {@link #pathFor} says.
   *
   * @throws IOException if what was written does not read back the same
   */
  void put(String path, byte[] bytes, String sha256) throws IOException {
    if (!dry) {
      copy(bytes, sha256, log.resolve(path));
    }
    names.add(path.toLowerCase(Locale.ROOT));
    byHash.put(sha256, path);
  }

  private String freePath(String folder, String name) {
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String ending = dot > 0 ? name.substring(dot) : "";
    String path = folder + name;
    for (int i = 2; names.contains(path.toLowerCase(Locale.ROOT)); i++) {
      path = folder + stem + "-" + i + ending;
    }
    return path;
  }

  private void copy(byte[] bytes, String sha256, Path target) throws IOException {
    Files.createDirectories(parts);
    Files.createDirectories(target.getParent());
    Path part = parts.resolve(sha256 + PART);
    try (FileChannel channel =
        FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(true);
    }
    if (!Sha256.of(Files.readAllBytes(part)).equals(sha256)) {
      throw new IOException("the copy does not read back as it was written: " + target);
    }
    // Never over a file that came there meanwhile.
    Files.move(part, target);
  }

  /** A file name that is one on every system, whatever a zip or card calls it. */
  static String safe(String name) {
    String base = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    String clean = base.replaceAll("[\\p{Cntrl}:*?\"<>|]", "_").replaceAll("^[.\\s]+|[.\\s]+$", "");
    while (clean.getBytes(StandardCharsets.UTF_8).length > LONGEST_NAME) {
      clean = clean.substring(clean.offsetByCodePoints(0, 1));
    }
    if (clean.matches("(?i)(con|prn|aux|nul|conin[$]|conout[$]|(com|lpt)[\\d¹²³])\\s*([.].*)?")) {
      clean = "_" + clean;
    }
    return clean.isEmpty() ? "photo" : clean;
  }
}

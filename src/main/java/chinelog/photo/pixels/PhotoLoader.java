package chinelog.photo.pixels;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** Reads photographs' files, whole and only from inside the log. */
public final class PhotoLoader {

  public static final long MOST_BYTES = 512L << 20;

  private PhotoLoader() {}

  /**
   * A file in memory.
   *
   * @param kind of the file
   * @param file its bytes
   * @param bytes as {@code decodable} says
   * @param decodable what {@code bytes} hold: {@code kind}, but PNG for HEIF
   */
  public record Loaded(
      String sha256, PhotoKind kind, byte[] file, byte[] bytes, PhotoKind decodable) {}

  public static byte[] bytes(Path folder, String path) throws IOException {
    Path file = inside(folder, path);
    if (Files.size(file) > MOST_BYTES) {
      throw new UnusablePhoto(
          "The file is larger than any picture.", "Save a smaller copy, or move it away.");
    }
    return Files.readAllBytes(file);
  }

  public static Loaded load(Path folder, String path) throws IOException {
    byte[] bytes = bytes(folder, path);
    PhotoKind kind = PhotoKind.of(path, bytes);
    String sha256 = Sha256.of(bytes);
    return kind == PhotoKind.HEIF
        ? new Loaded(sha256, kind, bytes, Heif.toPng(bytes), PhotoKind.PNG)
        : new Loaded(sha256, kind, bytes, bytes, kind);
  }

  /**
   * A regular file below the folder, with no link on the way that leads out of it.
   *
   * @throws UnusablePhoto if it is anything else
   */
  public static Path inside(Path folder, String path) throws IOException {
    Path file = folder.resolve(path).normalize();
    if (!file.startsWith(folder.normalize())
        || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        || !file.toRealPath().startsWith(folder.toRealPath())) {
      throw new UnusablePhoto(
          "This is not a file that lies in the log itself.",
          "Put a copy of the photograph here instead of a link.");
    }
    return file;
  }
}

package chinelog.photo.album;

import chinelog.digest.Sha256;
import chinelog.photo.FileStamp;
import chinelog.photo.Leftovers;
import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.PhotoKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Remembers what photographs' files told, so that an unchanged file is not read again.
 *
 * <p>A text file of one line per photograph: its path, a stamp that changes with the file, and the
 * exposure, set apart by tabs; the last line is the SHA-256 of those before it. It may be deleted
 * at any time, and a damaged one counts for nothing.
 */
public final class PhotoIndex {

  private static final String HEADING = "chinelog photographs 2";

  private final Path file;
  private final SortedMap<String, Line> lines;

  private PhotoIndex(Path file, SortedMap<String, Line> lines) {
    this.file = file;
    this.lines = lines;
  }

  private record Line(String stamp, Exposure exposure) {}

  public static PhotoIndex open(Path folder) {
    Path file = folder.resolve(".chinelog").resolve("photos.index");
    try {
      return new PhotoIndex(file, read(file));
    } catch (IOException | DateTimeException | IllegalArgumentException e) {
      return new PhotoIndex(file, new TreeMap<>());
    }
  }

  /** What an unchanged file told, null where it has to be asked. */
  public @Nullable Exposure find(String path, String stamp) {
    Line line = lines.get(path);
    return line != null && line.stamp.equals(stamp) ? line.exposure : null;
  }

  /**
   * Notes what a file told; {@code stamp} was taken before the file was read, so that a change
   * while it was read shows.
   */
  void note(String path, String stamp, Exposure exposure) {
    lines.put(path, new Line(stamp, exposure));
  }

  /** Writes the index; where that cannot be done the next run reads the files again. */
  void save(Set<String> paths) {
    lines.keySet().retainAll(paths);
    StringBuilder text = new StringBuilder(HEADING).append('\n');
    lines.forEach((path, line) -> text.append(write(path, line)).append('\n'));
    text.append(Sha256.of(text.toString()));
    try {
      Files.createDirectories(file.getParent());
      Path fresh = Files.createTempFile(file.getParent(), "photos", ".new");
      Leftovers.clear(fresh, "photos", ".new");
      Files.writeString(fresh, text);
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      // A log that can only be read is no reason to stop.
      lines.clear();
    }
  }

  private static SortedMap<String, Line> read(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      return new TreeMap<>();
    }
    long sure = Files.getLastModifiedTime(file).toMillis() - FileStamp.UNSURE_MILLIS;
    String text = Files.readString(file);
    int body = text.lastIndexOf('\n') + 1;
    String sum = Sha256.of(text.substring(0, body));
    if (!text.startsWith(HEADING + "\n") || !text.substring(body).equals(sum)) {
      return new TreeMap<>();
    }
    SortedMap<String, Line> lines = new TreeMap<>();
    List<String> all = text.substring(0, body).lines().toList();
    for (String line : all.subList(1, all.size())) {
      String[] cells = line.split("\t", -1);
      String[] times = cells[1].split(" ");
      long latest = Math.max(Long.parseLong(times[1]), Long.parseLong(times[2]));
      if (TimeUnit.NANOSECONDS.toMillis(latest) < sure) {
        lines.put(plain(cells[0]), new Line(cells[1], exposure(cells)));
      }
    }
    return lines;
  }

  private static String write(String path, Line line) {
    Exposure e = line.exposure;
    Exif exif = e.exif();
    return String.join(
        "\t",
        escaped(path),
        line.stamp,
        e.sha256(),
        e.kind().name(),
        Integer.toString(e.widthPx()),
        Integer.toString(e.heightPx()),
        Integer.toString(exif.orientation().tag()),
        Boolean.toString(exif.orientationDoubtful()),
        exif.clock() == null ? "" : exif.clock().toString(),
        exif.offset() == null ? "" : exif.offset().toString(),
        escaped(exif.camera()),
        escaped(exif.written().caption()),
        escaped(exif.written().alt()));
  }

  private static Exposure exposure(String[] cells) {
    return new Exposure(
        cells[2],
        PhotoKind.valueOf(cells[3]),
        Integer.parseInt(cells[4]),
        Integer.parseInt(cells[5]),
        new Exif(
            Orientation.of(Integer.parseInt(cells[6])),
            Boolean.parseBoolean(cells[7]),
            cells[8].isEmpty() ? null : LocalDateTime.parse(cells[8]),
            cells[9].isEmpty() ? null : ZoneOffset.of(cells[9]),
            plain(cells[10]),
            new Written(plain(cells[11]), plain(cells[12]))));
  }

  private static String escaped(String text) {
    return text.replace("%", "%25").replace("\t", "%09").replace("\n", "%0A").replace("\r", "%0D");
  }

  private static String plain(String text) {
    return text.replace("%0D", "\r").replace("%0A", "\n").replace("%09", "\t").replace("%25", "%");
  }
}

package chinelog.keep;

import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.ProviderNotFoundException;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A copy in a zip, whose one folder is named like the zip (RFC 8493, section 4).
 *
 * <p>Photographs do not shrink, and what is merely stored can be saved from a torn zip: so nothing
 * is compressed.
 */
final class ZipBag implements Bag {

  /** As every zip has it, it counts from 1980. */
  private static final LocalDateTime FIRST_TIME = LocalDate.of(1980, 1, 1).atStartOfDay();

  private final Path zip;
  private final Path part;

  ZipBag(Path zip) {
    this.zip = zip;
    this.part = part(zip);
  }

  /** Where a zip is made before it gets its name. */
  static Path part(Path zip) {
    return zip.resolveSibling(zip.getFileName() + ".part");
  }

  private String base() {
    return Keep.baseName(zip) + "/";
  }

  @Override
  public void requireFree(String suggestion) throws IOException {
    if (Files.exists(zip, LinkOption.NOFOLLOW_LINKS)) {
      throw Bag.taken(zip, zip.resolveSibling(suggestion + ".zip").toString());
    }
    if (Files.exists(part, LinkOption.NOFOLLOW_LINKS) && !isUnfinished()) {
      throw Bag.taken(part, zip.resolveSibling(suggestion + ".zip").toString());
    }
  }

  /** Whether it begins as a zip of ours would: APPNOTE 4.3.7, the name after 30 bytes. */
  private boolean isUnfinished() throws IOException {
    byte[] name = base().getBytes(StandardCharsets.UTF_8);
    byte[] head;
    try (InputStream in = Files.newInputStream(part)) {
      head = in.readNBytes(ZipOutputStream.LOCHDR + name.length);
    }
    return head.length == 0
        || head.length == ZipOutputStream.LOCHDR + name.length
            && Arrays.equals(head, ZipOutputStream.LOCHDR, head.length, name, 0, name.length);
  }

  @Override
  public void write(SortedMap<String, byte[]> tags, List<KeptFile> files, Keep.Progress progress)
      throws IOException {
    Path parent = zip.getParent();
    Path folder = Files.createDirectories(parent == null ? zip.getRoot() : parent);
    Files.deleteIfExists(part);
    long bytes = files.stream().mapToLong(f -> f.size() + entryBytes(f.inBag())).sum();
    bytes +=
        tags.entrySet().stream().mapToLong(t -> t.getValue().length + entryBytes(t.getKey())).sum();
    Bag.requireRoom(folder, zip, bytes);
    boolean whole = false;
    try (FileChannel channel =
        FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
      ZipOutputStream entries = new ZipOutputStream(out, StandardCharsets.UTF_8);
      for (var tag : tags.entrySet()) {
        CRC32 crc = new CRC32();
        crc.update(tag.getValue());
        FileTime none = FileTime.from(FIRST_TIME.toInstant(ZoneOffset.UTC));
        begin(entries, tag.getKey(), tag.getValue().length, crc.getValue(), none);
        entries.write(tag.getValue());
      }
      int done = 0;
      for (KeptFile file : files) {
        begin(entries, file.inBag(), file.size(), file.crc32(), file.modified());
        file.copyTo(entries);
        progress.done(++done, files.size());
      }
      entries.finish();
      out.flush();
      channel.force(true);
      whole = true;
    } finally {
      if (!whole) {
        Files.deleteIfExists(part);
      }
    }
  }

  /** What a zip takes for a file besides its bytes, at most. */
  private long entryBytes(String name) {
    return 2L * (base().length() + 3L * name.length()) + 160;
  }

  private void begin(ZipOutputStream entries, String name, long size, long crc32, FileTime modified)
      throws IOException {
    ZipEntry entry = new ZipEntry(base() + name);
    entry.setMethod(ZipEntry.STORED);
    entry.setSize(size);
    entry.setCrc(crc32);
    LocalDateTime time = LocalDateTime.ofInstant(modified.toInstant(), ZoneOffset.UTC);
    entry.setTimeLocal(time.isBefore(FIRST_TIME) ? FIRST_TIME : time);
    long seconds = modified.toInstant().getEpochSecond();
    if (seconds == (int) seconds) {
      entry.setExtra(universalTime((int) seconds));
    }
    entries.putNextEntry(entry);
  }

  /**
   * The extra field "UT": without it the time of a file would be read in the zone of whoever
   * unpacks, and written in that of this machine.
   */
  private static byte[] universalTime(int seconds) {
    ByteBuffer field = ByteBuffer.allocate(9).order(ByteOrder.LITTLE_ENDIAN);
    return field.putShort((short) 0x5455).putShort((short) 5).put((byte) 1).putInt(seconds).array();
  }

  @Override
  public Keep.Checked check(Keep.Progress progress) throws IOException {
    return check(part, zip, progress);
  }

  /**
   * @param named as it is called in problems
   */
  static Keep.Checked check(Path zip, Path named, Keep.Progress progress) throws IOException {
    try (FileSystem inside = FileSystems.newFileSystem(zip, Map.<String, Object>of());
        Stream<Path> top = Files.list(inside.getPath("/"))) {
      List<Path> folders = top.filter(Files::isDirectory).toList();
      Path bag = folders.size() == 1 ? folders.get(0) : inside.getPath("/");
      return BagCheck.check(bag, named, progress);
    } catch (ProblemException e) {
      throw e;
    } catch (IOException | ProviderNotFoundException e) {
      throw new ProblemException(
          Place.of(named.toString()),
          "This is no whole zip: it was cut short, damaged, or never was one.",
          "Use another copy, and make a new one of the log.",
          e);
    }
  }

  @Override
  public void finish() throws IOException {
    Files.move(part, zip);
  }

  @Override
  public void abandon() throws IOException {
    Files.deleteIfExists(part);
  }
}

package chinelog.keep;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;

/**
 * A copy in a folder.
 *
 * <p>A file in it says that it is unfinished, from before anything else is written until all has
 * been read back. Another attempt goes on from there.
 */
final class FolderBag implements Bag {

  static final String UNFINISHED = "unfinished.txt";

  private static final String NOTE =
      "This copy of a log is not finished. Run chinelog keep again with the same folder.\n";

  private final Path folder;

  FolderBag(Path folder) {
    this.folder = folder;
  }

  @Override
  public void requireFree(String suggestion) throws IOException {
    if (Files.isDirectory(folder)) {
      if (!isEmpty() && !Files.isRegularFile(folder.resolve(UNFINISHED))) {
        throw Bag.taken(folder, folder.resolve(suggestion).toString());
      }
    } else if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      throw Bag.taken(folder, folder.resolveSibling(suggestion).toString());
    }
  }

  private boolean isEmpty() throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  @Override
  public void write(SortedMap<String, byte[]> tags, List<KeptFile> files, Keep.Progress progress)
      throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve(UNFINISHED), NOTE, StandardCharsets.UTF_8);
    long missing = tags.values().stream().mapToLong(bytes -> bytes.length).sum();
    for (KeptFile file : files) {
      missing += isThere(file) ? 0 : file.size();
    }
    Bag.requireRoom(folder, folder, missing);
    int done = 0;
    for (KeptFile file : files) {
      Path copy = folder.resolve(file.inBag());
      if (!isThere(file) || !KeptFile.of(file.name(), copy).sha256().equals(file.sha256())) {
        Files.createDirectories(copy.getParent());
        write(copy, file::copyTo);
      }
      Files.setLastModifiedTime(copy, file.modified());
      progress.done(++done, files.size());
    }
    for (var tag : tags.entrySet()) {
      write(folder.resolve(tag.getKey()), out -> out.write(tag.getValue()));
    }
  }

  private boolean isThere(KeptFile file) throws IOException {
    Path copy = folder.resolve(file.inBag());
    return Files.isRegularFile(copy, LinkOption.NOFOLLOW_LINKS) && Files.size(copy) == file.size();
  }

  /** What writes a file's bytes. */
  private interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  private static void write(Path file, Content content) throws IOException {
    Files.deleteIfExists(file);
    try (FileChannel channel =
            FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        OutputStream out = Channels.newOutputStream(channel)) {
      content.writeTo(out);
      channel.force(true);
    }
  }

  @Override
  public Keep.Checked check(Keep.Progress progress) throws IOException {
    return BagCheck.checkUnfinished(folder, progress);
  }

  @Override
  public void finish() throws IOException {
    Files.delete(folder.resolve(UNFINISHED));
  }

  /** What is there, and right, need not be copied again. */
  @Override
  public void abandon() {}
}

package chinelog.desk.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;

/** Writes that have reached the disk when they return; tests put one that fills up in its place. */
class Disk {

  /** The bytes into a new file, or over what stood in it. */
  void write(Path file, byte[] bytes) throws IOException {
    store(
        file,
        bytes,
        StandardOpenOption.CREATE,
        StandardOpenOption.TRUNCATE_EXISTING,
        StandardOpenOption.WRITE);
  }

  void append(Path file, byte[] bytes) throws IOException {
    store(file, bytes, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }

  /** Puts a file in another's place in one step: whoever looks finds the one or the other. */
  void swap(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    settle(to);
  }

  void delete(Path file) throws IOException {
    Files.delete(file);
    settle(file);
  }

  /** Takes away what was written on the way to something else. */
  void drop(Path file) throws IOException {
    Files.deleteIfExists(file);
  }

  /** Folders for what is nobody else's business. */
  static void makePrivate(Path folder) throws IOException {
    Files.createDirectories(folder);
    PosixFileAttributeView posix =
        Files.getFileAttributeView(folder, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    if (posix != null) {
      posix.setPermissions(PosixFilePermissions.fromString("rwx------"));
    }
  }

  private void store(Path file, byte[] bytes, OpenOption... options) throws IOException {
    try (FileChannel channel = FileChannel.open(file, options)) {
      ByteBuffer left = ByteBuffer.wrap(bytes);
      while (left.hasRemaining()) {
        channel.write(left);
      }
      force(channel);
    }
  }

  /** Waits until all has reached the disk. */
  void force(FileChannel channel) throws IOException {
    channel.force(true);
  }

  /** Has the folder's list of names written too, where the system lets a folder be opened. */
  private void settle(Path file) {
    Path parent = file.getParent();
    if (parent == null) {
      return;
    }
    try (FileChannel folder = FileChannel.open(parent, StandardOpenOption.READ)) {
      force(folder);
    } catch (IOException e) {
      // Windows opens no folders, and keeps their lists by itself.
    }
  }
}

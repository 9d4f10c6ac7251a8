package chinelog.desk;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;

/**
 * Tells in the log's private folder where the log is open, so that a second {@code open} finds the
 * first: an address that lets one browser in, readable by the maker alone. It holds as long as the
 * file beside it is locked.
 */
final class Doorplate implements Closeable {

  private final FileChannel held;
  private final Path file;

  private Doorplate(FileChannel held, Path file) {
    this.held = held;
    this.file = file;
  }

  private static Path folder(Path log) {
    return log.resolve(".chinelog").resolve("desk");
  }

  private static Path lock(Path log) {
    return folder(log).resolve("open");
  }

  private static Path plate(Path log) {
    return folder(log).resolve("address");
  }

  /** Where the log is open already, if it is. */
  static Optional<URI> find(Path log) throws IOException {
    if (!Files.isRegularFile(lock(log)) || !Files.isRegularFile(plate(log))) {
      return Optional.empty();
    }
    try (FileChannel channel = FileChannel.open(lock(log), StandardOpenOption.WRITE)) {
      if (channel.tryLock() != null) {
        return Optional.empty();
      }
    } catch (OverlappingFileLockException e) {
      // It is open in this very process.
    }
    return Optional.of(URI.create(Files.readString(plate(log)).strip()));
  }

  /**
   * @throws ProblemException if the log is open elsewhere
   */
  static Doorplate put(Path log) throws IOException {
    Files.createDirectories(folder(log));
    FileChannel channel =
        FileChannel.open(lock(log), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      if (channel.tryLock() != null) {
        return new Doorplate(channel, plate(log));
      }
    } catch (OverlappingFileLockException e) {
      // It is open in this very process.
    }
    channel.close();
    throw new ProblemException(
        Problem.error(
            Place.of(log.toString()),
            "This log is open already.",
            "Look for it among the pages of your browser."));
  }

  void write(URI address) {
    try {
      Path fresh = file.resolveSibling("address.new");
      Files.deleteIfExists(fresh);
      if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
        Files.createFile(
            fresh,
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      }
      Files.writeString(fresh, address.toString());
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(file);
    held.close();
  }
}

package chinelog.keep;

import chinelog.digest.Sha256;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.security.DigestOutputStream;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;

/**
 * A file of the log as it was when copying began.
 *
 * @param name path below the log's folder, with '/' between its parts
 * @param size in bytes
 * @param modified when it was last written
 * @param crc32 as a zip wants it
 */
record KeptFile(String name, Path path, long size, FileTime modified, String sha256, long crc32) {

  static KeptFile of(String name, Path path) throws IOException {
    FileTime modified = Files.getLastModifiedTime(path);
    CRC32 crc = new CRC32();
    Count size = new Count();
    String sha256;
    try (InputStream in = new CheckedInputStream(Files.newInputStream(path), crc)) {
      var digest = Sha256.digest();
      in.transferTo(new DigestOutputStream(size, digest));
      sha256 = Sha256.hex(digest.digest());
    }
    return new KeptFile(name, path, size.bytes, modified, sha256, crc.getValue());
  }

  /** Its name in the bag. */
  String inBag() {
    return "data/" + name;
  }

  /**
   * Copies its bytes.
   *
   * @throws ProblemException if they are no longer what they were
   */
  void copyTo(OutputStream out) throws IOException {
    var digest = Sha256.digest();
    try (InputStream in = Files.newInputStream(path)) {
      in.transferTo(new DigestOutputStream(out, digest));
    }
    if (!Sha256.hex(digest.digest()).equals(sha256)) {
      throw new ProblemException(
          Place.of(name),
          "This file was changed while it was copied.",
          "Let no other program write into the log, and run the same command again.");
    }
  }

  /** Counts bytes, and drops them. */
  private static final class Count extends OutputStream {

    private long bytes;

    @Override
    public void write(int b) {
      bytes++;
    }

    @Override
    public void write(byte[] b, int off, int len) {
      bytes += len;
    }
  }
}

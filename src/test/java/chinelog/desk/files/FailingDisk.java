package chinelog.desk.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Path;
import java.util.Arrays;

/** A disk that is full, or a process that is killed, at a chosen write, half of which is done. */
public final class FailingDisk extends Disk {

  /** Stands for the end of the process: nothing after it is done. */
  static final class Killed extends Error {
    private static final long serialVersionUID = 1;
  }

  private int left = Integer.MAX_VALUE;
  private boolean kill;
  private boolean shut;

  /** The files of a log on this disk. */
  public LogFiles open(Path log) throws IOException {
    return LogFiles.open(log, this);
  }

  /** From now on nothing can be written, for want of room. */
  public void fill() {
    shut = false;
    failAt(0, false);
  }

  /** From now on nothing may be written, for want of rights. */
  public void shut() {
    failAt(0, false);
    shut = true;
  }

  /**
   * @param at the write that fails, from 0; a full disk also fails all after it
   */
  void failAt(int at, boolean byKill) {
    left = at;
    kill = byKill;
  }

  public void mend() {
    shut = false;
    left = Integer.MAX_VALUE;
  }

  @Override
  void write(Path file, byte[] bytes) throws IOException {
    if (fails()) {
      super.write(file, Arrays.copyOf(bytes, bytes.length / 2));
      fail();
    }
    super.write(file, bytes);
  }

  @Override
  void append(Path file, byte[] bytes) throws IOException {
    if (fails()) {
      super.append(file, Arrays.copyOf(bytes, bytes.length / 2));
      fail();
    }
    super.append(file, bytes);
  }

  @Override
  void swap(Path from, Path to) throws IOException {
    if (fails()) {
      fail();
    }
    super.swap(from, to);
  }

  @Override
  void delete(Path file) throws IOException {
    if (fails()) {
      fail();
    }
    super.delete(file);
  }

  @Override
  void drop(Path file) throws IOException {
    // A full disk lets files go.
    if (kill && left < 0) {
      throw new Killed();
    }
    super.drop(file);
  }

  /** Tests need not wait for the disk. */
  @Override
  void force(FileChannel channel) {}

  private boolean fails() throws IOException {
    if (left < 0) {
      fail();
    }
    return left-- == 0;
  }

  private void fail() throws IOException {
    if (kill) {
      throw new Killed();
    }
    if (shut) {
      throw new AccessDeniedException("log");
    }
    throw new IOException("No space left on device");
  }
}

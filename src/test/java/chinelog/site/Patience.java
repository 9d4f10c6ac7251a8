package chinelog.site;

import java.io.IOException;

/** Waits for what a browser brings about, or another program. */
public final class Patience {

  private static final long LONGEST_NANOS = 30_000_000_000L;
  private static final int PAUSE_MILLIS = 15;

  private Patience() {}

  /** Something that comes to be so. */
  public interface Condition {

    boolean holds() throws IOException;
  }

  /** Waits until something is so, and returns whether it ever was. */
  public static boolean until(Condition condition) throws IOException {
    long end = System.nanoTime() + LONGEST_NANOS;
    while (!condition.holds()) {
      if (System.nanoTime() > end) {
        return false;
      }
      pause();
    }
    return true;
  }

  /** A moment for others. */
  public static void pause() {
    try {
      Thread.sleep(PAUSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}

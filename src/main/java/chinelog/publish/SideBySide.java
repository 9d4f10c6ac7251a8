package chinelog.publish;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/** Does the same for several things at a time, as many as there are cores and room for. */
final class SideBySide {

  /** What making one edition may take, its books apart. */
  private static final long ROOM_BYTES = 200L << 20;

  private SideBySide() {}

  interface Work<A, B> {
    B on(A a) throws IOException;
  }

  /** What comes of each thing, in their order; if one fails, so does all. */
  static <A, B> List<B> all(List<A> things, Work<A, B> work) throws IOException {
    long room = Math.max(1, Runtime.getRuntime().maxMemory() / ROOM_BYTES);
    int threads =
        (int) Math.min(Math.min(things.size(), room), Runtime.getRuntime().availableProcessors());
    List<B> results = new ArrayList<>();
    if (threads < 2) {
      for (A thing : things) {
        results.add(work.on(thing));
      }
      return results;
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<B>> futures = new ArrayList<>();
      for (A thing : things) {
        futures.add(pool.submit(() -> work.on(thing)));
      }
      for (Future<B> future : futures) {
        results.add(future.get());
      }
      return results;
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      if (e.getCause() instanceof RuntimeException ours) {
        throw ours;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } finally {
      finish(pool);
    }
  }

  /** Waits for what is still at work: its folders may be cleared away afterwards. */
  private static void finish(ExecutorService pool) {
    pool.shutdown();
    boolean interrupted = Thread.interrupted();
    while (!pool.isTerminated()) {
      try {
        if (pool.awaitTermination(1, TimeUnit.MINUTES)) {
          break;
        }
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}

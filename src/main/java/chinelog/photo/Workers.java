package chinelog.photo;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/** Spreads work over the cores; results come in the order of the questions. */
public final class Workers {

  private Workers() {}

  /** A piece of work. */
  public interface Work<A, B> {
    B on(A a) throws IOException;
  }

  /** Works on all cores. */
  public static <A, B> List<B> all(List<A> items, Work<A, B> work, PhotoProgress progress)
      throws IOException {
    return all(items, Runtime.getRuntime().availableProcessors(), work, progress);
  }

  /**
   * Works on so many items at a time; if one fails, so does all, once those at work are done.
   *
   * @throws IOException as thrown by the work, or if the thread that waits is interrupted
   */
  public static <A, B> List<B> all(
      List<A> items, int atATime, Work<A, B> work, PhotoProgress progress) throws IOException {
    List<B> results = new ArrayList<>(items.size());
    int threads = Math.min(items.size(), atATime);
    if (threads < 2) {
      for (A item : items) {
        results.add(work.on(item));
        progress.done(results.size(), items.size());
      }
      return results;
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads, Workers::daemon);
    List<Future<B>> futures = new ArrayList<>(items.size());
    try {
      for (A item : items) {
        futures.add(pool.submit(() -> work.on(item)));
      }
      for (Future<B> future : futures) {
        results.add(future.get());
        progress.done(results.size(), items.size());
      }
      return results;
    } catch (ExecutionException e) {
      throw thrown(Objects.requireNonNull(e.getCause()));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } finally {
      futures.forEach(f -> f.cancel(false));
      finish(pool);
    }
  }

  private static Thread daemon(Runnable run) {
    Thread thread = new Thread(run, "chinelog-worker");
    thread.setDaemon(true);
    return thread;
  }

  private static IOException thrown(Throwable cause) {
    if (cause instanceof RuntimeException ours) {
      throw ours;
    }
    if (cause instanceof Error error) {
      throw error;
    }
    return cause instanceof IOException io ? io : new IOException(cause);
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

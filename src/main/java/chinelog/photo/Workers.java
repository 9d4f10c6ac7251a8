package chinelog.photo;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Spreads work over the cores; results come in the order of the questions. */
public final class Workers {

  private Workers() {}

  /** A piece of work. */
  public interface Work<A, B> {
    B on(A a) throws IOException;
  }

  public static <A, B> List<B> all(List<A> items, Work<A, B> work, Progress progress)
      throws IOException {
    if (items.isEmpty()) {
      return List.of();
    }
    ExecutorService pool =
        Executors.newFixedThreadPool(
            Math.min(items.size(), Runtime.getRuntime().availableProcessors()),
            run -> {
              Thread thread = new Thread(run, "chinelog-photo");
              thread.setDaemon(true);
              return thread;
            });
    try {
      List<Future<B>> futures = new ArrayList<>(items.size());
      for (A item : items) {
        futures.add(pool.submit(() -> work.on(item)));
      }
      List<B> results = new ArrayList<>(items.size());
      for (Future<B> future : futures) {
        results.add(future.get());
        progress.done(results.size(), items.size());
      }
      return results;
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } finally {
      pool.shutdownNow();
    }
  }
}

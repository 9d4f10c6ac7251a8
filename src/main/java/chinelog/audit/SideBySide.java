package chinelog.audit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Does the same for many things, as many at a time as there are cores. */
final class SideBySide {

  private SideBySide() {}

  interface Work<A, B> {
    B on(A a) throws IOException;
  }

  /** What comes of each thing, in their order. */
  static <A, B> List<B> all(Collection<A> things, Work<A, B> work) throws IOException {
    // Threads of its own: two audits that wait in the common pool keep looking for work in it.
    ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Callable<B>> tasks = new ArrayList<>();
      things.forEach(thing -> tasks.add(() -> work.on(thing)));
      List<B> results = new ArrayList<>();
      for (Future<B> done : pool.invokeAll(tasks)) {
        results.add(done.get());
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

package chinelog.publish;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * Adds to each step how far the whole work has come and how long it may yet take, such as "printing
 * the build book for public, 40 %, about 25 s more".
 *
 * <p>What a step takes is learnt from the last time, which is remembered in the log's private
 * cache; of a step that goes through many things, from those that are done. Steps of several
 * threads may run side by side: what is left is reckoned as if they ran one after the other.
 */
public final class Course implements Progress, AutoCloseable {

  private static final double NANOS = 1e9;
  private static final double WORTH_TELLING_SECONDS = 2;
  private static final String SEPARATOR = "\t";

  private final Progress told;
  private final Path remembered;
  private final long begunNanos = System.nanoTime();

  /** Seconds that each step took the last time. */
  private final Map<String, Double> lastTime = new TreeMap<>();

  /** Steps of the last time that are still to come. */
  private final Map<String, Double> ahead = new TreeMap<>();

  private final Map<String, Double> taken = new TreeMap<>();
  private final Map<Thread, Running> running = new java.util.LinkedHashMap<>();
  private final ScheduledExecutorService clock;
  private String latest = "";
  private boolean closed;

  /**
   * A step that a thread is at.
   *
   * @param countedNanos when it came to the last of the things that it goes through
   */
  private record Running(Step step, long begunNanos, long countedNanos) {

    Running at(Step now) {
      return new Running(now, begunNanos, System.nanoTime());
    }

    double seconds() {
      return (System.nanoTime() - begunNanos) / NANOS;
    }
  }

  Course(Path log, Progress told) throws IOException {
    this(log, "durations", told);
  }

  private Course(Path log, String memory, Progress told) throws IOException {
    this.told = told;
    this.remembered = log.resolve(".chinelog").resolve(memory);
    for (String line : CacheLines.read(remembered)) {
      int cut = line.indexOf(SEPARATOR);
      lastTime.put(line.substring(cut + 1), Double.parseDouble(line.substring(0, cut)));
    }
    ahead.putAll(lastTime);
    this.clock =
        Executors.newSingleThreadScheduledExecutor(
            run -> {
              Thread thread = new Thread(run, "chinelog-progress");
              thread.setDaemon(true);
              return thread;
            });
    if (told != SILENT) {
      clock.scheduleAtFixedRate(this::tell, 1, 1, TimeUnit.SECONDS);
    }
  }

  /** The course of a check, whose steps are others than those of publishing. */
  public static Course ofCheck(Path log, Progress told) throws IOException {
    Course course = new Course(log, "durations-of-check", told);
    course.begin(Step.of(Step.Kind.LOOKING_AT_CHANGES));
    return course;
  }

  @Override
  public synchronized void begin(Step step) {
    end();
    ahead.remove(step.name());
    running.put(Thread.currentThread(), new Running(step, System.nanoTime(), System.nanoTime()));
    latest = step.name();
    tell();
  }

  @Override
  public synchronized void count(Step step, int done, int of) {
    Running now = running.get(Thread.currentThread());
    if (now == null || !now.step.name().equals(step.name())) {
      begin(step);
      now = running.get(Thread.currentThread());
    }
    if (now != null) {
      running.put(Thread.currentThread(), now.at(step.at(done, of)));
      latest = step.name();
      tell();
    }
  }

  @Override
  public synchronized void skip(Step step) {
    ahead.remove(step.name());
  }

  /** The step of this thread is done. */
  synchronized void end() {
    Running done = running.remove(Thread.currentThread());
    if (done != null) {
      taken.merge(done.step.name(), done.seconds(), Double::sum);
    }
  }

  private synchronized void tell() {
    if (closed) {
      return;
    }
    running.values().stream()
        .filter(r -> r.step.name().equals(latest))
        .findFirst()
        .or(() -> running.values().stream().findFirst())
        .ifPresent(r -> told.begin(withOutlook(r.step, r.seconds())));
  }

  /**
   * @param begun how many seconds ago the step was
   */
  private Step withOutlook(Step step, double begun) {
    double left = ahead.values().stream().mapToDouble(s -> s).sum();
    for (Running now : running.values()) {
      left += left(now);
    }
    if (left < WORTH_TELLING_SECONDS) {
      return step.since(begun);
    }
    double gone = (System.nanoTime() - begunNanos) / NANOS;
    return step.with((int) Math.round(100 * gone / (gone + left)), left);
  }

  private double left(Running now) {
    double whole = lastTime.getOrDefault(now.step.name(), 0.0);
    if (now.step.done() > 0) {
      // One that takes longer than those before it says nothing of those to come.
      whole = (now.countedNanos - now.begunNanos) / NANOS / now.step.done() * now.step.of();
    }
    return Math.max(0, whole - now.seconds());
  }

  /** Remembers what the steps took, once all are done. */
  public synchronized void remember() throws IOException {
    end();
    lastTime.putAll(taken);
    List<String> lines = new ArrayList<>();
    lastTime.forEach(
        (step, seconds) ->
            lines.add(String.format(Locale.ROOT, "%.2f", seconds) + SEPARATOR + step));
    CacheLines.write(remembered, lines);
  }

  @Override
  public synchronized void close() {
    closed = true;
    clock.shutdownNow();
  }
}

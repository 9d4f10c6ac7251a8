package chinelog.desk.publishing;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import chinelog.publish.Outcome;
import chinelog.publish.Progress;
import chinelog.publish.Step;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One publishing: what it is at, and in the end what came of it. */
final class Run {

  /** Does the work. */
  interface Work {
    Outcome outcome(Progress progress) throws IOException;
  }

  private @Nullable Step step;
  private long steps;
  private @Nullable Outcome outcome;

  /** Begins on a thread of its own. */
  static Run begin(Work work) {
    Run run = new Run();
    Thread thread = new Thread(() -> run.work(work), "chinelog-publishing");
    // Whoever closes the desk waits for no edition: what stands is swapped whole or not at all.
    thread.setDaemon(true);
    thread.start();
    return run;
  }

  private void work(Work work) {
    Outcome made;
    try {
      made = work.outcome(this::step);
    } catch (ProblemException e) {
      made = stopped(e.problem());
    } catch (IOException | RuntimeException e) {
      made =
          stopped(
              Problem.error(
                  Place.of("published"),
                  Sentence.of(
                      "The edition could not be made: {0}.", String.valueOf(e.getMessage())),
                  "See that the disk is sound and has room, then publish again."));
    }
    end(made);
  }

  private static Outcome stopped(Problem problem) {
    return new Outcome(List.of(problem), List.of(), List.of(), List.of());
  }

  private synchronized void step(Step begun) {
    step = begun;
    steps++;
    notifyAll();
  }

  private synchronized void end(Outcome made) {
    outcome = made;
    steps++;
    notifyAll();
  }

  synchronized @Nullable Step step() {
    return step;
  }

  synchronized @Nullable Outcome outcome() {
    return outcome;
  }

  /**
   * Waits for news.
   *
   * @param known how many steps were seen already
   * @return how many there are now; the same number if none came for some time
   */
  synchronized long await(long known, long millis) throws InterruptedException {
    if (steps == known && outcome == null) {
      wait(millis);
    }
    return steps;
  }
}

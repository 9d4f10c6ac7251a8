package chinelog.problem;

import java.io.IOException;
import java.util.Locale;

/**
 * A problem of the author's met where it can be told only by an exception, such as a template that
 * cannot be filled.
 */
public final class ProblemException extends IOException {

  private final transient Problem problem;

  public ProblemException(Problem problem) {
    super(problem.words(Locale.ENGLISH));
    this.problem = problem;
  }

  /** An error, as {@link Problem#error} makes it. */
  public ProblemException(Place place, CharSequence what, CharSequence remedy) {
    this(Problem.error(place, what, remedy));
  }

  public ProblemException(Place place, CharSequence what, CharSequence remedy, Throwable cause) {
    this(place, what, remedy);
    initCause(cause);
  }

  public ProblemException(Problem problem, Throwable cause) {
    this(problem);
    initCause(cause);
  }

  public Problem problem() {
    return problem;
  }
}

package chinelog.problem;

import java.util.Comparator;

/**
 * Something wrong in a log, such as {@code log.yaml:4:3: error: "scael" is not a key here. Write
 * "scale".}
 *
 * @param what what was found, a full sentence with its stop
 * @param remedy what to write or do instead, a full sentence with its stop
 */
public record Problem(Severity severity, Place place, String what, String remedy)
    implements Comparable<Problem> {

  private static final Comparator<Problem> WORST_FIRST =
      Comparator.comparing(Problem::severity)
          .thenComparing(Problem::place)
          .thenComparing(Problem::what);

  public static Problem error(Place place, String what, String remedy) {
    return new Problem(Severity.ERROR, place, what, remedy);
  }

  public static Problem reminder(Place place, String what, String remedy) {
    return new Problem(Severity.REMINDER, place, what, remedy);
  }

  /** How bad a problem is, worst first. */
  public enum Severity {
    /** Nothing may be published until this is put right. */
    ERROR,
    /** Worth a look; publishing goes on. */
    REMINDER
  }

  public boolean isError() {
    return severity == Severity.ERROR;
  }

  @Override
  public int compareTo(Problem other) {
    return WORST_FIRST.compare(this, other);
  }

  @Override
  public String toString() {
    return place + ": " + (isError() ? "error: " : "reminder: ") + what + " " + remedy;
  }
}

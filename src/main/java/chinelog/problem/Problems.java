package chinelog.problem;

import java.util.ArrayList;
import java.util.List;

/** Gathers problems while a log is read and reckoned, so that all can be told together. */
public final class Problems {

  private final List<Problem> found = new ArrayList<>();

  public void add(Problem problem) {
    found.add(problem);
  }

  public void addAll(List<Problem> problems) {
    found.addAll(problems);
  }

  public void error(Place place, CharSequence what, CharSequence remedy) {
    add(Problem.error(place, what, remedy));
  }

  public void question(Place place, CharSequence what, CharSequence remedy) {
    add(Problem.question(place, what, remedy));
  }

  public void reminder(Place place, CharSequence what, CharSequence remedy) {
    add(Problem.reminder(place, what, remedy));
  }

  public boolean hasErrors() {
    return found.stream().anyMatch(Problem::isError);
  }

  /** Whether any error stands in that file. */
  public boolean hasErrorIn(String file) {
    return found.stream().anyMatch(p -> p.isError() && p.place().file().equals(file));
  }

  /** All problems without repeats, worst first, then by place. */
  public List<Problem> list() {
    return found.stream().distinct().sorted().toList();
  }
}

package chinelog.desk.bench;

import chinelog.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Problems as the macro {@code problem} of {@code frame.ftlh} shows them. */
public final class Lines {

  private Lines() {}

  public static List<Map<String, Object>> of(List<Problem> problems, Locale locale) {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Problem problem : problems) {
      lines.add(
          Map.of(
              "what", problem.what().in(locale),
              "remedy", problem.remedy().in(locale),
              "place", problem.place().toString(),
              "file", problem.place().file(),
              "line", problem.place().line(),
              "column", problem.place().column()));
    }
    return lines;
  }
}

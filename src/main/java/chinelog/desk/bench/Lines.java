package chinelog.desk.bench;

import chinelog.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Problems as the macro {@code problem} of {@code frame.ftlh} shows them. */
public final class Lines {

  /** More are told by their names. */
  private static final int MOST_PICTURES = 6;

  private Lines() {}

  /**
   * Each problem in a language, with its place and the photographs that it is about.
   *
   * @param now the log that they are of
   */
  public static List<Map<String, Object>> of(List<Problem> problems, Locale locale, Snapshot now) {
    Set<String> photographs = photographs(now);
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Problem problem : problems) {
      lines.add(
          Map.of(
              "what", problem.what().in(locale),
              "remedy", problem.remedy().in(locale),
              "place", problem.place().toString(),
              "file", problem.place().file(),
              "line", problem.place().line(),
              "column", problem.place().column(),
              "pictures", pictures(problem, photographs)));
    }
    return lines;
  }

  private static Set<String> photographs(Snapshot now) {
    return now.opened().album().photographs().stream()
        .map(p -> p.file().path())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Paths of those that its place or a part of its words is, in that order. */
  private static List<String> pictures(Problem problem, Set<String> photographs) {
    return Stream.concat(
            Stream.of(problem.place().file()),
            problem.what().parts().stream().flatMap(p -> Stream.of(p.toString().split(", "))))
        .filter(photographs::contains)
        .distinct()
        .limit(MOST_PICTURES)
        .toList();
  }
}

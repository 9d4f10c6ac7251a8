package chinelog.cli;

import chinelog.json.Json;
import chinelog.problem.Problem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What {@code check --json} prints; its form changes only with its number.
 *
 * @param entries how many; the counts are 0 for a log that could not be read
 * @param problems worst first, then by place
 */
record CheckReport(int entries, int photographs, int facts, List<Problem> problems) {

  /** The form, for the manual page. */
  static final String FORM =
      """
      One JSON object (RFC 8259), on standard output, whatever is wrong with the log:
      "form", the number 1, which changes if any of this does;
      "sound", true if nothing keeps the log from being published;
      "entries", "photographs" and "facts", how many there are;
      "problems", an array of objects, worst first, then by place, with
      "severity" ("error", "question" or "reminder"),
      "file" (below the log's folder, with "/"),
      "line" and "column" (from 1; 0 for the whole file or line; in UTF-16 code units),
      "what" was found, and the "remedy", both in sentences.
      """;

  CheckReport {
    problems = problems.stream().sorted().toList();
  }

  boolean isSound() {
    return problems.stream().noneMatch(Problem::isError);
  }

  String json() {
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("form", 1);
    is.put("sound", isSound());
    is.put("entries", entries);
    is.put("photographs", photographs);
    is.put("facts", facts);
    is.put("problems", problems.stream().map(CheckReport::json).toList());
    return Json.lines(is);
  }

  private static Map<String, Object> json(Problem problem) {
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("severity", problem.severity().name().toLowerCase(Locale.ROOT));
    is.put("file", problem.place().file());
    is.put("line", problem.place().line());
    is.put("column", problem.place().column());
    is.put("what", problem.what().toString());
    is.put("remedy", problem.remedy().toString());
    return is;
  }
}

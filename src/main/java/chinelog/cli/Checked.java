package chinelog.cli;

import chinelog.problem.Problem;
import chinelog.publish.Foreseen;
import chinelog.publish.Remembered;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What checking a log came to, as rows that can be remembered, too.
 *
 * @param problems without the questions
 * @param questions in words
 * @param asked how many things were found, of which one question may name several
 * @param foreseen null for a log with errors
 */
record Checked(
    int entries,
    int photographs,
    int facts,
    List<Problem> problems,
    List<Problem> questions,
    int asked,
    @Nullable Foreseen foreseen) {

  private static final String COUNTS = "counts";
  private static final String PROBLEM = "problem";
  private static final String QUESTION = "question";
  private static final String FORESEEN = "foreseen";
  private static final String POST = "post";

  CheckReport report() {
    return report(problems);
  }

  /** With the questions among the problems, for whoever reads one list. */
  CheckReport reportWithQuestions() {
    return report(Stream.concat(problems.stream(), questions.stream()).toList());
  }

  private CheckReport report(List<Problem> told) {
    return new CheckReport(entries, photographs, facts, told);
  }

  List<List<String>> rows() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(row(COUNTS, entries, photographs, facts, asked));
    problems.forEach(p -> rows.add(row(PROBLEM, Remembered.cells(p).toArray())));
    questions.forEach(p -> rows.add(row(QUESTION, Remembered.cells(p).toArray())));
    if (foreseen != null) {
      rows.add(row(FORESEEN, foreseen.printed()));
      for (Foreseen.PostTold p : foreseen.posts()) {
        rows.add(
            row(POST, p.readers(), p.number(), p.title(), p.entries(), p.words(), p.minutes()));
      }
    }
    return rows;
  }

  private static List<String> row(String kind, Object... cells) {
    List<String> row = new ArrayList<>();
    row.add(kind);
    for (Object cell : cells) {
      row.add(cell.toString());
    }
    return row;
  }

  static Checked of(List<List<String>> rows) {
    List<Integer> counts = List.of();
    List<Problem> problems = new ArrayList<>();
    List<Problem> questions = new ArrayList<>();
    List<Foreseen.PostTold> posts = new ArrayList<>();
    Foreseen foreseen = null;
    for (List<String> row : rows) {
      List<String> cells = row.subList(1, row.size());
      switch (row.get(0)) {
        case COUNTS -> counts = cells.stream().map(Integer::valueOf).toList();
        case PROBLEM -> problems.add(Remembered.problem(cells));
        case QUESTION -> questions.add(Remembered.problem(cells));
        case FORESEEN ->
            foreseen = new Foreseen(List.of(), posts, Boolean.parseBoolean(cells.get(0)));
        default -> posts.add(post(cells));
      }
    }
    return new Checked(
        counts.get(0), counts.get(1), counts.get(2), problems, questions, counts.get(3), foreseen);
  }

  private static Foreseen.PostTold post(List<String> cells) {
    return new Foreseen.PostTold(
        cells.get(0),
        Integer.parseInt(cells.get(1)),
        cells.get(2),
        Integer.parseInt(cells.get(3)),
        Integer.parseInt(cells.get(4)),
        Integer.parseInt(cells.get(5)));
  }
}

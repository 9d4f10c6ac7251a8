package chinelog.publish;

import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What publishing has to know of a log in which nothing has changed, so that it need not be read.
 */
record LastReading(Remembered remembered, String today) {

  /**
   * @param sources as they are now
   * @param today the real date, which problems depend on besides
   */
  static LastReading of(Path log, LogState sources, LocalDate today) {
    return new LastReading(new Remembered(log, sources, "reading"), today.toString());
  }

  /**
   * What was found.
   *
   * @param readers ids, as the log lists them
   * @param ofWorkshop those of them who are party to everything
   */
  record Told(List<String> readers, Set<String> ofWorkshop, List<Problem> problems) {}

  Optional<Told> recall() throws IOException {
    Optional<List<List<String>>> kept = remembered.recall();
    if (kept.isEmpty() || !kept.get().get(0).get(0).equals(today)) {
      return Optional.empty();
    }
    List<String> readers = new ArrayList<>();
    Set<String> ofWorkshop = new TreeSet<>();
    List<Problem> problems = new ArrayList<>();
    for (List<String> row : kept.get().subList(1, kept.get().size())) {
      if (row.size() > 2) {
        problems.add(Remembered.problem(row));
      } else {
        readers.add(row.get(0));
        if (row.get(1).equals("workshop")) {
          ofWorkshop.add(row.get(0));
        }
      }
    }
    return Optional.of(new Told(readers, ofWorkshop, problems));
  }

  void keep(Workshop.Opened opened) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(today));
    Set<String> ofWorkshop = Shelf.ofWorkshop(opened.log());
    for (Readers group : opened.log().readers()) {
      rows.add(List.of(group.id(), ofWorkshop.contains(group.id()) ? "workshop" : ""));
    }
    opened.problems().forEach(problem -> rows.add(Remembered.cells(problem)));
    remembered.keep(rows);
  }
}

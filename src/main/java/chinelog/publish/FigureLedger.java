package chinelog.publish;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.withhold.PrintedFigure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The private ledger of every figure ever printed for some readers; lines are only ever added.
 *
 * <p>A line is such as {@code 2026-05-20,hull.loa,"700 mm",0.7,0.001}: day of the edition, fact, as
 * printed, value and last digit in coherent SI units.
 *
 * @param readers id of those whose it is
 * @param expected whether there must be one, since an edition went out before
 */
record FigureLedger(Path file, String readers, boolean expected) {

  private static final String HEAD = "as-of,fact,printed,value,step";

  private static final Pattern LINE =
      Pattern.compile("(\\d{4}-\\d\\d-\\d\\d),([^,\"]+),\"((?:[^\"]|\"\")*)\",([^,]+),([^,]+)");

  private String name() {
    return "records/" + readers + "/ledger.csv";
  }

  /**
   * What was printed so far.
   *
   * @param problems why it is not known for certain; then nothing must be published
   */
  record Reading(List<PrintedFigure> figures, List<Problem> problems) {

    /**
     * An error where something was published on a day that is yet to come: the clock was wrong then
     * or is wrong now, and an agreement may have been taken as ended.
     */
    Optional<Problem> yetToCome(LocalDate today) {
      return figures.stream()
          .filter(f -> f.since().isAfter(today))
          .findFirst()
          .map(
              f ->
                  Problem.error(
                      Place.of("records/" + f.readers()),
                      Sentence.of(
                          "An edition was published on {0}, which is after today, {1}.",
                          f.since(), today),
                      "Put the clock of this computer right; if it was wrong on that day, see"
                          + " whether an agreement was taken as ended."));
    }
  }

  /** All that was ever printed for any readers: those who may meet compare what they have. */
  static Reading ofAll(Shelf shelf, List<String> readers) throws IOException {
    List<PrintedFigure> figures = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    SortedSet<String> all = new TreeSet<>(shelf.recorded());
    all.addAll(readers);
    for (String who : all) {
      Reading reading = shelf.ledger(who).read();
      figures.addAll(reading.figures);
      problems.addAll(reading.problems);
    }
    return new Reading(figures, problems);
  }

  Reading read() throws IOException {
    if (!Files.exists(file)) {
      return new Reading(List.of(), expected ? List.of(missing()) : List.of());
    }
    List<PrintedFigure> figures = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    List<String> lines;
    try {
      lines = Files.readAllLines(file);
    } catch (java.nio.charset.CharacterCodingException e) {
      return new Reading(List.of(), List.of(unreadable(1)));
    }
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (i == 0 && line.equals(HEAD)) {
        continue;
      }
      Matcher m = LINE.matcher(line);
      if (!m.matches()) {
        problems.add(unreadable(i + 1));
        continue;
      }
      try {
        figures.add(
            new PrintedFigure(
                readers,
                LocalDate.parse(m.group(1)),
                m.group(2),
                m.group(3).replace("\"\"", "\""),
                Double.parseDouble(m.group(4)),
                Double.parseDouble(m.group(5))));
      } catch (DateTimeException | NumberFormatException e) {
        problems.add(unreadable(i + 1));
      }
    }
    return new Reading(List.copyOf(figures), List.copyOf(problems));
  }

  private Problem unreadable(int line) {
    return Problem.error(
        Place.of(name(), line, 1),
        "This line of the ledger of figures already printed cannot be read, so that it is not known"
            + " what these readers have.",
        "Put the file back from a copy of the log.");
  }

  private Problem missing() {
    return Problem.error(
        Place.of(name()),
        "An edition went out before, but the ledger of the figures printed in it is missing.",
        "Put the file back from a copy of the log. If there is none, make an empty one of that name;"
            + " what was printed before is then not reckoned with.");
  }

  /** Adds the figures that are not in it yet. */
  void add(List<PrintedFigure> figures) throws IOException {
    List<PrintedFigure> before = read().figures();
    List<String> lines = new ArrayList<>();
    if (!Files.exists(file) || Files.size(file) == 0) {
      lines.add(HEAD);
    }
    for (PrintedFigure f : figures) {
      if (before.stream()
          .noneMatch(
              b ->
                  b.fact().equals(f.fact())
                      && b.printed().equals(f.printed())
                      && b.value() == f.value())) {
        lines.add(
            f.since()
                + ","
                + f.fact()
                + ",\""
                + f.printed().replace("\"", "\"\"")
                + "\","
                + f.value()
                + ","
                + f.step());
      }
    }
    Files.createDirectories(file.getParent());
    Files.write(file, lines, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }
}

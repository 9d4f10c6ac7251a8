package chinelog.publish;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.CharBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a log came to, kept in its private cache and told again as long as a {@link LogState} at it
 * finds nothing changed.
 */
public final class Remembered {

  private static final String CELL = "\t";

  /** Before the files whose content counts, and before what is told. */
  private static final String YOUNG = "~";

  private static final String ROW = "=";

  private final Path file;
  private final LogState state;

  /**
   * @param name of what is remembered; no id of readers has a dot
   */
  Remembered(Path log, LogState state, String name) {
    this.file = LogState.cache(log).resolve("." + name);
    this.state = state;
  }

  /**
   * Looks at all files of a log, before they are read.
   *
   * @param name of what is remembered, such as "check"
   * @param settings whatever else that depends on, such as the day
   * @return nothing where no log is kept, or nothing may be written
   */
  public static Optional<Remembered> find(Path log, String name, String settings)
      throws IOException {
    Path cache = log.resolve(".chinelog");
    Shelf.requireOwnCache(log);
    if (!Files.isDirectory(cache) || !Files.isWritable(cache)) {
      return Optional.empty();
    }
    return Optional.of(new Remembered(log, LogState.atAll(log, settings), name));
  }

  /** The rows kept last, each of some cells; nothing if anything has changed since. */
  public Optional<List<List<String>>> recall() throws IOException {
    List<String> lines = CacheLines.read(file);
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    List<String> young = new ArrayList<>();
    List<List<String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      if (line.startsWith(YOUNG)) {
        young.add(line.substring(1));
      } else {
        List<String> cells = new ArrayList<>();
        for (String cell : line.substring(1).split(CELL, -1)) {
          cells.add(cell.translateEscapes());
        }
        rows.add(cells);
      }
    }
    return lines.get(0).equals(state.digest(young)) ? Optional.of(rows) : Optional.empty();
  }

  /** Keeps rows that follow from what was looked at, unless that was in doubt. */
  public void keep(List<List<String>> rows) throws IOException {
    String digest = state.digest();
    if (digest == null) {
      return;
    }
    List<String> lines = new ArrayList<>();
    lines.add(digest);
    state.young().forEach(name -> lines.add(YOUNG + name));
    for (List<String> cells : rows) {
      lines.add(cells.stream().map(Remembered::escaped).collect(Collectors.joining(CELL, ROW, "")));
    }
    CacheLines.write(file, lines);
  }

  private static final String TEXT = "t";

  /** A problem as cells of a row. */
  public static List<String> cells(Problem problem) {
    Place place = problem.place();
    return List.of(
        problem.severity().name(),
        place.file(),
        String.valueOf(place.line()),
        String.valueOf(place.column()),
        coded(problem.what()),
        coded(problem.remedy()));
  }

  /** The problem in such cells. */
  public static Problem problem(List<String> cells) {
    return new Problem(
        Problem.Severity.valueOf(cells.get(0)),
        Place.of(cells.get(1), Integer.parseInt(cells.get(2)), Integer.parseInt(cells.get(3))),
        sentence(CharBuffer.wrap(cells.get(4))),
        sentence(CharBuffer.wrap(cells.get(5))));
  }

  /** How many parts it has, its English and the parts, each with its length: they nest. */
  private static String coded(CharSequence text) {
    if (!(text instanceof Sentence sentence)) {
      return TEXT + sized(text.toString());
    }
    return sentence.parts().size()
        + sized(sentence.english())
        + sentence.parts().stream().map(Remembered::coded).collect(Collectors.joining());
  }

  private static String sized(String text) {
    return ":" + text.length() + ":" + text;
  }

  private static Sentence sentence(CharBuffer coded) {
    return (Sentence) decoded(coded);
  }

  private static CharSequence decoded(CharBuffer coded) {
    String parts = number(coded);
    int length = Integer.parseInt(number(coded));
    String text = coded.subSequence(0, length).toString();
    coded.position(coded.position() + length);
    if (parts.equals(TEXT)) {
      return text;
    }
    List<CharSequence> filled = new ArrayList<>();
    for (int i = Integer.parseInt(parts); i > 0; i--) {
      filled.add(decoded(coded));
    }
    return new Sentence(text, filled);
  }

  /** What stands before the next colon, which is passed. */
  private static String number(CharBuffer coded) {
    StringBuilder digits = new StringBuilder();
    for (char c = coded.get(); c != ':'; c = coded.get()) {
      digits.append(c);
    }
    return digits.toString();
  }

  private static String escaped(String cell) {
    return cell.replace("\\", "\\\\")
        .replace("\t", "\\t")
        .replace("\n", "\\n")
        .replace("\r", "\\r");
  }
}

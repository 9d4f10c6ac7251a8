package chinelog.problem;

import java.util.Comparator;

/**
 * Where in the log something stands, such as {@code entries/2026-03-14.md:3:7}.
 *
 * @param file path below the log's folder, with '/' between its parts
 * @param line line from 1, or 0 for the whole file
 * @param column column from 1 in UTF-16 code units, or 0 for the whole line
 */
public record Place(String file, int line, int column) implements Comparable<Place> {

  private static final Comparator<Place> ORDER =
      Comparator.comparing(Place::file)
          .thenComparingInt(Place::line)
          .thenComparingInt(Place::column);

  /** The whole of a file. */
  public static Place of(String file) {
    return new Place(file, 0, 0);
  }

  public static Place of(String file, int line, int column) {
    return new Place(file, line, column);
  }

  @Override
  public int compareTo(Place other) {
    return ORDER.compare(this, other);
  }

  @Override
  public String toString() {
    return line == 0 ? file : column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
  }
}

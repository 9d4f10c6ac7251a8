package chinelog.log.reading;

import chinelog.problem.Place;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A piece of the log's text that knows where each of its characters stands.
 *
 * <p>Line ends are {@code \n} alone. Offsets count UTF-16 code units from 0.
 */
public final class Source {

  private final String file;
  private final String text;
  private final int firstLine;
  private final int firstColumn;
  private final int otherColumn;
  private final boolean exact;
  private final int[] lineStarts;

  private Source(
      String file, String text, int firstLine, int firstColumn, int otherColumn, boolean exact) {
    this.file = file;
    this.text = text;
    this.firstLine = firstLine;
    this.firstColumn = firstColumn;
    this.otherColumn = otherColumn;
    this.exact = exact;
    this.lineStarts =
        IntStream.concat(
                IntStream.of(0),
                IntStream.range(0, text.length())
                    .filter(i -> text.charAt(i) == '\n')
                    .map(i -> i + 1))
            .toArray();
  }

  public static Source ofFile(String file, String text) {
    return new Source(file, text, 1, 1, 1, true);
  }

  /** Text that stands in the file as it is, each line after the first at {@code otherColumn}. */
  public static Source inFile(Place start, String text, int otherColumn) {
    return new Source(start.file(), text, start.line(), start.column(), otherColumn, true);
  }

  /**
   * Text that stands in the file in another form, such as with escapes: known by its start only.
   */
  public static Source near(Place start, String text) {
    return new Source(start.file(), text, start.line(), start.column(), 1, false);
  }

  /** The rest of this from the beginning of a line on. */
  public Source fromLine(int offset) {
    return new Source(file, text.substring(offset), at(offset).line(), 1, otherColumn, exact);
  }

  public String file() {
    return file;
  }

  public String text() {
    return text;
  }

  public Place at(int offset) {
    if (!exact) {
      return Place.of(file, firstLine, firstColumn);
    }
    int found = Arrays.binarySearch(lineStarts, offset);
    int line = found >= 0 ? found : -found - 2;
    int start = lineStarts[line];
    int end = Math.min(offset, text.length());
    return Place.of(file, firstLine + line, end - start + (line == 0 ? firstColumn : otherColumn));
  }

  /**
   * The offset of a place that a parser counted in code points.
   *
   * @param line from 0; the last line stands for any after it
   * @param codePoints from 0
   */
  public int offset(int line, int codePoints) {
    int start = lineStarts[Math.min(line, lineStarts.length - 1)];
    int end = text.indexOf('\n', start);
    int most = text.codePointCount(start, end < 0 ? text.length() : end);
    return text.offsetByCodePoints(start, Math.min(codePoints, most));
  }

  /** The text of a line, counted from 0. */
  public String line(int line) {
    int start = lineStarts[Math.min(line, lineStarts.length - 1)];
    int end = text.indexOf('\n', start);
    return text.substring(start, end < 0 ? text.length() : end);
  }

  public int lines() {
    return lineStarts.length;
  }
}

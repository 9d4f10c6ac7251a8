package chinelog.audit;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.batik.parser.AWTPathProducer;
import org.apache.batik.parser.ParseException;

/** Drawn lines, from point to point, and the stretches of one that run on without turning back. */
final class Stretches {

  /** A stretch of fewer points is no curve. */
  private static final int LEAST_POINTS = 4;

  private static final double CORNER = Math.toRadians(40);

  /** Curves of Bézier's are taken as straight pieces that pass them by no more than this. */
  private static final double FLATNESS = 0.01;

  private Stretches() {}

  /** The lines of a shape, a closed one back to where it began. */
  static List<List<double[]>> lines(Shape shape) {
    List<List<double[]>> lines = new ArrayList<>();
    List<double[]> line = new ArrayList<>();
    double[] point = new double[6];
    for (PathIterator path = shape.getPathIterator(null, FLATNESS); !path.isDone(); path.next()) {
      int kind = path.currentSegment(point);
      if (kind == PathIterator.SEG_MOVETO) {
        keep(line, lines);
        line = new ArrayList<>();
      }
      line.add(
          kind == PathIterator.SEG_CLOSE && !line.isEmpty()
              ? line.get(0)
              : new double[] {point[0], point[1]});
    }
    keep(line, lines);
    return lines;
  }

  /**
   * The lines of an element of SVG, by what it draws with; none where it draws none.
   *
   * @param attribute {@code d} or {@code points}
   */
  static List<List<double[]>> lines(String attribute, String value) {
    if (value.isBlank()) {
      return List.of();
    }
    try {
      return attribute.equals("d")
          ? lines(AWTPathProducer.createShape(new StringReader(value), PathIterator.WIND_NON_ZERO))
          : attribute.equals("points") ? points(value) : List.of();
    } catch (IOException | ParseException | NumberFormatException e) {
      // What cannot be read is not drawn, either.
      return List.of();
    }
  }

  private static List<List<double[]>> points(String value) {
    String[] numbers = value.strip().split("[\\s,]+");
    List<double[]> line = new ArrayList<>();
    for (int i = 0; i + 1 < numbers.length; i += 2) {
      line.add(new double[] {Double.parseDouble(numbers[i]), Double.parseDouble(numbers[i + 1])});
    }
    List<List<double[]>> lines = new ArrayList<>();
    keep(line, lines);
    return lines;
  }

  private static void keep(List<double[]> line, List<List<double[]>> lines) {
    if (line.size() >= LEAST_POINTS) {
      lines.add(line);
    }
  }

  /** The line, and each of its stretches between two turns along either axis, or two corners. */
  static List<List<double[]>> of(List<double[]> line) {
    Set<List<double[]>> all = new LinkedHashSet<>();
    all.add(line);
    for (int axis = 0; axis < 2; axis++) {
      int from = 0;
      double way = 0;
      for (int i = 1; i < line.size(); i++) {
        double step = Math.signum(line.get(i)[axis] - line.get(i - 1)[axis]);
        if (step != 0 && step == -way) {
          stretch(line, from, i, all);
          from = i - 1;
        }
        way = step == 0 ? way : step;
      }
      stretch(line, from, line.size(), all);
    }
    int corner = 0;
    for (int i = 1; i < line.size() - 1; i++) {
      if (turn(line.get(i - 1), line.get(i), line.get(i + 1)) > CORNER) {
        stretch(line, corner, i + 1, all);
        corner = i;
      }
    }
    stretch(line, corner, line.size(), all);
    return List.copyOf(all);
  }

  /** By how much a line turns at a point, in radians. */
  private static double turn(double[] before, double[] at, double[] after) {
    double by =
        Math.atan2(after[1] - at[1], after[0] - at[0])
            - Math.atan2(at[1] - before[1], at[0] - before[0]);
    return Math.abs(Math.IEEEremainder(by, 2 * Math.PI));
  }

  private static void stretch(List<double[]> line, int from, int to, Set<List<double[]>> all) {
    if (to - from >= LEAST_POINTS && to - from < line.size()) {
      all.add(List.copyOf(line.subList(from, to)));
    }
  }
}

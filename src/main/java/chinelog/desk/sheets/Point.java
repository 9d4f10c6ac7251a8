package chinelog.desk.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A click on a sheet, in pixels of the picture shown. */
record Point(double x, double y) {

  /** Points as a browser sends them, such as {@code 10.5,20}; empty if one of them is none. */
  static Optional<List<Point>> parse(List<String> sent) {
    List<Point> points = new ArrayList<>();
    for (String text : sent) {
      if (!text.matches("[0-9]{1,6}([.][0-9]{1,9})?,[0-9]{1,6}([.][0-9]{1,9})?")) {
        return Optional.empty();
      }
      String[] parts = text.split(",");
      points.add(new Point(Double.parseDouble(parts[0]), Double.parseDouble(parts[1])));
    }
    return Optional.of(points);
  }
}

package chinelog.desk.sheets;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A table of offsets taken off a body plan: heights from the base line, half-breadths from the
 * middle line, whichever side of it was clicked.
 *
 * @param origin where the middle line meets the base line
 * @param waterlines their heights, as written
 */
record OffsetsTaken(Scale scale, Point origin, List<String> waterlines, List<Station> stations) {

  private static final int DIGITS = 1;

  /**
   * A station.
   *
   * @param x from the aft end, as written
   * @param sheer null where it was passed over
   * @param at for each waterline; null where the station does not reach it
   */
  record Station(
      String name, String x, Point keel, @Nullable Point sheer, List<@Nullable Point> at) {}

  /**
   * A station as a browser sends it: its name, its x, and its points, such as {@code 3|180|10,20 -
   * 10,30}, with a dash for what was passed over; keel and sheer first.
   */
  static Optional<Station> parse(String sent, int waterlines) {
    String[] parts = sent.split("\\|", -1);
    if (parts.length != 3 || !parts[1].matches("[0-9]{1,7}([.][0-9]{1,6})?")) {
      return Optional.empty();
    }
    String[] clicks = parts[2].split(" ");
    List<@Nullable Point> points = new ArrayList<>();
    for (String click : clicks) {
      Optional<List<Point>> point = Point.parse(List.of(click));
      if (point.isEmpty() && !click.equals("-")) {
        return Optional.empty();
      }
      points.add(point.map(p -> p.get(0)).orElse(null));
    }
    Point keel = points.get(0);
    return clicks.length != waterlines + 2 || keel == null
        ? Optional.empty()
        : Optional.of(
            new Station(
                parts[0].strip(), parts[1], keel, points.get(1), points.subList(2, points.size())));
  }

  /** As CSV, from aft forward. */
  String csv() {
    String in = " [" + scale.unit() + "]";
    StringBuilder csv = new StringBuilder("station,x" + in + ",keel" + in);
    csv.append(",sheer").append(in).append(",sheer half-breadth").append(in);
    waterlines.forEach(w -> csv.append(",WL ").append(w).append(" half-breadth").append(in));
    csv.append('\n');
    List<Station> sorted = new ArrayList<>(stations);
    sorted.sort((a, b) -> new BigDecimal(a.x).compareTo(new BigDecimal(b.x)));
    for (Station station : sorted) {
      csv.append(quoted(station.name)).append(',').append(station.x);
      csv.append(',').append(height(station.keel));
      Point sheer = station.sheer;
      csv.append(',').append(sheer == null ? "" : height(sheer));
      csv.append(',').append(sheer == null ? "" : half(sheer));
      for (Point point : station.at) {
        csv.append(',').append(point == null ? "" : half(point));
      }
      csv.append('\n');
    }
    return csv.toString();
  }

  private String height(Point point) {
    return number((origin.y() - point.y()) * scale.upPerPx());
  }

  private String half(Point point) {
    return number(Math.abs(point.x() - origin.x()) * scale.acrossPerPx());
  }

  private static String number(double value) {
    BigDecimal shown = BigDecimal.valueOf(value).setScale(DIGITS, RoundingMode.HALF_EVEN);
    return shown.signum() == 0 ? "0.0" : shown.toPlainString();
  }

  private static String quoted(String name) {
    return name.matches("[\\p{L}\\p{N} .½_-]*")
        ? name
        : "\"" + name.replace("\"", "\"\"").toLowerCase(Locale.ROOT) + "\"";
  }
}

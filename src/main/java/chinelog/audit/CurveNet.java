package chinelog.audit;

import chinelog.label.Label;
import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Curves of withheld tables, looked for in whatever is drawn: whoever has a drawing to scale has
 * the offsets that it runs through.
 *
 * <p>A curve is a column over the one that places it, or a row over the heights that its headings
 * name, of at least five withheld lengths that do not lie in a straight line. It is found where a
 * drawn line, or a stretch of one between two turns, runs through all its points, whichever way it
 * lies or is turned over: at the same scale along and across; or at two scales, which three curves
 * of a drawing must have in common, since smooth lines are much alike when they may be stretched.
 */
final class CurveNet {

  private static final int LEAST_POINTS = 5;

  /** Parts of a curve's own height by which a drawn line may pass its points. */
  private static final double ALIKE = 0.006;

  /** What a line may stray between two points of a curve, so that no scribble is one. */
  private static final double BETWEEN = 0.08;

  /** What must lie off the straight line between the ends, as a part of the height. */
  private static final double BENT = 0.06;

  /** By how much scales may differ that are meant to be one. */
  private static final double SAME_SCALE = 0.015;

  /** A curve much longer than high tells its height too coarsely where it is drawn small. */
  private static final double FLATTEST = 1.0 / 40;

  private static final int IN_COMMON = 3;

  /** Far more than a double is off by. */
  private static final double ROUNDING = 1e-6;

  private static final String KEEL = "keel";
  private static final String HALF_BREADTH = " half-breadth";
  private static final Pattern HEIGHT = Pattern.compile("\\d+(?:[.,]\\d+)?");

  /**
   * Points of a curve or of a drawn line.
   *
   * @param x between 0 and 1, as far as it reaches
   * @param y the same across
   */
  private record Form(double[] x, double[] y) {

    static Form of(double[] x, double[] y) {
      return new Form(unit(x), unit(y));
    }

    private static double[] unit(double[] values) {
      double[] unit = new double[values.length];
      double extent = extent(values);
      double least = least(values);
      for (int i = 0; i < unit.length; i++) {
        unit[i] = (values[i] - least) / extent;
      }
      return unit;
    }

    /** Turned over, along and across. */
    Form mirrored(boolean along, boolean across) {
      return new Form(along ? over(x) : x, across ? over(y) : y);
    }

    private static double[] over(double[] unit) {
      return Arrays.stream(unit).map(v -> 1 - v).toArray();
    }

    /** With its axes exchanged. */
    Form turned() {
      return new Form(y, x);
    }

    /** Whether all points lie near a line. */
    boolean isAlong(Form line, double most) {
      for (int i = 0; i < x.length; i++) {
        if (!line.passes(x[i], y[i], most)) {
          return false;
        }
      }
      return true;
    }

    /** Whether this passes a point by no more than so much. */
    private boolean passes(double atX, double atY, double most) {
      double reach = most * (1 + ROUNDING);
      for (int k = 1; k < x.length; k++) {
        double dx = x[k] - x[k - 1];
        double dy = y[k] - y[k - 1];
        double fromX = atX - x[k - 1];
        double fromY = atY - y[k - 1];
        // Most pieces are far off, which is soon told.
        if (fromX < Math.min(0, dx) - reach
            || fromX > Math.max(0, dx) + reach
            || fromY < Math.min(0, dy) - reach
            || fromY > Math.max(0, dy) + reach) {
          continue;
        }
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : (fromX * dx + fromY * dy) / square;
        double at = Math.max(0, Math.min(1, t));
        double offX = fromX - at * dx;
        double offY = fromY - at * dy;
        if (offX * offX + offY * offY <= most * most) {
          return true;
        }
      }
      return false;
    }
  }

  /**
   * A curve, rising or falling.
   *
   * @param ways it may be turned over
   */
  private record Curve(Sentence what, double[] x, double[] y, List<Form> ways) {

    static Curve of(Sentence what, double[] x, double[] y) {
      Form form = Form.of(x, y);
      return new Curve(
          what,
          x,
          y,
          List.of(
              form,
              form.mirrored(true, false),
              form.mirrored(false, true),
              form.mirrored(true, true)));
    }

    double width() {
      return extent(x);
    }

    double height() {
      return extent(y);
    }

    boolean isIn(Form line) {
      for (Form way : ways) {
        if (way.isAlong(line, ALIKE) && line.isAlong(way, BETWEEN)) {
          return true;
        }
      }
      return false;
    }
  }

  /** A line that has a curve's form, when it is stretched so. */
  private record Match(Curve curve, double along, double across) {
    boolean isToScale() {
      return isOne(along / across);
    }

    boolean isAs(Match other) {
      return isOne(along / other.along) && isOne(across / other.across);
    }

    private static boolean isOne(double ratio) {
      return Math.abs(ratio - 1) < SAME_SCALE;
    }
  }

  private final List<Curve> curves = new ArrayList<>();

  /**
   * Adds the curves of a table that has them.
   *
   * @param isWithheld whether a label keeps something from the readers
   */
  void add(Table table, Predicate<Label> isWithheld) {
    int places = places(table);
    for (int c = 0; c < table.columns().size(); c++) {
      if (c != places && places >= 0) {
        List<double[]> points = new ArrayList<>();
        for (Table.Row row : table.rows()) {
          add(points, millimetres(row, places), cell(table, row, c, isWithheld));
        }
        add(points, Sentence.of("a column of table {0}", table.name()));
      }
    }
    for (Table.Row row : table.rows()) {
      List<double[]> points = new ArrayList<>();
      for (int c = 0; c < table.columns().size(); c++) {
        Matcher height = HEIGHT.matcher(table.columns().get(c).name());
        if (c != places && height.find()) {
          double mm =
              Double.parseDouble(height.group().replace(',', '.'))
                  * millimetres(table.columns().get(c).unit());
          add(points, mm, cell(table, row, c, isWithheld));
        }
      }
      add(points, Sentence.of("a row of table {0}", table.name()));
      List<double[]> ends = ends(table, row, isWithheld);
      if (ends.size() > 0 && ends.addAll(points)) {
        ends.sort(Comparator.comparingDouble(p -> p[0]));
        add(ends, Sentence.of("a row of table {0}", table.name()));
      }
    }
  }

  /** Where a station begins and ends, as in {@code sheer} and {@code sheer half-breadth}. */
  private static List<double[]> ends(Table table, Table.Row row, Predicate<Label> isWithheld) {
    List<String> names =
        table.columns().stream().map(c -> c.name().strip().toLowerCase(Locale.ROOT)).toList();
    List<double[]> ends = new ArrayList<>();
    for (int c = 0; c < names.size(); c++) {
      int breadth = names.indexOf(names.get(c) + HALF_BREADTH);
      boolean isKeel = names.get(c).equals(KEEL);
      if (breadth >= 0 || isKeel) {
        add(
            ends,
            cell(table, row, c, isWithheld),
            breadth < 0 ? 0 : cell(table, row, breadth, isWithheld));
      }
    }
    return ends;
  }

  private static void add(List<double[]> points, double x, double y) {
    if (Double.isFinite(x) && Double.isFinite(y)) {
      points.add(new double[] {x, y});
    }
  }

  private void add(List<double[]> points, Sentence what) {
    double[] x = points.stream().mapToDouble(p -> p[0]).toArray();
    double[] y = points.stream().mapToDouble(p -> p[1]).toArray();
    if (x.length < LEAST_POINTS || !isMonotone(x)) {
      return;
    }
    Curve curve = Curve.of(what, x, y);
    if (curve.height() > curve.width() * FLATTEST && bend(x, y) > BENT * curve.height()) {
      curves.add(curve);
    }
  }

  /** The first column of lengths that only rise or only fall. */
  private static int places(Table table) {
    for (int c = 0; c < table.columns().size(); c++) {
      int column = c;
      double[] x = table.rows().stream().mapToDouble(r -> millimetres(r, column)).toArray();
      if (x.length >= LEAST_POINTS && isMonotone(x)) {
        return c;
      }
    }
    return -1;
  }

  private static double cell(Table table, Table.Row row, int column, Predicate<Label> isWithheld) {
    Label label = table.label().join(row.label()).join(table.columns().get(column).label());
    return isWithheld.test(label) ? millimetres(row, column) : Double.NaN;
  }

  private static double millimetres(Table.Row row, int column) {
    Quantity quantity = row.cells().get(column).quantity();
    try {
      return quantity == null ? Double.NaN : quantity.doubleIn(Unit.MILLIMETRE);
    } catch (QuantityException e) {
      return Double.NaN;
    }
  }

  private static double millimetres(Unit unit) {
    try {
      return Quantity.of(1, unit).doubleIn(Unit.MILLIMETRE);
    } catch (QuantityException e) {
      return Double.NaN;
    }
  }

  private static boolean isMonotone(double[] x) {
    double sign = Math.signum(x[1] - x[0]);
    for (int i = 1; i < x.length; i++) {
      if (!(sign * (x[i] - x[i - 1]) > 0)) {
        return false;
      }
    }
    return true;
  }

  /** The most that a point lies off the straight line between the ends. */
  private static double bend(double[] x, double[] y) {
    int last = x.length - 1;
    double most = 0;
    for (int i = 1; i < last; i++) {
      double straight = y[0] + (y[last] - y[0]) * (x[i] - x[0]) / (x[last] - x[0]);
      most = Math.max(most, Math.abs(y[i] - straight));
    }
    return most;
  }

  private static double extent(double[] values) {
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      most = Math.max(most, value);
    }
    return most - least(values);
  }

  private static double least(double[] values) {
    double least = Double.POSITIVE_INFINITY;
    for (double value : values) {
      least = Math.min(least, value);
    }
    return least;
  }

  int size() {
    return curves.size();
  }

  /** What is looked for, each curve in words of its own. */
  Stream<String> pieces() {
    return curves.stream().map(c -> Arrays.toString(c.x) + Arrays.toString(c.y));
  }

  /**
   * Of which tables curves are drawn.
   *
   * @param lines of one drawing, each from point to point
   */
  Set<Sentence> find(List<List<double[]>> lines) {
    List<Match> matches = new ArrayList<>();
    for (List<double[]> line : lines) {
      for (List<double[]> stretch : Stretches.of(line)) {
        addMatches(stretch, matches);
      }
    }
    Set<Sentence> found = new LinkedHashSet<>();
    for (Match match : matches) {
      long inCommon = matches.stream().filter(match::isAs).map(Match::curve).distinct().count();
      if (match.isToScale() || inCommon >= IN_COMMON) {
        found.add(match.curve.what);
      }
    }
    return found;
  }

  private void addMatches(List<double[]> stretch, List<Match> matches) {
    double[] x = stretch.stream().mapToDouble(p -> p[0]).toArray();
    double[] y = stretch.stream().mapToDouble(p -> p[1]).toArray();
    double width = extent(x);
    double height = extent(y);
    if (!(width > 0) || !(height > 0)) {
      return;
    }
    Form line = Form.of(x, y);
    Form turned = line.turned();
    for (Curve curve : curves) {
      if (curve.isIn(line)) {
        matches.add(new Match(curve, width / curve.width(), height / curve.height()));
      } else if (curve.isIn(turned)) {
        matches.add(new Match(curve, height / curve.width(), width / curve.height()));
      }
    }
  }
}

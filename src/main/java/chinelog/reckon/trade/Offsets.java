package chinelog.reckon.trade;

import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A table of offsets, read and found sound: one row for each station, from aft forward, with a
 * column for each waterline, such as {@code WL 20 half-breadth [mm]}. Where a pair of columns such
 * as {@code chine} and {@code chine half-breadth} has a height, the outline has a corner.
 *
 * @param waterlines their heights in m, from the lowest, with the number that the table gives each
 * @param hasSheer whether the table has the sheer's heights and half-breadths
 */
record Offsets(
    List<HullSection> stations,
    ShopUnits units,
    SortedMap<Double, String> waterlines,
    boolean hasSheer) {

  /** Headings that tell which end x is measured from, with the word for it. */
  private static final SortedMap<String, String> ENDS =
      new TreeMap<>(Map.of("x from aft", "aft", "x from bow", "bow"));

  /** Of a waterline: in the unit of its column, in its own, or in feet, inches and eighths. */
  private static final String HEIGHT =
      "wl\\s*(?<height>[0-9]+(?:[.,][0-9]+)?)(?:\\s*(?<unit>mm|cm|m|in|ft))?"
          + "(?:-(?<inches>[0-9]|1[01])-(?<eighths>[0-7]))?(?:\\s+(?:half-)?breadth)?";

  /** Columns whose names hold a number or a line of the hull's. */
  private static final String LINES =
      HEIGHT
          + "|(?:[a-z0-9]+ )?(?:chine|knuckle)(?: half-breadth)?|"
          + String.join("|", ENDS.keySet());

  static final Parameter TABLE =
      Parameter.table(
              "offsets",
              "the table of offsets, a row for each station; a corner without columns of its own is rounded",
              "station?",
              "x",
              "keel",
              "WL …",
              "keel half-breadth?",
              "rabbet?",
              "rabbet half-breadth?",
              "sheer?",
              "sheer half-breadth?",
              "chine?",
              "chine half-breadth?")
          .withColumns(LINES);

  /** How the table was taken off. */
  static final List<Parameter> MANNER =
      List.of(
          Parameter.word(
                  "origin",
                  "the end that x is measured from, if the column is not \"x from bow\"",
                  "aft",
                  "bow")
              .or("aft")
              .recalling()
              .orHeading(ENDS.keySet().toArray(String[]::new)),
          Parameter.word("breadths", "what the breadths are", "half", "full").or("half"));

  static final Parameter SIDING =
      Parameter.quantity(
              "siding", "half the thickness of keel and stem, where the skin begins", Unit.METRE)
          .or("0");

  private static final Pattern WATERLINE = Pattern.compile(HEIGHT);

  private static final String HALF = " half-breadth";

  /** Lines of the hull at which a station has a corner. */
  private static final Pattern CORNER = Pattern.compile("(?:[a-z0-9]+ )?(?:chine|knuckle)");

  static Offsets read(Inputs inputs) throws TradeException, QuantityException {
    Columns columns = new Columns("offsets", inputs.table("offsets"));
    String along = along(columns);
    double[] x = columns.numbers(along, Unit.METRE);
    boolean fromBow = isFromBow(inputs, columns, along);
    double share = inputs.word("breadths", "half").equals("full") ? 0.5 : 1;
    if (x[0] < 0) {
      throw columns.at(
          0,
          "This station lies at a negative x.",
          fromBow ? "Measure x from the bow." : "Measure x from the aft end of the hull.");
    }
    CurveArea.requireRising(columns, x);
    double[] keel = columns.numbers("keel", Unit.METRE);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    boolean flat = columns.find("keel half-breadth").isPresent();
    double[] bottom = columns.numbers("keel half-breadth", Unit.METRE, siding);
    TreeMap<Double, Integer> waterlines = waterlines(columns);
    columns.requireDistinct("station");
    List<HullSection> stations = new ArrayList<>();
    for (int row = 0; row < x.length; row++) {
      TreeMap<Double, Double> points =
          points(columns, row, waterlines, keel[row], flat ? bottom[row] : bottom[row] / share);
      double[] corners = addCorners(columns, row, points, keel[row]);
      if (points.size() < 2) {
        throw columns.at(
            row,
            "This station has no half-breadth above its keel.",
            "Give its half-breadth at one waterline at least, or take the row out.");
      }
      stations.add(
          new HullSection(
              columns.text(row, "station"),
              fromBow ? x[x.length - 1] - x[row] : x[row],
              unbox(points.keySet()),
              Arrays.stream(unbox(points.values())).map(y -> y * share).toArray(),
              flat ? bottom[row] * share : 0,
              corners));
    }
    if (fromBow) {
      Collections.reverse(stations);
    }
    SortedMap<Double, String> heights = new TreeMap<>();
    waterlines.forEach((z, column) -> heights.put(z, number(columns.headings().get(column))));
    return new Offsets(
        List.copyOf(stations),
        ShopUnits.of(columns.unit(along)),
        Collections.unmodifiableSortedMap(heights),
        columns.find("sheer").isPresent() && columns.find("sheer half-breadth").isPresent());
  }

  /** The column that tells where the stations stand. */
  private static String along(Columns columns) {
    return ENDS.keySet().stream().filter(h -> columns.find(h).isPresent()).findFirst().orElse("x");
  }

  private static boolean isFromBow(Inputs inputs, Columns columns, String along)
      throws TradeException {
    String told = ENDS.getOrDefault(along, "");
    String end = inputs.word("origin", told.isEmpty() ? "aft" : told);
    if (!told.isEmpty() && !told.equals(end)) {
      throw new TradeException(
          "origin",
          Sentence.of("The column \"{0}\" says otherwise than \"origin: {1}\".", along, end),
          "Keep one of the two.",
          columns.headings().get(columns.index(along)).place());
    }
    return end.equals("bow");
  }

  private static TreeMap<Double, Integer> waterlines(Columns columns)
      throws TradeException, QuantityException {
    TreeMap<Double, Integer> found = new TreeMap<>();
    for (int i = 0; i < columns.headings().size(); i++) {
      Table.Column column = columns.headings().get(i);
      Matcher m = WATERLINE.matcher(column.name().strip().toLowerCase(Locale.ROOT));
      if (m.matches()) {
        if (found.put(height(m, column.unit()), i) != null) {
          throw columns.at(
              0,
              i,
              Sentence.of("The waterline {0} is there twice.", number(column)),
              "Take one column out.");
        }
      }
    }
    if (found.isEmpty()) {
      throw columns.missing("WL 10 half-breadth");
    }
    return found;
  }

  private static double height(Matcher waterline, Unit unit) throws QuantityException {
    BigDecimal number = new BigDecimal(waterline.group("height").replace(',', '.'));
    if (waterline.group("eighths") != null) {
      BigDecimal inches = new BigDecimal(waterline.group("inches"));
      BigDecimal eighths = new BigDecimal(waterline.group("eighths"));
      return Quantity.of(number, Unit.parse("ft")).doubleIn(Unit.METRE)
          + Quantity.of(inches.add(eighths.divide(BigDecimal.valueOf(8))), Unit.INCH)
              .doubleIn(Unit.METRE);
    }
    String own = waterline.group("unit");
    return Quantity.of(number, own == null ? unit : Unit.parse(own)).doubleIn(Unit.METRE);
  }

  private static TreeMap<Double, Double> points(
      Columns columns, int row, TreeMap<Double, Integer> waterlines, double keel, double bottom)
      throws TradeException, QuantityException {
    TreeMap<Double, Double> points = new TreeMap<>();
    boolean ended = false;
    for (var waterline : waterlines.entrySet()) {
      int column = waterline.getValue();
      double half = columns.number(row, column, Unit.METRE);
      if (Double.isNaN(half)) {
        ended = ended || !points.isEmpty();
        continue;
      }
      if (ended) {
        throw columns.at(
            row,
            column,
            "There is a gap in this station below this half-breadth.",
            "Fill in the waterlines between the others.");
      }
      if (half < 0) {
        throw columns.at(
            row,
            column,
            "A half-breadth is negative.",
            "Measure it from the middle line outwards.");
      }
      if (waterline.getKey() < keel - 1e-9) {
        throw columns.at(
            row,
            column,
            "This half-breadth lies below the station's keel.",
            "Leave the cell empty, or put the keel's height right.");
      }
      points.put(Math.max(waterline.getKey(), keel), half);
    }
    if (!points.containsKey(keel)) {
      points.put(keel, bottom);
    }
    addRabbet(columns, row, points);
    addSheer(columns, row, points);
    return points;
  }

  /** Where the skin meets the keel, above the keel's own lower edge. */
  private static void addRabbet(Columns columns, int row, TreeMap<Double, Double> points)
      throws TradeException, QuantityException {
    double height = number(columns, row, "rabbet");
    double half = number(columns, row, "rabbet half-breadth");
    if (Double.isNaN(height) || Double.isNaN(half)) {
      return;
    }
    if (height < points.firstKey() - 1e-9) {
      throw columns.at(
          row,
          columns.index("rabbet"),
          "The rabbet lies below the keel.",
          "Put one of the two heights right.");
    }
    points.put(Math.max(height, points.firstKey()), half);
  }

  private static void addSheer(Columns columns, int row, TreeMap<Double, Double> points)
      throws TradeException, QuantityException {
    double height = number(columns, row, "sheer");
    double half = number(columns, row, "sheer half-breadth");
    if (Double.isNaN(height) || Double.isNaN(half)) {
      return;
    }
    if (height < points.lastKey() - 1e-9) {
      throw columns.at(
          row,
          columns.index("sheer"),
          "The sheer lies below a waterline that has a half-breadth here.",
          "Leave the waterlines above the sheer empty.");
    }
    points.put(height, half);
  }

  /**
   * A length of a column that need not be there; not a number where it is not, or the cell empty.
   */
  private static double number(Columns columns, int row, String column)
      throws TradeException, QuantityException {
    return columns.find(column).isEmpty()
        ? Double.NaN
        : columns.number(row, columns.index(column), Unit.METRE);
  }

  private static String number(Table.Column waterline) {
    Matcher m = WATERLINE.matcher(waterline.name().strip().toLowerCase(Locale.ROOT));
    if (!m.matches()) {
      return waterline.name();
    }
    String unit = m.group("unit") == null ? "" : " " + m.group("unit");
    return m.group("eighths") == null
        ? m.group("height").replace(',', '.') + unit
        : String.join("-", m.group("height"), m.group("inches"), m.group("eighths"));
  }

  /** The heights of the corners of a station, which are put among its points. */
  private static double[] addCorners(
      Columns columns, int row, TreeMap<Double, Double> points, double keel)
      throws TradeException, QuantityException {
    List<Double> corners = new ArrayList<>();
    for (Table.Column column : columns.headings()) {
      String line = column.name().strip().toLowerCase(Locale.ROOT);
      if (!CORNER.matcher(line).matches()) {
        continue;
      }
      double height = columns.number(row, columns.index(line), Unit.METRE);
      double half = columns.number(row, columns.index(line + HALF), Unit.METRE);
      if (Double.isNaN(height) && Double.isNaN(half)) {
        continue;
      }
      if (Double.isNaN(height) || Double.isNaN(half) || height < keel - 1e-9 || half < 0) {
        throw columns.at(
            row,
            columns.index(line),
            Sentence.of(
                "\"{0}\" of this station is not a height above its keel with a half-breadth.",
                line),
            "Fill in both cells, or leave both empty.");
      }
      double sheer =
          columns.find("sheer").isPresent()
              ? columns.number(row, columns.index("sheer"), Unit.METRE)
              : Double.NaN;
      if (height > sheer + 1e-9) {
        throw columns.at(
            row,
            columns.index(line),
            Sentence.of("\"{0}\" lies above the sheer of this station.", line),
            "Put one of the two heights right.");
      }
      points.put(Math.max(height, keel), half);
      corners.add(Math.max(height, keel));
    }
    return unbox(corners);
  }

  private static double[] unbox(Collection<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Heights above the base line between which every immersed figure can be reckoned, in m. */
  double lowest() {
    return stations.stream().mapToDouble(HullSection::keel).min().orElseThrow();
  }

  /** The lowest top of a station whose top is not the end of the stem. */
  double highest() {
    return stations.stream().mapToDouble(HullSection::top).min().orElseThrow();
  }

  /** A station's name as part of a fact's name. */
  static String factPart(String name) {
    String part =
        name.strip()
            .toLowerCase(Locale.ROOT)
            .replace("½", " half")
            .strip()
            .replaceAll("[^a-z0-9]+", "_");
    return part.isEmpty() ? "x" : part;
  }

  double[] stationX() {
    double[] x = new double[stations.size()];
    Arrays.setAll(x, i -> stations.get(i).x());
    return x;
  }
}

package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * A sail's area and centre of effort from what was measured: {@code sail}.
 *
 * <p>Triangle and quadrilateral by Heron's formula; corners by the shoelace rule. Cross widths by
 * the trapezoidal rule at 0, 1/4, 1/2, 3/4, 7/8, 1: main P (HB + 2 MGT + 3 MGU + 4 MGM + 4 MGL + 2
 * E)/16 (Micro class rule 5.02.01); headsail LL (4 LP + 6 HHW + 3 HTW + 2 HUW + head)/16 (IRC rule
 * 21.7.1; the 2 HTW of one printing is a misprint, as a triangle shows); spinnaker SF (SL1 + SL2)/4
 * + (SMG − SF/2)(SL1 + SL2)/3 (ISAF). Roach by Simpson's three-ordinate rule, ⅔ L r, or his
 * four-ordinate rule, ⅜ L (r1 + r2).
 */
final class Sail {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "sail",
              "A sail's area and centre of effort",
              List.of(
                  Parameter.word(
                          "shape",
                          "what was measured",
                          "triangle",
                          "quadrilateral",
                          "gaff",
                          "lug",
                          "gunter",
                          "corners",
                          "main",
                          "headsail",
                          "spinnaker")
                      .or("triangle"),
                  Parameter.table("corners", "in their order round the sail", "x", "z").or(""),
                  Parameter.quantity("luff", "its length", Unit.METRE).or(""),
                  Parameter.quantity("foot", "its length", Unit.METRE).or(""),
                  Parameter.quantity("leech", "its length", Unit.METRE).or(""),
                  Parameter.quantity("head", "its length; a headsail's allowance", Unit.METRE)
                      .or("0"),
                  Parameter.quantity("diagonal", "from throat to clew", Unit.METRE).or(""),
                  Parameter.quantity("perpendicular", "from clew to luff", Unit.METRE).or(""),
                  Parameter.quantity("quarter", "width at a quarter of the leech", Unit.METRE)
                      .or(""),
                  Parameter.quantity("half", "width at half the leech", Unit.METRE).or(""),
                  Parameter.quantity("three_quarter", "width at three quarters", Unit.METRE).or(""),
                  Parameter.quantity("seven_eighths", "width at seven eighths", Unit.METRE).or(""),
                  Parameter.quantity("roach_half", "roach at half the leech", Unit.METRE)
                      .or("no roach by three ordinates"),
                  Parameter.quantity("roach_lower", "roach at a third of the leech", Unit.METRE)
                      .or("no roach by four ordinates"),
                  Parameter.quantity("roach_upper", "roach at two thirds", Unit.METRE).or(""),
                  SailPattern.PARAMETERS.get(0),
                  SailPattern.PARAMETERS.get(1),
                  SailPattern.PARAMETERS.get(2),
                  Parameter.quantity(
                          "tack_x", "of the tack on the hull, from the aft end", Unit.METRE)
                      .or(""),
                  Parameter.quantity("tack_z", "of the tack above the base line", Unit.METRE)
                      .or("0"),
                  Parameter.quantity("rake", "of the luff, its head aft", Si.DEGREE).or("0 deg")),
              Sail::of)
          .drawing(Sail::draw)
          .yielding(
              "area", "sail.area",
              "roach", "sail.roach",
              "ce_x", "sail.ce.x",
              "ce_z", "sail.ce.z",
              "x", "sail.hull.x",
              "z", "sail.hull.z");

  private final Inputs inputs;
  private final YieldList yields = new YieldList();
  private final List<Piece> pieces = new ArrayList<>();
  private ShopUnits units = ShopUnits.MILLIMETRES;

  /** A part of the sail with its centre from the tack, in m² and m. */
  private record Piece(double area, double x, double z) {}

  private Sail(Inputs inputs) {
    this.inputs = inputs;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Sail sail = new Sail(inputs);
    for (String side : List.of("luff", "foot")) {
      Quantity given = inputs.quantities().get(side);
      if (given != null) {
        sail.units = ShopUnits.of(given.unit());
        break;
      }
    }
    switch (inputs.word("shape", "triangle")) {
      case "quadrilateral", "gaff", "lug", "gunter" -> sail.quadrilateral();
      case "corners" -> sail.corners();
      case "main" -> sail.main();
      case "headsail" -> sail.headsail();
      case "spinnaker" -> sail.spinnaker();
      default -> sail.triangle();
    }
    return sail.yields.list();
  }

  /** Of a sail whose corners are known. */
  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    Sail sail = new Sail(inputs);
    String shape = inputs.word("shape", "triangle");
    if (!List.of("triangle", "quadrilateral", "gaff", "lug", "gunter").contains(shape)) {
      return List.of();
    }
    double luff = sail.side("luff");
    double foot = sail.side("foot");
    double leech = sail.side("leech");
    double[] tack = {0, 0};
    double[] throat = {0, luff};
    if (shape.equals("triangle")) {
      double[] clew = Triangle.corner(luff, foot, leech);
      return List.of(SailPattern.draw(inputs, List.of(tack, clew, throat)));
    }
    double diagonal = sail.side("diagonal");
    double[] clew = Triangle.corner(luff, foot, diagonal);
    double[] peak = peak(luff, clew, sail.side("head"), leech, diagonal);
    return List.of(SailPattern.draw(inputs, List.of(tack, clew, peak, throat)));
  }

  private double side(String name) throws TradeException, QuantityException {
    return Si.positive(inputs, name, Unit.METRE);
  }

  private double width(String name) throws TradeException, QuantityException {
    double width = Si.value(inputs, name, Unit.METRE);
    if (width < 0) {
      throw new TradeException(name, "A width is negative.", "Give 0 or more.");
    }
    return width;
  }

  private void triangle() throws TradeException, QuantityException {
    double luff = side("luff");
    double foot = side("foot");
    double leech = side("leech");
    double area = Triangle.area(luff, foot, leech, "leech");
    double[] clew = Triangle.corner(luff, foot, leech);
    pieces.add(new Piece(area, clew[0] / 3, (luff + clew[1]) / 3));
    withRoach(
        new double[] {0, luff},
        clew,
        Message.of("sail.triangle.how"),
        new Terms().add(Triangle.worked(units, luff, foot, leech)).end());
    centre(Message.of("sail.triangle.centre.how"), corner("clew", clew));
  }

  private void quadrilateral() throws TradeException, QuantityException {
    double luff = side("luff");
    double foot = side("foot");
    double leech = side("leech");
    double head = side("head");
    double diagonal = side("diagonal");
    double lower = Triangle.area(luff, foot, diagonal, "diagonal");
    double upper = Triangle.area(head, leech, diagonal, "diagonal");
    double[] clew = Triangle.corner(luff, foot, diagonal);
    double[] peak = peak(luff, clew, head, leech, diagonal);
    pieces.add(new Piece(lower, clew[0] / 3, (luff + clew[1]) / 3));
    pieces.add(new Piece(upper, (clew[0] + peak[0]) / 3, (luff + clew[1] + peak[1]) / 3));
    withRoach(
        peak,
        clew,
        Message.of("sail.quadrilateral.how"),
        new Terms()
            .add(Triangle.worked(units, luff, foot, diagonal))
            .add(Triangle.worked(units, head, leech, diagonal))
            .end());
    centre(Message.of("sail.quadrilateral.centre.how"), corner("clew", clew), corner("peak", peak));
  }

  private Message corner(String name, double[] at) throws TradeException {
    return Message.of("sail." + name, units.length(at[0]), units.length(at[1]));
  }

  /** The peak, on the far side of the diagonal from the tack. */
  private static double[] peak(
      double luff, double[] clew, double head, double leech, double diagonal) {
    double along = (head * head + diagonal * diagonal - leech * leech) / (2 * diagonal);
    double out = Math.sqrt(Math.max(0, head * head - along * along));
    double ux = clew[0] / diagonal;
    double uz = (clew[1] - luff) / diagonal;
    return new double[] {along * ux - out * uz, luff + along * uz + out * ux};
  }

  private void corners() throws TradeException, QuantityException {
    Columns columns = new Columns("corners", inputs.table("corners"));
    units = ShopUnits.of(columns.unit("x"));
    Polygon sail = Polygon.read("corners", columns);
    area(sail.area(), Message.of("sail.corners.how"), sail.areaWorked(units));
    Message how = Message.of("sail.corners.centre.how");
    yields.add(
        "ce_x",
        Message.of("sail.ce.x"),
        units.length(sail.x()),
        how,
        sail.centreWorked(units, false));
    yields.add(
        "ce_z",
        Message.of("sail.ce.z"),
        units.length(sail.z()),
        how,
        sail.centreWorked(units, true));
    onHull(sail.x(), sail.z());
  }

  private void main() throws TradeException, QuantityException {
    double head = Si.value(inputs, "head", Unit.METRE, 0);
    double[] width = {
      side("foot"),
      width("quarter"),
      width("half"),
      width("three_quarter"),
      width("seven_eighths"),
      head
    };
    double[] times = {2, 4, 4, 3, 2, 1};
    byWidths("sail.main.how", times, width);
    slices(new double[] {0, 0.25, 0.5, 0.75, 0.875, 1}, width);
  }

  /** The luff times the widths, each so many times, over 16. */
  private void byWidths(String rule, double[] times, double[] width)
      throws TradeException, QuantityException {
    double sum = 0;
    Terms terms = new Terms(units.side(side("luff")), " × (");
    for (int i = times.length - 1; i >= 0; i--) {
      sum += times[i] * width[i];
      terms.add(Si.number(times[i]), " × ", units.side(width[i]));
    }
    area(side("luff") * sum / 16, Message.of(rule), terms.end(") ÷ 16"));
  }

  private void headsail() throws TradeException, QuantityException {
    double head = Si.value(inputs, "head", Unit.METRE, 0);
    double[] width = {
      side("perpendicular"), width("half"), width("three_quarter"), width("seven_eighths"), head
    };
    byWidths("sail.headsail.how", new double[] {4, 6, 3, 2, 1}, width);
    slices(new double[] {0, 0.5, 0.75, 0.875, 1}, width);
  }

  /** The centre of trapezoids between cross widths, each laid off square to the luff. */
  private void slices(double[] at, double[] width) throws TradeException, QuantityException {
    double luff = side("luff");
    for (int i = 1; i < at.length; i++) {
      double h = (at[i] - at[i - 1]) * luff;
      double a = width[i - 1];
      double b = width[i];
      if (a + b > 0) {
        pieces.add(
            new Piece(
                h * (a + b) / 2,
                (a * a + a * b + b * b) / (3 * (a + b)),
                at[i - 1] * luff + h * (a + 2 * b) / (3 * (a + b))));
      }
    }
    centre(Message.of("sail.slices.how"));
  }

  /**
   * Its widths foot, half and none at the head, by Simpson's first rule, which the formula of the
   * area is: ∫ w dz = L (SF + 4 SMG)/6 and ∫ z w dz = L² SMG/3.
   */
  private void spinnaker() throws TradeException, QuantityException {
    double foot = side("foot");
    double half = width("half");
    double luff = side("luff");
    double leech = side("leech");
    double sides = luff + leech;
    Quantity sf = units.side(foot);
    Quantity smg = units.side(half);
    Quantity both = units.side(sides);
    area(
        foot * sides / 4 + (half - foot / 2) * sides / 3,
        Message.of("sail.spinnaker.how"),
        YieldList.worked("{0} × {1} ÷ 4 + ({2} − {0} ÷ 2) × {1} ÷ 3", sf, both, smg));
    double height = sides / 2 * 2 * half / (foot + 4 * half);
    Message how = Message.of("sail.spinnaker.centre");
    yields.add(
        "ce_x",
        Message.of("sail.ce.x"),
        units.length(foot / 2),
        how,
        YieldList.worked("{0} ÷ 2", units.length(foot)));
    yields.add(
        "ce_z",
        Message.of("sail.ce.z"),
        units.length(height),
        how,
        YieldList.worked(
            "{0} × 2 × {1} ÷ ({2} + 4 × {1})",
            units.length(sides / 2), units.length(half), units.length(foot)));
    onHull(foot / 2, height);
  }

  /**
   * Yields the area with its roach, which is a piece more of the sail: a parabola has its centre
   * two fifths of its height off its chord.
   */
  private void withRoach(double[] head, double[] clew, Message method, Message worked)
      throws TradeException, QuantityException {
    boolean three = inputs.findQuantity("roach_half").isPresent();
    boolean four = inputs.findQuantity("roach_lower").isPresent();
    if (three && four) {
      throw new TradeException(
          "roach_half",
          "The roach is given twice.",
          "Give it either at half the leech or at its thirds.");
    }
    double plain = pieces.stream().mapToDouble(Piece::area).sum();
    if (!three && !four) {
      area(plain, method, worked);
      return;
    }
    double leech = side("leech");
    double lower = three ? 1 : width("roach_lower");
    double upper = three ? 1 : width("roach_upper");
    double roach = three ? 2 * leech * width("roach_half") / 3 : 3 * leech * (lower + upper) / 8;
    Message rule = Message.of(three ? "sail.roach.three" : "sail.roach.four");
    Quantity edge = units.side(leech);
    yields.add(
        "roach",
        Message.of("sail.roach"),
        units.area(roach),
        rule,
        three
            ? YieldList.worked("⅔ × {0} × {1}", edge, units.side(width("roach_half")))
            : YieldList.worked(
                "⅜ × {0} × ({1} + {2})", edge, units.side(lower), units.side(upper)));
    area(
        plain + roach,
        method,
        worked,
        Message.of("sail.roach.added", rule),
        YieldList.worked("{0} + {1}", units.area(plain), units.area(roach)));
    double deep = three ? width("roach_half") : 1.125 * (lower + upper) / 2;
    double up = lower + upper == 0 ? 0.5 : 0.5 + (upper - lower) / (lower + upper) / 10;
    double dx = head[0] - clew[0];
    double dz = head[1] - clew[1];
    double chord = Math.hypot(dx, dz);
    pieces.add(
        new Piece(
            roach,
            clew[0] + up * dx + 0.4 * deep * dz / chord,
            clew[1] + up * dz - 0.4 * deep * dx / chord));
  }

  private void area(double m2, Message... method) throws TradeException {
    yields.add("area", Message.of("sail.area"), units.area(m2), method);
  }

  /** The centre of the pieces, from the tack, with the luff upright. */
  private void centre(Message... method) throws TradeException, QuantityException {
    double area = pieces.stream().mapToDouble(Piece::area).sum();
    double x = pieces.stream().mapToDouble(p -> p.area * p.x).sum() / area;
    double z = pieces.stream().mapToDouble(p -> p.area * p.z).sum() / area;
    Terms out = new Terms("Σ A x ÷ Σ A = (");
    Terms up = new Terms("Σ A z ÷ Σ A = (");
    for (Piece piece : pieces) {
      out.add(units.area(piece.area), " × ", units.length(piece.x));
      up.add(units.area(piece.area), " × ", units.length(piece.z));
    }
    List<Message> across = new ArrayList<>(List.of(method));
    List<Message> above = new ArrayList<>(List.of(method));
    across.add(out.end(") ÷ ", units.area(area)));
    above.add(up.end(") ÷ ", units.area(area)));
    yields.add("ce_x", Message.of("sail.ce.x"), units.length(x), across.toArray(Message[]::new));
    yields.add("ce_z", Message.of("sail.ce.z"), units.length(z), above.toArray(Message[]::new));
    onHull(x, z);
  }

  /** The same laid off on the hull, where the tack is. */
  private void onHull(double x, double z) throws TradeException, QuantityException {
    if (inputs.findQuantity("tack_x").isEmpty()) {
      return;
    }
    Quantity angle = Si.show(Si.value(inputs, "rake", Si.DEGREE, 0), Si.DEGREE, Si.DEGREE);
    double rake = Math.toRadians(Si.value(inputs, "rake", Si.DEGREE, 0));
    double tackX = Si.value(inputs, "tack_x", Unit.METRE);
    double tackZ = Si.value(inputs, "tack_z", Unit.METRE, 0);
    Message how = Message.of("sail.hull.how");
    yields.add(
        "x",
        Message.of("sail.hull.x"),
        units.length(tackX - z * Math.sin(rake) - x * Math.cos(rake)),
        how,
        YieldList.worked(
            "{0} − {1} × sin {2} − {3} × cos {2}",
            units.length(tackX), units.length(z), angle, units.length(x)));
    yields.add(
        "z",
        Message.of("sail.hull.z"),
        units.length(tackZ + z * Math.cos(rake) - x * Math.sin(rake)),
        how,
        YieldList.worked(
            "{0} + {1} × cos {2} − {3} × sin {2}",
            units.length(tackZ), units.length(z), angle, units.length(x)));
  }
}

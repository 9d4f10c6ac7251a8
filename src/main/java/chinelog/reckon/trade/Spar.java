package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Diameters along a tapered spar: {@code spar}.
 *
 * <p>From the greatest diameter D to the end's d: straight D − (D − d) u, or swelled D − (D − d)
 * u², with u the share of the length; by quarters, 60/61, 14/15, 6/7 and 3/4 of D (an old
 * mastmakers' rule, from memory).
 */
final class Spar {

  private static final double[] QUARTERS = {1, 60.0 / 61, 14.0 / 15, 6.0 / 7, 3.0 / 4};

  private static final int[] SIMPSON = {1, 4, 2, 4, 1};

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "spar",
              "Diameters along a tapered spar",
              parameters(
                  Parameter.quantity("length", "from the greatest diameter to the end", Unit.METRE),
                  Parameter.quantity("diameter", "the greatest", Unit.METRE),
                  Parameter.quantity("end", "diameter at the end", Unit.METRE)
                      .or("three quarters, by quarters"),
                  Parameter.word("taper", "how it runs", "straight", "swelled", "quarters")
                      .or("swelled"),
                  Parameter.quantity("parts", "into how many the length is divided", Unit.ONE)
                      .or("4"),
                  Parameter.quantity("density", "of the wood, to tell the mass", Si.KG_M3).or("")),
              Spar::of)
          .yielding(
              "diameter_…", "spar.diameter",
              "mass", "spar.mass")
          .drawing(Spar::draw);

  private Spar() {}

  private static List<Parameter> parameters(Parameter... own) {
    List<Parameter> all = new ArrayList<>(List.of(own));
    all.addAll(SparFittings.PARAMETERS);
    return all;
  }

  /** The spar in profile, its middle line along the sheet. */
  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    double length = Si.positive(inputs, "length", Unit.METRE);
    double[] diameters = diameters(inputs);
    int parts = diameters.length - 1;
    double[] along = new double[parts + 1];
    double[] half = new double[parts + 1];
    for (int i = 0; i <= parts; i++) {
      along[i] = length * i / parts;
      half[i] = diameters[i] / 2;
    }
    PartDrawing drawing = new PartDrawing("spar", Message.of("pattern.spar"));
    List<double[]> outline = new ArrayList<>();
    for (double[] p : Batten.through(along, half).points()) {
      outline.add(new double[] {p[0], p[1]});
    }
    for (int i = outline.size() - 1; i >= 0; i--) {
      outline.add(new double[] {outline.get(i)[0], -outline.get(i)[1]});
    }
    drawing.cut(outline);
    drawing.line(LineUse.CENTRE, 0, 0, length, 0);
    SparFittings fittings =
        new SparFittings(
            inputs, Batten.through(along, half).points().stream().map(double[]::clone).toList());
    fittings.draw(drawing);
    for (int i = 0; i <= parts; i++) {
      drawing.line(LineUse.SCORE, along[i], -half[i], along[i], half[i]);
      drawing.write(
          new Phrase.Amount(Si.show(diameters[i], Unit.METRE, inputs.quantity("diameter").unit())),
          along[i] - (i == parts ? 0.012 : 0),
          half[0] + 0.002,
          PartDrawing.SMALL);
    }
    drawing.block(
        List.of(Message.of("pattern.spar"), Message.of("pattern.spar.about")), 0, -half[0] - 0.001);
    List<Part> drawn = new ArrayList<>(List.of(drawing.part()));
    fittings.development().ifPresent(drawn::add);
    return drawn;
  }

  /** In m, from the greatest to the end. */
  private static double[] diameters(Inputs inputs) throws TradeException, QuantityException {
    double most = Si.positive(inputs, "diameter", Unit.METRE);
    String taper = inputs.word("taper", "swelled");
    boolean quarters = taper.equals("quarters");
    double end = end(inputs, most);
    if (end > most) {
      throw new TradeException(
          "end", "The end is thicker than the greatest diameter.", "Give a smaller diameter.");
    }
    double given = Si.positive(inputs, "parts", Unit.ONE, 4);
    int parts = (int) given;
    if (parts != given || parts > 100 || (quarters && parts != 4)) {
      throw new TradeException(
          "parts",
          Sentence.of("A spar cannot be divided into {0} parts here.", given),
          quarters ? "By quarters it has 4." : "Give a whole number from 1 to 100.");
    }
    double[] d = new double[parts + 1];
    for (int i = 0; i <= parts; i++) {
      double u = (double) i / parts;
      d[i] =
          quarters
              ? most * QUARTERS[i]
              : most - (most - end) * (taper.equals("straight") ? u : u * u);
    }
    return d;
  }

  private static double end(Inputs inputs, double most) throws TradeException, QuantityException {
    return inputs.word("taper", "swelled").equals("quarters")
        ? most * QUARTERS[4]
        : Si.positive(inputs, "end", Unit.METRE);
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double length = Si.positive(inputs, "length", Unit.METRE);
    String taper = inputs.word("taper", "swelled");
    Quantity diameter = inputs.quantity("diameter");
    double[] d = diameters(inputs);
    int parts = d.length - 1;
    double end = end(inputs, d[0]);
    YieldList yields = new YieldList();
    for (int i = 0; i <= parts; i++) {
      yields.add(
          "diameter_" + i,
          Message.of("spar.diameter", i, parts),
          Si.show(d[i], Unit.METRE, diameter.unit()),
          Message.of("spar." + taper + ".how"),
          tapered(inputs, taper, i, parts, end));
    }
    if (inputs.findQuantity("density").isPresent()) {
      double density = Si.positive(inputs, "density", Si.KG_M3);
      double volume = volume(taper, d, length);
      yields.add(
          "mass",
          Message.of("spar.mass"),
          Laminate.grams(volume * density),
          Message.of("spar.mass." + taper + ".how"),
          told(inputs, taper, d, length),
          YieldList.worked(
              "{0} × {1}",
              Si.show(volume, Si.M3, Si.unit("cm³")),
              Si.show(density, Si.KG_M3, Si.unit("g/cm³"))));
    }
    return yields.list();
  }

  private static Message tapered(Inputs inputs, String taper, int i, int parts, double end)
      throws TradeException, QuantityException {
    Quantity most = inputs.quantity("diameter").withoutTolerance();
    if (taper.equals("quarters")) {
      return YieldList.worked("{0} × {1}", most, Si.number(QUARTERS[i]));
    }
    return YieldList.worked(
        "{0} − ({0} − {1}) × ({2} ÷ {3}{4}",
        most,
        Si.show(end, Unit.METRE, most.unit()),
        Si.number(i),
        Si.number(parts),
        taper.equals("straight") ? ")" : ")²");
  }

  /** The volume's formula with its figures; of quarters, by Simpson's first rule. */
  private static Message told(Inputs inputs, String taper, double[] d, double length)
      throws TradeException {
    ShopUnits units = ShopUnits.of(inputs.quantity("diameter").unit());
    Quantity most = units.side(d[0]);
    Quantity end = units.side(d[d.length - 1]);
    Quantity less = units.side(d[0] - d[d.length - 1]);
    if (taper.equals("quarters")) {
      Terms squares = new Terms("V = π ÷ 48 × ", units.side(length), " × (");
      for (int i = 0; i < d.length; i++) {
        squares.add(Si.number(SIMPSON[i]), " × ", units.side(d[i]), "²");
      }
      return squares.end(")");
    }
    return taper.equals("straight")
        ? new Terms("V = π ÷ 12 × ", units.side(length), " × (")
            .add(most, "²")
            .add(most, " × ", end)
            .add(end, "²")
            .end(")")
        : YieldList.worked(
            "V = π ÷ 4 × {0} × ({1}² − ⅔ × {1} × {2} + {2}² ÷ 5)", units.side(length), most, less);
  }

  /** Of d = D − t u², the square is integrated as D² − 2/3 D t + t²/5. */
  private static double volume(String taper, double[] d, double length) {
    double most = d[0];
    double end = d[d.length - 1];
    double less = most - end;
    double square =
        switch (taper) {
          case "quarters" ->
              IntStream.range(0, d.length).mapToDouble(i -> SIMPSON[i] * d[i] * d[i]).sum() / 12;
          case "straight" -> (most * most + most * end + end * end) / 3;
          default -> most * most - 2 * most * less / 3 + less * less / 5;
        };
    return Math.PI / 4 * length * square;
  }
}

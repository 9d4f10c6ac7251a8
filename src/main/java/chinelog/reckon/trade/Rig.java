package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How far the sails' common centre leads the centre of the underwater profile: {@code rig}.
 *
 * <p>Centre of effort = Σ area × distance / Σ area; the centre of lateral resistance is taken as
 * the centre of the profile's area; lead = CE − CLR, forward positive, as a share of the waterline.
 * Common practice, no source.
 */
final class Rig {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "rig",
              "The lead of the sails over the lateral plane",
              List.of(
                  Parameter.table("sails", "a row for each sail", "sail?", "area", "x", "z?")
                      .or("the sails told by main, fore, mizzen and spinnaker"),
                  Parameter.quantity("main_area", "of the main, such as main.area", Si.M2).or(""),
                  Parameter.quantity("main_x", "its centre, such as main.x", Unit.METRE).or(""),
                  Parameter.quantity("main_z", "its height, such as main.z", Unit.METRE).or("0"),
                  Parameter.quantity("fore_area", "of the jib or foresail", Si.M2).or(""),
                  Parameter.quantity("fore_x", "its centre", Unit.METRE).or(""),
                  Parameter.quantity("fore_z", "its height", Unit.METRE).or("0"),
                  Parameter.quantity("mizzen_area", "of the mizzen", Si.M2).or(""),
                  Parameter.quantity("mizzen_x", "its centre", Unit.METRE).or(""),
                  Parameter.quantity("mizzen_z", "its height", Unit.METRE).or("0"),
                  Parameter.quantity("spinnaker_area", "of the spinnaker", Si.M2).or(""),
                  Parameter.quantity("spinnaker_x", "its centre", Unit.METRE).or(""),
                  Parameter.quantity("spinnaker_z", "its height", Unit.METRE).or("0"),
                  Parameter.table("profile", "corners of the underwater profile", "x", "z")
                      .or("the centre given"),
                  Parameter.quantity(
                          "clr", "centre of lateral resistance from the aft end", Unit.METRE)
                      .or("that of the profile"),
                  Parameter.quantity("lwl", "length of the waterline", Unit.METRE).or(""),
                  Parameter.table("plan", "corners of the sails, to be drawn", "sail", "x", "z")
                      .or("each sail is drawn as a circle of its area")),
              Rig::of)
          .yielding(
              "area", "rig.area",
              "ce_x", "rig.ce.x",
              "ce_z", "rig.ce.z",
              "lateral", "rig.profile",
              "clr", "rig.clr",
              "lead", "rig.lead",
              "lead_share", "rig.lead.share")
          .sketching(Rig::sketch);

  private Rig() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Spread sails = inputs.findTable("sails").isPresent() ? fromTable(inputs) : fromFigures(inputs);
    ShopUnits units = sails.units;
    double whole = 0;
    double along = 0;
    double up = 0;
    for (int i = 0; i < sails.area.length; i++) {
      whole += sails.area[i];
      along += sails.area[i] * sails.x[i];
      up += sails.area[i] * sails.z[i];
    }
    Message moments = Message.of("rig.ce.how");
    YieldList yields = new YieldList();
    Terms areas = new Terms();
    for (double area : sails.area) {
      areas.add(units.area(area));
    }
    yields.add("area", "rig.area", units.area(whole), areas.end());
    yields.add(
        "ce_x",
        Message.of("rig.ce.x"),
        units.length(along / whole),
        moments,
        moments(units, "Σ A x ÷ Σ A = (", sails.area, sails.x, whole));
    if (sails.heights) {
      yields.add(
          "ce_z",
          Message.of("rig.ce.z"),
          units.length(up / whole),
          moments,
          moments(units, "Σ A z ÷ Σ A = (", sails.area, sails.z, whole));
    }
    lead(yields, inputs, units, along / whole);
    return yields.list();
  }

  private static Message moments(
      ShopUnits units, String sum, double[] area, double[] lever, double whole)
      throws TradeException {
    Terms terms = new Terms(sum);
    for (int i = 0; i < area.length; i++) {
      terms.add(units.area(area[i]), " × ", units.length(lever[i]));
    }
    return terms.end(") ÷ ", units.area(whole));
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    boolean isTable = inputs.findTable("sails").isPresent();
    Spread sails = isTable ? fromTable(inputs) : fromFigures(inputs);
    if (!sails.heights) {
      return List.of();
    }
    Map<String, List<double[]>> corners = corners(inputs, sails.names);
    List<SailPlanSketch.Cloth> cloths = new ArrayList<>();
    for (int i = 0; i < sails.area.length; i++) {
      String name = sails.names.get(i);
      cloths.add(
          new SailPlanSketch.Cloth(
              isTable ? Phrase.own(name) : Message.of("sketch.sail." + name),
              sails.area[i],
              sails.x[i],
              sails.z[i],
              corners.getOrDefault(name.toLowerCase(Locale.ROOT), List.of())));
    }
    List<double[]> profile = new ArrayList<>();
    double clr = Si.value(inputs, "clr", Unit.METRE, Double.NaN);
    if (inputs.findTable("profile").isPresent()) {
      Columns columns = new Columns("profile", inputs.table("profile"));
      double[] x = columns.numbers("x", Unit.METRE);
      double[] z = columns.numbers("z", Unit.METRE);
      for (int i = 0; i < x.length; i++) {
        profile.add(new double[] {x[i], z[i]});
      }
      clr = Polygon.read("profile", columns).x();
    }
    return List.of(new SailPlanSketch(cloths, profile, clr, sails.units).draw());
  }

  /** The corners of each sail by its name, in small letters. */
  private static Map<String, List<double[]>> corners(Inputs inputs, List<String> names)
      throws TradeException, QuantityException {
    Map<String, List<double[]>> corners = new TreeMap<>();
    if (inputs.findTable("plan").isEmpty()) {
      return corners;
    }
    Columns plan = new Columns("plan", inputs.table("plan"));
    double[] x = plan.numbers("x", Unit.METRE);
    double[] z = plan.numbers("z", Unit.METRE);
    for (int i = 0; i < x.length; i++) {
      String sail = plan.text(i, "sail");
      if (names.stream().noneMatch(sail::equalsIgnoreCase)) {
        throw plan.at(
            i,
            Sentence.of("There is no sail \"{0}\".", sail),
            Sentence.of("Write one of: {0}.", String.join(", ", names)));
      }
      corners
          .computeIfAbsent(sail.toLowerCase(Locale.ROOT), s -> new ArrayList<>())
          .add(new double[] {x[i], z[i]});
    }
    for (Map.Entry<String, List<double[]>> sail : corners.entrySet()) {
      if (sail.getValue().size() < 3) {
        throw new TradeException(
            "plan",
            Sentence.of("The sail \"{0}\" has fewer than three corners.", sail.getKey()),
            "Give a row for each of its corners, round the sail.");
      }
    }
    return corners;
  }

  /** Areas in m² and centres in m. */
  private record Spread(
      List<String> names,
      double[] area,
      double[] x,
      double[] z,
      boolean heights,
      ShopUnits units) {}

  private static Spread fromTable(Inputs inputs) throws TradeException, QuantityException {
    Columns sails = new Columns("sails", inputs.table("sails"));
    double[] area = sails.numbers("area", Si.M2);
    for (int i = 0; i < area.length; i++) {
      if (area[i] <= 0) {
        throw sails.at(i, "A sail's area is not above zero.", "Give its area.");
      }
    }
    return new Spread(
        IntStream.range(0, area.length).mapToObj(i -> sails.text(i, "sail")).toList(),
        area,
        sails.numbers("x", Unit.METRE),
        sails.numbers("z", Unit.METRE, 0),
        sails.find("z").isPresent(),
        ShopUnits.of(sails.unit("x")));
  }

  private static Spread fromFigures(Inputs inputs) throws TradeException, QuantityException {
    List<String> sails =
        Stream.of("main", "fore", "mizzen", "spinnaker")
            .filter(s -> inputs.findQuantity(s + "_area").isPresent())
            .toList();
    if (sails.isEmpty()) {
      throw new TradeException(
          "sails", "There is no sail.", "Give sails, or main_area with main_x and main_z.");
    }
    double[] area = new double[sails.size()];
    double[] x = new double[area.length];
    double[] z = new double[area.length];
    boolean heights = false;
    for (int i = 0; i < area.length; i++) {
      area[i] = Si.positive(inputs, sails.get(i) + "_area", Si.M2);
      x[i] = Si.value(inputs, sails.get(i) + "_x", Unit.METRE);
      z[i] = Si.value(inputs, sails.get(i) + "_z", Unit.METRE, 0);
      heights |= inputs.findQuantity(sails.get(i) + "_z").isPresent();
    }
    return new Spread(
        sails, area, x, z, heights, ShopUnits.of(inputs.quantity(sails.get(0) + "_x").unit()));
  }

  private static void lead(YieldList yields, Inputs inputs, ShopUnits units, double ce)
      throws TradeException, QuantityException {
    boolean drawn = inputs.findTable("profile").isPresent();
    if (drawn && inputs.findQuantity("clr").isPresent()) {
      throw new TradeException("clr", "The centre is given twice.", "Give either clr or profile.");
    }
    if (!drawn && inputs.findQuantity("clr").isEmpty()) {
      return;
    }
    double clr;
    if (drawn) {
      Polygon profile = Polygon.read("profile", new Columns("profile", inputs.table("profile")));
      clr = profile.x();
      yields.add("lateral", "rig.profile", units.area(profile.area()), profile.areaWorked(units));
      yields.add("clr", "rig.clr", units.length(clr), profile.centreWorked(units, false));
    } else {
      clr = Si.value(inputs, "clr", Unit.METRE);
    }
    yields.add(
        "lead",
        "rig.lead",
        units.length(ce - clr),
        YieldList.worked("{0} − {1}", units.length(ce), units.length(clr)));
    if (inputs.findQuantity("lwl").isPresent()) {
      yields.add(
          "lead_share",
          "rig.lead.share",
          Si.percent((ce - clr) / Si.positive(inputs, "lwl", Unit.METRE)),
          YieldList.worked(
              "{0} ÷ {1}",
              units.length(ce - clr), units.length(Si.positive(inputs, "lwl", Unit.METRE))));
    }
  }
}

package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * Cloth and resin: {@code laminate}.
 *
 * <p>With w the dry fibre mass per area, ψ the fibre's share of the mass, ρf and ρr the densities:
 * resin = w (1 − ψ)/ψ; thickness = w (1/ρf + (1/ψ − 1)/ρr), which for 2560 and 1200 kg/m³ is the
 * boat-scantling form (w/3.072)(2.56/ψ − 1.36) mm with w in kg/m² (as in ISO 12215-5 annex C; from
 * the identity of the two, the standard's text was not consulted); fibre's share of the volume =
 * (ψ/ρf)/(ψ/ρf + (1 − ψ)/ρr), the rule of mixtures.
 */
final class Laminate {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "laminate",
              "Cloth and resin",
              List.of(
                  Parameter.table(
                          "zones",
                          "a row for each zone",
                          "zone?",
                          "area",
                          "cloth",
                          "layers?",
                          "fraction?")
                      .or("one zone, by area, cloth and layers"),
                  Parameter.quantity("area", "to be covered", Si.M2).or("the table's"),
                  Parameter.quantity("cloth", "mass of the cloth per area", Si.KG_M2)
                      .or("the table's"),
                  Parameter.quantity("layers", "of cloth", Unit.ONE).or("1"),
                  Parameter.quantity(
                          "fraction", "the fibre's share of the laminate's mass", Unit.ONE)
                      .or("the table's"),
                  Parameter.quantity("fibre_density", "of the fibre", Si.KG_M3)
                      .or("2560 kg/m³, glass"),
                  Parameter.quantity("resin_density", "of the resin once hard", Si.KG_M3)
                      .or("1200 kg/m³"),
                  Parameter.quantity("waste", "share of the mixed resin that is lost", Unit.ONE)
                      .or("0 %"),
                  Parameter.quantity("mix_resin", "parts of resin", Unit.ONE).or(""),
                  Parameter.quantity("mix_hardener", "parts of hardener", Unit.ONE).or(""),
                  Parameter.word("mix_by", "what the parts are of", "mass", "volume").or("mass"),
                  Parameter.quantity("liquid_resin_density", "of the resin as poured", Si.KG_M3)
                      .or("needed to mix by volume"),
                  Parameter.quantity(
                          "liquid_hardener_density", "of the hardener as poured", Si.KG_M3)
                      .or("needed to mix by volume"),
                  Parameter.quantity("pot_life", "of one mix", Unit.MINUTE).or(""),
                  Parameter.quantity("pace", "resin worked in a time", Si.unit("kg/s")).or("")),
              Laminate::of)
          .yielding(
              "thickness…", "laminate.thickness",
              "density…", "laminate.density",
              "fibre_volume…", "laminate.fibre",
              "cloth_area", "laminate.cloth",
              "fibre_mass", "laminate.dry",
              "resin_mass", "laminate.resin",
              "resin_to_mix", "laminate.mix",
              "mass", "laminate.mass",
              "hardener_per_100", "mix.per.hundred",
              "mix_resin_mass", "mix.resin",
              "mix_hardener_mass", "mix.hardener",
              "mix_resin_volume", "mix.resin.volume",
              "mix_hardener_volume", "mix.hardener.volume",
              "batches", "mix.batches",
              "batch", "mix.batch")
          .sketching(Laminate::sketch);

  private final YieldList yields = new YieldList();
  private final double fibreDensity;
  private final double resinDensity;
  private final List<LaminateSketch.Zone> layered = new ArrayList<>();
  private double fibre;
  private double resin;
  private double cloth;
  private final Terms areas = new Terms();
  private final Terms fibres = new Terms();
  private final Terms resins = new Terms();

  private Laminate(Inputs inputs) throws TradeException, QuantityException {
    fibreDensity = Si.positive(inputs, "fibre_density", Si.KG_M3, 2560);
    resinDensity = Si.positive(inputs, "resin_density", Si.KG_M3, 1200);
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    List<LaminateSketch.Zone> layered = zoned(inputs).layered;
    // A single layer is no section to look at.
    return layered.size() == 1 && layered.get(0).layers() < 2
        ? List.of()
        : List.of(LaminateSketch.draw(layered));
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Laminate laminate = zoned(inputs);
    laminate.sums(Si.share(inputs, "waste", 0));
    ResinMix.add(laminate.yields, inputs, laminate.resin / (1 - Si.share(inputs, "waste", 0)));
    return laminate.yields.list();
  }

  private static Laminate zoned(Inputs inputs) throws TradeException, QuantityException {
    Laminate laminate = new Laminate(inputs);
    if (inputs.findTable("zones").isPresent()) {
      laminate.zones(inputs);
    } else {
      double psi = fraction("fraction", Si.positive(inputs, "fraction", Unit.ONE));
      laminate.zone(
          "",
          "",
          Si.positive(inputs, "area", Si.M2),
          Si.positive(inputs, "cloth", Si.KG_M2),
          Si.positive(inputs, "layers", Unit.ONE, 1),
          psi);
    }
    return laminate;
  }

  private void zones(Inputs inputs) throws TradeException, QuantityException {
    Columns columns = new Columns("zones", inputs.table("zones"));
    columns.requireDistinct("zone");
    double[] area = columns.numbers("area", Si.M2);
    double[] weight = columns.numbers("cloth", Si.KG_M2);
    double[] layers = columns.numbers("layers", Unit.ONE, 1);
    boolean own = columns.find("fraction").isPresent();
    double[] psi =
        columns.numbers("fraction", Unit.ONE, own ? 0 : Si.positive(inputs, "fraction", Unit.ONE));
    for (int i = 0; i < area.length; i++) {
      if (area[i] <= 0 || weight[i] <= 0 || layers[i] <= 0) {
        throw columns.at(
            i, "An area, a cloth or a number of layers is not above zero.", "Put the row right.");
      }
      String name = columns.text(i, "zone");
      zone(
          "_" + Offsets.factPart(name),
          name,
          area[i],
          weight[i],
          layers[i],
          fraction(own ? "zones" : "fraction", psi[i]));
    }
  }

  private static double fraction(String input, double psi) throws TradeException {
    if (psi <= 0 || psi >= 1) {
      throw new TradeException(
          input,
          Sentence.of("The fibre's share of the mass is {0}.", psi),
          "Give a share between 0 and 1, such as 0.45 or 45 %.");
    }
    return psi;
  }

  private void zone(String part, String zone, double area, double weight, double layers, double psi)
      throws TradeException {
    double dry = weight * layers;
    fibre += area * dry;
    resin += area * dry * (1 - psi) / psi;
    cloth += area * layers;
    Quantity covered = Si.show(area, Si.M2, Si.M2);
    Quantity dryCloth = Si.show(weight, Si.KG_M2, Si.unit("g/m²"));
    areas.add(covered, " × ", Si.number(layers));
    fibres.add(covered, " × ", Si.number(layers), " × ", dryCloth);
    resins.add(grams(area * dry), " × (1 − ", Si.percent(psi), ") ÷ ", Si.percent(psi));
    double thick = dry * (1 / fibreDensity + (1 / psi - 1) / resinDensity);
    layered.add(new LaminateSketch.Zone(zone, layers, weight, thick));
    yields.add(
        "thickness" + part,
        titled(zone, "thickness"),
        Si.show(thick, Unit.METRE, Unit.MILLIMETRE),
        Message.of("laminate.thickness.how"),
        YieldList.worked(
            "{0} × (1 ÷ {1} + (1 ÷ {2} − 1) ÷ {3})",
            Si.show(dry, Si.KG_M2, Si.unit("g/m²")),
            cubic(fibreDensity),
            Si.percent(psi),
            cubic(resinDensity)));
    yields.add(
        "density" + part,
        titled(zone, "density"),
        cubic(1 / (psi / fibreDensity + (1 - psi) / resinDensity)),
        Message.of("laminate.density.how"),
        YieldList.worked(
            "1 ÷ ({0} ÷ {1} + (1 − {0}) ÷ {2})",
            Si.percent(psi), cubic(fibreDensity), cubic(resinDensity)));
    double volume = psi / fibreDensity;
    yields.add(
        "fibre_volume" + part,
        titled(zone, "fibre"),
        Si.number(volume / (volume + (1 - psi) / resinDensity)),
        Message.of("laminate.fibre.how"),
        YieldList.worked(
            "({0} ÷ {1}) ÷ ({0} ÷ {1} + (1 − {0}) ÷ {2})",
            Si.percent(psi), cubic(fibreDensity), cubic(resinDensity)));
  }

  private static Quantity cubic(double kgM3) throws TradeException {
    return Si.show(kgM3, Si.KG_M3, Si.unit("g/cm³"));
  }

  /** "Thickness of the laminate", or "Outside: thickness of the laminate". */
  private static Message titled(String zone, String what) {
    return zone.isEmpty()
        ? Message.of("laminate." + what)
        : Message.of("laminate.zone." + what, zone);
  }

  private void sums(double waste) throws TradeException {
    Message mixtures = Message.of("laminate.mixtures");
    yields.add(
        "cloth_area",
        Message.of("laminate.cloth"),
        Si.show(cloth, Si.M2, Si.M2),
        Message.of("laminate.cloth.how"),
        areas.end());
    yields.add(
        "fibre_mass",
        Message.of("laminate.dry"),
        grams(fibre),
        Message.of("laminate.dry.how"),
        fibres.end());
    yields.add("resin_mass", Message.of("laminate.resin"), grams(resin), resins.end(), mixtures);
    yields.add(
        "resin_to_mix",
        Message.of("laminate.mix"),
        grams(resin / (1 - waste)),
        Message.of("laminate.mix.how"),
        YieldList.worked("{0} ÷ {1}", grams(resin), Si.percent(1 - waste)),
        mixtures);
    yields.add(
        "mass",
        Message.of("laminate.mass"),
        grams(fibre + resin),
        Message.of("laminate.mass.how"),
        YieldList.worked("{0} + {1}", grams(fibre), grams(resin)),
        mixtures);
  }

  static Quantity grams(double kg) throws TradeException {
    return Si.show(kg, Unit.KILOGRAM, Unit.GRAM);
  }
}

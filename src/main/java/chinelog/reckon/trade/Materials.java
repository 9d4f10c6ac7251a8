package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What books say of a material, and what a piece of the maker's own lot weighs: {@code material}.
 *
 * <p>The figures and their sources stand in {@code materials.txt}. A wood's density is 1000 G (1 +
 * 12/100) kg/m³ with its specific gravity G at 12 % of moisture; averages, from which pieces differ
 * by a fifth either way, so that the lot in hand is weighed.
 */
final class Materials {

  private static final double MOISTURE = 0.12;

  /** Where a number is a specific gravity and not a density in kg/m³. */
  private static final double MOST_GRAVITY = 2;

  /**
   * A line of the table.
   *
   * @param density in kg/m³, or specific gravity at 12 %; 0 where not known
   * @param source of density and shrinkage; empty where there are none
   * @param shrinkage radial, tangential, volumetric in %; empty where not known
   * @param dried density in lb/ft³; 0 where not known
   * @param basic density in g/cm³: mean, least, most, and the number of records; empty where not
   *     known
   * @param casting by how much a casting is smaller than its mould, such as {@code 7/32} of an inch
   *     to the foot or {@code 0.4%}; empty where not known
   * @param fraction fibre's share of the mass of a laminate laid up by hand, least and most
   * @param range of the density in kg/m³, least and most
   */
  private record Material(
      String name,
      double density,
      String source,
      double[] shrinkage,
      double dried,
      double[] basic,
      String casting,
      double[] fraction,
      double[] range) {}

  private static final List<Material> ALL = read();

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "material",
              "What books say of a material, and what a piece in hand weighs",
              List.of(
                  Parameter.word(
                      "name",
                      "the material",
                      ALL.stream().map(Material::name).toArray(String[]::new)),
                  Parameter.quantity("piece_mass", "of a piece of the lot", Unit.KILOGRAM).or(""),
                  Parameter.quantity("piece_volume", "of the same piece", Si.M3).or("")),
              Materials::of)
          .yielding(
              "density", "material.density",
              "lot_density", "material.lot",
              "lot_share", "material.lot.share",
              "dried_density", "wood.average",
              "shrinkage_radial", "wood.radial",
              "shrinkage_tangential", "wood.tangential",
              "shrinkage_volumetric", "wood.volumetric",
              "basic_density_mean", "wood.basic.mean",
              "basic_density_least", "wood.basic.least",
              "basic_density_most", "wood.basic.most",
              "density_least", "material.least",
              "density_most", "material.most",
              "casting_shrinkage", "material.casting",
              "pattern_factor", "material.pattern",
              "fibre_fraction_least", "material.fraction.least",
              "fibre_fraction_most", "material.fraction.most");

  private Materials() {}

  private static List<Material> read() {
    try (InputStream in = Materials.class.getResourceAsStream("materials.txt")) {
      if (in == null) {
        throw new IllegalStateException("the table of materials is missing");
      }
      List<Material> all = new ArrayList<>();
      for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
        if (!line.startsWith("#") && !line.isBlank()) {
          String[] cells = line.split(";", -1);
          all.add(
              new Material(
                  cells[0].strip(),
                  number(cells[1]),
                  cells[2].strip(),
                  numbers(cells[3]),
                  number(cells[4]),
                  numbers(cells[5]),
                  cells[6].strip(),
                  numbers(cells[7]),
                  numbers(cells[8])));
        }
      }
      return List.copyOf(all);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double number(String cell) {
    return cell.isBlank() ? 0 : Double.parseDouble(cell.strip());
  }

  private static double[] numbers(String cell) {
    return cell.isBlank()
        ? new double[0]
        : Arrays.stream(cell.strip().split(",")).mapToDouble(Double::parseDouble).toArray();
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    String name = inputs.word("name", "");
    Material material = ALL.stream().filter(m -> m.name.equals(name)).findFirst().orElseThrow();
    YieldList yields = new YieldList().from("name");
    boolean wood = material.density < MOST_GRAVITY;
    double book = wood ? 1000 * material.density * (1 + MOISTURE) : material.density;
    Message source =
        Message.of("material." + (material.source.isEmpty() ? "none" : material.source));
    if (material.density > 0) {
      Message[] how =
          wood
              ? new Message[] {
                Message.of("wood.density.how"),
                YieldList.worked(
                    "{0} × {1} × {2}",
                    Si.show(1000, Si.KG_M3, Si.KG_M3),
                    Si.number(material.density),
                    Si.number(1 + MOISTURE)),
                source
              }
              : new Message[] {source};
      yields.add("density", Message.of("material.density"), Si.show(book, Si.KG_M3, Si.KG_M3), how);
    }
    lot(yields, inputs, book);
    yields.from("name");
    if (material.dried > 0) {
      yields.add(
          "dried_density",
          Message.of("wood.average"),
          Si.show(material.dried, Si.unit("lb/ft³"), Si.KG_M3),
          Message.of("wood.average.how"),
          YieldList.worked("{0}", Si.show(material.dried, Si.unit("lb/ft³"), Si.unit("lb/ft³"))));
    }
    List<String> directions = List.of("radial", "tangential", "volumetric");
    for (int i = 0; i < material.shrinkage.length; i++) {
      yields.add(
          "shrinkage_" + directions.get(i),
          Message.of("wood." + directions.get(i)),
          Si.show(material.shrinkage[i], Si.PERCENT, Si.PERCENT),
          source);
    }
    List<String> figures = List.of("mean", "least", "most");
    for (int i = 0; i < figures.size() && material.basic.length > 0; i++) {
      yields.add(
          "basic_density_" + figures.get(i),
          Message.of("wood.basic." + figures.get(i)),
          Si.show(material.basic[i], Si.unit("g/cm³"), Si.unit("g/cm³")),
          Message.of("wood.basic.how", Math.round(material.basic[3])));
    }
    ends(yields, material.range, "density", Si.KG_M3, source);
    ends(
        yields, material.fraction, "fibre_fraction", Unit.ONE, Message.of("material.fraction.how"));
    casting(yields, material);
    return yields.list();
  }

  /** The least and the most of a figure, where they are known. */
  private static void ends(YieldList yields, double[] range, String name, Unit unit, Message source)
      throws TradeException {
    String title = name.equals("density") ? "material." : "material.fraction.";
    for (int i = 0; i < range.length; i++) {
      String end = i == 0 ? "least" : "most";
      yields.add(name + "_" + end, Message.of(title + end), Si.show(range[i], unit, unit), source);
    }
  }

  private static void casting(YieldList yields, Material material)
      throws TradeException, QuantityException {
    if (material.casting.isEmpty()) {
      return;
    }
    boolean told = material.casting.endsWith("%");
    Quantity share =
        told
            ? Quantity.parse(material.casting)
            : Quantity.parse(material.casting + " in").dividedBy(Quantity.parse("12 in"));
    double smaller = share.doubleIn(Unit.ONE);
    Message source = Message.of(told ? "material.casting.memory" : "material.casting.how");
    yields.add(
        "casting_shrinkage",
        Message.of("material.casting"),
        Si.percent(smaller),
        source,
        told
            ? YieldList.worked("{0}", Si.percent(smaller))
            : YieldList.worked(
                "{0} ÷ {1}", Si.show(smaller * 12, Unit.INCH, Unit.INCH), Quantity.parse("12 in")));
    yields.add(
        "pattern_factor",
        Message.of("material.pattern"),
        Si.number(1 + smaller),
        Message.of("material.pattern.how"),
        YieldList.worked("1 + {0}", Si.percent(smaller)));
  }

  /** The lot in hand goes before any book. */
  private static void lot(YieldList yields, Inputs inputs, double book)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("piece_mass").isEmpty()
        && inputs.findQuantity("piece_volume").isEmpty()) {
      return;
    }
    double mass = Si.positive(inputs, "piece_mass", Unit.KILOGRAM);
    double volume = Si.positive(inputs, "piece_volume", Si.M3);
    Quantity own = Si.show(mass / volume, Si.KG_M3, Si.KG_M3);
    yields.from("piece_mass", "piece_volume");
    yields.add(
        "lot_density",
        Message.of("material.lot"),
        own,
        YieldList.worked(
            "{0} ÷ {1}", inputs.quantity("piece_mass"), inputs.quantity("piece_volume")));
    if (book > 0) {
      yields.from("name", "piece_mass", "piece_volume");
      yields.add(
          "lot_share",
          Message.of("material.lot.share"),
          Si.percent(mass / volume / book - 1),
          YieldList.worked("{0} ÷ {1} − 1", own, Si.show(book, Si.KG_M3, Si.KG_M3)));
    }
  }
}

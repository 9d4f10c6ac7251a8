package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.List;

/**
 * What books say of some timbers: {@code timber}. Averages, for want of the maker's own piece.
 *
 * <p>Dried density: GNU Units 2.22, wood table (lb/ft³, after The Wood Database). Shrinkage from
 * green to oven-dry: USDA Wood Handbook, FPL-GTR-190 (2010), table 4-3. Basic density, oven-dry
 * mass over green volume: Global Wood Density Database (Zanne et al., 2009). The two densities are
 * not the same thing.
 */
final class Timbers {

  /**
   * @param dried lb/ft³; 0 where not known
   * @param shrinkage radial, tangential, volumetric in %; empty where not known
   * @param basic mean, least and greatest in g/cm³; empty where not known
   * @param records that the basic density rests on
   */
  private record Timber(
      String name, double dried, List<Double> shrinkage, List<Double> basic, int records) {}

  private static final List<Timber> ALL =
      List.of(
          new Timber("balsa", 9, List.of(), List.of(0.1576, 0.10, 0.22), 14),
          new Timber("basswood", 26, List.of(6.6, 9.3, 15.8), List.of(), 0),
          new Timber("honduran-mahogany", 37, List.of(), List.of(), 0),
          new Timber("obeche", 0, List.of(), List.of(0.3345, 0.28, 0.411), 24),
          new Timber("spanish-cedar", 0, List.of(), List.of(0.4469, 0.34, 0.66), 14),
          new Timber("western-redcedar", 0, List.of(2.4, 5.0, 6.8), List.of(), 0));

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "timber",
              "What books say of a timber",
              List.of(
                  Parameter.word(
                      "species",
                      "the timber",
                      ALL.stream().map(Timber::name).toArray(String[]::new))),
              Timbers::of)
          .yielding(
              "density", "wood.average",
              "shrinkage_radial", "wood.radial",
              "shrinkage_tangential", "wood.tangential",
              "shrinkage_volumetric", "wood.volumetric",
              "basic_density_mean", "wood.basic.mean",
              "basic_density_least", "wood.basic.least",
              "basic_density_most", "wood.basic.most");

  private Timbers() {}

  private static List<Yield> of(Inputs inputs) throws TradeException {
    String species = inputs.word("species", "");
    Timber timber = ALL.stream().filter(t -> t.name().equals(species)).findFirst().orElseThrow();
    YieldList yields = new YieldList();
    if (timber.dried() > 0) {
      yields.add(
          "density",
          Message.of("wood.average"),
          Si.show(timber.dried(), Si.unit("lb/ft³"), Si.KG_M3),
          Message.of("wood.average.how"));
    }
    List<String> directions = List.of("radial", "tangential", "volumetric");
    for (int i = 0; i < timber.shrinkage().size(); i++) {
      yields.add(
          "shrinkage_" + directions.get(i),
          Message.of("wood." + directions.get(i)),
          percent(timber.shrinkage().get(i)),
          Message.of("wood.handbook"));
    }
    List<String> figures = List.of("mean", "least", "most");
    for (int i = 0; i < timber.basic().size(); i++) {
      yields.add(
          "basic_density_" + figures.get(i),
          Message.of("wood.basic." + figures.get(i)),
          Si.show(timber.basic().get(i), Si.unit("g/cm³"), Si.unit("g/cm³")),
          Message.of("wood.basic.how", timber.records()));
    }
    return yields.list();
  }

  private static Quantity percent(double value) throws TradeException {
    return Si.show(value, Si.PERCENT, Si.PERCENT);
  }
}

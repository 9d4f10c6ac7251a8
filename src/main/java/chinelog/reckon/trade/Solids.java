package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * What is fixed to a hull under water, such as fin, bulb, skeg and rudder: solids that bear her
 * with all of their volume.
 *
 * @param all in the order given
 */
record Solids(List<Solid> all) {

  /**
   * One of them.
   *
   * @param volume in m³
   * @param x of its centre from the aft end, in m
   * @param z of its centre above the base line, in m
   * @param skin wetted, in m²; 0 where it is not asked for
   */
  record Solid(String name, double volume, double x, double z, double skin) {}

  Solids {
    all = List.copyOf(all);
  }

  /** Of a reckoning that asks for skin. */
  static Parameter withSkin() {
    return Parameter.solids("appendages", "solids under water", "item?", "volume", "x", "z", "skin")
        .or("none");
  }

  /** Of one that does not. */
  static Parameter plain() {
    return Parameter.solids("appendages", "solids under water", "item?", "volume", "x", "z")
        .or("none");
  }

  static Solids read(Inputs inputs, boolean skin) throws TradeException, QuantityException {
    List<Solid> all = new ArrayList<>();
    if (inputs.findTable("appendages").isPresent()) {
      Columns columns = new Columns("appendages", inputs.table("appendages"));
      double[] volume = columns.numbers("volume", Si.M3);
      double[] x = columns.numbers("x", Unit.METRE);
      double[] z = columns.numbers("z", Unit.METRE);
      double[] area = columns.numbers("skin", Si.M2, 0);
      for (int i = 0; i < volume.length; i++) {
        if (volume[i] < 0 || area[i] < 0) {
          throw columns.at(i, "A volume or a skin is negative.", "Give 0 or more.");
        }
        all.add(new Solid(columns.text(i, "item"), volume[i], x[i], z[i], area[i]));
      }
      return new Solids(all);
    }
    for (String name : Parameter.names(inputs.word("appendages", ""))) {
      String of = "appendages." + name;
      all.add(
          new Solid(
              name,
              Si.positive(inputs, of + ".volume", Si.M3),
              Si.value(inputs, of + ".x", Unit.METRE),
              Si.value(inputs, of + ".z", Unit.METRE),
              skin ? Si.positive(inputs, of + ".skin", Si.M2) : 0));
    }
    return new Solids(all);
  }

  /** Refuses one that would not be all under water. */
  void requireUnder(double draught) throws TradeException {
    for (Solid solid : all) {
      if (solid.z > draught) {
        throw new TradeException(
            "appendages",
            Sentence.of("\"{0}\" has its centre above the water.", solid.name),
            "Look at its z, which is measured upward from the base line; a fin's is negative.");
      }
    }
  }

  boolean isEmpty() {
    return all.isEmpty();
  }

  double volume() {
    return all.stream().mapToDouble(Solid::volume).sum();
  }

  double xMoment() {
    return all.stream().mapToDouble(s -> s.volume * s.x).sum();
  }

  double zMoment() {
    return all.stream().mapToDouble(s -> s.volume * s.z).sum();
  }

  double skin() {
    return all.stream().mapToDouble(Solid::skin).sum();
  }

  /** The common centre, x and z; 0 where there are none. */
  double[] centre() {
    double volume = volume();
    return volume == 0 ? new double[2] : new double[] {xMoment() / volume, zMoment() / volume};
  }
}

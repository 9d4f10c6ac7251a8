package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;

/** The units that go together on one bench: whoever measures in mm wants areas in cm². */
enum ShopUnits {
  MILLIMETRES("mm", "cm²", "cm³", "g", "g/mm", "g·mm", "mm"),
  METRES("m", "m²", "m³", "t", "t/cm", "t·m", "cm"),
  INCHES("in", "in²", "in³", "oz", "oz/in", "oz·in", "in"),
  FEET("ft", "ft²", "ft³", "lb", "lb/in", "lb·ft", "in");

  private final Unit length;
  private final Unit area;
  private final Unit volume;
  private final Unit mass;
  private final Unit immersion;
  private final Unit moment;
  private final Unit trim;

  ShopUnits(
      String length,
      String area,
      String volume,
      String mass,
      String immersion,
      String moment,
      String trim) {
    this.length = Si.unit(length);
    this.area = Si.unit(area);
    this.volume = Si.unit(volume);
    this.mass = Si.unit(mass);
    this.immersion = Si.unit(immersion);
    this.moment = Si.unit(moment);
    this.trim = Si.unit(trim);
  }

  /** Those that suit a length written in {@code unit}. */
  static ShopUnits of(Unit unit) {
    return switch (unit.symbol()) {
      case "m", "km" -> METRES;
      case "in", "mil" -> INCHES;
      case "ft", "yd" -> FEET;
      default -> MILLIMETRES;
    };
  }

  Unit lengthUnit() {
    return length;
  }

  /** From metres. */
  Quantity length(double m) throws TradeException {
    return Si.show(m, Unit.METRE, length);
  }

  /** From metres, in the unit whose square and cube areas and volumes are told in. */
  Quantity side(double m) throws TradeException {
    return Si.show(m, Unit.METRE, sideUnit());
  }

  /** A power of that unit, from one of metres. */
  Quantity power(double si, int power) throws TradeException {
    return Si.show(si, Unit.METRE.power(power), sideUnit().power(power));
  }

  private Unit sideUnit() {
    return this == MILLIMETRES ? Si.unit("cm") : length;
  }

  /** From metres, in words for a message: {@code 2599 mm}. */
  String about(double m) throws TradeException {
    Quantity exact = length(m);
    BigDecimal figure = exact.value().round(new MathContext(4));
    return Quantity.of(figure, exact.unit()).toString();
  }

  /** From metres, for what is bought by the run: nobody asks for 41,844 mm. */
  Quantity run(double m) throws TradeException {
    return Si.show(
        m, Unit.METRE, this == MILLIMETRES ? Unit.METRE : this == INCHES ? FEET.length : length);
  }

  /** From square metres. */
  Quantity area(double m2) throws TradeException {
    return Si.show(m2, Si.M2, area);
  }

  /** From cubic metres. */
  Quantity volume(double m3) throws TradeException {
    return Si.show(m3, Si.M3, volume);
  }

  /** A second moment of area, from m⁴. */
  Quantity second(double m4) throws TradeException {
    return power(m4, 4);
  }

  /** From kg/m³, so that a volume times it is a mass. */
  Quantity density(double kgM3) throws TradeException {
    return Si.show(kgM3, Si.KG_M3, mass.dividedBy(volume));
  }

  /** From kilograms. */
  Quantity mass(double kg) throws TradeException {
    return Si.show(kg, Unit.KILOGRAM, mass);
  }

  /** From kilograms for each metre of sinkage. */
  Quantity immersion(double kgPerM) throws TradeException {
    return Si.show(kgPerM, Si.KG_M, immersion);
  }

  /** Small enough for a trim to be told in: {@code mm} or {@code cm}. */
  Unit trimUnit() {
    return trim;
  }

  /** From kilogram metres for each metre of trim to the moment for one {@link #trimUnit}. */
  Quantity trimming(double kgM) throws TradeException, QuantityException {
    return Si.show(kgM * Quantity.of(1, trim).doubleIn(Unit.METRE), Si.unit("kg·m"), moment);
  }
}

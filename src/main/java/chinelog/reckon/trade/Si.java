package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;

/** The way between quantities at the face and {@code double} in SI units inside. */
final class Si {

  static final Unit M2 = unit("m²");
  static final Unit M3 = unit("m³");
  static final Unit KG_M2 = unit("kg/m²");
  static final Unit KG_M3 = unit("kg/m³");
  static final Unit KG_M = unit("kg/m");
  static final Unit PERCENT = unit("%");
  static final Unit DEGREE = unit("deg");
  static final Unit CELSIUS = unit("°C");

  /** More digits than a double's sum of some hundred terms can vouch for are noise. */
  private static final MathContext DIGITS = new MathContext(15);

  private Si() {}

  /** A unit that this package names itself. */
  static Unit unit(String symbol) {
    try {
      return Unit.parse(symbol);
    } catch (QuantityException e) {
      throw new IllegalStateException(symbol + " is not in the table of units", e);
    }
  }

  /**
   * The number {@code si} of {@code unit}, turned into {@code shown}.
   *
   * @throws TradeException if it has no finite value
   */
  static Quantity show(double si, Unit unit, Unit shown) throws TradeException {
    if (!Double.isFinite(si)) {
      throw new TradeException(
          "",
          "A figure has no finite value.",
          "Look for an input that is zero or far too large or small.");
    }
    try {
      Quantity exact = Quantity.of(BigDecimal.valueOf(si), unit).in(shown);
      BigDecimal rounded = exact.value().round(DIGITS).stripTrailingZeros();
      return Quantity.reckoned(rounded.setScale(Math.max(0, rounded.scale())), shown);
    } catch (QuantityException e) {
      throw new IllegalStateException(unit + " and " + shown + " are not of one kind", e);
    }
  }

  static Quantity number(double value) throws TradeException {
    return show(value, Unit.ONE, Unit.ONE);
  }

  static Quantity percent(double share) throws TradeException {
    return show(share, Unit.ONE, PERCENT);
  }

  /** The number of {@code unit} in a quantity that must be above zero. */
  static double positive(Inputs inputs, String name, Unit unit)
      throws TradeException, QuantityException {
    return positive(name, inputs.quantity(name), unit);
  }

  static double positive(Inputs inputs, String name, Unit unit, double fallback)
      throws TradeException, QuantityException {
    Quantity given = inputs.quantities().get(name);
    return given == null ? fallback : positive(name, given, unit);
  }

  private static double positive(String name, Quantity given, Unit unit)
      throws TradeException, QuantityException {
    double value = given.doubleIn(unit);
    if (value <= 0) {
      throw new TradeException(
          name,
          Sentence.of("\"{0}\" is {1}.", name, given),
          Sentence.of("Give a value above zero for {0}.", name));
    }
    return value;
  }

  /** A share such as 0.15 or 15 %, from zero up to but not including one. */
  static double share(Inputs inputs, String name, double fallback)
      throws TradeException, QuantityException {
    Quantity given = inputs.quantities().get(name);
    if (given == null) {
      return fallback;
    }
    double value = given.doubleIn(Unit.ONE);
    if (value < 0 || value >= 1) {
      throw new TradeException(
          name,
          Sentence.of("\"{0}\" is {1}.", name, given),
          "Give a share from 0 % to less than 100 %.");
    }
    return value;
  }

  static double value(Inputs inputs, String name, Unit unit)
      throws TradeException, QuantityException {
    return inputs.quantity(name).doubleIn(unit);
  }

  static double value(Inputs inputs, String name, Unit unit, double fallback)
      throws QuantityException {
    Quantity given = inputs.quantities().get(name);
    return given == null ? fallback : given.doubleIn(unit);
  }
}

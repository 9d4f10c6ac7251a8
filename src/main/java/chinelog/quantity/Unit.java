package chinelog.quantity;

import chinelog.problem.Sentence;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/**
 * A unit of measurement with its standard symbol, such as {@code mm}, {@code oz/yd²}, {@code
 * EUR/m}.
 *
 * <p>Immutable. Conversion factors are exact rationals, computed to 34 digits when applied. A
 * currency is a dimension of its own, and so is the angle.
 */
public final class Unit {

  static final MathContext PRECISION = MathContext.DECIMAL128;

  public static final Unit ONE = new Unit(List.of());
  public static final Unit MILLIMETRE = known("mm");
  public static final Unit METRE = known("m");
  public static final Unit INCH = known("in");
  public static final Unit GRAM = known("g");
  public static final Unit KILOGRAM = known("kg");
  public static final Unit HOUR = known("h");
  public static final Unit MINUTE = known("min");
  public static final Unit KNOT = known("kn");

  /** A symbol with its power, which is never 0. */
  record Term(Measure measure, int power) {}

  private final List<Term> terms;
  private final String symbol;
  private final BigFraction factor;
  private final SortedMap<String, Integer> dimension;

  /** Tells most units apart at once that are asked whether they are compatible. */
  private final int dimensionHash;

  /** By what this was last turned into another: the same is asked for again and again. */
  private @Nullable Ratio lately;

  /** What a number is multiplied with, and then divided by. */
  private record Ratio(Unit target, BigDecimal above, BigDecimal below) {}

  Unit(List<Term> terms) {
    this.terms = List.copyOf(terms);
    this.symbol = UnitText.symbol(terms);
    BigFraction size = BigFraction.ONE;
    SortedMap<String, Integer> powers = new TreeMap<>();
    for (Term term : terms) {
      size = size.multiply(term.measure.factor().pow(term.power));
      term.measure.dimension().forEach((d, n) -> powers.merge(d, n * term.power, Integer::sum));
    }
    powers.values().removeIf(n -> n == 0);
    this.factor = size;
    this.dimension = Collections.unmodifiableSortedMap(powers);
    this.dimensionHash = powers.hashCode();
  }

  double coherentOfOne() {
    return coherent(BigDecimal.ONE);
  }

  /** That of a difference between two of them: K for readings in °C, otherwise itself. */
  public Unit difference() {
    return isReading() ? known(symbol.equals("°F") ? "Δ°F" : "K") : this;
  }

  /** The unit of a symbol that the table is known to hold. */
  public static Unit known(String symbol) {
    Measure measure = UnitTable.find(symbol);
    if (measure == null) {
      throw new IllegalArgumentException(symbol);
    }
    return new Unit(List.of(new Term(measure, 1)));
  }

  /**
   * The unit written {@code text}: symbols joined by {@code ·}, {@code *} or {@code /}, each with
   * an optional power such as {@code m²}, {@code m^2}, {@code m2}, and parentheses.
   *
   * @throws QuantityException if a symbol is not known; a three-letter ISO 4217 code is a currency
   */
  public static Unit parse(String text) throws QuantityException {
    return UnitText.parse(text);
  }

  public String symbol() {
    return symbol;
  }

  public boolean isCompatible(Unit other) {
    return this == other
        || dimensionHash == other.dimensionHash && dimension.equals(other.dimension);
  }

  /** Whether this counts without a dimension, as plain numbers and per cent do. */
  public boolean isDimensionless() {
    return dimension.isEmpty();
  }

  /** Whether this is an amount of money, whole or per something. */
  public boolean isMoney() {
    return currency() != null;
  }

  /** The ISO 4217 code of the money in this, or null. */
  public @Nullable String currency() {
    return terms.stream()
        .map(t -> t.measure.symbol())
        .filter(UnitTable::isCurrency)
        .findFirst()
        .orElse(null);
  }

  /** Whether this is a reading on a scale whose zero is not nothing, such as °C. */
  boolean isReading() {
    return terms.size() == 1 && terms.get(0).measure.hasOffset();
  }

  List<Term> terms() {
    return terms;
  }

  /** The product, with like symbols drawn together: {@code mm·mm} is {@code mm²}. */
  public Unit times(Unit other) {
    List<Term> merged = new ArrayList<>(terms);
    for (Term term : other.terms) {
      int at = indexOf(merged, term.measure);
      if (at < 0) {
        merged.add(term);
      } else {
        int sum = merged.get(at).power + term.power;
        if (sum == 0) {
          merged.remove(at);
        } else {
          merged.set(at, new Term(term.measure, sum));
        }
      }
    }
    return new Unit(merged);
  }

  private static int indexOf(List<Term> terms, Measure measure) {
    for (int i = 0; i < terms.size(); i++) {
      if (terms.get(i).measure.symbol().equals(measure.symbol())) {
        return i;
      }
    }
    return -1;
  }

  public Unit dividedBy(Unit other) {
    return times(other.power(-1));
  }

  /** This unit to an integer power, such as {@code mm} to {@code mm²}; plain for 0. */
  public Unit power(int n) {
    return n == 0
        ? ONE
        : new Unit(terms.stream().map(t -> new Term(t.measure, t.power * n)).toList());
  }

  /**
   * This unit with each symbol replaced by one of the same kind that {@code model} uses, so that
   * {@code mm} beside {@code m²} becomes {@code m} and their product shows one length.
   */
  Unit inTheManner(Unit model) {
    List<Term> like = new ArrayList<>();
    for (Term term : terms) {
      like.add(
          model.terms.stream()
              .filter(m -> m.measure.dimension().equals(term.measure.dimension()))
              .findFirst()
              .map(m -> new Term(m.measure, term.power))
              .orElse(term));
    }
    Unit merged = ONE;
    for (Term term : like) {
      merged = merged.times(new Unit(List.of(term)));
    }
    return merged;
  }

  /** This unit as its smaller step where it is written in two, such as inches for feet-inches. */
  Unit simple() {
    return Compound.findBySymbol(symbol).map(c -> known(c.small)).orElse(this);
  }

  /**
   * Converts a number of this unit into {@code target}.
   *
   * @throws QuantityException if the dimensions differ
   */
  BigDecimal convert(BigDecimal number, Unit target) throws QuantityException {
    requireCompatible(target);
    if (target.isReading() && symbol.startsWith("Δ")) {
      throw new QuantityException(
          Sentence.of("A difference of temperatures is no temperature in {0}.", target),
          Sentence.of("Tell it in Δ{0}.", target),
          0);
    }
    if (!isReading() && !target.isReading() || equals(target)) {
      return convertDifference(number, target);
    }
    return rounded(exact(number).subtract(target.offset()).divide(target.factor));
  }

  double coherent(BigDecimal number) {
    return isReading()
        ? rounded(exact(number)).doubleValue()
        : number
            .multiply(new BigDecimal(factor.getNumerator()))
            .divide(new BigDecimal(factor.getDenominator()), PRECISION)
            .doubleValue();
  }

  /** A number of this in the coherent unit of its kind, its zero included. */
  private BigFraction exact(BigDecimal number) {
    BigFraction plain =
        number.scale() > 0
            ? BigFraction.of(number.unscaledValue(), BigInteger.TEN.pow(number.scale()))
            : BigFraction.of(number.toBigIntegerExact());
    return plain.multiply(factor).add(offset());
  }

  private static BigDecimal rounded(BigFraction exact) {
    return new BigDecimal(exact.getNumerator())
        .divide(new BigDecimal(exact.getDenominator()), PRECISION);
  }

  /** Converts a difference, for which the zero of a temperature scale does not matter. */
  BigDecimal convertDifference(BigDecimal number, Unit target) throws QuantityException {
    requireCompatible(target);
    Ratio ratio = ratio(target);
    return ratio.above.compareTo(ratio.below) == 0
        ? number
        : number.multiply(ratio.above).divide(ratio.below, PRECISION);
  }

  private Ratio ratio(Unit target) {
    Ratio known = lately;
    if (known == null || !known.target.equals(target)) {
      BigFraction ratio = factor.divide(target.factor);
      known =
          new Ratio(
              target, new BigDecimal(ratio.getNumerator()), new BigDecimal(ratio.getDenominator()));
      lately = known;
    }
    return known;
  }

  /** Compares a number of this with a number of {@code other} exactly. */
  int compare(BigDecimal number, BigDecimal otherNumber, Unit other) throws QuantityException {
    requireCompatible(other);
    if (isReading() || other.isReading()) {
      return number.compareTo(other.convert(otherNumber, this));
    }
    Ratio ratio = ratio(other);
    return number.multiply(ratio.above).compareTo(otherNumber.multiply(ratio.below));
  }

  private void requireCompatible(Unit target) throws QuantityException {
    if (isCompatible(target)) {
      return;
    }
    String from = currency();
    String into = target.currency();
    if (from != null && into != null && !from.equals(into)) {
      throw new QuantityException(
          Sentence.of("Money in {0} and money in {1} do not mix.", from, into),
          "Write all money of a log in one currency.",
          0);
    }
    throw new QuantityException(
        Sentence.of("{0} cannot be turned into {1}.", name(), target.name()),
        Sentence.of("Write a unit of the same kind as {0}.", target.name()),
        0);
  }

  private BigFraction offset() {
    return isReading() ? terms.get(0).measure.offset() : BigFraction.ZERO;
  }

  private Sentence name() {
    return symbol.isEmpty() ? Sentence.of("a plain number") : Sentence.of("\"{0}\"", symbol);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Unit u && u.symbol.equals(symbol);
  }

  @Override
  public int hashCode() {
    return symbol.hashCode();
  }

  @Override
  public String toString() {
    return symbol;
  }
}

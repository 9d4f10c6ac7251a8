package chinelog.reckon.trade;

import chinelog.log.records.PricePlan;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;

/**
 * Prices the next build from what this one took, such as a launch of 900 mm after one of 700 mm.
 *
 * <p>Likely hours = hours × driver × learning (Crawford: nᵇ, b = log2 of the rate); expected = (O +
 * 4M + P)/6 with σ = (P − O)/6 (Malcolm et al., 1959, from memory), σ of the sum the root of the
 * sum of squares; material ÷ (1 − wastage); net = cost ÷ (1 − margin). Hours are reckoned to 34
 * digits.
 */
public final class Pricing {

  private static final MathContext EXACT = MathContext.DECIMAL128;
  private static final MathContext SHOWN = new MathContext(4);
  private static final BigDecimal SIX = BigDecimal.valueOf(6);

  private final PriceRequest request;
  private final Drivers drivers;
  private final BigDecimal learning;
  private final BigDecimal rate;
  private final BigDecimal kept;
  private final BigDecimal overhead;
  private final BigDecimal marginLeft;
  private final BigDecimal tax;

  private Pricing(PriceRequest request) throws TradeException, QuantityException {
    this.request = request;
    Unit currency = request.currency();
    if (!currency.isMoney()) {
      throw new TradeException(
          "currency",
          Sentence.of("\"{0}\" is no currency.", currency),
          "Write a code such as GBP.");
    }
    if (request.stages().isEmpty()) {
      throw new TradeException("stages", "There are no stages to price.", "Name one at least.");
    }
    if (request.number() < 1) {
      throw new TradeException(
          "number",
          Sentence.of("The number of the build is {0}.", request.number()),
          "Count from 1.");
    }
    drivers = new Drivers(request);
    double learnt = Effort.rate("learning", request.learning());
    learning = BigDecimal.valueOf(Effort.share(learnt, request.number()));
    rate = amount("rate", request.rate(), currency.dividedBy(Unit.HOUR));
    kept = BigDecimal.ONE.subtract(share("wastage", request.wastage(), true));
    overhead = share("overhead", request.overhead(), false);
    marginLeft = BigDecimal.ONE.subtract(share("margin", request.margin(), true));
    tax = share("tax", request.tax(), false);
  }

  /**
   * The quotation.
   *
   * @throws TradeException saying which part of the request stands in the way
   */
  public static Quotation quote(PriceRequest request) throws TradeException {
    try {
      return new Pricing(request).quote();
    } catch (QuantityException e) {
      throw new TradeException("", e.what(), e.remedy());
    }
  }

  private Quotation quote() throws TradeException, QuantityException {
    List<Quotation.Line> lines = new ArrayList<>();
    BigDecimal hours = BigDecimal.ZERO;
    BigDecimal variance = BigDecimal.ZERO;
    BigDecimal labour = BigDecimal.ZERO;
    BigDecimal material = BigDecimal.ZERO;
    for (PriceRequest.StageWork stage : request.stages()) {
      Quotation.Line line = line(stage);
      lines.add(line);
      hours = hours.add(line.hours().value());
      variance = variance.add(line.spread().value().pow(2, EXACT));
      labour = labour.add(line.labour().value());
      material = material.add(line.material().value());
    }
    BigDecimal spread = variance.sqrt(EXACT);
    Sum middle = sum(labour, material);
    BigDecimal two = spread.multiply(BigDecimal.valueOf(2)).multiply(rate, EXACT);
    return new Quotation(
        request.title(),
        lines,
        hours(hours),
        hours(spread),
        money(labour),
        money(material),
        money(middle.overhead),
        money(middle.net.subtract(middle.cost)),
        money(middle.net),
        money(middle.tax),
        money(middle.total()),
        money(sum(coin(labour.subtract(two).max(BigDecimal.ZERO)), material).total()),
        money(sum(coin(labour.add(two)), material).total()),
        restsOn());
  }

  private Quotation.Line line(PriceRequest.StageWork stage)
      throws TradeException, QuantityException {
    BigDecimal factor = drivers.factor(stage.driver());
    BigDecimal learnt = stage.learnt() ? learning : BigDecimal.ONE;
    BigDecimal worked = amount("stages", stage.hours(), Unit.HOUR);
    BigDecimal likely = worked.multiply(factor, EXACT).multiply(learnt, EXACT);
    BigDecimal low = share("stages", stage.low(), false);
    BigDecimal high = share("stages", stage.high(), false);
    if (low.compareTo(BigDecimal.ONE) > 0 || high.compareTo(BigDecimal.ONE) < 0) {
      throw new TradeException(
          "stages",
          Sentence.of(
              "The low and high estimates of {0} do not lie about the likely one.", stage.title()),
          "Give low as 100 % or less and high as 100 % or more.");
    }
    BigDecimal four = BigDecimal.valueOf(4);
    BigDecimal expected = likely.multiply(low.add(four).add(high), EXACT).divide(SIX, EXACT);
    BigDecimal spread = likely.multiply(high.subtract(low), EXACT).divide(SIX, EXACT);
    Quantity bought = stage.material();
    BigDecimal material =
        bought == null
            ? BigDecimal.ZERO
            : amount("stages", bought, request.currency())
                .multiply(factor, EXACT)
                .divide(kept, EXACT);
    return new Quotation.Line(
        stage.title(),
        hours(expected),
        hours(spread),
        money(coin(expected.multiply(rate, EXACT))),
        money(coin(material)),
        basis(stage, worked, factor, learnt, low.add(four).add(high).divide(SIX, EXACT)));
  }

  private static String basis(
      PriceRequest.StageWork stage,
      BigDecimal worked,
      BigDecimal factor,
      BigDecimal learnt,
      BigDecimal points) {
    String said = plain(worked) + " h";
    if (stage.driver() != PricePlan.Driver.FIXED) {
      said += " × " + plain(factor) + " by " + Drivers.word(stage.driver());
    }
    if (learnt.compareTo(BigDecimal.ONE) != 0) {
      said += " × " + plain(learnt) + " learnt";
    }
    if (points.compareTo(BigDecimal.ONE) != 0) {
      said += " × " + plain(points) + " by three points";
    }
    return said;
  }

  private record Sum(BigDecimal cost, BigDecimal overhead, BigDecimal net, BigDecimal tax) {
    BigDecimal total() {
      return net.add(tax);
    }
  }

  private Sum sum(BigDecimal labour, BigDecimal material) {
    BigDecimal over = coin(labour.add(material).multiply(overhead, EXACT));
    BigDecimal cost = labour.add(material).add(over);
    BigDecimal net = coin(cost.divide(marginLeft, EXACT));
    return new Sum(cost, over, net, coin(net.multiply(tax, EXACT)));
  }

  private List<String> restsOn() throws TradeException, QuantityException {
    BigDecimal worked = BigDecimal.ZERO;
    BigDecimal spent = BigDecimal.ZERO;
    for (PriceRequest.StageWork stage : request.stages()) {
      worked = worked.add(amount("stages", stage.hours(), Unit.HOUR));
      Quantity material = stage.material();
      if (material != null) {
        spent = spent.add(amount("stages", material, request.currency()));
      }
    }
    List<String> said = new ArrayList<>();
    said.add(
        "This build's own figures: "
            + plain(worked)
            + " h and "
            + money(coin(spent))
            + " of material.");
    said.addAll(drivers.said());
    if (learning.compareTo(BigDecimal.ONE) != 0) {
      said.add(
          "Number "
              + request.number()
              + " of its kind takes "
              + plain(learning)
              + " of the first's hours where the work was learnt (Crawford's curve at "
              + request.learning()
              + ").");
    }
    said.add(
        "Hours expected are (low + 4 × likely + high) ÷ 6; the range of the price is two standard"
            + " deviations of the hours to either side.");
    said.add(
        "The rate is "
            + request.rate()
            + ". Material is divided by one less a wastage of "
            + request.wastage()
            + "; overhead is "
            + request.overhead()
            + " of labour and material; margin is "
            + request.margin()
            + " of the price before tax; tax is "
            + request.tax()
            + " of it.");
    said.add(
        "Each line is rounded to the smallest coin, halves upward, and the sums are of these.");
    return said;
  }

  private static BigDecimal amount(String input, Quantity given, Unit unit)
      throws TradeException, QuantityException {
    if (!given.unit().isCompatible(unit)) {
      throw new TradeException(
          input,
          Sentence.of("{0} is not in {1}.", given, unit),
          Sentence.of("Give an amount in {0}.", unit));
    }
    if (given.value().signum() < 0) {
      throw new TradeException(
          input, Sentence.of("{0} is less than nothing.", given), "Give 0 or more.");
    }
    return given.valueIn(unit);
  }

  private static BigDecimal share(String input, Quantity given, boolean belowOne)
      throws TradeException, QuantityException {
    BigDecimal share = amount(input, given, Unit.ONE);
    if (belowOne && share.compareTo(BigDecimal.ONE) >= 0) {
      throw new TradeException(
          input,
          Sentence.of("A {0} of {1} leaves nothing.", input, given),
          "Give less than 100 %.");
    }
    return share;
  }

  private BigDecimal coin(BigDecimal money) {
    int digits = Currency.getInstance(request.currency().symbol()).getDefaultFractionDigits();
    return money.setScale(Math.max(0, digits), RoundingMode.HALF_UP);
  }

  private Quantity money(BigDecimal money) {
    return Quantity.of(money, request.currency());
  }

  private static Quantity hours(BigDecimal hours) {
    return Quantity.of(hours, Unit.HOUR);
  }

  static String plain(BigDecimal number) {
    return number.round(SHOWN).stripTrailingZeros().toPlainString();
  }
}

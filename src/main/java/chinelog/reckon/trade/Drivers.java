package chinelog.reckon.trade;

import chinelog.log.records.PricePlan;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How much larger the next build is than this one, by each driver of a request. */
final class Drivers {

  private final PriceRequest request;

  Drivers(PriceRequest request) {
    this.request = request;
  }

  /** 1 for what is fixed. */
  BigDecimal factor(PricePlan.Driver driver) throws TradeException, QuantityException {
    if (driver == PricePlan.Driver.FIXED) {
      return BigDecimal.ONE;
    }
    if (byLength(driver)) {
      return factor(PricePlan.Driver.LENGTH).pow(2);
    }
    String word = word(driver);
    Quantity was = request.built().get(driver);
    Quantity will = request.wanted().get(driver);
    if (was == null || will == null) {
      throw new TradeException(
          word,
          Sentence.of("A stage goes by {0}, but the {0} of both builds is not known.", word),
          Sentence.of("Give the {0} of this build and of the next.", word));
    }
    if (was.value().signum() <= 0 || will.value().signum() <= 0) {
      throw new TradeException(
          word, Sentence.of("A {0} is not above zero.", word), "Give what it is.");
    }
    if (!was.unit().isCompatible(will.unit())) {
      throw new TradeException(
          word,
          Sentence.of("This build's {0} is {1}, the next one's {2}.", word, was, will),
          "Give both in units of the same kind.");
    }
    return will.dividedBy(was).valueIn(Unit.ONE);
  }

  private boolean byLength(PricePlan.Driver driver) {
    return driver == PricePlan.Driver.AREA
        && !request.built().containsKey(driver)
        && !request.wanted().containsKey(driver);
  }

  /** A sentence for each driver that a stage goes by. */
  List<String> said() throws TradeException, QuantityException {
    List<String> said = new ArrayList<>();
    for (PricePlan.Driver driver : PricePlan.Driver.values()) {
      if (driver == PricePlan.Driver.FIXED
          || request.stages().stream().noneMatch(s -> s.driver() == driver)) {
        continue;
      }
      String times = "; what goes by it is " + Pricing.plain(factor(driver)) + " times as much.";
      said.add(
          byLength(driver)
              ? "The area grows with the square of the length" + times
              : "The "
                  + word(driver)
                  + " was "
                  + request.built().get(driver)
                  + " and will be "
                  + request.wanted().get(driver)
                  + times);
    }
    return said;
  }

  static String word(PricePlan.Driver driver) {
    return driver.name().toLowerCase(Locale.ROOT);
  }
}

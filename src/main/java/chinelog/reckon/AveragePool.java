package chinelog.reckon;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.wording.Message;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A material held at one average price, which changes whenever lots come in (moving average).
 *
 * <p>Each change is told by two facts: {@code stock.MATERIAL.held_1}, what was held from then on,
 * and {@code stock.MATERIAL.average_1}, its price for each unit.
 */
final class AveragePool {

  /**
   * A lot that comes in.
   *
   * @param price name of the fact with its price; null where none is known
   */
  record Coming(String bought, @Nullable String price, Quantity amount) {}

  private final String material;
  private final String title;
  private final Ledger ledger;
  private final Place place;
  private Quantity left;
  private final List<String> usedSince = new ArrayList<>();
  private @Nullable String held;
  private @Nullable String average;
  private boolean priced = true;
  private int number;

  AveragePool(String material, String title, Ledger ledger, Unit unit, Place place) {
    this.material = material;
    this.title = title;
    this.ledger = ledger;
    this.place = place;
    this.left = Quantity.of(0, unit);
  }

  Quantity left() {
    return left;
  }

  /** Takes lots in; {@code own} are the agreements of what decided that they came in now. */
  void add(List<Coming> lots, LocalDate on, Label own) throws QuantityException {
    if (lots.isEmpty()) {
      return;
    }
    number++;
    List<Expression> amounts = new ArrayList<>();
    List<Expression> prices = new ArrayList<>();
    List<String> amountFacts = new ArrayList<>();
    List<String> priceFacts = new ArrayList<>();
    rest(amounts, amountFacts, prices, priceFacts, on, own);
    for (Coming lot : lots) {
      left = left.plus(lot.amount);
      amounts.add(new Expression.Name(lot.bought));
      amountFacts.add(lot.bought);
      priced &= lot.price != null;
      if (lot.price != null) {
        prices.add(new Expression.Name(lot.price));
        priceFacts.add(lot.price);
      }
    }
    FactId now = id(FactId.PoolFigure.HELD);
    ledger.reckoned(
        now, Message.of("pool.held", title, on), sum(amounts), amountFacts, own, place, null);
    held = now.name();
    usedSince.clear();
    if (priced) {
      FactId price = id(FactId.PoolFigure.AVERAGE);
      priceFacts.add(now.name());
      ledger.reckoned(
          price,
          Message.of("pool.price", title, on),
          new Expression.Binary('/', sum(prices), new Expression.Name(now.name())),
          priceFacts,
          own,
          place,
          null);
      average = price.name();
    }
  }

  /** What was held before, less what was used since, at the average before. */
  private void rest(
      List<Expression> amounts,
      List<String> amountFacts,
      List<Expression> prices,
      List<String> priceFacts,
      LocalDate on,
      Label own) {
    String before = held;
    if (before == null) {
      return;
    }
    String rest = before;
    if (!usedSince.isEmpty()) {
      FactId left = id(FactId.PoolFigure.REST);
      List<Expression> used =
          usedSince.stream().map(u -> (Expression) new Expression.Name(u)).toList();
      List<String> inputs = new ArrayList<>(List.of(before));
      inputs.addAll(usedSince);
      ledger.reckoned(
          left,
          Message.of("pool.rest", title, on),
          new Expression.Binary('-', new Expression.Name(before), sum(used)),
          inputs,
          own,
          place,
          null);
      rest = left.name();
    }
    amounts.add(new Expression.Name(rest));
    amountFacts.add(rest);
    String price = average;
    if (priced && price != null) {
      prices.add(new Expression.Binary('*', new Expression.Name(rest), new Expression.Name(price)));
      priceFacts.add(rest);
      priceFacts.add(price);
    }
  }

  /** Takes an amount out; yields the name of the fact with its price, null if none is known. */
  @Nullable String take(Quantity amount, String amountFact) throws QuantityException {
    left = left.minus(amount);
    usedSince.add(amountFact);
    return priced ? average : null;
  }

  private FactId id(FactId.PoolFigure figure) {
    return new FactId.Pool(material, figure, number);
  }

  private static Expression sum(List<Expression> parts) {
    return parts.size() == 1 ? parts.get(0) : new Expression.Call("sum", List.copyOf(parts));
  }
}

package chinelog.reckon;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.util.Optional;

/**
 * Work planned, done and paid for at one moment, all in one kind of unit, such as hours.
 *
 * <p>Formulas as in the Standard for Earned Value Management (PMI, ANSI/PMI 19-006-2019; from
 * memory) and checked against P. Govan's worked example. What cannot be told yet, as nothing was
 * planned or spent, is empty and never infinite.
 *
 * @param planned PV: what should have been done by now
 * @param earned EV: what of the plan has been done
 * @param spent AC: what that has taken
 * @param whole BAC: the whole plan
 */
record EarnedValue(Quantity planned, Quantity earned, Quantity spent, Quantity whole) {

  /** SPI = EV / PV; above 1 is ahead of the plan. */
  Optional<Quantity> findScheduleIndex() throws QuantityException {
    return ratio(earned, planned);
  }

  /** CPI = EV / AC; above 1 takes less than planned. */
  Optional<Quantity> findCostIndex() throws QuantityException {
    return ratio(earned, spent);
  }

  /** EAC = BAC / CPI: the rest goes as the work so far. */
  Optional<Quantity> findForecast() throws QuantityException {
    return ratio(spent.times(whole), earned);
  }

  /** EAC = AC + (BAC − EV): the rest goes as planned. */
  Quantity forecastAsPlanned() throws QuantityException {
    return spent.plus(whole.minus(earned));
  }

  /** EAC = AC + (BAC − EV) / (CPI × SPI): the rest suffers from both. */
  Optional<Quantity> findForecastOfBoth() throws QuantityException {
    Optional<Quantity> cost = findCostIndex();
    Optional<Quantity> schedule = findScheduleIndex();
    if (cost.isEmpty() || schedule.isEmpty()) {
      return Optional.empty();
    }
    return ratio(whole.minus(earned), cost.get().times(schedule.get())).map(this::afterSpent);
  }

  /** ETC = (BAC − EV) / CPI: what is still to be spent. */
  Optional<Quantity> findToComplete() throws QuantityException {
    return ratio(whole.minus(earned).times(spent), earned);
  }

  /** TCPI = (BAC − EV) / (BAC − AC): how the rest must go to keep to the plan. */
  Optional<Quantity> findIndexToComplete() throws QuantityException {
    return ratio(whole.minus(earned), whole.minus(spent));
  }

  private Quantity afterSpent(Quantity rest) {
    try {
      return spent.plus(rest);
    } catch (QuantityException e) {
      throw new IllegalStateException("what is left is of the same kind", e);
    }
  }

  private static Optional<Quantity> ratio(Quantity above, Quantity below) throws QuantityException {
    return below.value().signum() <= 0 || above.value().signum() <= 0
        ? Optional.empty()
        : Optional.of(above.dividedBy(below));
  }
}

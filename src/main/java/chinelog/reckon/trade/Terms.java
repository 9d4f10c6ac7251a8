package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A sum with its figures put in, built up a term at a time: {@code new Terms("(").add(2, " × ",
 * width).end(") ÷ 6")}. A term that begins with a figure below zero is taken off.
 */
final class Terms {

  private final List<Object> parts = new ArrayList<>();
  private boolean begun;

  Terms(Object... before) {
    parts.addAll(Arrays.asList(before));
  }

  Terms add(Object... term) {
    Object first = term[0];
    boolean below = begun && first instanceof Quantity q && q.value().signum() < 0;
    if (begun) {
      parts.add(below ? " − " : " + ");
    }
    parts.add(below ? ((Quantity) first).negated() : first);
    parts.addAll(Arrays.asList(term).subList(1, term.length));
    begun = true;
    return this;
  }

  boolean isEmpty() {
    return !begun;
  }

  Message end(Object... after) {
    parts.addAll(Arrays.asList(after));
    return YieldList.joined(parts.toArray());
  }
}

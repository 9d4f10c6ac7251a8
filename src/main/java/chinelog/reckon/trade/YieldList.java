package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/** Collects what one reckoning yields, in the order to be shown. */
final class YieldList {

  private final List<Yield> yields = new ArrayList<>();

  YieldList add(String name, Message title, Quantity value, Message... method) {
    yields.add(new Yield(name, title, value, List.of(method)));
    return this;
  }

  List<Yield> list() {
    return List.copyOf(yields);
  }
}

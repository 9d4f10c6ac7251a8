package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Collects what one reckoning yields, in the order to be shown. */
final class YieldList {

  private static final Pattern PLACE = Pattern.compile("\\{([0-9]+)}");

  private final List<Yield> yields = new ArrayList<>();
  private List<String> basis = List.of();

  /** What is added from now on rests on these inputs alone; on all that are given, if on none. */
  YieldList from(String... inputs) {
    basis = List.of(inputs);
    return this;
  }

  YieldList add(String name, Message title, Quantity value, Message... method) {
    yields.add(new Yield(name, title, value, List.of(method), basis, null));
    return this;
  }

  /** A caution about the figure added last. */
  YieldList caution(CharSequence what, CharSequence remedy) {
    int last = yields.size() - 1;
    yields.set(last, yields.get(last).with(new Yield.Caution(what, remedy)));
    return this;
  }

  /** The figures put in, such as {@code worked("{0} × {1}", volume, density)}. */
  static Message worked(String line, Object... figures) {
    List<Object> parts = new ArrayList<>();
    Matcher place = PLACE.matcher(line);
    int from = 0;
    while (place.find()) {
      parts.add(line.substring(from, place.start()));
      parts.add(figures[Integer.parseInt(place.group(1))]);
      from = place.end();
    }
    parts.add(line.substring(from));
    return joined(parts.toArray());
  }

  /** Figures and signs one after the other. */
  static Message joined(Object... parts) {
    return Message.of("put.in", Message.joined(parts));
  }

  List<Yield> list() {
    return List.copyOf(yields);
  }
}

package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One figure that a reckoning yields, such as {@code displacement}, "Displacement", 2377 g.
 *
 * @param name what follows the request's prefix and a dot; lower case, {@code _} for spaces
 * @param value unrounded
 * @param method how it was worked out and where the formula comes from, a sentence each, the
 *     figures put in
 * @param basis names of the inputs that decide it; empty for all that were given
 * @param caution what its maker should look at, if anything
 */
public record Yield(
    String name,
    Message title,
    Quantity value,
    List<Message> method,
    List<String> basis,
    @Nullable Caution caution) {

  /** A figure that can hardly be meant, such as ballast outside the hull, and what to do. */
  public record Caution(CharSequence what, CharSequence remedy) {}

  Yield with(Quantity newValue) {
    return new Yield(name, title, newValue, method, basis, caution);
  }

  Yield with(Caution newCaution) {
    return new Yield(name, title, value, method, basis, newCaution);
  }
}

package chinelog.pattern;

import chinelog.edition.Patterns;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What is needed of one kind of sheet or strip, and what is short.
 *
 * @param needed how many
 * @param atHand how many there are; empty if it is not told
 * @param isShort how many are to be bought; empty if it is not told what is at hand
 * @param each price of one; empty if it is not told
 * @param cost of what is short; empty if it is not told
 */
record ShoppingLine(
    Patterns.Stock stock, long needed, String atHand, String isShort, String each, String cost) {

  static List<ShoppingLine> of(Patterns patterns, List<Nest> nests, Locale locale) {
    List<ShoppingLine> lines = new ArrayList<>();
    NumberStyle style = new NumberStyle(locale, 0);
    for (Patterns.Stock stock : patterns.stock()) {
      long needed =
          stock.strips()
              + nests.stream().filter(n -> n.stock() == stock).mapToLong(Nest::sheets).sum();
      lines.add(line(stock, needed, style));
    }
    return lines;
  }

  private static ShoppingLine line(Patterns.Stock stock, long needed, NumberStyle style) {
    BigDecimal atHand = stock.atHand();
    Quantity price = price(stock);
    BigDecimal less =
        atHand == null
            ? null
            : BigDecimal.valueOf(needed)
                .subtract(atHand)
                .max(BigDecimal.ZERO)
                .setScale(0, RoundingMode.CEILING);
    return new ShoppingLine(
        stock,
        needed,
        plain(atHand),
        plain(less),
        price == null ? "" : style.show(price),
        price == null || less == null ? "" : style.show(price.times(less)));
  }

  private static @Nullable Quantity price(Patterns.Stock stock) {
    try {
      BigDecimal price = stock.price();
      return price == null ? null : Quantity.of(price, Unit.parse(stock.currency()));
    } catch (QuantityException e) {
      throw new IllegalStateException(stock.currency() + " is no currency", e);
    }
  }

  private static String plain(@Nullable BigDecimal number) {
    return number == null
        ? ""
        : number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  /** Such as {@code 600 × 300 mm}, or {@code 914 mm} for a strip. */
  String size() {
    String length = millimetres(stock.lengthMm());
    return (stock.widthMm() > 0 ? length + " × " + millimetres(stock.widthMm()) : length) + " mm";
  }

  static String millimetres(double mm) {
    return BigDecimal.valueOf(mm)
        .setScale(1, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }
}

package chinelog.desk.sheets;

import chinelog.desk.bench.Snapshot;
import chinelog.log.records.Marked;
import chinelog.log.records.Request;
import chinelog.log.records.Sheet;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.SheetPrinter;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.Fact;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * A page of a sheet as it is shown.
 *
 * @param mmPerPx millimetres of paper for one of its pixels
 */
record ShownSheet(String sheet, int page, int widthPx, int heightPx, double mmPerPx) {

  static final String SCAN_SCALE = "scan-scale";
  private static final String MILLIMETRE = "mm";

  static ShownSheet of(SheetPrinter printer, String sheet, int page) throws IOException {
    List<Darkroom.Print> prints = printer.print(sheet, page).prints();
    Darkroom.Print largest = prints.get(prints.size() - 1);
    int edge = Math.max(largest.widthPx(), largest.heightPx());
    return new ShownSheet(
        sheet, page, largest.widthPx(), largest.heightPx(), printer.longEdgeMm(sheet, page) / edge);
  }

  /** What the names of the facts of its scale begin with, such as {@code scan.lines}. */
  String prefix() {
    return Sheet.scanPrefix(sheet, page);
  }

  /** As a fact's origin has it, such as {@code sheets/lines.pdf#2}. */
  String source() {
    return page == 1 ? sheet : sheet + "#" + page;
  }

  /** The scale it was brought to, if it was. */
  Optional<Scale> findScale(Snapshot now) {
    Optional<Request> asked =
        now.log().requests().stream()
            .filter(r -> r.prefix().equals(prefix()) && r.reckoning().value().equals(SCAN_SCALE))
            .findFirst();
    Optional<Fact> across = now.opened().facts().find(prefix() + ".factor_x");
    if (asked.isEmpty() || across.isEmpty()) {
      return Optional.empty();
    }
    Quantity x = across.get().value();
    Quantity y = now.opened().facts().find(prefix() + ".factor_y").map(Fact::value).orElse(x);
    try {
      return Optional.of(Scale.of(x, y, mmPerPx, unit(asked.get())));
    } catch (QuantityException e) {
      return Optional.empty();
    }
  }

  private static String unit(Request asked) {
    Marked<String> truth = asked.inputs().get("true_x");
    try {
      return truth == null ? MILLIMETRE : Quantity.parse(truth.value()).unit().symbol();
    } catch (QuantityException e) {
      return MILLIMETRE;
    }
  }
}

package chinelog.reckon;

import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What is still to be bought: of each material as much as is planned, or was used if that is more,
 * less what was bought. It is for the workshop alone.
 *
 * <p>Planned is what log.yaml has as a budget of {@code stock.MATERIAL.used}.
 */
public final class ShoppingList {

  /** What stands before and behind a material in the name of what is used of it. */
  private static final List<String> AROUND =
      List.of(new FactId.Stock("x", FactId.Balance.USED).name().split("x", 2));

  private final Log log;
  private final NumberStyle style;
  private final Problems problems = new Problems();
  private final List<Line> lines = new ArrayList<>();

  /** All that stock.yaml has of a material, and what was used of it. */
  private record Shelf(String title, Quantity bought, Lot last) {}

  /**
   * A material to be bought.
   *
   * @param missing how much
   * @param about what that costs at the price last paid; null where none is known
   * @param reason such as "84 planned, 60 bought"
   */
  public record Line(
      String material, String title, Quantity missing, @Nullable Quantity about, Sentence reason) {}

  /** The lines of a page of text, in the language of the log. */
  public static List<String> text(List<Line> lines, Log log) {
    NumberStyle style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
    return lines.stream()
        .map(
            l ->
                (l.about() == null
                        ? Sentence.of(
                            "{0}: {1} ({2})", l.title(), style.show(l.missing()), l.reason())
                        : Sentence.of(
                            "{0}: {1}, about {2} ({3})",
                            l.title(), style.show(l.missing()), style.show(l.about()), l.reason()))
                    .in(log.head().locale())
                    .replace('\u202f', ' '))
        .toList();
  }

  /** The list, and what is wrong with the plan. */
  public record Made(List<Line> lines, List<Problem> problems) {}

  private ShoppingList(Log log) {
    this.log = log;
    this.style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
  }

  /** Whether a budget of that name is no figure to be shown, but a planned use. */
  static boolean isPlannedUse(String budget) {
    return !material(budget).isEmpty();
  }

  /** The material in the name of what is used of it; empty in any other name. */
  private static String material(String name) {
    String before = AROUND.get(0);
    String behind = AROUND.get(1);
    return name.startsWith(before)
            && name.endsWith(behind)
            && name.length() > before.length() + behind.length()
        ? name.substring(before.length(), name.length() - behind.length())
        : "";
  }

  /** The list of a log, in the order of the materials' words. */
  public static Made of(Log log) {
    ShoppingList list = new ShoppingList(log);
    list.make();
    return new Made(List.copyOf(list.lines), list.problems.list());
  }

  private void make() {
    SortedMap<String, Shelf> shelves = new TreeMap<>();
    for (Lot lot : log.stock()) {
      add(shelves, lot);
    }
    SortedMap<String, Quantity> used = new TreeMap<>();
    log.entries()
        .forEach(
            e ->
                e.used()
                    .forEach(
                        u -> used.merge(FactId.part(u.material()), u.amount(), ShoppingList::sum)));
    SortedMap<String, Quantity> wanted = new TreeMap<>(used);
    SortedMap<String, Sentence> reasons = new TreeMap<>();
    used.forEach((m, amount) -> reasons.put(m, Sentence.of("{0} used", style.show(amount))));
    for (Map.Entry<String, Marked<Quantity>> budget : log.head().budgets().entrySet()) {
      String material = material(budget.getKey());
      if (!material.isEmpty()) {
        plan(material, budget.getValue(), shelves, wanted, reasons);
      }
    }
    wanted.forEach(
        (m, amount) -> line(m, amount, shelves.get(m), Objects.requireNonNull(reasons.get(m), m)));
  }

  private static void add(SortedMap<String, Shelf> shelves, Lot lot) {
    String material = FactId.part(lot.material());
    Shelf before = shelves.get(material);
    shelves.put(
        material,
        before == null
            ? new Shelf(lot.title(), lot.bought(), lot)
            : new Shelf(
                before.title(),
                sum(before.bought(), lot.bought()),
                lot.price() == null ? before.last() : lot));
  }

  private void plan(
      String material,
      Marked<Quantity> planned,
      SortedMap<String, Shelf> shelves,
      SortedMap<String, Quantity> wanted,
      SortedMap<String, Sentence> reasons) {
    Shelf shelf = shelves.get(material);
    Quantity amount = planned.value();
    if (shelf != null && !shelf.bought().unit().isCompatible(amount.unit())) {
      problems.error(
          planned.place(),
          Sentence.of(
              "Of \"{0}\" {1} are planned, but it was bought in another unit.", material, amount),
          Sentence.of("Write the plan in the unit of stock.yaml, such as {0}.", shelf.bought()));
      return;
    }
    Quantity used = wanted.get(material);
    if (used == null || isMore(amount, used)) {
      wanted.put(material, amount);
      reasons.put(material, Sentence.of("{0} planned", style.show(amount)));
    }
  }

  private void line(String material, Quantity wanted, @Nullable Shelf shelf, Sentence reason) {
    if (shelf == null) {
      lines.add(
          new Line(
              material,
              Ledger.words(material),
              wanted,
              null,
              Sentence.of("{0}, none bought", reason)));
    } else if (isMore(wanted, shelf.bought())) {
      Quantity missing = difference(wanted, shelf.bought());
      lines.add(
          new Line(
              material,
              shelf.title(),
              missing,
              price(missing, shelf.last()),
              Sentence.of("{0}, {1} bought", reason, style.show(shelf.bought()))));
    }
  }

  private static @Nullable Quantity price(Quantity missing, Lot lot) {
    Marked<Quantity> price = lot.price();
    if (price == null) {
      return null;
    }
    try {
      BigDecimal share =
          missing.valueIn(lot.bought().unit()).divide(lot.bought().value(), MathContext.DECIMAL128);
      return Quantity.of(
          price.value().value().multiply(share).setScale(2, RoundingMode.HALF_UP),
          price.value().unit());
    } catch (QuantityException e) {
      return null;
    }
  }

  private static Quantity sum(Quantity a, Quantity b) {
    try {
      return a.plus(b);
    } catch (QuantityException e) {
      // The reckoning of the log says so, with its place.
      return a;
    }
  }

  private static Quantity difference(Quantity a, Quantity b) {
    try {
      return a.minus(b);
    } catch (QuantityException e) {
      return a;
    }
  }

  private static boolean isMore(Quantity a, Quantity b) {
    return difference(a, b).value().signum() > 0;
  }
}

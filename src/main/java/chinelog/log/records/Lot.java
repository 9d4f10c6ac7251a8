package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One purchase of one material.
 *
 * @param material the word that entries use, such as {@code cedar-strip}
 * @param title in words, such as "Red cedar strip, 3/16 × 1/16 in"
 * @param bought how much, such as {@code 60} or {@code 2 m²}
 * @param price paid for the whole lot
 * @param supplier as the maker writes it
 * @param hazards words of the known cautions: resin, superglue, dust, lead, solvent, blade, lithium
 * @param repair what its owner would mend with it, such as "a scratch in the topsides"; may be
 *     empty
 */
public record Lot(
    String material,
    String title,
    Quantity bought,
    @Nullable Marked<Quantity> price,
    @Nullable Marked<String> supplier,
    @Nullable LocalDate date,
    List<String> hazards,
    String repair,
    Label label,
    Place place) {

  public Lot withPrice(@Nullable Marked<Quantity> otherPrice) {
    return new Lot(
        material, title, bought, otherPrice, supplier, date, hazards, repair, label, place);
  }
}

package chinelog.book.writing;

import chinelog.book.page.PlateRows;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.edition.Text.PlateHere;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The last plates of a finished build, on two pages of their own: on each an upright one, or two
 * broad ones. They are chosen by their shapes, from the last backwards.
 */
record FinishSpread(List<Plate> left, List<Plate> right) {

  static final FinishSpread NONE = new FinishSpread(List.of(), List.of());

  /** At least this broad for its height, a plate shares its page with another. */
  private static final double BROAD = 1.2;

  /** At most so broad, a plate fills a page by itself. */
  private static final double UPRIGHT = 0.85;

  /**
   * Chooses plates.
   *
   * @param entries of the last chapter
   * @param opening the plate that opens it; null for none
   * @return {@link #NONE} where the plates do not fill two pages
   */
  static FinishSpread of(List<Entry> entries, @Nullable Plate opening) {
    List<Plate> left = new ArrayList<>(entries.stream().flatMap(e -> open(e).stream()).toList());
    left.remove(opening);
    List<Plate> last = page(left);
    left.removeAll(last);
    List<Plate> first = page(left);
    return last.isEmpty() || first.isEmpty() ? NONE : new FinishSpread(first, last);
  }

  /** Plates that everybody may see whole and whose place their maker has not chosen. */
  private static List<Plate> open(Entry entry) {
    List<Plate> plates = new ArrayList<>();
    for (Text.Block block : entry.text()) {
      if (block instanceof PlateHere here && here.layout() == PlateHere.Layout.BY_SHAPE) {
        plates.add(here.plate());
      }
    }
    plates.addAll(entry.plates());
    plates.removeIf(p -> !p.under().isEmpty() || !p.picture().filled().isEmpty());
    return plates;
  }

  /** Those for one page, the last of them that fill it; none if they do not. */
  private static List<Plate> page(List<Plate> plates) {
    Plate broad = null;
    for (int i = plates.size() - 1; i >= 0; i--) {
      Plate plate = plates.get(i);
      double shape = PlateRows.shape(plate);
      if (shape <= UPRIGHT && broad == null) {
        return List.of(plate);
      }
      if (shape >= BROAD && broad != null) {
        return List.of(plate, broad).stream()
            .sorted(Comparator.comparingInt(Plate::number))
            .toList();
      }
      broad = shape >= BROAD ? plate : broad;
    }
    return List.of();
  }

  /** An entry without the plates that stand here. */
  Entry without(Entry entry) {
    List<Plate> here = new ArrayList<>(left);
    here.addAll(right);
    return Chapters.without(entry, here);
  }
}

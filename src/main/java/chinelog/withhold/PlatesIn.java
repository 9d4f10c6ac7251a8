package chinelog.withhold;

import chinelog.edition.Plate;
import chinelog.edition.Text;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Finds the plates that stand in a text. */
final class PlatesIn {

  private PlatesIn() {}

  static Set<Plate> blocks(List<Text.Block> blocks) {
    Set<Plate> found = new LinkedHashSet<>();
    collect(blocks, found);
    return found;
  }

  private static void collect(List<Text.Block> blocks, Set<Plate> found) {
    for (Text.Block block : blocks) {
      if (block instanceof Text.PlateHere here) {
        found.add(here.plate());
      } else if (block instanceof Text.Items items) {
        items.items().forEach(item -> collect(item, found));
      } else if (block instanceof Text.Quote quote) {
        collect(quote.children(), found);
      }
    }
  }
}

package chinelog.log.records;

import chinelog.problem.Place;
import java.util.List;

/**
 * What parts are cut from: sheets or strips of a material of the stock. Lengths in mm.
 *
 * @param lengthMm along the grain
 * @param widthMm across it; 0 for strips
 * @param parts reckonings whose parts are cut from it, as facts.yaml calls them, or one part each,
 *     such as {@code moulds.building_board}
 * @param except parts that are not
 */
public record CutFrom(
    String material,
    double lengthMm,
    double widthMm,
    List<String> parts,
    List<String> except,
    Place place) {

  public CutFrom {
    parts = List.copyOf(parts);
    except = List.copyOf(except);
  }

  public boolean isStrip() {
    return widthMm == 0;
  }
}

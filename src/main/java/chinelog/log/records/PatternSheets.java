package chinelog.log.records;

import java.util.List;
import java.util.Optional;

/**
 * On what patterns are printed, and what printer and cutter make of a length. All lengths in mm.
 *
 * @param rollMm width of a plotter's roll
 * @param overlapMm of sheets that are to be joined
 * @param kerfMm what a cutter takes away along its line
 * @param acrossMm what 100 mm across the sheet measure when printed
 * @param upMm what 100 mm up the sheet measure when printed
 * @param cutFrom what the parts are cut from
 */
public record PatternSheets(
    Stock stock,
    double rollMm,
    double overlapMm,
    double kerfMm,
    double acrossMm,
    double upMm,
    List<CutFrom> cutFrom) {

  public PatternSheets {
    cutFrom = List.copyOf(cutFrom);
  }

  /**
   * What a part is cut from: what names it, else what names its reckoning and does not except it.
   */
  public Optional<CutFrom> findCutFrom(String reckoning, String part) {
    String name = reckoning + "." + part;
    return cutFrom.stream()
        .filter(c -> c.parts().contains(name))
        .findFirst()
        .or(
            () ->
                cutFrom.stream()
                    .filter(c -> c.parts().contains(reckoning) && !c.except().contains(name))
                    .findFirst());
  }

  /** Where the log says nothing. */
  public static final PatternSheets USUAL =
      new PatternSheets(Stock.A4, 0, 10, 0, 100, 100, List.of());

  /** What is printed on. */
  public enum Stock {
    /** 210 mm by 297 mm. */
    A4,
    /** 8 1/2 in by 11 in, US Letter. */
    LETTER,
    /** 297 mm by 420 mm. */
    A3,
    /** A plotter's. */
    ROLL
  }
}

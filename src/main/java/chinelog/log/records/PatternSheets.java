package chinelog.log.records;

/**
 * On what patterns are printed, and what printer and cutter make of a length. All lengths in mm.
 *
 * @param rollMm width of a plotter's roll
 * @param overlapMm of sheets that are to be joined
 * @param kerfMm what a cutter takes away along its line
 * @param acrossMm what 100 mm across the sheet measure when printed
 * @param upMm what 100 mm up the sheet measure when printed
 * @param scans whether sheets that were put to scale are printed, and what their lengths are of
 */
public record PatternSheets(
    Stock stock,
    double rollMm,
    double overlapMm,
    double kerfMm,
    double acrossMm,
    double upMm,
    Scans scans) {

  /** Where the log says nothing. */
  public static final PatternSheets USUAL =
      new PatternSheets(Stock.A4, 0, 10, 0, 100, 100, Scans.NONE);

  /** What the true lengths of sheets are of. */
  public enum Scans {
    NONE,
    /** The model: they are printed as they are. */
    MODEL,
    /** What is modelled: they are printed at the model's scale. */
    FULL
  }

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

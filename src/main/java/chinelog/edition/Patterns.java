package chinelog.edition;

import java.util.List;

/**
 * The patterns of an edition, and how they are printed and cut. All lengths in mm.
 *
 * @param parts in the order of the log
 * @param widthMm of the sheet of paper
 * @param heightMm of the sheet; 0 for a roll, which is as long as need be
 * @param overlapMm of sheets that are to be joined
 * @param kerfMm what a cutter takes away along its line
 * @param acrossMm what 100 mm across the sheet measure when printed
 * @param upMm what 100 mm up the sheet measure when printed
 */
public record Patterns(
    List<Pattern> parts,
    double widthMm,
    double heightMm,
    double overlapMm,
    double kerfMm,
    double acrossMm,
    double upMm) {

  /** For readers that get none. */
  public static final Patterns NONE = new Patterns(List.of(), 210, 297, 10, 0, 100, 100);

  public Patterns {
    parts = List.copyOf(parts);
  }
}

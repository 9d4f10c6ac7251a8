package chinelog.edition;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
 * @param stock what the parts are cut from
 */
public record Patterns(
    List<Pattern> parts,
    double widthMm,
    double heightMm,
    double overlapMm,
    double kerfMm,
    double acrossMm,
    double upMm,
    List<Stock> stock) {

  /** For readers that get none. */
  public static final Patterns NONE = new Patterns(List.of(), 210, 297, 10, 0, 100, 100, List.of());

  public Patterns {
    parts = List.copyOf(parts);
    stock = List.copyOf(stock);
  }

  /**
   * What parts are cut from. What its readers may not see of it is null.
   *
   * @param lengthMm along the grain
   * @param widthMm across it; 0 for strips
   * @param parts ids of the patterns of what is cut from it
   * @param strips how many of them are needed; 0 for sheets, which the layout counts
   * @param atHand how many there are
   * @param price of one
   * @param currency of the price, such as {@code GBP}; empty where there is none
   */
  public record Stock(
      String title,
      double lengthMm,
      double widthMm,
      List<String> parts,
      long strips,
      @Nullable BigDecimal atHand,
      @Nullable BigDecimal price,
      String currency) {
    public Stock {
      parts = List.copyOf(parts);
    }
  }
}

package chinelog.reckon.trade;

import chinelog.log.records.PricePlan.Driver;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What a quotation for the next build is to rest on: what this one took, and how the next differs.
 *
 * <p>Shares such as {@code wastage} are plain numbers or percentages: 0.1 or 10 %.
 *
 * @param title of the work quoted for
 * @param currency such as {@code GBP}
 * @param stages what this build took; at least one
 * @param built this build's measure for each driver that a stage names, such as a length of 700 mm;
 *     the fixed driver needs none
 * @param wanted the next build's, of the same drivers and kinds
 * @param rate money for an hour, such as 34 GBP/h
 * @param number which build of its kind the next one is; this one counted as the first, so 2 at
 *     least where anything was learnt, 1 for none
 * @param learning what a doubling of the number brings the hours to, such as 90 %; 100 % is none
 * @param wastage share of the material bought that is cut away beyond what this build used
 * @param overhead on labour and material
 * @param margin share of the price before tax that is left when everything is paid
 * @param tax on the price
 */
public record PriceRequest(
    String title,
    Unit currency,
    List<StageWork> stages,
    SortedMap<Driver, Quantity> built,
    SortedMap<Driver, Quantity> wanted,
    Quantity rate,
    int number,
    Quantity learning,
    Quantity wastage,
    Quantity overhead,
    Quantity margin,
    Quantity tax) {

  public PriceRequest {
    stages = List.copyOf(stages);
    built = copy(built);
    wanted = copy(wanted);
  }

  private static SortedMap<Driver, Quantity> copy(Map<Driver, Quantity> map) {
    return Collections.unmodifiableSortedMap(new TreeMap<>(map));
  }

  /**
   * What one stage took.
   *
   * @param hours worked
   * @param material cost of material used; null for none
   * @param low the least it might take the next time, as a share of the likely, such as 80 %
   * @param high the most, such as 150 %
   * @param learnt whether it goes faster the next time
   */
  public record StageWork(
      String title,
      Quantity hours,
      @Nullable Quantity material,
      Driver driver,
      Quantity low,
      Quantity high,
      boolean learnt) {}
}

package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * How the next build is to be priced: what its maker wrote for {@code chinelog reckon --price}.
 *
 * <pre>
 * title: A second Merrow, 900 mm long
 * stages:
 *   drawings: fixed
 *   planking: {driver: area, low: 80 %, high: 150 %, learnt: true}
 * built: {length: hull.loa}
 * wanted: {length: 900 mm}
 * number: 2
 * learning: 90 %
 * margin: 20 %
 * </pre>
 *
 * @param stages in the order written
 * @param built this build's measures by driver: the name of a fact, or a quantity, as written
 * @param wanted the next build's
 * @param rate null where the log's holds
 * @param number which of its kind it is, counted from the first
 * @param places where each key was written
 * @param label agreements of all that was written here
 */
public record PricePlan(
    String title,
    List<StagePrice> stages,
    SortedMap<Driver, Marked<String>> built,
    SortedMap<Driver, Quantity> wanted,
    @Nullable Quantity rate,
    int number,
    Quantity learning,
    Quantity wastage,
    Quantity overhead,
    Quantity margin,
    Quantity tax,
    SortedMap<String, Place> places,
    Label label,
    Place place) {

  public PricePlan {
    stages = List.copyOf(stages);
    built = Collections.unmodifiableSortedMap(new TreeMap<>(built));
    wanted = Collections.unmodifiableSortedMap(new TreeMap<>(wanted));
    places = Collections.unmodifiableSortedMap(new TreeMap<>(places));
  }

  /** Where a key was written; the beginning of the file for one that was not. */
  public Place place(String key) {
    return places.getOrDefault(key, place);
  }

  /** What a stage's hours and material grow with. */
  public enum Driver {
    LENGTH,
    /** Where no area is given, the square of the length. */
    AREA,
    COUNT,
    FIXED
  }

  /**
   * How one stage is to be priced.
   *
   * @param stage id of a stage of the log
   * @param low the least it might take, as a share of the likely
   * @param high the most
   * @param learnt whether it goes faster the next time
   */
  public record StagePrice(
      String stage, Driver driver, Quantity low, Quantity high, boolean learnt, Place place) {}
}

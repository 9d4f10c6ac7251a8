package chinelog.withhold;

import chinelog.edition.Plate;
import chinelog.photo.derivatives.View;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Finds plates that were taken from nearly one viewpoint on several days, so that they show how the
 * model grew. It is given plates that the readers see, and looks at nothing else.
 */
final class SameView {

  /**
   * Chosen after measuring, no source: pictures of one hull from one place at two stages lie
   * between 0.69 and 0.90, of one hull from two places mostly below 0.65.
   */
  private static final double ALIKE = 0.68;

  /** Fewer are no series. */
  private static final int LEAST = 3;

  /** More than fit on a page. */
  private static final int MOST = 8;

  /** How much the shapes of two pictures may differ. */
  private static final double SHAPE = 0.04;

  /** So many plates may lie between two of a series, or albums of thousands would take long. */
  private static final int NEAR = 200;

  private SameView() {}

  /** A plate and how it looks. */
  record Seen(Plate plate, View view) {

    LocalDate date() {
      return Objects.requireNonNull(plate.date());
    }

    boolean isEarlierFromThere(Seen later) {
      double shape = plate.picture().shape();
      return date().isBefore(later.date())
          && Math.abs(shape - later.plate.picture().shape()) < SHAPE * shape
          && view.isAlike(later.view, ALIKE);
    }
  }

  /**
   * The longest series, by day; empty if there is none of three.
   *
   * @param seen with their dates known
   */
  static List<Plate> longest(List<Seen> seen) {
    List<Seen> all =
        seen.stream()
            .sorted(Comparator.comparing(Seen::date).thenComparing(s -> s.plate.number()))
            .toList();
    int[] length = new int[all.size()];
    int[] before = new int[all.size()];
    int end = -1;
    for (int i = 0; i < all.size(); i++) {
      length[i] = 1;
      before[i] = -1;
      for (int j = Math.max(0, i - NEAR); j < i; j++) {
        if (length[j] >= length[i] && all.get(j).isEarlierFromThere(all.get(i))) {
          length[i] = length[j] + 1;
          before[i] = j;
        }
      }
      if (end < 0 || length[i] > length[end]) {
        end = i;
      }
    }
    List<Plate> series = new ArrayList<>();
    for (int i = end; i >= 0; i = before[i]) {
      series.add(0, all.get(i).plate);
    }
    return series.size() < LEAST ? List.of() : thinned(series);
  }

  /** The first, the last, and as many between as there is room for, evenly. */
  private static List<Plate> thinned(List<Plate> series) {
    if (series.size() <= MOST) {
      return List.copyOf(series);
    }
    List<Plate> kept = new ArrayList<>();
    for (int i = 0; i < MOST; i++) {
      kept.add(series.get((int) Math.round(i * (series.size() - 1.0) / (MOST - 1))));
    }
    return List.copyOf(kept);
  }
}

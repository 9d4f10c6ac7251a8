package chinelog.book.page;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Keeps, of all ways that end in the same state, only the cheapest: whatever follows costs the same
 * after each of them.
 */
final class BestWays {

  /** Ways that end so near to each other are taken to end at one height: a millimetre. */
  private static final int NEAR_DOTS = 80;

  /** So many ways at most are followed side by side. */
  private static final int MOST_WAYS = 400;

  private final Map<Key, Way> ways = new LinkedHashMap<>();

  /**
   * What decides how a way can go on.
   *
   * @param notes height of the notes on the page
   * @param isPainted whether something is painted on the page
   * @param isVerso whether it is a left one
   * @param run 1 if what stays together begins on this page, -1 if before, 0 for no such
   */
  private record Key(
      int height,
      int notes,
      boolean isPainted,
      boolean isVerso,
      int run,
      String waiting,
      String around) {}

  void add(Way way) {
    Cursor at = way.at();
    int number = at.pageAt(at.y);
    Way.Run run = way.run();
    int together =
        run == null || run.pieces().size() < 2 ? 0 : at.pageAt(run.start()) == number ? 1 : -1;
    Key key =
        new Key(
            at.y % at.pageDots / NEAR_DOTS,
            at.notesOn(number),
            number == at.page,
            at.isVerso(number),
            together,
            way.waitingKey(),
            way.in().key());
    ways.merge(key, way, (a, b) -> b.price() < a.price() ? b : a);
  }

  /** The cheapest of them. */
  List<Way> list() {
    Collection<Way> all = ways.values();
    return all.size() <= MOST_WAYS
        ? List.copyOf(all)
        : all.stream().sorted(Way.CHEAPEST).limit(MOST_WAYS).toList();
  }
}

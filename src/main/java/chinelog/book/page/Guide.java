package chinelog.book.page;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is settled already: up to a place everything comes out as a layout has shown, from there on
 * all is open. While one way alone is followed, it notes where pieces come to stand.
 */
final class Guide {

  private final MakeUp.@Nullable Known known;

  private boolean isOpen;

  /** Where pieces have come to stand, by id. */
  private final Map<String, Integer> places = new HashMap<>();

  /** Where what is in pieces has come to stand. */
  private final Map<String, Integer> inner = new HashMap<>();

  /**
   * Begins.
   *
   * @param known null if nothing is
   */
  Guide(MakeUp.@Nullable Known known) {
    this.known = known;
    this.isOpen = known == null;
  }

  /** What a layout says, as long as it is to be followed; null where all is open. */
  @Nullable Layout followed() {
    return known == null || isOpen ? null : known.layout();
  }

  /** What was reckoned wrongly before is taken as it was found; from there on all is open. */
  Cursor asFound(String id, Cursor from) {
    Integer y = known == null || isOpen || id.isEmpty() ? null : known.found().get(id);
    if (y == null || known == null) {
      return from;
    }
    Cursor at = from.copy();
    at.y = y;
    if (id.equals(known.until())) {
      isOpen = true;
      at.page = at.pageAt(y);
      at.cost = known.cost();
      at.filled = y - at.top(at.page);
    }
    return at;
  }

  void note(Piece piece, int start) {
    if (isOpen) {
      return;
    }
    String id = piece.frame().id();
    if (!id.isEmpty() && !id.startsWith("after-")) {
      places.put(id, start);
    }
    piece.frame().ids().forEach((name, below) -> inner.put(name, start + below));
  }

  Map<String, Integer> places() {
    return Map.copyOf(places);
  }

  /** Of pieces, and of what is in them. */
  Map<String, Integer> allPlaces() {
    Map<String, Integer> all = new HashMap<>(inner);
    all.putAll(places);
    return all;
  }
}

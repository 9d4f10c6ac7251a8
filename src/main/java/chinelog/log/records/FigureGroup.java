package chinelog.log.records;

import chinelog.problem.Place;
import java.util.List;

/**
 * A heading under which figures stand.
 *
 * @param title in the maker's words
 * @param names that the figures under it begin with, such as {@code hull} for {@code hull.loa}
 */
public record FigureGroup(String title, List<Name> names, Place place) {

  public FigureGroup {
    names = List.copyOf(names);
  }

  /** One of the names, and where it is written. */
  public record Name(String name, Place place) {}

  /** Whether figures of that name stand under it. */
  public boolean holds(String name) {
    return names.stream().anyMatch(n -> n.name.equals(name));
  }
}

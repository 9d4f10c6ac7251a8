package chinelog.label;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The agreements under which a group of readers may see things on a given day.
 *
 * @param agreements ids, sorted; an immutable copy is kept
 */
public record Clearance(SortedSet<String> agreements) {

  public Clearance {
    agreements = Collections.unmodifiableSortedSet(new TreeSet<>(agreements));
  }

  /**
   * The clearance of readers who are party to {@code granted}, on the day {@code asOf}: those
   * agreements, and every one whose end has freed what it covered.
   */
  public static Clearance of(
      Collection<String> granted, Collection<Agreement> agreements, LocalDate asOf) {
    SortedSet<String> cleared = new TreeSet<>(granted);
    agreements.stream().filter(a -> a.isFreeOn(asOf)).map(Agreement::id).forEach(cleared::add);
    return new Clearance(cleared);
  }

  public boolean allows(Label label) {
    return agreements.containsAll(label.agreements());
  }
}

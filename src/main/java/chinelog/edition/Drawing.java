package chinelog.edition;

import java.util.List;

/**
 * A picture drawn from figures, such as a lines plan. Whoever sees it can measure it, so that
 * nothing in it is more exact than what its readers are told.
 */
public sealed interface Drawing permits Diagram, Timeline {

  /** Such as {@code lines-form}; unique in the edition. */
  String id();

  String title();

  /** What it shows, in a sentence or two, for those who cannot see it. */
  String description();

  /** The same in figures; it may have no rows. */
  Table table();

  /** Agreements, for editions whose readers see them all. */
  List<String> under();

  /** What a drawing shows, as a table; the first cell of a row names it. */
  record Table(List<String> head, List<List<String>> rows) {
    public Table {
      head = List.copyOf(head);
      rows = rows.stream().map(List::copyOf).toList();
    }
  }
}

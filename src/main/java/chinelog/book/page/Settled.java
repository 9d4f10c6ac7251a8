package chinelog.book.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How pages were laid out when they were printed last. If the same layout gives the same {@link
 * Measures} again, though words have changed, no other need be looked for.
 *
 * @param elements digest of the elements that the pages were made of; of others it would not
 */
record Settled(Layout layout, String measures, String elements) {

  private static final String APART = "\t";

  /** A line for the measures, one for the elements and one for everything that the layout says. */
  List<String> lines() {
    List<String> lines = new ArrayList<>(List.of(measures, elements));
    layout.pages().forEach((id, page) -> lines.add(line("page", page, id)));
    layout.scales().forEach((id, scale) -> lines.add(line("scale", scale, id)));
    layout.later().forEach((id, count) -> lines.add(line("later", count, id)));
    layout.parted().forEach(id -> lines.add(line("parted", 1, id)));
    layout.lifted().forEach((id, mm) -> lines.add(line("lifted", mm, id)));
    return lines;
  }

  private static String line(String kind, Number number, String id) {
    return String.join(APART, kind, number.toString(), id);
  }

  static Settled parse(List<String> lines) {
    Map<String, Integer> pages = new TreeMap<>();
    Map<String, Double> scales = new TreeMap<>();
    Map<String, Integer> later = new TreeMap<>();
    Set<String> parted = new TreeSet<>();
    Map<String, Double> lifted = new TreeMap<>();
    for (String line : lines.subList(2, lines.size())) {
      String[] cells = line.split(APART, 3);
      switch (cells[0]) {
        case "page" -> pages.put(cells[2], Integer.valueOf(cells[1]));
        case "scale" -> scales.put(cells[2], Double.valueOf(cells[1]));
        case "later" -> later.put(cells[2], Integer.valueOf(cells[1]));
        case "parted" -> parted.add(cells[2]);
        default -> lifted.put(cells[2], Double.valueOf(cells[1]));
      }
    }
    Layout layout = new Layout(pages, scales, later, parted, lifted);
    return new Settled(layout, lines.get(0), lines.get(1));
  }
}

package chinelog.audit;

import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a page shows of each of its fonts.
 *
 * @param letters how many letters and digits stand on the page
 * @param codes of the signs that it shows, by the digest of their font
 */
record ShownLetters(int letters, SortedMap<String, SortedSet<Integer>> codes) {

  private static final String APART = " ";
  private static final String SIGN = ",";
  private static final char FONT = ':';
  private static final int HEX = 16;

  /** On one line, such as {@code 1874 5f3a…:3,1b,2c}. */
  String note() {
    StringBuilder note = new StringBuilder().append(letters);
    codes.forEach(
        (font, signs) -> note.append(APART).append(font).append(FONT).append(text(signs)));
    return note.toString();
  }

  static ShownLetters parse(String note) {
    String[] cells = note.split(APART, -1);
    SortedMap<String, SortedSet<Integer>> codes = new TreeMap<>();
    for (int i = 1; i < cells.length; i++) {
      int cut = cells[i].indexOf(FONT);
      SortedSet<Integer> signs = new TreeSet<>();
      for (String sign : cells[i].substring(cut + 1).split(SIGN, -1)) {
        signs.add(Integer.parseInt(sign, HEX));
      }
      codes.put(cells[i].substring(0, cut), signs);
    }
    return new ShownLetters(Integer.parseInt(cells[0]), codes);
  }

  /** Adds what this page shows to what others do. */
  void addTo(Map<String, SortedSet<Integer>> all) {
    codes.forEach((font, signs) -> all.computeIfAbsent(font, f -> new TreeSet<>()).addAll(signs));
  }

  static String text(Set<Integer> signs) {
    return String.join(SIGN, signs.stream().map(s -> Integer.toString(s, HEX)).toList());
  }
}

package chinelog.book.writing;

import chinelog.book.page.PageNumbers;
import java.text.Collator;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** Words with the places that speak of them, gathered while the pages are written. */
final class Index {

  /**
   * What the heading of the index takes, and a line with the white that estimates may be wrong by.
   */
  private static final double HEADING_MM = 25;

  private static final double LINE_MM = 4.5;

  private static final int ABREAST = 3;

  /** Height of a letter between its words, in lines of them. */
  private static final double LETTER_LINES = 1.5;

  /** Characters in a line of a column, and those that a number takes. */
  private static final int PER_LINE = 30;

  private static final int PER_PAGE = 4;

  private static final Pattern NUMBER = Pattern.compile("[0-9]+");

  private static final int LENGTH = 8;

  private final SortedMap<String, Set<String>> places;

  Index(Locale locale) {
    Collator collator = Collator.getInstance(locale);
    collator.setStrength(Collator.SECONDARY);
    // "Station 2" comes before "Station 10".
    Comparator<String> order = Comparator.comparing(Index::numbersOfOneLength, collator::compare);
    this.places = new TreeMap<>(order.thenComparing(Comparator.naturalOrder()));
  }

  private static String numbersOfOneLength(String word) {
    return NUMBER
        .matcher(word)
        .replaceAll(
            number -> "0".repeat(Math.max(0, LENGTH - number.group().length())) + number.group());
  }

  /** Notes that the element of that id speaks of a word. */
  void add(String word, String id) {
    if (!word.isBlank()) {
      places.computeIfAbsent(word, w -> new LinkedHashSet<>()).add(id);
    }
  }

  /**
   * Writes the words with their pages, each page once, in columns of one height, so that the last
   * page is as full as the others.
   */
  void write(Xhtml out, Map<String, Integer> pages, BookWords words, double pageMm) {
    List<String> all = List.copyOf(places.keySet());
    List<Double> heights = heights(all, pages);
    double lines = all.isEmpty() ? 0 : heights.get(all.size() - 1);
    double most = (pageMm - HEADING_MM) / LINE_MM;
    int sheets = Math.max(1, (int) Math.ceil(lines / (ABREAST * most)));
    List<Integer> ends = ends(heights, ABREAST * sheets);
    int start = 0;
    for (int i = 0; i < ends.size(); i++) {
      int end = ends.get(i);
      boolean isLast = i == ends.size() - 1 || i % ABREAST == ABREAST - 1;
      if (i % ABREAST == 0) {
        out.open("div", "class", "abreast");
      }
      out.open("div", "class", isLast ? "third" : "third left");
      String before = start == 0 ? "" : initial(all.get(start - 1));
      write(all.subList(start, end), before, out, pages, words);
      out.close();
      if (isLast) {
        out.close();
      }
      start = end;
    }
  }

  /** About how many lines the words take up to each of them. */
  private List<Double> heights(List<String> all, Map<String, Integer> pages) {
    List<Double> heights = new ArrayList<>();
    double height = 0;
    for (int i = 0; i < all.size(); i++) {
      String word = all.get(i);
      boolean isNewLetter = i == 0 || !initial(word).equals(initial(all.get(i - 1)));
      int length =
          word.length() + PER_PAGE * pagesOf(places.getOrDefault(word, Set.of()), pages).size();
      height += (isNewLetter ? LETTER_LINES : 0) + 1 + length / PER_LINE;
      heights.add(height);
    }
    return heights;
  }

  /** After how many words each of the columns ends, if all are of one height. */
  private static List<Integer> ends(List<Double> heights, int columns) {
    int all = heights.size();
    double whole = all == 0 ? 0 : heights.get(all - 1);
    List<Integer> ends = new ArrayList<>();
    for (int column = 1; column < columns; column++) {
      double lines = column * whole / columns;
      int end = (int) heights.stream().filter(h -> h <= lines + 0.5).count();
      if (end > 0 && !ends.contains(end) && end < all) {
        ends.add(end);
      }
    }
    ends.add(all);
    return ends;
  }

  private void write(
      List<String> some, String before, Xhtml out, Map<String, Integer> pages, BookWords words) {
    String letter = before;
    for (String word : some) {
      String first = initial(word);
      if (!first.equals(letter)) {
        letter = first;
        out.leaf("p", letter, "class", "letter");
      }
      out.open("p", "class", "word").text(word + ", ");
      SortedMap<Integer, String> of = pagesOf(places.getOrDefault(word, Set.of()), pages);
      of.forEach(
          (page, id) -> {
            String shown = PageNumbers.printed(page, pages);
            // The comma goes with the number before it, or a line could begin with it.
            out.leaf(
                "a",
                page.equals(of.lastKey()) ? shown : shown + ", ",
                "href",
                "#" + id,
                "title",
                words.say("index.goto", word, shown));
          });
      out.close();
    }
  }

  private static String initial(String word) {
    return word.substring(0, word.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT);
  }

  private static SortedMap<Integer, String> pagesOf(Set<String> ids, Map<String, Integer> pages) {
    SortedMap<Integer, String> result = new TreeMap<>();
    ids.forEach(id -> result.putIfAbsent(pages.getOrDefault(id, 1), id));
    return result;
  }
}

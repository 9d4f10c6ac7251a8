package chinelog.book;

import java.text.Collator;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** Words with the places that speak of them, gathered while the pages are written. */
final class Index {

  private static final int FEW = 150;

  private static final int ABREAST = 3;

  private final SortedMap<String, Set<String>> places;

  Index(Locale locale) {
    Collator collator = Collator.getInstance(locale);
    collator.setStrength(Collator.SECONDARY);
    Comparator<String> order = collator::compare;
    this.places = new TreeMap<>(order.thenComparing(Comparator.naturalOrder()));
  }

  /** Notes that the element of that id speaks of a word. */
  void add(String word, String id) {
    if (!word.isBlank()) {
      places.computeIfAbsent(word, w -> new LinkedHashSet<>()).add(id);
    }
  }

  /** Writes the words with their pages, each page once. */
  void write(Xhtml out, Map<String, Integer> pages, Words words) {
    List<String> all = List.copyOf(places.keySet());
    if (all.size() > FEW) {
      out.open("div", "class", "columns");
      write(all, "", out, pages, words);
      out.close();
      return;
    }
    // Columns of the library are filled one after the other: a short index would stand all left.
    int each = Math.max(1, (all.size() + ABREAST - 1) / ABREAST);
    out.open("div", "class", "abreast");
    for (int start = 0; start < all.size(); start += each) {
      List<String> some = all.subList(start, Math.min(all.size(), start + each));
      boolean isLast = start + each >= all.size();
      out.open("div", "class", isLast ? "third" : "third left");
      write(some, start == 0 ? "" : initial(all.get(start - 1)), out, pages, words);
      out.close();
    }
    out.close();
  }

  private void write(
      List<String> some, String before, Xhtml out, Map<String, Integer> pages, Words words) {
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
          (page, id) ->
              // The comma goes with the number before it, or a line could begin with it.
              out.leaf(
                  "a",
                  page.equals(of.lastKey()) ? String.valueOf(page) : page + ", ",
                  "href",
                  "#" + id,
                  "title",
                  words.say("index.goto", word, page)));
      out.close();
    }
  }

  private static String initial(String word) {
    return word.substring(0, word.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT);
  }

  private static SortedMap<Integer, String> pagesOf(Set<String> ids, Map<String, Integer> pages) {
    SortedMap<Integer, String> result = new TreeMap<>();
    ids.forEach(id -> result.putIfAbsent(pages.getOrDefault(id, 0), id));
    return result;
  }
}

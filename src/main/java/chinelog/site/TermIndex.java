package chinelog.site;

import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Line;
import chinelog.edition.Edition.MaterialLine;
import chinelog.edition.Edition.Stage;
import chinelog.edition.Figure;
import chinelog.edition.Text;
import chinelog.markup.TextMarkup;
import chinelog.markup.Wording;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** The index of terms: stages, figures, materials and headings, each with where it is told. */
final class TermIndex {

  private final Contents contents;
  private final Addresses addresses;
  private final Wording wording;
  private final Map<String, Map<String, String>> found;

  private TermIndex(Contents contents, Addresses addresses, Wording wording) {
    this.contents = contents;
    this.addresses = addresses;
    this.wording = wording;
    this.found = new TreeMap<>(Wording.order(contents.locale()));
  }

  /** First letters, each with its terms, each with its places as {@code title} and {@code path}. */
  static List<Map<String, Object>> of(Contents contents, Addresses addresses, Wording wording) {
    TermIndex terms = new TermIndex(contents, addresses, wording);
    terms.gather();
    return terms.byLetter();
  }

  private void gather() {
    for (Stage stage : contents.stages()) {
      add(stage.title(), wording.text("nav.stages"), "stages.html#" + stage.id());
    }
    for (Figure figure : contents.figures()) {
      Figure.Cell cell = figure.cell();
      String term = cell == null ? figure.title() : cell.part();
      // What is said of a part stands in one row.
      if (cell == null || !found.containsKey(term)) {
        add(term, wording.text("nav.figures"), addresses.figure(figure.name()));
      }
    }
    for (MaterialLine material : contents.materials()) {
      add(material.title(), wording.text("nav.materials"), "materials.html#materials");
    }
    for (Entry entry : contents.entries()) {
      for (Line line : entry.materials()) {
        add(line.title(), entry.title(), addresses.entry(entry.id()));
      }
      for (Text.Block block : entry.text()) {
        if (block instanceof Text.Heading heading) {
          String page = String.valueOf(addresses.entry(entry.id())).replaceAll("#.*", "");
          add(
              TextMarkup.plain(heading.text(), wording),
              entry.title(),
              page + "#" + heading.anchor());
        }
      }
    }
  }

  private void add(String term, String title, @org.jspecify.annotations.Nullable String path) {
    if (path != null && !term.isBlank()) {
      found.computeIfAbsent(term, t -> new LinkedHashMap<>()).putIfAbsent(path, title);
    }
  }

  private List<Map<String, Object>> byLetter() {
    Map<String, List<Map<String, Object>>> letters = new LinkedHashMap<>();
    found.forEach(
        (term, places) -> {
          List<Map<String, String>> listed = new ArrayList<>();
          places.forEach((path, title) -> listed.add(Map.of("path", path, "title", title)));
          letters
              .computeIfAbsent(letter(term), l -> new ArrayList<>())
              .add(Map.of("term", term, "places", listed));
        });
    List<Map<String, Object>> all = new ArrayList<>();
    letters.forEach((letter, terms) -> all.add(Map.of("letter", letter, "terms", terms)));
    return all;
  }

  private String letter(String term) {
    Locale locale = contents.locale();
    return new StringBuilder().appendCodePoint(term.codePointAt(0)).toString().toUpperCase(locale);
  }
}

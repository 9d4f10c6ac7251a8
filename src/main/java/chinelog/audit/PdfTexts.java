package chinelog.audit;

import chinelog.digest.Sha256;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.jspecify.annotations.Nullable;

/**
 * Searches the text of the pages of one document, and looks what letters each embedded font holds.
 * Of pages that were found clean before, only those are read that stand so near to others that
 * something looked for may begin on one and end on the other.
 */
final class PdfTexts {

  private static final String TEXT = "text ";

  private final PDDocument pdf;
  private final PartDigests digests;
  private final CleanParts parts;
  private final Search search;
  private final Findings findings;
  private final List<String> pages = new ArrayList<>();
  private final List<@Nullable ShownLetters> shown = new ArrayList<>();

  private PdfTexts(
      PDDocument pdf, PartDigests digests, CleanParts parts, Search search, Findings findings) {
    this.pdf = pdf;
    this.digests = digests;
    this.parts = parts;
    this.search = search;
    this.findings = findings;
  }

  static void inspect(
      PDDocument pdf, PartDigests digests, CleanParts parts, Search search, Findings findings)
      throws IOException {
    PdfTexts texts = new PdfTexts(pdf, digests, parts, search, findings);
    for (PDPage page : pdf.getPages()) {
      String part = TEXT + digests.page(page);
      String note = parts.findNote(part);
      texts.pages.add(part);
      texts.shown.add(note == null ? null : ShownLetters.parse(note));
    }
    if (!texts.search(texts.near())) {
      boolean[] all = new boolean[texts.pages.size()];
      Arrays.fill(all, true);
      texts.search(all);
    }
  }

  /** Which pages are new, or near to one that is. */
  private boolean[] near() {
    boolean[] near = new boolean[pages.size()];
    for (int page = 0; page < near.length; page++) {
      if (shown.get(page) == null) {
        near[page] = true;
        reach(page, 1, near);
        reach(page, -1, near);
      }
    }
    return near;
  }

  /** Goes on from a page until as many letters are passed as the longest thing looked for has. */
  private void reach(int from, int step, boolean[] near) {
    int letters = 0;
    for (int page = from + step;
        page >= 0 && page < near.length && letters < search.longest();
        page += step) {
      near[page] = true;
      ShownLetters known = shown.get(page);
      letters += known == null ? 0 : known.letters();
    }
  }

  /** Reads and searches some pages; false if that does not tell enough of the fonts. */
  private boolean search(boolean[] wanted) throws IOException {
    SortedMap<String, PDFont> fonts = new TreeMap<>();
    for (int first = 0; first < wanted.length; first++) {
      if (wanted[first]) {
        int last = first;
        while (last + 1 < wanted.length && wanted[last + 1]) {
          last++;
        }
        PdfText text = PdfText.read(pdf, first + 1, last + 1, search, findings);
        for (int page = first; page <= last; page++) {
          ShownLetters now = text.shown(page - first, digests);
          shown.set(page, now);
          parts.note(pages.get(page), now.note());
        }
        for (PDFont font : text.fonts()) {
          fonts.put(digests.font(font), font);
        }
        first = last;
      }
    }
    return lettersLeftOver(fonts);
  }

  private boolean lettersLeftOver(Map<String, PDFont> fonts) throws IOException {
    SortedMap<String, SortedSet<Integer>> all = new TreeMap<>();
    for (ShownLetters page : shown) {
      if (page != null) {
        page.addTo(all);
      }
    }
    SortedMap<String, Set<String>> left = new TreeMap<>();
    for (Map.Entry<String, SortedSet<Integer>> entry : all.entrySet()) {
      String part = "font " + Sha256.of(entry.getKey() + " " + ShownLetters.text(entry.getValue()));
      if (parts.has(part)) {
        continue;
      }
      PDFont font = fonts.get(entry.getKey());
      if (font == null) {
        return false;
      }
      Set<String> letters = FontLetters.leftOver(font, entry.getValue());
      if (!letters.isEmpty()) {
        left.put(font.getName(), letters);
      }
    }
    left.forEach(
        (font, letters) ->
            findings.add(
                Sentence.of("font {0}", font),
                Sentence.of(
                    "It holds letters that no page shows: {0}.", String.join(" ", letters))));
    return true;
  }
}

package chinelog.audit;

import chinelog.problem.Sentence;
import java.io.IOException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.jspecify.annotations.Nullable;

/** Reads the text of pages that follow each other, glyph by glyph. */
final class PdfText extends PDFTextStripper {

  /** About how many times as high as its letters a type is. */
  private static final double EM_PER_HEIGHT = 1.5;

  /** Codes of the signs shown on each page read, by their fonts. */
  private final List<Map<PDFont, SortedSet<Integer>>> shown = new ArrayList<>();

  private final List<Integer> letters = new ArrayList<>();
  private final Map<COSDictionary, PDFont> fonts = new IdentityHashMap<>();

  /** All letters in the order they are drawn, and the same with what stands apart kept apart. */
  private final StringBuilder inOrder = new StringBuilder();

  private final StringBuilder apart = new StringBuilder();
  private @Nullable TextPosition before;
  private final PdfSight asSeen = new PdfSight();

  /**
   * Reads and searches pages.
   *
   * @param first counted from 1
   */
  static PdfText read(PDDocument pdf, int first, int last, Search search, Findings findings)
      throws IOException {
    PdfText text = new PdfText();
    text.setSortByPosition(false);
    text.setSuppressDuplicateOverlappingText(false);
    text.setStartPage(first);
    text.setEndPage(last);
    String lines = text.getText(pdf);
    search.text(lines, findings, Sentence.of("the text of the pages"));
    search.words(text.inOrder.toString(), findings, Sentence.of("the text of the pages"));
    search.text(text.apart.toString(), findings, Sentence.of("the text of the pages"));
    search.text(text.asSeen.getText(pdf), findings, Sentence.of("the text of the pages"));
    return text;
  }

  /**
   * What a page shows.
   *
   * @param page of those read, from 0
   */
  ShownLetters shown(int page, PartDigests digests) throws IOException {
    SortedMap<String, SortedSet<Integer>> codes = new TreeMap<>();
    for (Map.Entry<PDFont, SortedSet<Integer>> font : shown.get(page).entrySet()) {
      codes
          .computeIfAbsent(digests.font(font.getKey()), f -> new TreeSet<>())
          .addAll(font.getValue());
    }
    return new ShownLetters(letters.get(page), codes);
  }

  Iterable<PDFont> fonts() {
    return fonts.values();
  }

  @Override
  protected void startPage(PDPage page) throws IOException {
    inOrder.append('\f');
    before = null;
    shown.add(new IdentityHashMap<>());
    letters.add(0);
    asSeen.begin(page);
    super.startPage(page);
  }

  @Override
  protected void processTextPosition(TextPosition position) {
    PDFont font = fonts.computeIfAbsent(position.getFont().getCOSObject(), f -> position.getFont());
    int page = shown.size() - 1;
    SortedSet<Integer> codes = shown.get(page).computeIfAbsent(font, f -> new TreeSet<>());
    for (int code : position.getCharacterCodes()) {
      codes.add(code);
    }
    String written = position.getUnicode();
    if (written != null) {
      int more = (int) written.codePoints().filter(Character::isLetterOrDigit).count();
      letters.set(page, letters.get(page) + more);
      inOrder.append(written);
      apart.append(follows(position) ? "" : "\f").append(written);
      before = position;
    }
    asSeen.add(position);
    super.processTextPosition(position);
  }

  /**
   * Whether a letter stands where the one before it ends: a page number and the figure in the next
   * cell, drawn one after the other, are no figure.
   */
  private boolean follows(TextPosition position) {
    TextPosition last = before;
    if (last == null) {
      return false;
    }
    double em = Math.max(position.getHeightDir(), last.getHeightDir()) * EM_PER_HEIGHT;
    double gap = position.getXDirAdj() - last.getXDirAdj() - last.getWidthDirAdj();
    return Math.abs(gap) < em && Math.abs(position.getYDirAdj() - last.getYDirAdj()) < em;
  }
}

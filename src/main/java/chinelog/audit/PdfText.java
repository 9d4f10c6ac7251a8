package chinelog.audit;

import java.io.IOException;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.jspecify.annotations.Nullable;

/** Reads the text of every page, glyph by glyph, and what letters each embedded font holds. */
final class PdfText extends PDFTextStripper {

  private final Findings findings;
  private final Map<COSBase, Set<Integer>> shown = new java.util.IdentityHashMap<>();

  /** About how many times as high as its letters a type is. */
  private static final double EM_PER_HEIGHT = 1.5;

  private final Map<COSBase, PDFont> fonts = new java.util.IdentityHashMap<>();

  /** All letters in the order they are drawn, and the same with what stands apart kept apart. */
  private final StringBuilder inOrder = new StringBuilder();

  private final StringBuilder apart = new StringBuilder();
  private @Nullable TextPosition before;
  private final PdfSight asSeen = new PdfSight();

  private PdfText(Findings findings) {
    this.findings = findings;
  }

  static void inspect(PDDocument pdf, Search search, Findings findings) throws IOException {
    PdfText text = new PdfText(findings);
    text.setSortByPosition(false);
    text.setSuppressDuplicateOverlappingText(false);
    String lines = text.getText(pdf);
    search.text(lines, findings, "the text of the pages");
    search.words(text.inOrder.toString(), findings, "the text of the pages");
    search.text(text.apart.toString(), findings, "the text of the pages");
    search.text(text.asSeen.getText(pdf), findings, "the text of the pages");
    text.lettersLeftOver();
  }

  @Override
  protected void startPage(PDPage page) throws IOException {
    inOrder.append('\f');
    before = null;
    asSeen.begin(page);
    super.startPage(page);
  }

  @Override
  protected void processTextPosition(TextPosition position) {
    PDFont font = position.getFont();
    fonts.put(font.getCOSObject(), font);
    Set<Integer> codes = shown.computeIfAbsent(font.getCOSObject(), f -> new TreeSet<>());
    for (int code : position.getCharacterCodes()) {
      codes.add(code);
    }
    String letters = position.getUnicode();
    if (letters != null) {
      inOrder.append(letters);
      apart.append(follows(position) ? "" : "\f").append(letters);
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

  private void lettersLeftOver() throws IOException {
    Map<String, Set<String>> left = new TreeMap<>();
    for (Map.Entry<COSBase, PDFont> entry : fonts.entrySet()) {
      PDFont font = entry.getValue();
      Set<String> letters =
          FontLetters.leftOver(font, shown.getOrDefault(entry.getKey(), Set.of()));
      if (!letters.isEmpty()) {
        left.put(font.getName(), letters);
      }
    }
    left.forEach(
        (font, letters) ->
            findings.add(
                "font " + font,
                "It holds letters that no page shows: " + String.join(" ", letters) + "."));
  }
}

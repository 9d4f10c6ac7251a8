package chinelog.audit;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Reads the text of every page, glyph by glyph, and what letters each embedded font holds. */
final class PdfText extends PDFTextStripper {

  private final Findings findings;
  private final Map<COSBase, Set<Integer>> shown = new java.util.IdentityHashMap<>();
  private final Map<COSBase, PDFont> fonts = new java.util.IdentityHashMap<>();
  private final StringBuilder inOrder = new StringBuilder();
  private PDRectangle box = PDRectangle.A4;

  private PdfText(Findings findings) {
    this.findings = findings;
  }

  static void inspect(PDDocument pdf, Search search, Findings findings) throws IOException {
    PdfText text = new PdfText(findings);
    text.setSortByPosition(false);
    text.setSuppressDuplicateOverlappingText(false);
    String lines = text.getText(pdf);
    search.text(lines, findings, "the text of the pages");
    search.text(text.inOrder.toString(), findings, "the text of the pages");
    PDFTextStripper sorted = new PDFTextStripper();
    sorted.setSortByPosition(true);
    search.text(sorted.getText(pdf), findings, "the text of the pages");
    text.lettersLeftOver();
  }

  @Override
  protected void startPage(PDPage page) throws IOException {
    box = page.getMediaBox();
    inOrder.append('\f');
    super.startPage(page);
  }

  @Override
  protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
    super.processOperator(operator, operands);
    if (operator.getName().equals("Tr")
        && getGraphicsState().getTextState().getRenderingMode() == RenderingMode.NEITHER) {
      findings.addOnce("page " + getCurrentPageNo(), "Text stands there that is not shown.");
    }
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
      float x = position.getTextMatrix().getTranslateX();
      float y = position.getTextMatrix().getTranslateY();
      boolean outside =
          x < box.getLowerLeftX() - 1
              || y < box.getLowerLeftY() - 1
              || x > box.getUpperRightX() + 1
              || y > box.getUpperRightY() + 1;
      if (outside && !letters.isBlank()) {
        findings.addOnce("page " + getCurrentPageNo(), "Text stands outside the page.");
      }
    }
    super.processTextPosition(position);
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

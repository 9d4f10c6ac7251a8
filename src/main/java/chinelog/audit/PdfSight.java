package chinelog.audit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageTree;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * The text of the pages in the order in which it is seen, from the top to the foot, and what is
 * drawn twice in one place but once. It is made of letters that were read before, so that no page
 * is read again.
 */
final class PdfSight extends PDFTextStripper {

  private final Map<COSDictionary, List<TextPosition>> read = new IdentityHashMap<>();
  private List<TextPosition> letters = List.of();

  PdfSight() {
    setSortByPosition(true);
    // Pages are counted only where they are read.
    setStartPage(0);
  }

  /** What is added from here on stands on this page. */
  void begin(PDPage page) {
    letters = new ArrayList<>();
    read.put(page.getCOSObject(), letters);
  }

  /** A copy of the letter: whoever reads it may join accents to it. */
  void add(TextPosition letter) {
    letters.add(
        new TextPosition(
            letter.getRotation(),
            letter.getPageWidth(),
            letter.getPageHeight(),
            letter.getTextMatrix(),
            letter.getEndX(),
            letter.getEndY(),
            letter.getHeight(),
            letter.getIndividualWidths()[0],
            letter.getWidthOfSpace(),
            letter.getUnicode(),
            letter.getCharacterCodes(),
            letter.getFont(),
            letter.getFontSize(),
            (int) letter.getFontSizeInPt()));
  }

  @Override
  protected void processPages(PDPageTree pages) throws IOException {
    for (PDPage page : pages) {
      letters = read.getOrDefault(page.getCOSObject(), List.of());
      processPage(new Blank(page));
    }
  }

  @Override
  protected void writePage() throws IOException {
    letters.forEach(this::processTextPosition);
    super.writePage();
  }

  /** A page of the same size on which nothing is left to be read. */
  private static final class Blank extends PDPage {
    Blank(PDPage page) {
      super(page.getCOSObject());
    }

    @Override
    public boolean hasContents() {
      return false;
    }
  }
}

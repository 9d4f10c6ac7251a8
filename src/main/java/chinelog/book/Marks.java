package chinelog.book;

import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import com.openhtmltopdf.render.PageBox;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.w3c.dom.Element;

/**
 * Marks the head of every page that shows something under an agreement, such as "Under agreement:
 * Skerrick Yard". A running head in the markup would miss things that begin or end mid-page.
 */
final class Marks {

  /** Names, separated by {@code |}, of the agreements that an element is under. */
  static final String ATTRIBUTE = "data-under";

  private static final float SIZE_PT = 8;

  /** Nearer to where the page is cut, the mark could be cut, too. */
  private static final double LEAST_FROM_TOP_MM = 12.5;

  private static final float POINTS_PER_MM = 72 / 25.4f;

  private final SortedMap<Integer, SortedSet<String>> byPage = new TreeMap<>();
  private final Layer root;

  private Marks(PdfBoxRenderer renderer) {
    this.root = renderer.getRootBox().getLayer();
  }

  static void stamp(PdfBoxRenderer renderer, PDFont font, Manuscript manuscript)
      throws IOException {
    Marks marks = new Marks(renderer);
    marks.collect(renderer.getRootBox());
    PDDocument document = renderer.getPdfDocument();
    double fromTopMm = Math.max(manuscript.trim().topMm / 2, LEAST_FROM_TOP_MM);
    float heightPt = (float) (fromTopMm * POINTS_PER_MM);
    for (var page : marks.byPage.entrySet()) {
      String words = printable(font, manuscript.underMark() + String.join(", ", page.getValue()));
      stamp(document, document.getPage(page.getKey()), font, words, heightPt);
    }
  }

  private void collect(Box box) {
    Element element = box.getElement();
    if (element != null && element.hasAttribute(ATTRIBUTE)) {
      add(box, List.of(element.getAttribute(ATTRIBUTE).split("\\|")));
    }
    for (Box child : new ArrayList<>(box.getChildren())) {
      collect(child);
    }
    if (box instanceof InlineLayoutBox inline) {
      for (Object child : inline.getInlineChildren()) {
        if (child instanceof Box inner) {
          collect(inner);
        }
      }
    }
  }

  private void add(Box box, List<String> agreements) {
    int top = box.getAbsY();
    int bottom = top + Math.max(1, box.getHeight()) - 1;
    for (PageBox page : root.getPages()) {
      if (page.getTop() <= bottom && page.getBottom() > top) {
        byPage.computeIfAbsent(page.getPageNo(), p -> new TreeSet<>()).addAll(agreements);
      }
    }
  }

  /** Leaves out what the face has no sign for, rather than the whole mark. */
  private static String printable(PDFont font, String words) {
    StringBuilder kept = new StringBuilder();
    words
        .codePoints()
        .mapToObj(Character::toString)
        .filter(sign -> has(font, sign))
        .forEach(kept::append);
    return kept.toString();
  }

  private static boolean has(PDFont font, String sign) {
    try {
      return font.encode(sign).length > 0;
    } catch (IllegalArgumentException | IOException e) {
      return false;
    }
  }

  private static void stamp(
      PDDocument document, PDPage page, PDFont font, String words, float fromTopPt)
      throws IOException {
    PDRectangle box = page.getMediaBox();
    float width = font.getStringWidth(words) / 1000 * SIZE_PT;
    try (PDPageContentStream content =
        new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
      content.beginMarkedContent(COSName.ARTIFACT);
      content.beginText();
      content.setFont(font, SIZE_PT);
      content.newLineAtOffset(
          box.getLowerLeftX() + (box.getWidth() - width) / 2, box.getUpperRightY() - fromTopPt);
      content.showText(words);
      content.endText();
      content.endMarkedContent();
    }
  }
}

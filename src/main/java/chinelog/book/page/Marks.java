package chinelog.book.page;

import com.openhtmltopdf.css.constants.CSSName;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.PageBox;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.w3c.dom.Element;

/**
 * Marks what is under an agreement: by a bar at the side of it, and in the head of every page that
 * shows some of it, such as "Under agreement: Skerrick Yard". A running head in the markup would
 * miss things that begin or end mid-page, and the side of a box would go on where nothing stands
 * any more at the foot of a page.
 */
final class Marks {

  private static final float SIZE_PT = 8;

  /** Nearer to where the page is cut, the mark could be cut, too. */
  private static final double LEAST_FROM_TOP_MM = 12.5;

  /** So far above the text, and with that a line above the running head. */
  private static final double ABOVE_TEXT_MM = 11.2;

  private static final String BARRED = "under";

  private static final float BAR_PT = 2;

  private static final float POINTS_PER_MM = 72 / 25.4f;

  private final SortedMap<Integer, SortedSet<String>> byPage = new TreeMap<>();
  private final List<Bar> bars = new ArrayList<>();
  private final Layer root;
  private final PagePlace place;

  /** A bar on a page, in dots from the left and the top of the text. */
  private record Bar(int page, int left, int top, int bottom, FSRGBColor color) {}

  private Marks(PdfBoxRenderer renderer, PagePlace place) {
    this.root = renderer.getRootBox().getLayer();
    this.place = place;
  }

  static void stamp(PdfBoxRenderer renderer, PDFont font, Manuscript manuscript, PagePlace place)
      throws IOException {
    Marks marks = new Marks(renderer, place);
    marks.collect(renderer.getRootBox());
    PDDocument document = renderer.getPdfDocument();
    for (Bar bar : marks.bars) {
      marks.draw(document, bar);
    }
    for (var page : marks.byPage.entrySet()) {
      String words = printable(font, manuscript.underMark() + String.join(", ", page.getValue()));
      marks.stamp(document, page.getKey(), font, words);
    }
  }

  private void collect(Box box) {
    Element element = box.getElement();
    if (element != null && element.hasAttribute(Manuscript.UNDER_ATTRIBUTE)) {
      add(box, List.of(element.getAttribute(Manuscript.UNDER_ATTRIBUTE).split("\\|")));
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
    Map<Integer, int[]> painted = new TreeMap<>();
    paint(box, painted);
    if (painted.isEmpty()) {
      span(box, painted);
    }
    painted
        .keySet()
        .forEach(p -> byPage.computeIfAbsent(p, x -> new TreeSet<>()).addAll(agreements));
    boolean isBarred =
        !box.isAnonymous()
            && List.of(box.getElement().getAttribute("class").split(" ")).contains(BARRED);
    if (isBarred && box.getStyle().asColor(CSSName.BORDER_LEFT_COLOR) instanceof FSRGBColor color) {
      painted.forEach((p, ends) -> bars.add(new Bar(p, box.getAbsX(), ends[0], ends[1], color)));
    }
  }

  /** Where there are lines and pictures of a box on each page: from its top, in dots. */
  private void paint(Box box, Map<Integer, int[]> painted) {
    boolean isPainted =
        box instanceof LineBox
            || box instanceof InlineLayoutBox
            || box instanceof BlockBox block && block.isReplaced();
    if (isPainted) {
      span(box, painted);
    } else {
      for (Box child : new ArrayList<>(box.getChildren())) {
        paint(child, painted);
      }
    }
  }

  private void span(Box box, Map<Integer, int[]> spans) {
    int top = box.getAbsY();
    int bottom = top + Math.max(1, box.getHeight());
    for (PageBox page : root.getPages()) {
      if (page.getTop() < bottom && page.getBottom() > top) {
        int from = Math.max(top, page.getTop()) - page.getTop();
        int to = Math.min(bottom, page.getBottom()) - page.getTop();
        spans.merge(
            page.getPageNo(),
            new int[] {from, to},
            (a, b) -> new int[] {Math.min(a[0], b[0]), Math.max(a[1], b[1])});
      }
    }
  }

  /** Leaves out what the face has no sign for, rather than the whole mark. */
  static String printable(PDFont font, String words) {
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

  private void draw(PDDocument document, Bar bar) throws IOException {
    PDPage page = document.getPage(bar.page);
    float left = place.leftPt(bar.page, bar.left);
    float top = place.textTopPt() + PagePlace.points(bar.top);
    float height = PagePlace.points(bar.bottom - bar.top);
    FSRGBColor color = bar.color;
    try (PDPageContentStream content = append(document, page)) {
      content.beginMarkedContent(COSName.ARTIFACT);
      content.setNonStrokingColor(
          color.getRed() / 255f, color.getGreen() / 255f, color.getBlue() / 255f);
      content.addRect(left, page.getMediaBox().getUpperRightY() - top - height, BAR_PT, height);
      content.fill();
      content.endMarkedContent();
    }
  }

  /** At the outer side of the text, as the running head. */
  private void stamp(PDDocument document, int number, PDFont font, String words)
      throws IOException {
    PDPage page = document.getPage(number);
    boolean isRight = number % 2 == 0;
    float width = font.getStringWidth(words) / 1000 * SIZE_PT;
    float right = place.textLeftPt(number) + (float) (place.trim().textWidthMm() * POINTS_PER_MM);
    double fromTopMm =
        Math.max(place.trim().margins.topMm() - ABOVE_TEXT_MM, LEAST_FROM_TOP_MM) + place.bleedMm();
    try (PDPageContentStream content = append(document, page)) {
      content.beginMarkedContent(COSName.ARTIFACT);
      content.beginText();
      content.setFont(font, SIZE_PT);
      content.newLineAtOffset(
          isRight ? right - width : place.textLeftPt(number),
          page.getMediaBox().getUpperRightY() - (float) (fromTopMm * POINTS_PER_MM));
      content.showText(words);
      content.endText();
      content.endMarkedContent();
    }
  }

  private static PDPageContentStream append(PDDocument document, PDPage page) throws IOException {
    return new PDPageContentStream(document, page, AppendMode.APPEND, true, true);
  }
}

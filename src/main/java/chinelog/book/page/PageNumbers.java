package chinelog.book.page;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDPageLabelRange;
import org.apache.pdfbox.pdmodel.common.PDPageLabels;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * The pages of the front matter have roman numbers, from the cover on; those of the body begin at
 * 1, as is the custom of the trade. A booklet is numbered through from its cover.
 */
public final class PageNumbers {

  /** Id of the element whose page is the first with an arabic number. */
  public static final String BODY = "body";

  private static final int[] VALUES = {100, 90, 50, 40, 10, 9, 5, 4, 1};
  private static final String[] SIGNS = {"c", "xc", "l", "xl", "x", "ix", "v", "iv", "i"};

  private PageNumbers() {}

  /** Such as "iv" or "17" for a page counted from the cover. */
  public static String printed(int page, Map<String, Integer> pages) {
    int front = front(pages);
    return page <= front ? roman(page) : String.valueOf(page - front);
  }

  /** How many pages stand before the body. */
  private static int front(Map<String, Integer> pages) {
    return pages.getOrDefault(BODY, 1) - 1;
  }

  private static String roman(int number) {
    StringBuilder written = new StringBuilder();
    int left = number;
    for (int i = 0; i < VALUES.length; i++) {
      while (left >= VALUES[i]) {
        written.append(SIGNS[i]);
        left -= VALUES[i];
      }
    }
    return written.toString();
  }

  /** Pages, counted from the cover, on which what bears an id begins, once it is laid out. */
  static Map<String, Integer> find(PdfBoxRenderer renderer) {
    List<PageBox> all = renderer.getRootBox().getLayer().getPages();
    NodeList elements = renderer.getDocument().getElementsByTagName("*");
    Map<String, Integer> pages = new TreeMap<>();
    for (int i = 0; i < elements.getLength(); i++) {
      String id = ((Element) elements.item(i)).getAttribute("id");
      Box box = id.isEmpty() ? null : renderer.getSharedContext().getBoxById(id);
      if (box != null) {
        pages.put(id, pageAt(box.getAbsY(), all) + 1);
      }
    }
    return pages;
  }

  /** Where what bears an id begins, in dots from the head of the page after so many. */
  static Map<String, Integer> places(PdfBoxRenderer renderer, int before) {
    int top = renderer.getRootBox().getLayer().getPages().get(before).getTop();
    NodeList elements = renderer.getDocument().getElementsByTagName("*");
    Map<String, Integer> places = new TreeMap<>();
    for (int i = 0; i < elements.getLength(); i++) {
      String id = ((Element) elements.item(i)).getAttribute("id");
      Box box = id.isEmpty() ? null : renderer.getSharedContext().getBoxById(id);
      if (box != null && box.getAbsY() >= top) {
        places.put(id, box.getAbsY() - top);
      }
    }
    return places;
  }

  /** Index of the page that has that place. */
  static int pageAt(int y, List<PageBox> pages) {
    int page = 0;
    while (page < pages.size() - 1 && pages.get(page).getBottom() <= y) {
      page++;
    }
    return page;
  }

  /** Gives the pages of the file the numbers that are printed on them. */
  static void label(PDDocument document, Map<String, Integer> pages) {
    PDPageLabels labels = new PDPageLabels(document);
    PDPageLabelRange roman = new PDPageLabelRange();
    roman.setStyle(PDPageLabelRange.STYLE_ROMAN_LOWER);
    PDPageLabelRange decimal = new PDPageLabelRange();
    decimal.setStyle(PDPageLabelRange.STYLE_DECIMAL);
    labels.setLabelItem(0, roman);
    labels.setLabelItem(front(pages), decimal);
    document.getDocumentCatalog().setPageLabels(labels);
  }
}

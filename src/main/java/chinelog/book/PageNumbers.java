package chinelog.book;

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

/** The pages are numbered from the cover on, so that print and screen agree. */
final class PageNumbers {

  private PageNumbers() {}

  /** Printed numbers of the pages on which what bears an id begins, once it is laid out. */
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

  /** Index of the page that has that place. */
  static int pageAt(int y, List<PageBox> pages) {
    int page = 0;
    while (page < pages.size() - 1 && pages.get(page).getBottom() <= y) {
      page++;
    }
    return page;
  }

  static void label(PDDocument document) {
    PDPageLabels labels = new PDPageLabels(document);
    PDPageLabelRange decimal = new PDPageLabelRange();
    decimal.setStyle(PDPageLabelRange.STYLE_DECIMAL);
    labels.setLabelItem(0, decimal);
    document.getDocumentCatalog().setPageLabels(labels);
  }
}

package chinelog.book.page;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.PageBox;
import java.util.ArrayList;
import java.util.List;

/** Measures how much of each page of a layout is left white at its foot. */
final class Fitting {

  /** The renderer counts 20 dots to a pixel of 1/96 in. */
  static final double DOTS_PER_MM = 20 * 96 / 25.4;

  private final List<PageBox> pages;

  private Fitting(List<PageBox> pages) {
    this.pages = pages;
  }

  /** The white of each page, by the measure of {@link Cursor#white}. */
  static List<Double> white(PdfBoxRenderer renderer) {
    Box root = renderer.getRootBox();
    List<PageBox> pages = root.getLayer().getPages();
    int[] filled = new int[pages.size()];
    new Fitting(pages).fill(root, filled);
    List<Double> white = new ArrayList<>();
    for (PageBox page : pages) {
      white.add(Cursor.white(page.getBottomUsable() - page.getTop(), filled[page.getPageNo()]));
    }
    return white;
  }

  private void fill(Box box, int[] filled) {
    boolean isLeaf = isPainted(box);
    if (isLeaf && box.getHeight() > 0) {
      int bottom = box.getAbsY() + box.getHeight();
      int page = PageNumbers.pageAt(bottom - 1, pages);
      filled[page] = Math.max(filled[page], bottom - pages.get(page).getTop());
    }
    for (int i = 0; i < box.getChildCount() && !isLeaf; i++) {
      fill(box.getChild(i), filled);
    }
  }

  static boolean isPainted(Box box) {
    return box instanceof LineBox || box instanceof BlockBox block && block.isReplaced();
  }
}

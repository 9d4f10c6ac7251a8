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

  /** Which pages come before one that something is to begin, or are the last. */
  private final boolean[] isEnd;

  private Fitting(List<PageBox> pages) {
    this.pages = pages;
    this.isEnd = new boolean[pages.size()];
    isEnd[pages.size() - 1] = true;
  }

  /** The white of each page, by the measure of {@link Cursor#white}. */
  static List<Double> white(PdfBoxRenderer renderer) {
    Box root = renderer.getRootBox();
    List<PageBox> pages = root.getLayer().getPages();
    int[] filled = new int[pages.size()];
    Fitting fitting = new Fitting(pages);
    fitting.fill(root, filled);
    List<Double> white = new ArrayList<>();
    for (PageBox page : pages) {
      white.add(
          Cursor.white(
              page.getBottomUsable() - page.getTop(),
              filled[page.getPageNo()],
              fitting.isEnd[page.getPageNo()]));
    }
    return white;
  }

  private void fill(Box box, int[] filled) {
    boolean isLeaf = isPainted(box);
    int begun = PageNumbers.pageAt(box.getAbsY(), pages);
    if (begun > 0 && box.getStyle() != null && box.getStyle().isForcePageBreakBefore()) {
      isEnd[begun - 1] = true;
    }
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

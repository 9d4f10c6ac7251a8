package chinelog.book;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.PageBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Finds plates, and the figures that end an entry, that went to the next page for want of a little
 * room, and how much smaller a plate would have to be for them to stay: it is white space at the
 * foot of a page that a reader sees, not a plate that is a fifth smaller.
 */
final class Fitting {

  /** A plate is never shown smaller than this part of its usual size. */
  private static final double LEAST = 0.62;

  /** If this part of its size is enough for a plate to stay where it is, it is made smaller. */
  private static final double LITTLE = 0.84;

  /** Below this part of its height, the last page of a chapter has too little on it. */
  private static final double SCANT = 0.26;

  private static final double LEAST_TO_DRAW_IN = 0.5;

  /** So many paragraphs at most come before a plate that they followed. */
  private static final int MOST_BEFORE = 5;

  private static final Set<String> PROSE = Set.of("p", "ol", "ul", "blockquote");

  /** Less than about three lines is no room; the renderer counts 20 dots to a pixel of 1/96 in. */
  private static final int LEAST_ROOM_DOTS = 60 * 20;

  /** A little more than is missing, for margins that no box holds. */
  private static final double SPARE = 1.12;

  /** One plate that moves moves all after it; what follows this soon waits for the next try. */
  private static final int PAGES_APART = 2;

  private final List<PageBox> pages;
  private final PdfBoxRenderer renderer;
  private final List<List<Layout.Change>> changes = new ArrayList<>();

  Fitting(PdfBoxRenderer renderer) {
    this.renderer = renderer;
    this.pages = renderer.getRootBox().getLayer().getPages();
  }

  /** What might be done about white space, given what was done already. */
  List<List<Layout.Change>> changes(Layout before) {
    Map<String, Double> scales = new TreeMap<>(before.scales());
    Map<String, Integer> later = new TreeMap<>(before.later());
    List<Box> figures = new ArrayList<>();
    int from = 0;
    for (Box box : inQuestion()) {
      boolean isFigure = isFigure(box);
      if (isFigure) {
        figures.add(box);
      }
      int page = pageOf(box);
      double missing = page < from ? 0 : missing(box, page);
      if (missing <= 0) {
        continue;
      }
      Box figure = isFigure ? box : lastOn(page - 1, figures);
      boolean isMended =
          figure != null && shrink(figure, missing, isFigure, LITTLE, scales)
              || delay(box, page, later)
              || figure != null && shrink(figure, missing, false, LEAST, scales)
              || isFigure && shrinkBoth(lastOn(page - 1, figures), box, missing, scales);
      if (isMended) {
        from = page + PAGES_APART;
      }
    }
    drawIn(figures, scales);
    return changes;
  }

  /** The sum of the squares of the parts of pages that are left white at the foot. */
  double white() {
    int[] filled = new int[pages.size()];
    fill(renderer.getRootBox(), filled);
    double white = 0;
    for (PageBox page : pages) {
      double height = page.getBottomUsable() - page.getTop();
      double left = Math.max(0, height - filled[page.getPageNo()]) / height;
      white += left * left;
    }
    return white;
  }

  private void fill(Box box, int[] filled) {
    boolean isLeaf = box instanceof LineBox || box.getChildCount() == 0;
    if (isLeaf && box.getHeight() > 0) {
      int bottom = box.getAbsY() + box.getHeight();
      int page = PageNumbers.pageAt(bottom - 1, pages);
      filled[page] = Math.max(filled[page], bottom - pages.get(page).getTop());
    }
    for (int i = 0; i < box.getChildCount() && !isLeaf; i++) {
      fill(box.getChild(i), filled);
    }
  }

  /** Makes a plate smaller where a chapter would end on a page with only a little on it. */
  private void drawIn(List<Box> figures, Map<String, Double> scales) {
    NodeList elements = renderer.getDocument().getElementsByTagName("div");
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      if (element.getAttribute("class").contains("chapter") && element.hasAttribute("id")) {
        Box chapter = renderer.getSharedContext().getBoxById(element.getAttribute("id"));
        if (chapter != null) {
          drawIn(chapter, figures, scales);
        }
      }
    }
  }

  private void drawIn(Box chapter, List<Box> figures, Map<String, Double> scales) {
    int bottom = chapter.getAbsY() + chapter.getHeight();
    int page = PageNumbers.pageAt(bottom - 1, pages);
    PageBox last = pages.get(page);
    int height = last.getBottomUsable() - last.getTop();
    int used = bottom - last.getTop();
    if (page <= pageOf(chapter) || used > height * SCANT) {
      return;
    }
    for (int back = 1; back <= PAGES_APART && page - back >= pageOf(chapter); back++) {
      Box figure = lastOn(page - back, figures);
      if (figure != null && shrink(figure, used, true, LEAST_TO_DRAW_IN, scales)) {
        return;
      }
    }
  }

  /** Lets paragraphs that follow a plate, or a row of them, fill the page that it left. */
  private boolean delay(Box box, int page, Map<String, Integer> later) {
    Box before = before(box);
    String id = box.getElement().getAttribute("id");
    if (before == null || !isPlate(box) || later.containsKey(id)) {
      return false;
    }
    PageBox former = pages.get(page - 1);
    int room = former.getBottomUsable() - before.getAbsY() - before.getHeight();
    int count = 0;
    Box next = box.getNextSibling();
    while (next != null && room > LEAST_ROOM_DOTS && isProse(next) && count < MOST_BEFORE) {
      room -= next.getHeight();
      count++;
      next = next.getNextSibling();
    }
    if (count > 0) {
      later.put(id, count);
      changes.add(List.of(new Layout.Change(id, 1, count)));
    }
    return count > 0;
  }

  private static boolean isPlate(Box box) {
    return isFigure(box) || box.getElement().getAttribute("class").startsWith("row");
  }

  private static boolean isProse(Box box) {
    return box.getElement() != null && PROSE.contains(box.getElement().getTagName());
  }

  /** Plates, and the strips of figures that end an entry. */
  private List<Box> inQuestion() {
    List<Box> boxes = new ArrayList<>();
    NodeList elements = renderer.getDocument().getElementsByTagName("*");
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      String kind = element.getAttribute("class");
      if (kind.contains("alone") || kind.startsWith("strip") || kind.startsWith("row")) {
        Box box = renderer.getSharedContext().getBoxById(element.getAttribute("id"));
        if (box != null) {
          boxes.add(box);
        }
      }
    }
    return boxes;
  }

  /** How much room a box that was pushed to its page lacked on the one before; 0 if none. */
  private double missing(Box box, int page) {
    Box before = before(box);
    if (page == 0 || before == null) {
      return 0;
    }
    PageBox former = pages.get(page - 1);
    int bottom = before.getAbsY() + before.getHeight();
    boolean wasPushed = bottom > former.getTop() && bottom <= former.getBottom();
    return wasPushed ? Math.max(0, heightWithStrip(box) + bottom - former.getBottomUsable()) : 0;
  }

  /** The strip at the end of an entry stays with what stands before it. */
  private static int heightWithStrip(Box box) {
    Box next = box.getNextSibling();
    boolean isBeforeStrip =
        next != null
            && next.getElement() != null
            && next.getElement().getAttribute("class").startsWith("strip");
    return isBeforeStrip ? next.getAbsY() + next.getHeight() - box.getAbsY() : box.getHeight();
  }

  private @Nullable Box lastOn(int page, List<Box> figures) {
    Box last = null;
    for (Box figure : figures) {
      last = pageOf(figure) == page ? figure : last;
    }
    return last;
  }

  private boolean shrink(
      Box figure, double missing, boolean once, double least, Map<String, Double> scales) {
    String id = figure.getElement().getAttribute("id");
    Box picture = picture(figure);
    if (picture == null || once && scales.containsKey(id)) {
      return false;
    }
    double shown = scales.getOrDefault(id, 1.0);
    double scale = shown * (picture.getHeight() - missing * SPARE) / picture.getHeight();
    double width = (double) picture.getWidth() / figure.getWidth();
    double narrow = shown * PlateRows.NARROW / width;
    boolean isWide = width > PlateRows.NARROW + 0.01;
    // Beside a plate so narrow stands its caption, which then takes no room below.
    boolean isEnoughIfNarrow =
        isWide
            && narrow >= least
            && picture.getHeight() * PlateRows.NARROW / width
                <= figure.getHeight() - missing * SPARE;
    if (scale < least && !isEnoughIfNarrow) {
      return false;
    }
    // A plate is as wide as the text or clearly narrower: almost as wide looks like an oversight.
    double atMost = isWide ? narrow : scale;
    double chosen = isEnoughIfNarrow ? narrow : Math.min(scale, atMost);
    scales.put(id, chosen);
    changes.add(List.of(new Layout.Change(id, chosen, 0)));
    return true;
  }

  /** Two plates that follow each other share a page if the first is narrow and the second small. */
  private boolean shrinkBoth(
      @Nullable Box first, Box second, double missing, Map<String, Double> scales) {
    Box picture = first == null ? null : picture(first);
    if (first == null || picture == null) {
      return false;
    }
    double width = (double) picture.getWidth() / first.getWidth();
    double narrow = PlateRows.NARROW / width;
    double gained = first.getHeight() - picture.getHeight() * narrow;
    int count = changes.size();
    if (width < PlateRows.NARROW + 0.01
        || !shrink(second, Math.max(0, missing - gained), false, LEAST, scales)) {
      return false;
    }
    String id = first.getElement().getAttribute("id");
    scales.put(id, narrow);
    List<Layout.Change> both = new ArrayList<>(changes.remove(count));
    both.add(new Layout.Change(id, narrow, 0));
    changes.add(both);
    return true;
  }

  private int pageOf(Box box) {
    return PageNumbers.pageAt(box.getAbsY(), pages);
  }

  private static boolean isFigure(Box box) {
    return box.getElement().getTagName().equals("figure");
  }

  private static @Nullable Box before(Box figure) {
    Box box = figure;
    while (box.getParent() != null) {
      Box before = box.getPreviousSibling();
      if (before != null && before.getHeight() > 0) {
        return before;
      }
      box = box.getParent();
    }
    return null;
  }

  private static @Nullable Box picture(Box box) {
    if (box.getElement() != null && box.getElement().getTagName().equals("img")) {
      return box;
    }
    for (Box child : box.getChildren()) {
      Box found = picture(child);
      if (found != null) {
        return found;
      }
    }
    return null;
  }
}

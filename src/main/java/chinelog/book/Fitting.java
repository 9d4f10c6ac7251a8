package chinelog.book;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.PageBox;
import java.util.ArrayList;
import java.util.Arrays;
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
  private static final double LEAST = 0.55;

  /** If this part of its size is enough for a plate to stay where it is, it is made smaller. */
  private static final double LITTLE = 0.84;

  private static final double SEEN = 1 / 3.0;

  /** Below this part of its height, the last page of a chapter has too little on it. */
  private static final double SCANT = 0.26;

  private static final double LEAST_TO_DRAW_IN = 0.5;

  /** So many paragraphs at most come before a plate that they followed. */
  private static final int MOST_BEFORE = 5;

  private static final Set<String> HEADINGS = Set.of("h1", "h2", "h3", "h4", "h5", "h6");

  private static final Set<String> KEPT = Set.of("head", "lead", "tag", "gap", "leadin");

  private static final Set<String> PROSE = Set.of("p", "ol", "ul", "blockquote");

  /** Less than about three lines is no room; the renderer counts 20 dots to a pixel of 1/96 in. */
  private static final int LEAST_ROOM_DOTS = 60 * 20;

  /** A table is not parted for less than its head and three rows or so on either page. */
  private static final double LEAST_PART_DOTS = 25 / 25.4 * 96 * 20;

  private static final double DOTS_PER_MM = 20 * 96 / 25.4;

  /** Lower than this below the head of its page, a heading is seen to stand too low. */
  private static final double LEAST_LOW_MM = 0.6;

  /** Lifted wholly, it might be found on the page before. */
  private static final double SPARE_LOW_MM = 0.1;

  /** A little more than is missing, for margins that no box holds. */
  private static final double SPARE = 1.06;

  /** One plate that moves moves all after it; what follows this soon waits for the next try. */
  private static final int PAGES_APART = 2;

  private final List<PageBox> pages;
  private final PdfBoxRenderer renderer;

  Fitting(PdfBoxRenderer renderer) {
    this.renderer = renderer;
    this.pages = renderer.getRootBox().getLayer().getPages();
  }

  /** What might be done about white space, given what was done already. */
  List<Layout.Hole> holes(Layout before) {
    List<Box> figures = new ArrayList<>();
    List<Layout.Hole> holes = new ArrayList<>();
    for (Box box : inQuestion()) {
      if (isFigure(box)) {
        figures.add(box);
      }
      int page = pageOf(box);
      double missing = missing(box, page);
      List<List<Layout.Change>> ways =
          missing > 0 ? ways(box, page, missing, figures, before) : List.of();
      if (!ways.isEmpty()) {
        holes.add(new Layout.Hole(page, ways));
      }
    }
    drawIn(figures, before, holes);
    return holes;
  }

  private List<List<Layout.Change>> ways(
      Box box, int page, double missing, List<Box> figures, Layout before) {
    List<List<Layout.Change>> ways = new ArrayList<>();
    if (isTable(box)) {
      boolean isWorthParting = Math.min(missing, box.getHeight() - missing) > LEAST_PART_DOTS;
      add(ways, isWorthParting ? new Layout.Change(id(box), Layout.Kind.PART, 1) : null);
      return ways;
    }
    boolean isFigure = isFigure(box);
    Box former = lastOn(page - 1, figures);
    Box figure = isFigure ? box : former;
    add(ways, shrink(figure, missing, isFigure, LITTLE, before));
    delay(box, page, before).forEach(change -> add(ways, change));
    add(ways, shrink(figure, missing, false, LEAST, before));
    if (isFigure) {
      add(ways, shrink(former, missing, false, LEAST, before));
      ways.addAll(shrinkBoth(former, box, missing, before));
    }
    return ways.stream().distinct().toList();
  }

  private static void add(List<List<Layout.Change>> ways, Layout.@Nullable Change change) {
    if (change != null) {
      ways.add(List.of(change));
    }
  }

  /**
   * For each page the square of the part that is left white at its foot; beyond a third, a page is
   * seen to be empty, and what is beyond counts as well.
   */
  List<Double> white() {
    int[] filled = new int[pages.size()];
    fill(renderer.getRootBox(), filled);
    List<Double> white = new ArrayList<>();
    for (PageBox page : pages) {
      double height = page.getBottomUsable() - page.getTop();
      double left = Math.max(0, height - filled[page.getPageNo()]) / height;
      white.add(left * left + Math.max(0, left - SEEN));
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

  /** How far what begins a page stands below its head, in millimetres, with what it was lifted. */
  Map<String, Double> lifted(Layout before) {
    Map<String, Double> lifted = new TreeMap<>();
    int[] tops = new int[pages.size()];
    Arrays.fill(tops, Integer.MAX_VALUE);
    top(renderer.getRootBox(), tops);
    NodeList elements = renderer.getDocument().getElementsByTagName("*");
    for (int i = 0; i < elements.getLength(); i++) {
      String id = ((Element) elements.item(i)).getAttribute(Setting.LIFT);
      Box box = id.isEmpty() ? null : renderer.getSharedContext().getBoxById(id);
      if (box == null) {
        continue;
      }
      int[] own = new int[pages.size()];
      Arrays.fill(own, Integer.MAX_VALUE);
      top(box, own);
      int page = 0;
      while (page < own.length - 1 && own[page] == Integer.MAX_VALUE) {
        page++;
      }
      double low = (double) (tops[page] - pages.get(page).getTop()) / DOTS_PER_MM;
      if (own[page] == tops[page] && low > LEAST_LOW_MM) {
        lifted.put(id, before.lifted().getOrDefault(id, 0.0) + low - SPARE_LOW_MM);
      } else if (own[page] == tops[page] && before.lifted().containsKey(id)) {
        lifted.put(id, before.lifted().getOrDefault(id, 0.0));
      }
    }
    return lifted;
  }

  /** The highest that is painted on each page. */
  private void top(Box box, int[] tops) {
    if (isPainted(box) && box.getHeight() > 0) {
      int page = PageNumbers.pageAt(box.getAbsY(), pages);
      tops[page] = Math.min(tops[page], box.getAbsY());
      return;
    }
    for (int i = 0; i < box.getChildCount(); i++) {
      top(box.getChild(i), tops);
    }
  }

  /** Makes a plate smaller where a chapter would end on a page with only a little on it. */
  private void drawIn(List<Box> figures, Layout before, List<Layout.Hole> holes) {
    NodeList elements = renderer.getDocument().getElementsByTagName("div");
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      if (element.getAttribute("class").contains("chapter") && element.hasAttribute("id")) {
        Box chapter = renderer.getSharedContext().getBoxById(element.getAttribute("id"));
        if (chapter != null) {
          drawIn(chapter, figures, before, holes);
        }
      }
    }
  }

  private void drawIn(Box chapter, List<Box> figures, Layout before, List<Layout.Hole> holes) {
    int bottom = chapter.getAbsY() + chapter.getHeight();
    int page = PageNumbers.pageAt(bottom - 1, pages);
    PageBox last = pages.get(page);
    int height = last.getBottomUsable() - last.getTop();
    int used = bottom - last.getTop();
    if (page <= pageOf(chapter) || used > height * SCANT) {
      return;
    }
    List<List<Layout.Change>> ways = new ArrayList<>();
    for (int back = 1; back <= PAGES_APART && page - back >= pageOf(chapter); back++) {
      Box figure = lastOn(page - back, figures);
      add(ways, shrink(figure, used, true, LEAST_TO_DRAW_IN, before));
    }
    if (!ways.isEmpty()) {
      holes.add(new Layout.Hole(page, ways));
    }
  }

  /**
   * Lets paragraphs that follow a plate, or a row of them, fill the page that it left; beyond the
   * next plate, too, which then waits as well.
   */
  private List<Layout.Change> delay(Box box, int page, Layout before) {
    Box former = before(box);
    if (former == null || !isPlate(box) || before.later().containsKey(id(box))) {
      return List.of();
    }
    PageBox left = pages.get(page - 1);
    int room = left.getBottomUsable() - former.getAbsY() - former.getHeight();
    List<Layout.Change> delays = new ArrayList<>();
    int count = 0;
    Box next = box.getNextSibling();
    while (next != null && room > LEAST_ROOM_DOTS && count < MOST_BEFORE) {
      if (isProse(next)) {
        room -= next.getHeight();
        count++;
      } else if (isPlate(next) && count > 0) {
        delays.add(new Layout.Change(id(box), Layout.Kind.LATER, count));
      } else if (!isGap(next) && !isPlate(next)) {
        break;
      }
      next = next.getNextSibling();
    }
    if (count > 0) {
      delays.add(new Layout.Change(id(box), Layout.Kind.LATER, count));
    }
    return delays;
  }

  private static String id(Box box) {
    return box.getElement().getAttribute("id");
  }

  private static boolean isTable(Box box) {
    return box.getElement().getTagName().equals("table") && kind(box).contains("whole");
  }

  private static boolean isGap(Box box) {
    return kind(box).equals("gap");
  }

  private static String kind(Box box) {
    return box.getElement() == null ? "" : box.getElement().getAttribute("class");
  }

  /** Whether a box stays with what follows it. */
  private static boolean isKept(Box box) {
    Element element = box.getElement();
    return element != null && HEADINGS.contains(element.getTagName()) || KEPT.contains(kind(box));
  }

  private static boolean isPlate(Box box) {
    return isFigure(box) || kind(box).equals("row");
  }

  private static boolean isProse(Box box) {
    return box.getElement() != null && PROSE.contains(box.getElement().getTagName());
  }

  /** Plates, the strips of figures that end an entry, and tables that are kept on one page. */
  private List<Box> inQuestion() {
    List<Box> boxes = new ArrayList<>();
    NodeList elements = renderer.getDocument().getElementsByTagName("*");
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      String kind = element.getAttribute("class");
      boolean isAsked =
          kind.contains("alone")
              || kind.startsWith("strip")
              || kind.equals("row")
              || kind.contains("whole");
      if (isAsked && element.hasAttribute("id")) {
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
    Box first = box;
    Box before = before(first);
    while (before != null && isKept(before) && pageOf(before) == page) {
      first = before;
      before = before(first);
    }
    if (page == 0 || before == null) {
      return 0;
    }
    PageBox former = pages.get(page - 1);
    int bottom = before.getAbsY() + before.getHeight();
    boolean wasPushed = bottom > former.getTop() && bottom <= former.getBottom();
    int height = heightWithStrip(box) + box.getAbsY() - first.getAbsY();
    return wasPushed ? Math.max(0, height + bottom - former.getBottomUsable()) : 0;
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

  private Layout.@Nullable Change shrink(
      @Nullable Box figure, double missing, boolean once, double least, Layout before) {
    Box picture = figure == null ? null : picture(figure);
    if (figure == null || picture == null || once && before.scales().containsKey(id(figure))) {
      return null;
    }
    double shown = before.scales().getOrDefault(id(figure), 1.0);
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
      return null;
    }
    // A plate is as wide as the text or clearly narrower: almost as wide looks like an oversight.
    double atMost = isWide ? narrow : scale;
    double chosen = isEnoughIfNarrow ? narrow : Math.min(scale, atMost);
    return new Layout.Change(id(figure), Layout.Kind.SCALE, chosen);
  }

  /** Two plates that follow each other share a page if the first is narrow and the second small. */
  private List<List<Layout.Change>> shrinkBoth(
      @Nullable Box first, Box second, double missing, Layout before) {
    Box picture = first == null ? null : picture(first);
    if (first == null || picture == null) {
      return List.of();
    }
    double width = (double) picture.getWidth() / first.getWidth();
    double narrow = PlateRows.NARROW / width;
    double gained = first.getHeight() - picture.getHeight() * narrow;
    Layout.Change small = shrink(second, Math.max(0, missing - gained), false, LEAST, before);
    return width < PlateRows.NARROW + 0.01 || small == null
        ? List.of()
        : List.of(List.of(small, new Layout.Change(id(first), Layout.Kind.SCALE, narrow)));
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

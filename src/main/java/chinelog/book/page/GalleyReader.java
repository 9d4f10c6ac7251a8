package chinelog.book.page;

import com.openhtmltopdf.css.constants.CSSName;
import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.newtable.TableBox;
import com.openhtmltopdf.newtable.TableRowBox;
import com.openhtmltopdf.newtable.TableSectionBox;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.PageBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;

/** Measures what was laid out on a page without end. */
final class GalleyReader {

  private static final String BODY = "body";

  private final LayoutContext context;

  private GalleyReader(PdfBoxRenderer renderer) {
    this.context = renderer.getSharedContext().newLayoutContextInstance();
  }

  /**
   * Measures the pages.
   *
   * @param trim of the pages that are to be made up
   */
  static Galley read(PdfBoxRenderer renderer, Trim trim, double bleedMm) {
    GalleyReader reader = new GalleyReader(renderer);
    Box root = renderer.getRootBox();
    BlockBox body = body(root);
    PageBox page = root.getLayer().getPages().get(pagesBefore(renderer));
    int margins = page.getHeight(reader.context) - page.getContentHeight(reader.context);
    int pageDots = reader.dots(trim.heightMm + 2 * bleedMm) - margins;
    int before = pagesBefore(renderer);
    Map<String, Integer> front = PageNumbers.find(renderer);
    front.values().removeIf(number -> number > before);
    return new Galley(
        reader.piece(body), pageDots, reader.noteDots(root.getLayer()), before, front);
  }

  /** How many pages stand before the body. */
  static int pagesBefore(PdfBoxRenderer renderer) {
    Box root = renderer.getRootBox();
    return PageNumbers.pageAt(body(root).getAbsY(), root.getLayer().getPages());
  }

  /** As the renderer reckons them. */
  private int dots(double mm) {
    return (int) ((float) mm / context.getMmPerDot());
  }

  private static BlockBox body(Box root) {
    BlockBox found = findBody(root);
    if (found == null) {
      throw new IllegalStateException("pages without a body");
    }
    return found;
  }

  private static @Nullable BlockBox findBody(Box box) {
    if (box.getElement() != null
        && box.getElement().getTagName().equals("div")
        && box.getElement().getAttribute("class").equals(BODY)
        && box instanceof BlockBox body) {
      return body;
    }
    for (Box child : box.getChildren()) {
      BlockBox found = findBody(child);
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  /** What the area of the notes has above and below them. */
  private int noteDots(Layer layer) {
    int most = 0;
    for (Layer child : layer.getChildren()) {
      BlockBox area = child.getMaster();
      if (area.getElement() != null && area.getElement().getTagName().equals("fs-footnote")) {
        int notes = area.getChildren().stream().mapToInt(Box::getHeight).sum();
        most = Math.max(most, area.getBorderBoxHeight(context) - notes);
      }
    }
    return most;
  }

  private Piece piece(BlockBox box) {
    boolean isInFlow = box.getStyle().isAutoHeight();
    if (box instanceof TableBox table && isPaginated(table)) {
      return table(table);
    }
    Box picture = box.getElement() == null ? null : picture(box);
    List<String> alone = List.of("alone", "named");
    if (picture != null
        && classes(box).contains("plate")
        && classes(box).stream().anyMatch(alone::contains)) {
      return single(box, picture);
    }
    if (!(box instanceof TableBox) && isInFlow && !box.isReplaced()) {
      switch (box.getChildrenContentType()) {
        case INLINE -> {
          return lines(box);
        }
        case BLOCK -> {
          return stack(box);
        }
        default -> {}
      }
    }
    return solid(box);
  }

  private static boolean isPaginated(TableBox table) {
    return table.getStyle().isPaginateTable();
  }

  private Piece stack(BlockBox box) {
    List<Piece> pieces = new ArrayList<>();
    Box last = null;
    for (Box child : box.getChildren()) {
      if (child instanceof BlockBox block) {
        pieces.add(piece(block));
        last = child;
      }
    }
    return new Piece.Stack(frame(box, last, Map.of()), List.copyOf(pieces));
  }

  private Piece lines(BlockBox box) {
    List<Piece.Line> lines = new ArrayList<>();
    Box before = null;
    for (Box child : box.getChildren()) {
      if (child instanceof LineBox line) {
        int former =
            before == null ? box.getAbsY() + box.getTy() : before.getAbsY() + before.getHeight();
        int gap = line.getAbsY() - former;
        List<Integer> notes =
            line.hasFootnotes()
                ? line.getReferencedFootnoteBodies().stream().map(Box::getHeight).toList()
                : List.of();
        lines.add(
            new Piece.Line(
                gap,
                line.getHeight(),
                line.getMinPaintingTop() - line.getAbsY(),
                line.getMaxPaintingBottom() - line.getAbsY(),
                notes));
        before = line;
      }
    }
    CalculatedStyle style = box.getStyle();
    return new Piece.Lines(
        frame(box, before, Map.of()),
        List.copyOf(lines),
        (int) style.asFloat(CSSName.WIDOWS),
        (int) style.asFloat(CSSName.ORPHANS));
  }

  private Piece.Solid solid(BlockBox box) {
    return new Piece.Solid(
        frame(box, null, ids(box)), box.getHeight(), firstLineEnd(box), lastBottom(box));
  }

  private Piece table(TableBox table) {
    int head = 0;
    List<Piece.Solid> rows = new ArrayList<>();
    Box last = null;
    for (Box child : table.getChildren()) {
      if (child instanceof TableSectionBox section) {
        if (section.isHeader()) {
          head = section.getHeight();
        } else if (classes(section).contains("end")) {
          rows.add(solid(section));
        } else {
          for (Box row : section.getChildren()) {
            rows.add(solid((TableRowBox) row));
          }
        }
        last = section;
      }
    }
    return new Piece.Table(
        frame(table, last, Map.of()), head, firstLineEnd(table), List.copyOf(rows));
  }

  private Piece single(BlockBox box, Box picture) {
    Box caption = find(box, "figcaption");
    double text = box.getContainingBlock().getContentWidth();
    Integer lastBottom = lastBottom(box);
    Piece.Frame frame = frame(box, null, ids(box));
    return new Piece.Single(
        frame.ending(lastBottom == null ? 0 : box.getHeight() - lastBottom),
        box.getHeight(),
        picture.getHeight(),
        picture.getWidth() / text,
        caption == null ? 0 : painted(caption),
        caption == null ? 0 : caption.getHeight(),
        caption == null ? 1 : caption.getWidth() / text);
  }

  /** The height of the lines in a box, which may be higher than they are. */
  private static int painted(Box box) {
    Integer top = firstTop(box);
    Integer bottom = lastBottom(box, null);
    return top == null || bottom == null ? 0 : bottom - top;
  }

  /**
   * Measures the frame of a box.
   *
   * @param last the last that stands in it; null for a box that is not looked into
   */
  private Piece.Frame frame(BlockBox box, @Nullable Box last, Map<String, Integer> ids) {
    CalculatedStyle style = box.getStyle();
    Element element = box.isAnonymous() ? null : box.getElement();
    int above = box.getTy();
    int below =
        last == null ? 0 : box.getAbsY() + box.getHeight() - last.getAbsY() - last.getHeight();
    Integer top = firstTop(box);
    return new Piece.Frame(
        element == null ? "" : element.getAttribute("id"),
        element == null ? "" : element.getAttribute("class"),
        element == null ? "" : element.getTagName(),
        element == null ? "" : element.getAttribute(Layout.LIFT_ATTRIBUTE),
        (int) box.getMargin(context).top(),
        own(box, CSSName.MARGIN_TOP),
        margin(box, true),
        margin(box, false),
        above,
        below,
        top == null ? null : top - box.getAbsY(),
        (int) style.getFSPageBreakMinHeight(context),
        new Piece.Breaks(
            style.isForcePageBreakBefore(),
            style.getIdent(CSSName.PAGE_BREAK_BEFORE) == IdentValue.AVOID,
            style.getIdent(CSSName.PAGE_BREAK_AFTER) == IdentValue.AVOID,
            style.isAvoidPageBreakInside()),
        ids);
  }

  /** The margin of a box, or that of the first or last in it if it is greater. */
  private int margin(BlockBox box, boolean isTop) {
    int own = own(box, isTop ? CSSName.MARGIN_TOP : CSSName.MARGIN_BOTTOM);
    int which = isTop ? CalculatedStyle.TOP : CalculatedStyle.BOTTOM;
    boolean isOpen =
        !(box instanceof TableBox)
            && box.getChildrenContentType() == BlockBox.ContentType.BLOCK
            && box.getStyle().isAutoHeight()
            && box.getMarginBorderPadding(context, which) == (int) edge(box, isTop);
    if (!isOpen) {
      return own;
    }
    int count = box.getChildCount();
    int margin = own;
    for (int i = 0; i < count; i++) {
      Box inner = box.getChild(isTop ? i : count - 1 - i);
      margin = inner instanceof BlockBox block ? Math.max(margin, margin(block, isTop)) : margin;
      if (inner.getHeight() > 0) {
        break;
      }
    }
    return margin;
  }

  private int own(BlockBox box, CSSName side) {
    float width = box.getContainingBlock().getContentWidth();
    return (int) box.getStyle().getFloatPropertyProportionalWidth(side, width, context);
  }

  private float edge(BlockBox box, boolean isTop) {
    return isTop ? box.getMargin(context).top() : box.getMargin(context).bottom();
  }

  private static Map<String, Integer> ids(Box box) {
    Map<String, Integer> ids = new TreeMap<>();
    ids(box, box.getAbsY(), ids);
    return ids;
  }

  private static void ids(Box box, int from, Map<String, Integer> ids) {
    if (box.getElement() != null && !box.isAnonymous() && box.getElement().hasAttribute("id")) {
      ids.putIfAbsent(box.getElement().getAttribute("id"), box.getAbsY() - from);
    }
    for (Box child : box.getChildren()) {
      ids(child, from, ids);
    }
  }

  private static @Nullable Integer firstTop(Box box) {
    if (Fitting.isPainted(box) && box.getHeight() > 0) {
      return box.getAbsY();
    }
    Integer first = null;
    for (Box child : box.getChildren()) {
      Integer top = firstTop(child);
      first = top == null || first != null && first <= top ? first : top;
      if (first != null && !(box instanceof TableRowBox)) {
        break;
      }
    }
    return first;
  }

  private static @Nullable Integer lastBottom(Box box) {
    Integer bottom = lastBottom(box, null);
    return bottom == null ? null : bottom - box.getAbsY();
  }

  private static @Nullable Integer lastBottom(Box box, @Nullable Integer lowest) {
    if (Fitting.isPainted(box)) {
      int bottom = box.getAbsY() + box.getHeight();
      return box.getHeight() == 0 || lowest != null && lowest > bottom
          ? lowest
          : Integer.valueOf(bottom);
    }
    Integer last = lowest;
    for (Box child : box.getChildren()) {
      last = lastBottom(child, last);
    }
    return last;
  }

  private static @Nullable Integer firstLineEnd(Box box) {
    Box child = box;
    while (child.getChildCount() > 0) {
      child = child.getChild(0);
      if (child instanceof LineBox) {
        return child.getAbsY() + child.getHeight() - box.getAbsY();
      }
    }
    return null;
  }

  private static @Nullable Box picture(Box box) {
    return find(box, "img");
  }

  private static @Nullable Box find(Box box, String tag) {
    if (box.getElement() != null
        && !box.isAnonymous()
        && box.getElement().getTagName().equals(tag)) {
      return box;
    }
    for (Box child : box.getChildren()) {
      Box found = find(child, tag);
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  private static List<String> classes(Box box) {
    return List.of(kindOf(box).split(" "));
  }

  private static String kindOf(Box box) {
    return box.getElement().getAttribute("class");
  }
}

package chinelog.book;

import java.awt.geom.GeneralPath;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;

/** Every glyph, picture and path of a page, with the place that it takes on it, cut by its clip. */
final class PageMarks extends PDFGraphicsStreamEngine {

  static final double POINTS_PER_MM = 72 / 25.4;

  /** White up to so much is the space between paragraphs, plates and sections. */
  private static final double SPACE_MM = 16;

  private final List<Mark> marks = new ArrayList<>();
  private final GeneralPath path = new GeneralPath();
  private int clip = -1;

  private PageMarks(PDPage page) {
    super(page);
  }

  enum Kind {
    GLYPH,
    PICTURE,
    PATH
  }

  /** What is printed, in millimetres from the left and upper edge of the cut page. */
  record Mark(Kind kind, double left, double top, double right, double bottom) {}

  static List<Mark> of(PDPage page) throws IOException {
    PageMarks found = new PageMarks(page);
    found.processPage(page);
    return found.marks;
  }

  /** How much of a height, from the top, is filled, in millimetres; the space between counts. */
  static double filledMm(List<Mark> marks, double topMm, double heightMm) {
    BitSet filled = new BitSet();
    for (Mark mark : marks) {
      int from = (int) Math.max(0, mark.top - topMm);
      int to = (int) Math.min(heightMm, Math.ceil(mark.bottom - topMm));
      if (mark.top >= topMm - 1 && from < to) {
        filled.set(from, to);
      }
    }
    int millimetres = filled.cardinality();
    for (int end = filled.nextSetBit(0); end >= 0; ) {
      int space = filled.nextClearBit(end);
      end = filled.nextSetBit(space);
      millimetres += end >= 0 && end - space <= SPACE_MM ? end - space : 0;
    }
    return millimetres;
  }

  private void add(Kind kind, Rectangle2D box) {
    Rectangle2D seen =
        box.createIntersection(getGraphicsState().getCurrentClippingPath().getBounds2D());
    if (seen.getWidth() < 0 || seen.getHeight() < 0) {
      return;
    }
    PDRectangle trim = getPage().getTrimBox();
    marks.add(
        new Mark(
            kind,
            (seen.getMinX() - trim.getLowerLeftX()) / POINTS_PER_MM,
            (trim.getUpperRightY() - seen.getMaxY()) / POINTS_PER_MM,
            (seen.getMaxX() - trim.getLowerLeftX()) / POINTS_PER_MM,
            (trim.getUpperRightY() - seen.getMinY()) / POINTS_PER_MM));
  }

  @Override
  protected void showFontGlyph(Matrix at, PDFont font, int code, Vector advance) {
    if (!font.toUnicode(code).isBlank()) {
      double size = at.getScalingFactorY();
      double width = advance.getX() * at.getScalingFactorX();
      // From the base line to about the height of a capital.
      add(
          Kind.GLYPH,
          new Rectangle2D.Double(at.getTranslateX(), at.getTranslateY(), width, size * 0.65));
    }
  }

  @Override
  public void drawImage(PDImage image) {
    Matrix at = getGraphicsState().getCurrentTransformationMatrix();
    add(
        Kind.PICTURE,
        at.createAffineTransform()
            .createTransformedShape(new Rectangle2D.Double(0, 0, 1, 1))
            .getBounds2D());
  }

  @Override
  public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {
    path.moveTo(a.getX(), a.getY());
    path.lineTo(b.getX(), b.getY());
    path.lineTo(c.getX(), c.getY());
    path.lineTo(d.getX(), d.getY());
    path.closePath();
  }

  @Override
  public void clip(int rule) {
    clip = rule;
  }

  @Override
  public void moveTo(float x, float y) {
    path.moveTo(x, y);
  }

  @Override
  public void lineTo(float x, float y) {
    path.lineTo(x, y);
  }

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
    path.curveTo(x1, y1, x2, y2, x3, y3);
  }

  @Override
  public Point2D getCurrentPoint() {
    return path.getCurrentPoint();
  }

  @Override
  public void closePath() {
    path.closePath();
  }

  @Override
  public void endPath() {
    if (clip >= 0) {
      path.setWindingRule(clip);
      getGraphicsState().intersectClippingPath(path);
      clip = -1;
    }
    path.reset();
  }

  private void paint() {
    add(Kind.PATH, path.getBounds2D());
    endPath();
  }

  @Override
  public void strokePath() {
    paint();
  }

  @Override
  public void fillPath(int rule) {
    paint();
  }

  @Override
  public void fillAndStrokePath(int rule) {
    paint();
  }

  @Override
  public void shadingFill(COSName name) {
    throw new IllegalStateException("the book has no shadings");
  }
}

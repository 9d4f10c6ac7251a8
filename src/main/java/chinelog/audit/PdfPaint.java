package chinelog.audit;

import chinelog.problem.Sentence;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.blend.BlendMode;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDPattern;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.pdmodel.graphics.image.PDInlineImage;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;
import org.jspecify.annotations.Nullable;

/**
 * Follows the painting of every page, operator by operator, to find text that is there but cannot
 * be seen: under a picture or a box, in the colour of what it stands on, cut off, too small, not
 * drawn at all. What lines it draws is searched for withheld curves.
 *
 * <p>It does not find text that other text covers, nor compare what shows through a picture.
 */
final class PdfPaint extends PDFGraphicsStreamEngine {

  /** Colours of which no channel differs by more than this look alike. */
  private static final int ALIKE = 16;

  private static final int PAPER = 0xFFFFFF;
  private static final double SMALLEST_PT = 1.5;
  private static final double FAINTEST = 0.1;

  /** Points of a letter, as parts of its width and of the size of its type. */
  private static final double[][] POINTS = {{0.5, 0.25}, {0.2, 0.05}, {0.8, 0.45}};

  private final Findings findings;
  private final Sentence where;
  private final List<Coat> coats = new ArrayList<>();
  private final List<Glyph> glyphs = new ArrayList<>();
  private final StringBuilder inSight = new StringBuilder();
  private final StringBuilder cutOff = new StringBuilder();
  private final GeneralPath path = new GeneralPath();
  private final List<List<double[]>> lines = new ArrayList<>();
  private int clipRule = -1;

  /**
   * An area that was painted.
   *
   * @param rgb null for a picture or a pattern
   */
  private record Coat(Shape area, Rectangle2D within, @Nullable Integer rgb, double alpha) {
    boolean covers(Point2D point) {
      return within.contains(point) && area.contains(point);
    }
  }

  /**
   * A letter.
   *
   * @param coats painted before it
   */
  private record Glyph(Point2D[] points, int coats, int rgb, double alpha) {}

  private PdfPaint(PDPage page, Findings findings, Sentence where) {
    super(page);
    this.findings = findings;
    this.where = where;
  }

  /**
   * Follows the pages that are not known to be clean.
   *
   * @param digests of the document's pages
   */
  static void inspect(
      PDDocument pdf, PartDigests digests, CleanParts parts, Search search, Findings findings)
      throws IOException {
    int number = 0;
    PdfPaint before = null;
    for (PDPage page : pdf.getPages()) {
      number++;
      String part = digests.page(page);
      boolean isClean = parts.has(part);
      if (isClean && (before == null || before.cutOff.isEmpty())) {
        before = null;
        continue;
      }
      PdfPaint paint = new PdfPaint(page, findings, Sentence.of("page {0}", number));
      paint.processPage(page);
      paint.glyphs.forEach(paint::look);
      search.lines(paint.lines, findings, paint.where);
      if (!paint.cutOff.isEmpty()) {
        parts.remove(part);
      }
      if (before != null) {
        before.tellOfCutOff(paint.inSight);
      }
      before = paint;
    }
    if (before != null) {
      before.tellOfCutOff("");
    }
  }

  /**
   * Text that is cut off stands in sight at the top of the next page, or is hidden. After some
   * hundred pages the library places lines so coarsely that it draws the first one twice.
   */
  private void tellOfCutOff(CharSequence next) {
    if (!cutOff.isEmpty() && !next.toString().startsWith(cutOff.toString())) {
      findings.addOnce(where, Sentence.of("Text stands outside the page or is cut off."));
    }
  }

  @Override
  protected void showGlyph(Matrix matrix, PDFont font, int code, Vector displacement)
      throws IOException {
    String letter = font.toUnicode(code);
    if (letter != null && letter.isBlank()) {
      return;
    }
    PDGraphicsState state = getGraphicsState();
    RenderingMode mode = state.getTextState().getRenderingMode();
    if (!mode.isFill() || mode.isClip()) {
      findings.addOnce(where, Sentence.of("Text stands there that is not shown."));
      return;
    }
    if (state.getSoftMask() != null || state.getBlendMode() != BlendMode.NORMAL) {
      findings.addOnce(where, Sentence.of("Text is drawn through something that may hide it."));
    }
    AffineTransform place = matrix.createAffineTransform();
    if (Math.sqrt(Math.abs(place.getDeterminant())) < SMALLEST_PT) {
      findings.addOnce(where, Sentence.of("Text stands there that is too small to be read."));
    }
    Point2D[] points = new Point2D[POINTS.length];
    for (int i = 0; i < points.length; i++) {
      points[i] =
          place.transform(
              new Point2D.Double(POINTS[i][0] * displacement.getX(), POINTS[i][1]), null);
    }
    (visible().contains(points[0]) ? inSight : cutOff).append(letter == null ? "\uFFFD" : letter);
    Integer rgb = rgb(state.getNonStrokingColor());
    if (rgb == null) {
      findings.addOnce(where, Sentence.of("Text is drawn in something other than a colour."));
      return;
    }
    glyphs.add(new Glyph(points, coats.size(), rgb, state.getNonStrokeAlphaConstant()));
  }

  private void look(Glyph glyph) {
    for (Coat coat : coats.subList(glyph.coats, coats.size())) {
      boolean covered = coat.alpha > FAINTEST;
      for (Point2D point : glyph.points) {
        covered &= coat.covers(point);
      }
      if (covered) {
        findings.addOnce(where, Sentence.of("Text stands under a picture or a box."));
        return;
      }
    }
    Integer ground = PAPER;
    for (Coat coat : coats.subList(0, glyph.coats)) {
      if (coat.covers(glyph.points[0])) {
        ground = mixed(ground, coat.rgb, coat.alpha);
      }
    }
    if (ground != null && alike(mixed(ground, glyph.rgb, glyph.alpha), ground)) {
      findings.addOnce(where, Sentence.of("Text stands there in the colour of what is under it."));
    }
  }

  private static @Nullable Integer mixed(
      @Nullable Integer under, @Nullable Integer over, double alpha) {
    if (over == null || alpha >= 1) {
      return over;
    }
    if (under == null) {
      return null;
    }
    int rgb = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      double channel = (over >> shift & 0xFF) * alpha + (under >> shift & 0xFF) * (1 - alpha);
      rgb |= (int) Math.round(channel) << shift;
    }
    return rgb;
  }

  private static boolean alike(@Nullable Integer one, int other) {
    if (one == null) {
      return false;
    }
    for (int shift = 0; shift <= 16; shift += 8) {
      if (Math.abs((one >> shift & 0xFF) - (other >> shift & 0xFF)) > ALIKE) {
        return false;
      }
    }
    return true;
  }

  private static @Nullable Integer rgb(PDColor color) throws IOException {
    return color.getColorSpace() instanceof PDPattern ? null : color.toRGB() & 0xFFFFFF;
  }

  /** What of the page is not cut off. */
  private Rectangle2D visible() {
    Rectangle2D page =
        new Rectangle2D.Float(
            getPage().getCropBox().getLowerLeftX(),
            getPage().getCropBox().getLowerLeftY(),
            getPage().getCropBox().getWidth(),
            getPage().getCropBox().getHeight());
    return page.createIntersection(getGraphicsState().getCurrentClippingPath().getBounds2D());
  }

  private void coat(Shape area, @Nullable Integer rgb) {
    // Most points lie outside of the box around an area, which is soon told.
    Rectangle2D box = visible().createIntersection(area.getBounds2D());
    coats.add(new Coat(area, box, rgb, getGraphicsState().getNonStrokeAlphaConstant()));
  }

  @Override
  public void drawImage(PDImage image) {
    if (image instanceof PDInlineImage) {
      findings.addOnce(where, Sentence.of("A picture stands within the page's own commands."));
    }
    Matrix matrix = getGraphicsState().getCurrentTransformationMatrix();
    coat(
        matrix.createAffineTransform().createTransformedShape(new Rectangle2D.Float(0, 0, 1, 1)),
        null);
  }

  @Override
  public void fillPath(int windingRule) throws IOException {
    path.setWindingRule(windingRule);
    lines.addAll(Stretches.lines(path));
    coat(new GeneralPath(path), rgb(getGraphicsState().getNonStrokingColor()));
    endPath();
  }

  @Override
  public void fillAndStrokePath(int windingRule) throws IOException {
    fillPath(windingRule);
  }

  @Override
  public void shadingFill(COSName shading) {
    coat(getGraphicsState().getCurrentClippingPath(), null);
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
    path.moveTo(p0.getX(), p0.getY());
    path.lineTo(p1.getX(), p1.getY());
    path.lineTo(p2.getX(), p2.getY());
    path.lineTo(p3.getX(), p3.getY());
    path.closePath();
  }

  @Override
  public void clip(int windingRule) {
    clipRule = windingRule;
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
  public @Nullable Point2D getCurrentPoint() {
    return path.getCurrentPoint();
  }

  @Override
  public void closePath() {
    if (path.getCurrentPoint() != null) {
      path.closePath();
    }
  }

  @Override
  public void endPath() {
    if (clipRule >= 0) {
      path.setWindingRule(clipRule);
      getGraphicsState().intersectClippingPath(new GeneralPath(path));
      clipRule = -1;
    }
    path.reset();
  }

  @Override
  public void strokePath() {
    lines.addAll(Stretches.lines(path));
    endPath();
  }
}

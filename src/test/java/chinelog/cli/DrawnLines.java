package chinelog.cli;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** The lines that a page of a PDF draws, in mm of the paper, as another program would read them. */
final class DrawnLines extends PDFGraphicsStreamEngine {

  private static final double MM = 25.4 / 72;

  /**
   * A line.
   *
   * @param grey 0 for black
   * @param closed whether it goes back to its first point
   */
  record Line(List<Point2D> points, boolean closed, double widthMm, double grey) {

    double width() {
      return extent(true);
    }

    double height() {
      return extent(false);
    }

    private double extent(boolean across) {
      double[] all = points.stream().mapToDouble(p -> across ? p.getX() : p.getY()).toArray();
      return Arrays.stream(all).max().orElseThrow() - Arrays.stream(all).min().orElseThrow();
    }
  }

  private final List<Line> lines = new ArrayList<>();
  private List<Point2D> points = new ArrayList<>();
  private boolean closed;

  private DrawnLines(PDPage page) {
    super(page);
  }

  static List<Line> of(PDPage page) throws IOException {
    DrawnLines reader = new DrawnLines(page);
    reader.processPage(page);
    return reader.lines;
  }

  @Override
  public void moveTo(float x, float y) {
    points.add(new Point2D.Double(x * MM, y * MM));
  }

  @Override
  public void lineTo(float x, float y) {
    points.add(new Point2D.Double(x * MM, y * MM));
  }

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
    lineTo(x3, y3);
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
    for (Point2D p : List.of(p0, p1, p2, p3)) {
      moveTo((float) p.getX(), (float) p.getY());
    }
    closed = true;
  }

  @Override
  public Point2D getCurrentPoint() {
    return points.get(points.size() - 1);
  }

  @Override
  public void closePath() {
    closed = true;
  }

  @Override
  public void endPath() {
    points = new ArrayList<>();
    closed = false;
  }

  @Override
  public void strokePath() throws IOException {
    double width =
        getGraphicsState().getLineWidth()
            * Math.abs(getGraphicsState().getCurrentTransformationMatrix().getScalingFactorX());
    int rgb = getGraphicsState().getStrokingColor().toRGB();
    lines.add(new Line(List.copyOf(points), closed, width * MM, (rgb & 0xFF) / 255.0));
    endPath();
  }

  @Override
  public void fillPath(int rule) {
    endPath();
  }

  @Override
  public void fillAndStrokePath(int rule) throws IOException {
    strokePath();
  }

  @Override
  public void clip(int rule) {}

  @Override
  public void drawImage(PDImage image) {}

  @Override
  public void shadingFill(COSName name) {}
}

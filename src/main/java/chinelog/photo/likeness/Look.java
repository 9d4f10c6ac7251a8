package chinelog.photo.likeness;

import boofcv.struct.image.GrayF32;
import chinelog.photo.pixels.Luma;
import chinelog.photo.pixels.Pixels;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * How a picture is looked at when another is searched for in it: as it is, or by its thin lines
 * alone. A drawing has little else, and what lines have at one size they lose at another; so it is
 * looked at closer.
 */
enum Look {
  /** As a photograph. */
  PLAIN(800, 400, 14),
  /** As a drawing. */
  LINES(1200, 1000, 8);

  /** Foreshortening of a sheet that is seen at 60 degrees. */
  private static final double TILT = 2;

  private static final int TILTS = 4;

  /** Size of tilted views, in parts of the edge. */
  private static final double TILTED = 0.8;

  private final int edgePx;
  private final int most;
  private final int enough;

  Look(int edgePx, int most, int enough) {
    this.edgePx = edgePx;
    this.most = most;
    this.enough = enough;
  }

  /**
   * How many features must lie as they do in the other picture. Chosen after measuring, no source:
   * photographs of other things have at most 6.
   */
  int enough() {
    return enough;
  }

  /** Features of a picture as it is: at full and at half size. */
  List<Features> upright(Pixels picture) throws IOException {
    return List.of(whole(picture, 1), whole(picture, 2));
  }

  /** Features of a picture to be found as it looks where it lies tilted, four ways. */
  List<Features> tilted(Pixels picture) throws IOException {
    List<Features> views = new ArrayList<>();
    for (int i = 0; i < TILTS; i++) {
      views.add(tilted(picture, i * Math.PI / TILTS));
    }
    return List.copyOf(views);
  }

  int edge(Pixels picture) {
    return Math.min(edgePx, picture.longEdgePx());
  }

  private Features whole(Pixels picture, int parts) throws IOException {
    Pixels small = picture.sized(Math.max(1, edge(picture) / parts));
    return moved(features(small, most / parts), AffineTransform.getScaleInstance(parts, parts));
  }

  private Features tilted(Pixels picture, double angle) throws IOException {
    int longer = (int) Math.max(1, TILTED * edge(picture));
    Pixels small = picture.sized(longer);
    AffineTransform turn = AffineTransform.getRotateInstance(angle);
    Rectangle2D box =
        turn.createTransformedShape(new Rectangle2D.Double(0, 0, small.widthPx(), small.heightPx()))
            .getBounds2D();
    turn.preConcatenate(AffineTransform.getTranslateInstance(-box.getX(), -box.getY()));
    int w = (int) Math.ceil(box.getWidth());
    int h = (int) Math.ceil(box.getHeight());
    BufferedImage turned = new BufferedImage(w, h, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = turned.createGraphics();
    g.setColor(Color.GRAY);
    g.fillRect(0, 0, w, h);
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(small.toImage(), turn, null);
    g.dispose();
    int squashed = (int) Math.max(1, h / TILT);
    Features features = features(Pixels.of(turned).squeezed(w, squashed), most * 6 / 10);
    AffineTransform back = AffineTransform.getScaleInstance(1, (double) h / squashed);
    AffineTransform inverse = AffineTransform.getTranslateInstance(box.getX(), box.getY());
    inverse.preConcatenate(AffineTransform.getRotateInstance(-angle));
    back.preConcatenate(inverse);
    double grow = (double) edge(picture) / longer;
    back.preConcatenate(AffineTransform.getScaleInstance(grow, grow));
    return moved(features, back);
  }

  private Features features(Pixels picture, int most) {
    Luma luma = picture.luma();
    if (this == LINES) {
      return Features.of(LineMap.of(luma).picture(), most);
    }
    GrayF32 grey = new GrayF32(luma.widthPx(), luma.heightPx());
    for (int i = 0; i < grey.data.length; i++) {
      grey.data[i] = luma.bytes()[i] & 0xFF;
    }
    return Features.of(grey, most);
  }

  /** The features at the places they have in the picture at its full edge. */
  private static Features moved(Features features, AffineTransform to) {
    float[] x = new float[features.count()];
    float[] y = new float[features.count()];
    double[] point = new double[2];
    for (int i = 0; i < x.length; i++) {
      point[0] = features.x(i);
      point[1] = features.y(i);
      to.transform(point, 0, point, 0, 1);
      x[i] = (float) point[0];
      y[i] = (float) point[1];
    }
    return features.at(x, y, Math.sqrt(Math.abs(to.getDeterminant())));
  }
}

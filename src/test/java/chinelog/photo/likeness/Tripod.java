package chinelog.photo.likeness;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.Polygon;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.DataBufferInt;
import java.awt.image.Kernel;
import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * A pinhole camera before which a flat sheet lies, at least a quarter of its frame being visible
 * sheet.
 */
final class Tripod {

  static final int W = 1600;
  static final int H = 1200;
  private static final double LEAST_SHOWN = 0.25;
  private static final int SUB = 3;

  private Tripod() {}

  /** What makes a photograph worse than it need be. */
  enum Trouble {
    NONE,
    BLUR,
    SHADOW,
    HIDDEN,
    PARTIAL,
    LAMP,
    MIRRORED,
    SEVERAL
  }

  /**
   * A photograph.
   *
   * @param tiltDegrees from 0, straight down, to 60
   */
  static BufferedImage shoot(
      BufferedImage sheet,
      BufferedImage ground,
      Trouble trouble,
      double tiltDegrees,
      Random random) {
    boolean several = trouble == Trouble.SEVERAL;
    boolean partial = several || trouble == Trouble.PARTIAL;
    BufferedImage seen = trouble == Trouble.MIRRORED ? Warps.mirror(sheet) : sheet;
    Area things = new Area();
    double[][] corners;
    do {
      corners = pose(seen, Math.toRadians(tiltDegrees), partial, random);
      things.reset();
      if (several || trouble == Trouble.HIDDEN) {
        things.add(things(random));
      }
    } while (shown(corners, things) < LEAST_SHOWN);
    BufferedImage frame = new BufferedImage(W, H, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = frame.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.drawImage(ground, 0, 0, W, H, null);
    lay(seen, frame, corners);
    g.setColor(
        new Color(90 + random.nextInt(90), 70 + random.nextInt(60), 40 + random.nextInt(60)));
    g.fill(things);
    if (several || trouble == Trouble.SHADOW) {
      shadow(g, random);
    }
    if (trouble == Trouble.LAMP) {
      lamp(g, random);
    }
    g.dispose();
    BufferedImage taken = frame;
    if (several || trouble == Trouble.BLUR) {
      taken = blurred(frame, several ? 0.9 : 1 + 1.2 * random.nextDouble());
    }
    return grainy(taken, 2 + 4 * random.nextDouble(), random);
  }

  /** Corners of the sheet in the frame. */
  private static double[][] pose(BufferedImage sheet, double tilt, boolean partial, Random random) {
    double w = (double) sheet.getWidth() / Math.max(sheet.getWidth(), sheet.getHeight());
    double h = (double) sheet.getHeight() / Math.max(sheet.getWidth(), sheet.getHeight());
    double roll = 2 * Math.PI * random.nextDouble();
    Rotation turned =
        new Rotation(Vector3D.PLUS_I, tilt, RotationConvention.VECTOR_OPERATOR)
            .applyTo(
                new Rotation(
                    Vector3D.PLUS_K,
                    2 * Math.PI * random.nextDouble(),
                    RotationConvention.VECTOR_OPERATOR));
    double away = 1.3 + random.nextDouble();
    double[][] corners = new double[4][];
    int[][] signs = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
    for (int i = 0; i < 4; i++) {
      Vector3D p = turned.applyTo(new Vector3D(signs[i][0] * w / 2, signs[i][1] * h / 2, 0));
      double x = p.getX() / (p.getZ() + away);
      double y = p.getY() / (p.getZ() + away);
      corners[i] =
          new double[] {
            x * Math.cos(roll) - y * Math.sin(roll), x * Math.sin(roll) + y * Math.cos(roll)
          };
    }
    Rectangle2D box = polygon(corners, 1e6).getBounds2D();
    double fit = Math.min(W / (box.getWidth() / 1e6), H / (box.getHeight() / 1e6));
    double size = fit * (partial ? 1 + random.nextDouble() : 0.6 + 0.4 * random.nextDouble());
    double freeX = W - box.getWidth() / 1e6 * size;
    double freeY = H - box.getHeight() / 1e6 * size;
    double left = freeX * random.nextDouble() - box.getX() / 1e6 * size;
    double top = freeY * random.nextDouble() - box.getY() / 1e6 * size;
    for (double[] corner : corners) {
      corner[0] = corner[0] * size + left;
      corner[1] = corner[1] * size + top;
    }
    return corners;
  }

  private static Polygon polygon(double[][] corners, double scale) {
    Polygon polygon = new Polygon();
    for (double[] corner : corners) {
      polygon.addPoint((int) Math.round(corner[0] * scale), (int) Math.round(corner[1] * scale));
    }
    return polygon;
  }

  /** Which part of the frame is visible sheet. */
  private static double shown(double[][] corners, Area things) {
    Area sheet = new Area(polygon(corners, 1));
    sheet.intersect(new Area(new Rectangle2D.Double(0, 0, W, H)));
    sheet.subtract(things);
    int in = 0;
    for (int y = 5; y < H; y += 10) {
      for (int x = 5; x < W; x += 10) {
        in += sheet.contains(x, y) ? 1 : 0;
      }
    }
    return in / (W / 10.0 * (H / 10.0));
  }

  /** Battens, a plane or a hand on the sheet. */
  private static Area things(Random random) {
    Area things = new Area();
    for (int i = 0; i < 3; i++) {
      BasicStroke thing =
          new BasicStroke(40 + random.nextInt(110), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
      things.add(
          new Area(
              thing.createStrokedShape(
                  new Line2D.Double(
                      random.nextInt(W),
                      random.nextInt(H),
                      random.nextInt(W),
                      random.nextInt(H)))));
    }
    return things;
  }

  private static void shadow(Graphics2D g, Random random) {
    AffineTransform before = g.getTransform();
    g.rotate(random.nextDouble() * 6.3, W / 2.0, H / 2.0);
    int edge = random.nextInt(W);
    int soft = 20 + random.nextInt(200);
    Color dark = new Color(10, 10, 20, 130 + random.nextInt(60));
    g.setPaint(new GradientPaint(edge, 0, dark, edge + soft, 0, new Color(10, 10, 20, 0)));
    g.fillRect(-W, -H, 3 * W, 3 * H);
    g.setTransform(before);
  }

  private static void lamp(Graphics2D g, Random random) {
    float[] at = {0f, 1f};
    Color[] light = {new Color(255, 235, 170, 70), new Color(40, 20, 0, 150)};
    g.setPaint(
        new java.awt.RadialGradientPaint(
            random.nextInt(W), random.nextInt(H), 900 + random.nextInt(700), at, light));
    g.fillRect(0, 0, W, H);
  }

  private static void lay(BufferedImage sheet, BufferedImage frame, double[][] corners) {
    int w = sheet.getWidth();
    int h = sheet.getHeight();
    double[] m = Warps.homography(corners, new double[][] {{0, 0}, {w, 0}, {w, h}, {0, h}});
    Area inside = new Area(polygon(corners, 1));
    Rectangle2D box = inside.getBounds2D();
    int[] from = ((DataBufferInt) sheet.getRaster().getDataBuffer()).getData();
    int[] to = ((DataBufferInt) frame.getRaster().getDataBuffer()).getData();
    for (int y = Math.max(0, (int) box.getMinY()); y < Math.min(H, box.getMaxY()); y++) {
      for (int x = Math.max(0, (int) box.getMinX()); x < Math.min(W, box.getMaxX()); x++) {
        int[] sums = new int[3];
        for (int s = 0; s < SUB * SUB; s++) {
          double px = x + (s % SUB + 0.5) / SUB;
          double py = y + (s / SUB + 0.5) / SUB;
          double d = m[6] * px + m[7] * py + 1;
          int u = (int) Math.floor((m[0] * px + m[1] * py + m[2]) / d);
          int v = (int) Math.floor((m[3] * px + m[4] * py + m[5]) / d);
          boolean in = u >= 0 && v >= 0 && u < w && v < h;
          int colour = in ? from[v * w + u] : to[y * W + x];
          sums[0] += colour >> 16 & 0xFF;
          sums[1] += colour >> 8 & 0xFF;
          sums[2] += colour & 0xFF;
        }
        int n = SUB * SUB;
        to[y * W + x] = sums[0] / n << 16 | sums[1] / n << 8 | sums[2] / n;
      }
    }
  }

  static BufferedImage blurred(BufferedImage image, double sigmaPx) {
    int r = (int) Math.ceil(3 * sigmaPx);
    float[] kernel = new float[2 * r + 1];
    float sum = 0;
    for (int i = 0; i < kernel.length; i++) {
      kernel[i] = (float) Math.exp(-(i - r) * (i - r) / (2 * sigmaPx * sigmaPx));
      sum += kernel[i];
    }
    for (int i = 0; i < kernel.length; i++) {
      kernel[i] /= sum;
    }
    BufferedImage across = new BufferedImage(W, H, BufferedImage.TYPE_INT_RGB);
    new ConvolveOp(new Kernel(kernel.length, 1, kernel), ConvolveOp.EDGE_NO_OP, null)
        .filter(image, across);
    BufferedImage both = new BufferedImage(W, H, BufferedImage.TYPE_INT_RGB);
    return new ConvolveOp(new Kernel(1, kernel.length, kernel), ConvolveOp.EDGE_NO_OP, null)
        .filter(across, both);
  }

  static BufferedImage grainy(BufferedImage image, double sigma, Random random) {
    int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    for (int i = 0; i < pixels.length; i++) {
      int value = 0;
      for (int shift = 0; shift <= 16; shift += 8) {
        int v = (pixels[i] >> shift & 0xFF) + (int) Math.round(random.nextGaussian() * sigma);
        value |= Math.max(0, Math.min(255, v)) << shift;
      }
      pixels[i] = value;
    }
    return image;
  }
}

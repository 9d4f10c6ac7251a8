package chinelog.photo.likeness;

import chinelog.photo.Shots;
import java.awt.Color;
import java.awt.Font;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.QuadCurve2D;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.DataBufferInt;
import java.awt.image.Kernel;
import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/** Pictures in which another is to be seen, as a hurried maker comes by them. */
final class Warps {

  private static final int W = 1600;
  private static final int H = 1200;
  private static final int SUB = 3;

  private Warps() {}

  /** How the other picture comes into the new one. */
  enum Family {
    CROP,
    MIRROR,
    TURNED,
    TILT_TO_30,
    TILT_TO_60,
    MIRRORED_AND_TILTED,
    FRAME,
    COLLAGE,
    BLUR,
    SHADOW,
    PARTLY_HIDDEN
  }

  /** A lines plan of no vessel: curves over a grid, lettering, a table and a title block. */
  static BufferedImage drawing(long number) {
    Random random = new Random(number);
    BufferedImage sheet = new BufferedImage(2384, 1684, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = sheet.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(new Color(0xF4F1E4));
    g.fillRect(0, 0, 2384, 1684);
    g.setColor(new Color(0x202830));
    g.drawRect(30, 30, 2324, 1624);
    g.drawRect(1800, 1400, 520, 220);
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 34));
    g.drawString("LINES PLAN " + number, 1820, 1460);
    g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 14));
    for (int view = 0; view < 3; view++) {
      int left = 120 + random.nextInt(60);
      int top = 110 + view * 430;
      int wide = view == 2 ? 700 : 2100;
      for (int i = 0; i < 11 + random.nextInt(4); i++) {
        int y = top + 30 * i + random.nextInt(8);
        g.drawLine(left, y, left + wide, y);
        g.drawString(Integer.toString(10 + random.nextInt(90)), left - 40, y + 5);
      }
      for (int i = 0; i < 13; i++) {
        int x = left + wide * i / 13 + random.nextInt(12);
        g.drawLine(x, top - 20, x, top + 360);
        g.drawString(Integer.toString(i), x - 4, top + 385);
      }
      for (int i = 0; i < 9; i++) {
        g.draw(
            new QuadCurve2D.Double(
                left,
                top + random.nextInt(350),
                left + random.nextInt(wide),
                top + random.nextInt(500) - 60,
                left + wide * (0.6 + 0.4 * random.nextDouble()),
                top + random.nextInt(350)));
      }
    }
    for (int row = 0; row < 13; row++) {
      for (int column = 0; column < 11; column++) {
        g.drawString(
            (10 + random.nextInt(90)) + "." + random.nextInt(10),
            950 + 74 * column,
            990 + 30 * row);
      }
    }
    g.dispose();
    return sheet;
  }

  /** A picture of the family with the original in it, at least a quarter of the frame. */
  static BufferedImage make(
      Family family, BufferedImage original, BufferedImage ground, Random random) {
    double share = 0.25 + random.nextDouble() * 0.4;
    double tilt = Math.toRadians(random.nextDouble() * 30);
    switch (family) {
      case CROP -> {
        return noisy(crop(original, random), random);
      }
      case MIRROR -> {
        return noisy(
            mirror(scaled(original, W, W * original.getHeight() / original.getWidth())), random);
      }
      case FRAME, COLLAGE -> {
        return noisy(laid(family, original, ground, random), random);
      }
      case TURNED -> tilt = 0;
      case TILT_TO_60 -> tilt = Math.toRadians(30 + random.nextDouble() * 30);
      case TILT_TO_30, MIRRORED_AND_TILTED, BLUR, SHADOW, PARTLY_HIDDEN -> {}
    }
    BufferedImage frame = scaled(ground, W, H);
    BufferedImage seen = family == Family.MIRRORED_AND_TILTED ? mirror(original) : original;
    warp(seen, frame, pose(seen, tilt, share, random));
    Graphics2D g = frame.createGraphics();
    if (family == Family.SHADOW) {
      Color dark = new Color(0, 0, 0, 150);
      g.setPaint(new GradientPaint(random.nextInt(W), 0, dark, W, H, new Color(0, 0, 0, 10)));
      g.fillRect(0, 0, W, H);
      g.setPaint(new Color(0, 0, 0, 90));
      g.fill(new Ellipse2D.Double(random.nextInt(W) - 300, random.nextInt(H) - 300, 800, 700));
    } else if (family == Family.PARTLY_HIDDEN) {
      for (int i = 0; i < 4; i++) {
        g.setColor(new Color(random.nextInt(0x1000000)));
        int size = 120 + random.nextInt(200);
        g.fillOval(random.nextInt(W), random.nextInt(H), size, size);
      }
    }
    g.dispose();
    return noisy(family == Family.BLUR ? blurred(frame, 3 + 2 * random.nextInt(2)) : frame, random);
  }

  private static BufferedImage crop(BufferedImage original, Random random) {
    double kept = 0.5 + random.nextDouble() * 0.35;
    int w = (int) (original.getWidth() * kept);
    int h = (int) (original.getHeight() * kept);
    int left = random.nextInt(original.getWidth() - w + 1);
    int top = random.nextInt(original.getHeight() - h + 1);
    return scaled(original.getSubimage(left, top, w, h), W, W * h / w);
  }

  private static BufferedImage laid(
      Family family, BufferedImage original, BufferedImage ground, Random random) {
    BufferedImage frame = scaled(ground, W, H);
    Graphics2D g = frame.createGraphics();
    if (family == Family.FRAME) {
      g.setColor(new Color(random.nextInt(0x1000000)));
      g.fillRect(0, 0, W, H);
    }
    int w = (int) (W * (0.55 + 0.35 * random.nextDouble()));
    int h = w * original.getHeight() / original.getWidth();
    g.drawImage(
        scaled(original, w, h), random.nextInt(W - w), random.nextInt(Math.max(1, H - h)), null);
    g.dispose();
    return frame;
  }

  static BufferedImage mirror(BufferedImage image) {
    BufferedImage mirrored =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g = mirrored.createGraphics();
    g.drawImage(image, new AffineTransform(-1, 0, 0, 1, image.getWidth(), 0), null);
    g.dispose();
    return mirrored;
  }

  private static BufferedImage scaled(BufferedImage image, int w, int h) {
    BufferedImage step = image;
    while (step.getWidth() / 2 >= w && step.getHeight() / 2 >= h) {
      step = drawn(step, step.getWidth() / 2, step.getHeight() / 2);
    }
    return drawn(step, w, h);
  }

  private static BufferedImage drawn(BufferedImage image, int w, int h) {
    BufferedImage drawn = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = drawn.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(image, 0, 0, w, h, null);
    g.dispose();
    return drawn;
  }

  /** Corners of a sheet that was turned, tilted and seen by a pinhole, wholly in the frame. */
  private static double[][] pose(BufferedImage sheet, double tilt, double share, Random random) {
    double aspect = (double) sheet.getWidth() / sheet.getHeight();
    double turn = random.nextDouble() * 2 * Math.PI;
    double axis = random.nextDouble() * Math.PI;
    double far = 2.2 * Math.max(1, aspect);
    double[][] corners = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
    double[][] seen = new double[4][];
    for (int i = 0; i < 4; i++) {
      double[] flat = rotated(corners[i][0] * aspect / 2, corners[i][1] / 2, turn - axis);
      double nearer = far / (far + flat[1] * Math.sin(tilt));
      seen[i] = rotated(flat[0] * nearer, flat[1] * Math.cos(tilt) * nearer, axis);
    }
    double area = 0;
    double widest = 0;
    double highest = 0;
    for (int i = 0; i < 4; i++) {
      double[] next = seen[(i + 1) % 4];
      area += (seen[i][0] * next[1] - next[0] * seen[i][1]) / 2;
      widest = Math.max(widest, Math.abs(seen[i][0]));
      highest = Math.max(highest, Math.abs(seen[i][1]));
    }
    double size = Math.sqrt(share * W * H / Math.abs(area));
    double x = W / 2.0 + (random.nextDouble() - 0.5) * Math.max(0, W - 2 * widest * size);
    double y = H / 2.0 + (random.nextDouble() - 0.5) * Math.max(0, H - 2 * highest * size);
    for (double[] corner : seen) {
      corner[0] = corner[0] * size + x;
      corner[1] = corner[1] * size + y;
    }
    return seen;
  }

  private static double[] rotated(double x, double y, double angle) {
    return new double[] {
      x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)
    };
  }

  /** Draws the sheet between four corners, each pixel the mean of nine samples. */
  private static void warp(BufferedImage sheet, BufferedImage frame, double[][] corners) {
    int w = sheet.getWidth();
    int h = sheet.getHeight();
    double[] m = homography(corners, new double[][] {{0, 0}, {w, 0}, {w, h}, {0, h}});
    int[] from = ((DataBufferInt) sheet.getRaster().getDataBuffer()).getData();
    int[] to = ((DataBufferInt) frame.getRaster().getDataBuffer()).getData();
    for (int y = 0; y < H; y++) {
      for (int x = 0; x < W; x++) {
        int[] sums = new int[3];
        for (int s = 0; s < SUB * SUB; s++) {
          double px = x + (s % SUB + 0.5) / SUB;
          double py = y + (s / SUB + 0.5) / SUB;
          double d = m[6] * px + m[7] * py + 1;
          int u = (int) Math.floor((m[0] * px + m[1] * py + m[2]) / d);
          int v = (int) Math.floor((m[3] * px + m[4] * py + m[5]) / d);
          boolean inside = d > 0 && u >= 0 && v >= 0 && u < w && v < h;
          int colour = inside ? from[v * w + u] : to[y * W + x];
          sums[0] += colour >> 16 & 0xFF;
          sums[1] += colour >> 8 & 0xFF;
          sums[2] += colour & 0xFF;
        }
        int n = SUB * SUB;
        to[y * W + x] = sums[0] / n << 16 | sums[1] / n << 8 | sums[2] / n;
      }
    }
  }

  static double[] homography(double[][] from, double[][] to) {
    double[][] rows = new double[8][];
    double[] right = new double[8];
    for (int i = 0; i < 4; i++) {
      double x = from[i][0];
      double y = from[i][1];
      double u = to[i][0];
      double v = to[i][1];
      rows[2 * i] = new double[] {x, y, 1, 0, 0, 0, -u * x, -u * y};
      rows[2 * i + 1] = new double[] {0, 0, 0, x, y, 1, -v * x, -v * y};
      right[2 * i] = u;
      right[2 * i + 1] = v;
    }
    return new LUDecomposition(new Array2DRowRealMatrix(rows))
        .getSolver()
        .solve(new ArrayRealVector(right))
        .toArray();
  }

  private static BufferedImage blurred(BufferedImage image, int px) {
    float[] kernel = new float[px * px];
    Arrays.fill(kernel, 1f / kernel.length);
    BufferedImage blurred = new BufferedImage(W, H, BufferedImage.TYPE_INT_RGB);
    return new ConvolveOp(new Kernel(px, px, kernel), ConvolveOp.EDGE_NO_OP, null)
        .filter(image, blurred);
  }

  private static BufferedImage noisy(BufferedImage image, Random random) {
    int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    for (int i = 0; i < pixels.length; i++) {
      int noise = (int) (random.nextGaussian() * 4);
      int value = 0;
      for (int shift = 0; shift <= 16; shift += 8) {
        int v = (pixels[i] >> shift & 0xFF) + noise;
        value |= Math.max(0, Math.min(255, v)) << shift;
      }
      pixels[i] = value;
    }
    return image;
  }

  /** As a camera writes it. */
  static byte[] jpeg(BufferedImage image) {
    BufferedImage plain =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = plain.createGraphics();
    g.drawImage(image, 0, 0, null);
    g.dispose();
    return Shots.jpeg(plain, 0.85);
  }
}

package chinelog.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBufferByte;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.util.Locale;

/** An opaque 8-bit sRGB picture, three bytes a pixel: blue, green, red. */
final class Pixels {

  /** What a withheld region is filled with; one colour, whatever lay there. */
  static final int FILL = 0x8C8C8C;

  private final int widthPx;
  private final int heightPx;
  private final byte[] bgr;

  Pixels(int widthPx, int heightPx, byte[] bgr) {
    if (bgr.length != 3 * widthPx * heightPx) {
      throw new IllegalArgumentException(
          bgr.length + " bytes for " + widthPx + " × " + heightPx + " pixels");
    }
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.bgr = bgr;
  }

  int widthPx() {
    return widthPx;
  }

  int heightPx() {
    return heightPx;
  }

  /** The bytes themselves, not a copy. */
  byte[] bgr() {
    return bgr;
  }

  /** Converts colours to sRGB and lays what is transparent on white. */
  static Pixels of(BufferedImage image) {
    ColorSpace colours = image.getColorModel().getColorSpace();
    // The JDK calls an image of this type whatever its colour space.
    if (image.getType() == BufferedImage.TYPE_3BYTE_BGR
        && colours.isCS_sRGB()
        && image.getRaster().getDataBuffer() instanceof DataBufferByte data
        && data.getData().length == 3 * image.getWidth() * image.getHeight()) {
      return new Pixels(image.getWidth(), image.getHeight(), data.getData());
    }
    boolean plainGrey = colours.equals(ColorSpace.getInstance(ColorSpace.CS_GRAY));
    // The JDK takes plain grey to be linear and would lighten it.
    BufferedImage source = plainGrey ? greyAsStored(image) : image;
    if (!plainGrey && !colours.isCS_sRGB()) {
      BufferedImage converted =
          new BufferedImage(
              image.getWidth(),
              image.getHeight(),
              image.getColorModel().hasAlpha()
                  ? BufferedImage.TYPE_4BYTE_ABGR
                  : BufferedImage.TYPE_3BYTE_BGR);
      source = new ColorConvertOp(null).filter(image, converted);
    }
    if (source != image && source.getType() == BufferedImage.TYPE_3BYTE_BGR) {
      return of(source);
    }
    BufferedImage opaque =
        new BufferedImage(source.getWidth(), source.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = opaque.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, opaque.getWidth(), opaque.getHeight());
    g.drawImage(source, 0, 0, null);
    g.dispose();
    return of(opaque);
  }

  private static BufferedImage greyAsStored(BufferedImage image) {
    if (image.getColorModel() instanceof IndexColorModel) {
      return image;
    }
    Raster raster = image.getRaster();
    int bits = image.getColorModel().getComponentSize(0);
    boolean alpha = image.getColorModel().hasAlpha();
    double most = (1L << bits) - 1;
    int w = image.getWidth();
    byte[] bgr = new byte[3 * w * image.getHeight()];
    int[] row = new int[w * raster.getNumBands()];
    for (int y = 0; y < image.getHeight(); y++) {
      raster.getPixels(raster.getMinX(), raster.getMinY() + y, w, 1, row);
      for (int x = 0; x < w; x++) {
        double v = 255 * (row[x * raster.getNumBands()] / most);
        if (alpha) {
          double a = row[x * raster.getNumBands() + 1] / most;
          v = v * a + 255 * (1 - a);
        }
        int at = 3 * (y * w + x);
        bgr[at] = bgr[at + 1] = bgr[at + 2] = (byte) Math.round(v);
      }
    }
    return new Pixels(w, image.getHeight(), bgr).toImage();
  }

  /** A view of the same bytes. */
  BufferedImage toImage() {
    BufferedImage shape = new BufferedImage(1, 1, BufferedImage.TYPE_3BYTE_BGR);
    return new BufferedImage(
        shape.getColorModel(),
        Raster.createInterleavedRaster(
            new DataBufferByte(bgr, bgr.length),
            widthPx,
            heightPx,
            3 * widthPx,
            3,
            new int[] {2, 1, 0},
            new Point()),
        false,
        null);
  }

  void fill(Box box) {
    for (int y = box.top(); y < box.bottom(); y++) {
      for (int x = box.left(); x < box.right(); x++) {
        int at = 3 * (y * widthPx + x);
        bgr[at] = (byte) FILL;
        bgr[at + 1] = (byte) (FILL >> 8);
        bgr[at + 2] = (byte) (FILL >> 16);
      }
    }
  }

  /** Luma of every pixel, 0 to 255, row by row (ITU-R BT.601: 0.299, 0.587, 0.114). */
  byte[] luma() {
    byte[] luma = new byte[widthPx * heightPx];
    for (int i = 0; i < luma.length; i++) {
      int b = bgr[3 * i] & 0xFF;
      int g = bgr[3 * i + 1] & 0xFF;
      int r = bgr[3 * i + 2] & 0xFF;
      luma[i] = (byte) ((19595 * r + 38470 * g + 7471 * b + 32768) >> 16);
    }
    return luma;
  }

  /** The mean colour, such as {@code #8a7f70}. */
  String tint() {
    long b = 0;
    long g = 0;
    long r = 0;
    for (int i = 0; i < bgr.length; i += 3) {
      b += bgr[i] & 0xFF;
      g += bgr[i + 1] & 0xFF;
      r += bgr[i + 2] & 0xFF;
    }
    long n = bgr.length / 3;
    return String.format(Locale.ROOT, "#%02x%02x%02x", r / n, g / n, b / n);
  }
}

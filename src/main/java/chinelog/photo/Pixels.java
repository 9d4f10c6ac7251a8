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
import java.io.IOException;
import java.util.Locale;

/** An opaque 8-bit sRGB picture, three bytes a pixel: blue, green, red. */
final class Pixels implements Picture {

  /** What a withheld region is filled with; one colour, whatever lay there. */
  static final int FILL = 0x8C8C8C;

  private final Samples samples;
  private final int widthPx;
  private final int heightPx;
  private final byte[] bgr;

  private Pixels(Samples samples) {
    this.samples = samples;
    this.widthPx = samples.widthPx();
    this.heightPx = samples.heightPx();
    this.bgr = samples.bytes();
  }

  Pixels(int widthPx, int heightPx, byte[] bgr) {
    this(new Samples(widthPx, heightPx, 3, bgr));
  }

  @Override
  public int widthPx() {
    return widthPx;
  }

  @Override
  public int heightPx() {
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

  @Override
  public Pixels scaled(int widthPx, int heightPx) {
    return widthPx == this.widthPx && heightPx == this.heightPx
        ? this
        : new Pixels(Resampler.scale(samples, widthPx, heightPx));
  }

  @Override
  public Pixels upright(Orientation orientation) {
    return new Pixels(orientation.upright(samples));
  }

  @Override
  public Samples luma() {
    byte[] luma = new byte[widthPx * heightPx];
    for (int i = 0, at = 0; i < luma.length; i++, at += 3) {
      int b = bgr[at] & 0xFF;
      int g = bgr[at + 1] & 0xFF;
      int r = bgr[at + 2] & 0xFF;
      luma[i] = (byte) ((19595 * r + 38470 * g + 7471 * b + 32768) >> 16);
    }
    return Samples.plane(widthPx, heightPx, luma);
  }

  @Override
  public String tint() {
    return String.format(
        Locale.ROOT,
        "#%02x%02x%02x",
        (int) samples.mean(2),
        (int) samples.mean(1),
        (int) samples.mean(0));
  }

  @Override
  public byte[] encoded() throws IOException {
    return Jpeg.encode(toImage());
  }
}

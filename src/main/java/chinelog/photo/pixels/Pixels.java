package chinelog.photo.pixels;

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
import net.coobird.thumbnailator.Thumbnails;

/** An opaque 8-bit sRGB picture, three bytes a pixel: blue, green, red. */
public final class Pixels {

  /** What a withheld region is filled with; one colour, whatever lay there. */
  public static final int FILL = 0x8C8C8C;

  private final int widthPx;
  private final int heightPx;
  private final byte[] bgr;

  public Pixels(int widthPx, int heightPx, byte[] bgr) {
    if (bgr.length != 3 * widthPx * heightPx) {
      throw new IllegalArgumentException(bgr.length + " bytes for " + widthPx + " × " + heightPx);
    }
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.bgr = bgr;
  }

  public int widthPx() {
    return widthPx;
  }

  public int heightPx() {
    return heightPx;
  }

  public int longEdgePx() {
    return Math.max(widthPx, heightPx);
  }

  /** The bytes themselves, not a copy. */
  public byte[] bgr() {
    return bgr;
  }

  /** Converts colours to sRGB and lays what is transparent on white. */
  public static Pixels of(BufferedImage image) {
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
  public BufferedImage toImage() {
    return image(new int[] {2, 1, 0});
  }

  /**
   * A view of the same bytes.
   *
   * @param order which of a pixel's three bytes are its red, green and blue
   */
  BufferedImage image(int[] order) {
    BufferedImage shape = new BufferedImage(1, 1, BufferedImage.TYPE_3BYTE_BGR);
    return new BufferedImage(
        shape.getColorModel(),
        Raster.createInterleavedRaster(
            new DataBufferByte(bgr, bgr.length),
            widthPx,
            heightPx,
            3 * widthPx,
            3,
            order,
            new Point()),
        false,
        null);
  }

  public void fill(Box box) {
    for (int y = box.top(); y < box.bottom(); y++) {
      for (int x = box.left(); x < box.right(); x++) {
        int at = 3 * (y * widthPx + x);
        bgr[at] = (byte) FILL;
        bgr[at + 1] = (byte) (FILL >> 8);
        bgr[at + 2] = (byte) (FILL >> 16);
      }
    }
  }

  /** The same shape with a longer side of this many pixels; itself if it has that already. */
  public Pixels sized(int longEdgePx) throws IOException {
    return longEdgePx == longEdgePx()
        ? this
        : of(reduction().size(longEdgePx, longEdgePx).asBufferedImage());
  }

  /** Squeezed into this size, whatever its shape. */
  public Pixels squeezed(int widthPx, int heightPx) throws IOException {
    return of(reduction().forceSize(widthPx, heightPx).asBufferedImage());
  }

  /** A part of the picture, in fractions of its sides from the left top corner. */
  public Pixels part(double left, double top, double right, double bottom) {
    int x = Math.max(0, Math.min(widthPx - 1, (int) (left * widthPx)));
    int y = Math.max(0, Math.min(heightPx - 1, (int) (top * heightPx)));
    int w = Math.max(1, Math.min(widthPx, (int) Math.ceil(right * widthPx)) - x);
    int h = Math.max(1, Math.min(heightPx, (int) Math.ceil(bottom * heightPx)) - y);
    byte[] part = new byte[3 * w * h];
    for (int row = 0; row < h; row++) {
      System.arraycopy(bgr, 3 * ((y + row) * widthPx + x), part, 3 * row * w, 3 * w);
    }
    return new Pixels(w, h, part);
  }

  /** Turned so that its top is up. */
  public Pixels upright(Orientation orientation) {
    return orientation.upright(this);
  }

  private Thumbnails.Builder<BufferedImage> reduction() {
    return Thumbnails.of(toImage()).imageType(BufferedImage.TYPE_3BYTE_BGR);
  }

  public Luma luma() {
    byte[] luma = new byte[widthPx * heightPx];
    for (int i = 0, at = 0; i < luma.length; i++, at += 3) {
      int b = bgr[at] & 0xFF;
      int g = bgr[at + 1] & 0xFF;
      int r = bgr[at + 2] & 0xFF;
      luma[i] = (byte) ((19595 * r + 38470 * g + 7471 * b + 32768) >> 16);
    }
    return new Luma(widthPx, heightPx, luma);
  }

  /** As a JPEG file, always of the same quality and with the standard's own tables. */
  public byte[] encoded() throws IOException {
    Pixels rgb = new Pixels(widthPx, heightPx, bgr.clone());
    rgb.swap();
    // In the order that the writer wants, rows are copied at once, not byte by byte.
    return Jpeg.encode(rgb.image(new int[] {0, 1, 2}));
  }

  /** Lets each pixel's first and third byte change places. */
  void swap() {
    for (int i = 0; i < bgr.length; i += 3) {
      byte first = bgr[i];
      bgr[i] = bgr[i + 2];
      bgr[i + 2] = first;
    }
  }
}

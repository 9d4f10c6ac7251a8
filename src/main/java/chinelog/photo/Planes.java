package chinelog.photo;

import java.util.Locale;

/**
 * A picture as a JPEG holds it: a plane of luma, and two of colour thinned out (ITU-T T.871, and
 * T.81, A.1.1).
 *
 * @param turbo encodes it
 * @param luma of the picture's own size
 * @param blue Cb
 * @param red Cr
 * @param wide how many samples of luma one of colour is wide
 * @param high how many it is high
 */
record Planes(Turbo turbo, Samples luma, Samples blue, Samples red, int wide, int high)
    implements Picture {

  /** How far colours are thinned out, both ways, in what is encoded. */
  static final int THIN = 2;

  private static final int MIDDLE = 128;

  @Override
  public int widthPx() {
    return luma.widthPx();
  }

  @Override
  public int heightPx() {
    return luma.heightPx();
  }

  /** As {@link Picture#scaled}, and with its colours thinned out as they are to be encoded. */
  @Override
  public Planes scaled(int widthPx, int heightPx) {
    double across = (double) widthPx() / widthPx;
    double down = (double) heightPx() / heightPx;
    return new Planes(
        turbo,
        across == 1 && down == 1 ? luma : Resampler.scale(luma, widthPx, heightPx, across, down),
        thinned(blue, widthPx, heightPx),
        thinned(red, widthPx, heightPx),
        THIN,
        THIN);
  }

  private Samples thinned(Samples colour, int widthPx, int heightPx) {
    double across = (double) widthPx() / widthPx * THIN / wide;
    double down = (double) heightPx() / heightPx * THIN / high;
    int w = (widthPx + THIN - 1) / THIN;
    int h = (heightPx + THIN - 1) / THIN;
    return across == 1 && down == 1 ? colour : Resampler.scale(colour, w, h, across, down);
  }

  /**
   * Where a side is odd and mirrored, colour comes to lie half a sample off, which none can see.
   */
  @Override
  public Planes upright(Orientation orientation) {
    return new Planes(
        turbo,
        orientation.upright(luma),
        orientation.upright(blue),
        orientation.upright(red),
        orientation.swapsSides() ? high : wide,
        orientation.swapsSides() ? wide : high);
  }

  /** ITU-T T.871, 7. */
  @Override
  public String tint() {
    double y = luma.mean(0);
    double cb = blue.mean(0) - MIDDLE;
    double cr = red.mean(0) - MIDDLE;
    return String.format(
        Locale.ROOT,
        "#%02x%02x%02x",
        level(y + 1.402 * cr),
        level(y - 0.344136 * cb - 0.714136 * cr),
        level(y + 1.772 * cb));
  }

  private static int level(double v) {
    return (int) Math.max(0, Math.min(255, Math.round(v)));
  }

  @Override
  public byte[] encoded() {
    return turbo.encode(this);
  }
}

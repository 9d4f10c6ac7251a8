package chinelog.photo.pixels;

/**
 * The lightness of a picture, row by row: one sample of 0 to 255 for each pixel (ITU-R BT.601:
 * 0.299 red, 0.587 green, 0.114 blue).
 */
public record Luma(int widthPx, int heightPx, byte[] bytes) {

  public Luma {
    if (bytes.length != widthPx * heightPx) {
      throw new IllegalArgumentException(bytes.length + " bytes for " + widthPx + " × " + heightPx);
    }
  }
}

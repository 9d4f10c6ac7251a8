package chinelog.photo.pixels;

import chinelog.jpeg.JpegEncoder;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.Arrays;

/** The JPEG format: encoding afresh, and finding where a stream ends. */
final class Jpeg {

  /** Of derivatives, as the library of the Independent JPEG Group counts it. */
  static final int QUALITY = 82;

  private Jpeg() {}

  /** At one quality for every picture, so that size tells nothing. */
  static byte[] encode(BufferedImage image) throws IOException {
    return JpegEncoder.encode(image, QUALITY / 100f);
  }

  /** Whether the first picture's end marker is there. */
  static boolean isEnded(byte[] bytes) {
    int at = 2;
    while (at + 1 < bytes.length) {
      if (bytes[at] != (byte) 0xFF) {
        at++;
        continue;
      }
      int marker = bytes[at + 1] & 0xFF;
      if (marker == 0xD9) {
        return true;
      }
      boolean alone = marker == 0 || marker == 1 || (marker >= 0xD0 && marker <= 0xD8);
      if (marker == 0xFF) {
        at++;
      } else if (alone) {
        at += 2;
      } else if (at + 3 < bytes.length) {
        at += 2 + ((bytes[at + 2] & 0xFF) << 8 | bytes[at + 3] & 0xFF);
      } else {
        return false;
      }
    }
    return false;
  }

  /**
   * The same bytes with an end marker: a decoder then warns of a picture that breaks off, and of
   * nothing where only the marker was lost.
   */
  static byte[] ended(byte[] bytes) {
    if (isEnded(bytes)) {
      return bytes;
    }
    byte[] ended = Arrays.copyOf(bytes, bytes.length + 2);
    ended[bytes.length] = (byte) 0xFF;
    ended[bytes.length + 1] = (byte) 0xD9;
    return ended;
  }
}

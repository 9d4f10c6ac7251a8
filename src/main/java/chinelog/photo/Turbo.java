package chinelog.photo;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Decodes JPEGs straight to a smaller size with the system's libjpeg-turbo (TurboJPEG API 2.0 and
 * later), where that is installed. Only for pictures in which nothing has to be filled.
 */
final class Turbo {

  private static final int FORMAT_BGR = 1;
  private static final int YCBCR = 1;
  private static final int GREY = 2;
  private static final int EIGHTHS = 8;
  private static final byte[] PROFILE = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);
  private static final int METADATA_BYTES = 1 << 18;

  private final Functions functions;

  private Turbo(Functions functions) {
    this.functions = functions;
  }

  /** The functions used of turbojpeg.h, with its names. */
  private interface Functions extends Library {
    @Nullable Pointer tjInitDecompress();

    int tjDecompressHeader3(
        Pointer handle,
        byte[] jpeg,
        NativeLong size,
        IntByReference width,
        IntByReference height,
        IntByReference subsampling,
        IntByReference colours);

    int tjDecompress2(
        Pointer handle,
        byte[] jpeg,
        NativeLong size,
        byte[] pixels,
        int width,
        int pitch,
        int height,
        int format,
        int flags);

    int tjDestroy(Pointer handle);
  }

  /** Empty where the library is not installed. */
  static Optional<Turbo> find() {
    try {
      return Optional.of(new Turbo(Native.load("turbojpeg", Functions.class)));
    } catch (UnsatisfiedLinkError | NoClassDefFoundError e) {
      return Optional.empty();
    }
  }

  /**
   * The picture as stored, decoded at the smallest number of eighths that leaves its longer side at
   * least {@code longEdgePx}. Empty where the careful way is needed: for a small picture, a colour
   * profile, unusual colours, or the least doubt about the file.
   */
  Optional<Pixels> decode(byte[] jpeg, int longEdgePx) {
    if (!Jpeg.isEnded(jpeg) || hasProfile(jpeg)) {
      return Optional.empty();
    }
    Pointer handle = functions.tjInitDecompress();
    if (handle == null) {
      return Optional.empty();
    }
    try {
      return decode(handle, jpeg, longEdgePx);
    } finally {
      functions.tjDestroy(handle);
    }
  }

  private Optional<Pixels> decode(Pointer handle, byte[] jpeg, int longEdgePx) {
    NativeLong size = new NativeLong(jpeg.length);
    IntByReference w = new IntByReference();
    IntByReference h = new IntByReference();
    IntByReference colours = new IntByReference();
    int header =
        functions.tjDecompressHeader3(handle, jpeg, size, w, h, new IntByReference(), colours);
    boolean usual = colours.getValue() == YCBCR || colours.getValue() == GREY;
    int longer = Math.max(w.getValue(), h.getValue());
    int eighths = eighths(longer, longEdgePx);
    if (header != 0 || !usual || eighths >= EIGHTHS) {
      return Optional.empty();
    }
    int width = scaled(w.getValue(), eighths);
    int height = scaled(h.getValue(), eighths);
    byte[] bgr = new byte[3 * width * height];
    // Anything but a plain success, warnings too, is left to the careful way to judge.
    int result =
        functions.tjDecompress2(handle, jpeg, size, bgr, width, 3 * width, height, FORMAT_BGR, 0);
    return result == 0 ? Optional.of(new Pixels(width, height, bgr)) : Optional.empty();
  }

  private static int eighths(int longer, int longEdgePx) {
    int eighths = 1;
    while (eighths < EIGHTHS && scaled(longer, eighths) < longEdgePx) {
      eighths++;
    }
    return eighths;
  }

  private static int scaled(int px, int eighths) {
    return (px * eighths + EIGHTHS - 1) / EIGHTHS;
  }

  private static boolean hasProfile(byte[] jpeg) {
    int end = Math.min(jpeg.length, METADATA_BYTES) - PROFILE.length;
    for (int i = 0; i < end; i++) {
      int k = 0;
      while (k < PROFILE.length && jpeg[i + k] == PROFILE[k]) {
        k++;
      }
      if (k == PROFILE.length) {
        return true;
      }
    }
    return false;
  }
}

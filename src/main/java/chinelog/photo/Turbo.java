package chinelog.photo;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.NativeLongByReference;
import com.sun.jna.ptr.PointerByReference;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Decodes JPEGs straight to a smaller size with the system's libjpeg-turbo (TurboJPEG API 2.0 and
 * later), where that is installed, and encodes them again, all without leaving JPEG's own colours.
 * Only for pictures in which nothing has to be filled.
 */
final class Turbo {

  private static final int YCBCR = 1;
  private static final int ACCURATE = 4096;
  private static final int NO_REALLOC = 1024;
  private static final int EIGHTHS = 8;
  private static final int PLANES = 3;

  /** How many samples of luma one of colour is wide, by TJSAMP: 444, 422, 420, grey, 440, 411. */
  private static final int[] WIDE = {1, 2, 2, 1, 1, 4};

  private static final int[] HIGH = {1, 1, 2, 1, 2, 1};
  private static final int TJSAMP_420 = 2;

  private static final byte[] PROFILE = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);
  private static final int METADATA_BYTES = 1 << 18;

  private final Functions functions;

  private Turbo(Functions functions) {
    this.functions = functions;
  }

  /** The functions used of turbojpeg.h, with its names. */
  private interface Functions extends Library {
    @Nullable Pointer tjInitDecompress();

    @Nullable Pointer tjInitCompress();

    int tjDecompressHeader3(
        Pointer handle,
        Pointer jpeg,
        NativeLong size,
        IntByReference width,
        IntByReference height,
        IntByReference subsampling,
        IntByReference colours);

    int tjDecompressToYUV2(
        Pointer handle,
        Pointer jpeg,
        NativeLong size,
        Pointer planes,
        int width,
        int align,
        int height,
        int flags);

    int tjCompressFromYUV(
        Pointer handle,
        Pointer planes,
        int width,
        int align,
        int height,
        int subsampling,
        PointerByReference jpeg,
        NativeLongByReference size,
        int quality,
        int flags);

    NativeLong tjBufSize(int width, int height, int subsampling);

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
  Optional<Planes> decode(byte[] jpeg, int longEdgePx) {
    if (!Jpeg.isEnded(jpeg) || hasProfile(jpeg)) {
      return Optional.empty();
    }
    Pointer handle = functions.tjInitDecompress();
    if (handle == null) {
      return Optional.empty();
    }
    try (Memory file = new Memory(jpeg.length)) {
      file.write(0, jpeg, 0, jpeg.length);
      return decode(handle, file, longEdgePx);
    } finally {
      functions.tjDestroy(handle);
    }
  }

  private Optional<Planes> decode(Pointer handle, Memory jpeg, int longEdgePx) {
    NativeLong size = new NativeLong(jpeg.size());
    IntByReference w = new IntByReference();
    IntByReference h = new IntByReference();
    IntByReference subsampling = new IntByReference();
    IntByReference colours = new IntByReference();
    int header = functions.tjDecompressHeader3(handle, jpeg, size, w, h, subsampling, colours);
    int eighths = eighths(Math.max(w.getValue(), h.getValue()), longEdgePx);
    int thinned = subsampling.getValue();
    boolean usual = colours.getValue() == YCBCR && thinned >= 0 && thinned < WIDE.length;
    if (header != 0 || !usual || eighths >= EIGHTHS) {
      return Optional.empty();
    }
    Layout layout =
        new Layout(
            scaled(w.getValue(), eighths),
            scaled(h.getValue(), eighths),
            WIDE[thinned],
            HIGH[thinned]);
    try (Memory planes = new Memory(layout.bytes())) {
      // Anything but a plain success, warnings too, is left to the careful way to judge.
      int result =
          functions.tjDecompressToYUV2(
              handle, jpeg, size, planes, layout.width, 1, layout.height, ACCURATE);
      return result == 0 ? Optional.of(layout.read(planes, this)) : Optional.empty();
    }
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

  /** A JPEG of planes whose colours are thinned out to half the width and height. */
  byte[] encode(Planes picture) {
    int w = picture.widthPx();
    int h = picture.heightPx();
    Layout layout = new Layout(w, h, Planes.THIN, Planes.THIN);
    Pointer handle = functions.tjInitCompress();
    if (handle == null) {
      throw new IllegalStateException("libjpeg-turbo has no memory left");
    }
    long most = functions.tjBufSize(w, h, TJSAMP_420).longValue();
    try (Memory planes = new Memory(layout.bytes());
        Memory jpeg = new Memory(most)) {
      layout.write(picture, planes);
      NativeLongByReference size = new NativeLongByReference(new NativeLong(most));
      int result =
          functions.tjCompressFromYUV(
              handle,
              planes,
              w,
              1,
              h,
              TJSAMP_420,
              new PointerByReference(jpeg),
              size,
              Jpeg.QUALITY,
              ACCURATE | NO_REALLOC);
      if (result != 0) {
        throw new IllegalStateException("libjpeg-turbo cannot encode " + w + " × " + h);
      }
      return jpeg.getByteArray(0, size.getValue().intValue());
    } finally {
      functions.tjDestroy(handle);
    }
  }

  /**
   * How TurboJPEG lays three planes behind one another: that of luma is filled up to whole samples
   * of colour.
   *
   * @param wide how many samples of luma one of colour is wide
   * @param high how many it is high
   */
  private record Layout(int width, int height, int wide, int high) {

    private int columns(int plane) {
      int columns = (width + wide - 1) / wide;
      return plane == 0 ? columns * wide : columns;
    }

    private int rows(int plane) {
      int rows = (height + high - 1) / high;
      return plane == 0 ? rows * high : rows;
    }

    private long size(int plane) {
      return (long) columns(plane) * rows(plane);
    }

    long bytes() {
      return size(0) + size(1) + size(2);
    }

    Planes read(Memory memory, Turbo turbo) {
      Samples[] planes = new Samples[PLANES];
      long at = 0;
      for (int p = 0; p < PLANES; p++) {
        int w = p == 0 ? width : columns(p);
        int h = p == 0 ? height : rows(p);
        byte[] bytes = new byte[w * h];
        for (int y = 0; y < h; y++) {
          memory.read(at + (long) y * columns(p), bytes, y * w, w);
        }
        planes[p] = Samples.plane(w, h, bytes);
        at += size(p);
      }
      return new Planes(turbo, planes[0], planes[1], planes[2], wide, high);
    }

    /** What is filled up repeats the last sample. */
    void write(Planes picture, Memory memory) {
      long at = 0;
      for (Samples plane : new Samples[] {picture.luma(), picture.blue(), picture.red()}) {
        int w = plane.widthPx();
        int p = at == 0 ? 0 : 1;
        for (int y = 0; y < rows(p); y++) {
          int row = Math.min(y, plane.heightPx() - 1) * w;
          memory.write(at, plane.bytes(), row, w);
          for (int x = w; x < columns(p); x++) {
            memory.setByte(at + x, plane.bytes()[row + w - 1]);
          }
          at += columns(p);
        }
      }
    }
  }
}

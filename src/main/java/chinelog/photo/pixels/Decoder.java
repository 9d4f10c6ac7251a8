package chinelog.photo.pixels;

import chinelog.problem.Sentence;
import com.twelvemonkeys.imageio.stream.ByteArrayImageInputStream;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.zip.InflaterInputStream;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageInputStream;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.NodeList;

/** Decodes pictures whole or not at all. */
public final class Decoder {

  /** Above this a header is taken to be a trap or a mistake; the largest cameras have 150. */
  private static final long MOST_PIXELS = 160_000_000;

  private static final int MOST_PROFILE_BYTES = 4 << 20;

  private Decoder() {}

  /** The stored size, from the header alone. */
  public record Size(int widthPx, int heightPx) {}

  public static Size size(PhotoKind kind, byte[] bytes) throws UnusablePhoto {
    return with(kind, bytes, (reader, warnings) -> checkedSize(reader));
  }

  /** The stored picture, not yet upright. */
  public static Pixels decode(PhotoKind kind, byte[] bytes) throws UnusablePhoto {
    byte[] whole = kind == PhotoKind.JPEG ? Jpeg.ended(bytes) : bytes;
    return with(
        kind,
        whole,
        (reader, warnings) -> {
          checkedSize(reader);
          BufferedImage image = kind == PhotoKind.JPEG ? read(reader) : reader.read(0);
          for (String warning : warnings) {
            if (tellsOfLoss(warning)) {
              throw UnusablePhoto.damaged("part of it is missing or garbled");
            }
          }
          return Pixels.of(kind == PhotoKind.PNG ? withProfile(image, reader) : image);
        });
  }

  /**
   * Reads a picture in the order of colours that its decoder has, since rows are then copied at
   * once and not byte by byte.
   */
  private static BufferedImage read(ImageReader reader) throws IOException {
    ImageTypeSpecifier usual = reader.getImageTypes(0).next();
    if (usual.getBufferedImageType() != BufferedImage.TYPE_3BYTE_BGR
        || !usual.getColorModel().getColorSpace().isCS_sRGB()) {
      return reader.read(0);
    }
    int w = reader.getWidth(0);
    int h = reader.getHeight(0);
    Pixels pixels = new Pixels(w, h, new byte[3 * w * h]);
    ImageReadParam how = reader.getDefaultReadParam();
    how.setDestination(pixels.image(new int[] {0, 1, 2}));
    reader.read(0, how);
    pixels.swap();
    return pixels.toImage();
  }

  /** Whether the file's own end is there, so that nothing need be decoded to believe in it. */
  public static boolean looksWhole(PhotoKind kind, byte[] bytes) {
    return switch (kind) {
      case JPEG -> Jpeg.isEnded(bytes);
      case PNG -> bytes.length > 12 && endsChunk(bytes);
      case WEBP -> bytes.length >= 8 + (littleEndian(bytes, 4) & 0xFFFFFFFFL);
      case GIF, TIFF, HEIF -> false;
    };
  }

  private static boolean endsChunk(byte[] bytes) {
    for (long at = 8; at + 12 <= bytes.length; ) {
      int i = (int) at;
      if (bytes[i + 4] == 'I' && bytes[i + 5] == 'E' && bytes[i + 6] == 'N') {
        return true;
      }
      at += 12 + (Integer.reverseBytes(littleEndian(bytes, i)) & 0xFFFFFFFFL);
    }
    return false;
  }

  private static int littleEndian(byte[] bytes, int at) {
    return bytes[at] & 0xFF
        | (bytes[at + 1] & 0xFF) << 8
        | (bytes[at + 2] & 0xFF) << 16
        | (bytes[at + 3] & 0xFF) << 24;
  }

  private interface Use<R> {
    R with(ImageReader reader, List<String> warnings) throws IOException;
  }

  private static <R> R with(PhotoKind kind, byte[] bytes, Use<R> use) throws UnusablePhoto {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(kind.word());
    if (!readers.hasNext()) {
      throw new IllegalStateException("no reader of " + kind);
    }
    ImageReader reader = readers.next();
    List<String> warnings = new ArrayList<>();
    try (ImageInputStream in = new ByteArrayImageInputStream(bytes)) {
      reader.addIIOReadWarningListener((source, warning) -> warnings.add(warning));
      reader.setInput(in, false, false);
      return use.with(reader, warnings);
    } catch (UnusablePhoto e) {
      throw e;
    } catch (IOException | RuntimeException e) {
      // A hostile file may drive a decoder into any exception; all mean the same to its maker.
      UnusablePhoto damaged =
          UnusablePhoto.damaged(Sentence.of("it cannot be read as {0}", kind.word()));
      damaged.initCause(e);
      throw damaged;
    } catch (OutOfMemoryError e) {
      UnusablePhoto large =
          new UnusablePhoto(
              "The picture is too large for this computer's memory.",
              "Save a smaller copy of it, or give Java more memory.");
      large.initCause(e);
      throw large;
    } finally {
      reader.dispose();
    }
  }

  private static Size checkedSize(ImageReader reader) throws IOException {
    Size size = new Size(reader.getWidth(0), reader.getHeight(0));
    if (size.widthPx < 1 || size.heightPx < 1) {
      throw new IIOException("no pixels");
    }
    if ((long) size.widthPx * size.heightPx > MOST_PIXELS) {
      throw new UnusablePhoto(
          Sentence.of(
              "The file says it is {0} × {1} pixels, which is more than any photograph has.",
              size.widthPx, size.heightPx),
          "Save a smaller copy of it, or move it out of photos.");
    }
    return size;
  }

  /** Decoders also warn of odd metadata, which costs no pixels. */
  private static boolean tellsOfLoss(String warning) {
    String w = warning.toLowerCase(Locale.ROOT);
    return w.contains("premature end")
        || w.contains("truncated")
        || w.contains("bad huffman")
        || w.contains("corrupt jpeg data") && !w.contains("extraneous");
  }

  /** The JDK reads a PNG's colours without heeding its profile. */
  private static BufferedImage withProfile(BufferedImage image, ImageReader reader)
      throws IOException {
    ColorModel model = image.getColorModel();
    byte[] profile = pngProfile(reader);
    if (profile == null || !(model instanceof ComponentColorModel)) {
      return image;
    }
    ICC_ColorSpace space;
    try {
      space = new ICC_ColorSpace(ICC_Profile.getInstance(profile));
    } catch (IllegalArgumentException e) {
      return image;
    }
    if (space.getNumComponents() != model.getNumColorComponents()) {
      return image;
    }
    ColorModel coloured =
        new ComponentColorModel(
            space,
            model.hasAlpha(),
            model.isAlphaPremultiplied(),
            model.getTransparency(),
            model.getTransferType());
    return new BufferedImage(coloured, image.getRaster(), model.isAlphaPremultiplied(), null);
  }

  private static byte @Nullable [] pngProfile(ImageReader reader) throws IOException {
    IIOMetadataNode root =
        (IIOMetadataNode) reader.getImageMetadata(0).getAsTree("javax_imageio_png_1.0");
    NodeList found = root.getElementsByTagName("iCCP");
    if (found.getLength() == 0
        || !(((IIOMetadataNode) found.item(0)).getUserObject() instanceof byte[] packed)) {
      return null;
    }
    try (InflaterInputStream in = new InflaterInputStream(new ByteArrayInputStream(packed))) {
      return in.readNBytes(MOST_PROFILE_BYTES);
    }
  }
}

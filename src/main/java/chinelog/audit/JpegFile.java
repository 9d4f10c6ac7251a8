package chinelog.audit;

import chinelog.problem.Sentence;
import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.jpeg.JpegProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.event.IIOReadWarningListener;
import javax.imageio.stream.ImageInputStream;
import org.jspecify.annotations.Nullable;

/**
 * Walks a JPEG picture from the first byte to the last: only what is needed to draw it may be there
 * (ITU-T T.81, annex B; JFIF 1.02).
 */
final class JpegFile {

  private static final int SOI = 0xD8;
  private static final int EOI = 0xD9;
  private static final int SOS = 0xDA;
  private static final int DQT = 0xDB;
  private static final int DHT = 0xC4;
  private static final int DRI = 0xDD;
  private static final int SOF0 = 0xC0;
  private static final int SOF2 = 0xC2;
  private static final int APP0 = 0xE0;
  private static final int APP1 = 0xE1;
  private static final byte[] XMP =
      "http://ns.adobe.com/xap/1.0/\0".getBytes(StandardCharsets.ISO_8859_1);
  private static final Set<String> DIRECTORIES =
      Set.of("JPEG", "JFIF", "Huffman", "XMP", "File Type");

  /** In this order the decoder puts whole rows in their place, not byte by byte. */
  private static final int[] RGB = {0, 1, 2};

  private final byte[] bytes;
  private final CreditLine credit;
  private final Findings findings;
  private final Sentence where;
  private int at;

  private JpegFile(byte[] bytes, CreditLine credit, Findings findings, Sentence where) {
    this.bytes = bytes;
    this.credit = credit;
    this.findings = findings;
    this.where = where;
  }

  /**
   * Walks and decodes a picture.
   *
   * @param decode false for a picture of these very bytes that was decoded before
   * @return the picture, or null if it cannot be read or was not decoded
   */
  static @Nullable BufferedImage inspect(
      byte[] bytes, CreditLine credit, boolean decode, Findings findings, Sentence where) {
    JpegFile file = new JpegFile(bytes, credit, findings, where);
    try {
      file.walk();
      file.readMetadata();
      return decode ? file.decode() : null;
    } catch (Unreadable e) {
      file.report(e.what);
    } catch (IOException | JpegProcessingException | RuntimeException e) {
      file.report(Sentence.of("This picture cannot be read to its end."));
    }
    return null;
  }

  private void walk() throws Unreadable {
    if (bytes.length < 4 || next() != 0xFF || next() != SOI) {
      throw new Unreadable(Sentence.of("This is not a JPEG picture."));
    }
    if (!startsWith(2, "\u00ff\u00e0")) {
      report(Sentence.of("The picture does not begin as every picture of ours does."));
    }
    int frames = 0;
    int scans = 0;
    while (true) {
      int marker = marker();
      if (marker == EOI) {
        break;
      }
      int start = at;
      int length = word();
      int end = start + length;
      if (length < 2 || end > bytes.length) {
        throw new Unreadable(Sentence.of("A part of this picture is longer than the file."));
      }
      switch (marker) {
        case APP0 -> {
          if (length != 16
              || !startsWith(start + 2, "JFIF\0")
              || bytes[end - 2] != 0
              || bytes[end - 1] != 0) {
            report(
                Sentence.of(
                    "The picture's header holds more than a header, such as a small preview."));
          }
        }
        case APP1 -> application(start + 2, end);
        case SOF0, SOF2 -> {
          frames++;
          int parts = bytes[start + 7] & 0xFF;
          if (bytes[start + 2] != 8 || (parts != 1 && parts != 3) || length != 8 + 3 * parts) {
            report(Sentence.of("The picture is not plain 8-bit grey or colour."));
          }
        }
        case DQT -> tables(start + 2, end, false);
        case DHT -> tables(start + 2, end, true);
        case DRI -> {
          if (length != 4) {
            report(Sentence.of("A part of the picture is longer than it needs to be."));
          }
        }
        case SOS -> {
          scans++;
          if (length != 6 + 2 * (bytes[start + 2] & 0xFF)) {
            report(Sentence.of("A part of the picture is longer than it needs to be."));
          }
        }
        default -> report(name(marker));
      }
      at = end;
      if (marker == SOS) {
        skipScan();
      }
    }
    if (frames != 1 || scans == 0) {
      report(Sentence.of("There is not exactly one picture in this file."));
    }
    if (at != bytes.length) {
      report(Sentence.of("{0} bytes follow the end of the picture.", bytes.length - at));
    }
  }

  private static Sentence name(int marker) {
    if (marker == 0xFE) {
      return Sentence.of("The picture holds a comment.");
    }
    if (marker >= 0xE0 && marker <= 0xEF) {
      return Sentence.of(
          "The picture holds camera or program data (segment APP{0}).", marker - 0xE0);
    }
    return Sentence.of(
        "The picture holds an unexpected segment ({0}).",
        String.format(Locale.ROOT, "%02X", marker));
  }

  private void application(int from, int to) {
    if (credit.texts().isEmpty()
        || !startsWith(from, new String(XMP, StandardCharsets.ISO_8859_1))) {
      report(name(APP1));
      return;
    }
    credit.inspect(Arrays.copyOfRange(bytes, from + XMP.length, to), findings, where);
  }

  /** Each table must end where the next begins, and the last where the segment ends. */
  private void tables(int from, int end, boolean huffman) {
    int i = from;
    while (i < end) {
      int head = bytes[i] & 0xFF;
      int size = 64 * (1 + (head >> 4));
      if (huffman) {
        size = 16;
        for (int k = 1; k <= 16 && i + k < end; k++) {
          size += bytes[i + k] & 0xFF;
        }
      }
      i += 1 + size;
    }
    if (i != end) {
      report(Sentence.of("A part of the picture is longer than it needs to be."));
    }
  }

  private void skipScan() throws Unreadable {
    while (true) {
      if (at + 1 >= bytes.length) {
        throw new Unreadable(Sentence.of("The picture breaks off before its end."));
      }
      if ((bytes[at] & 0xFF) != 0xFF) {
        at++;
        continue;
      }
      int code = bytes[at + 1] & 0xFF;
      if (code == 0 || (code >= 0xD0 && code <= 0xD7)) {
        at += 2;
      } else {
        return;
      }
    }
  }

  /** A second reader's opinion: it must know of no more than the walk allowed. */
  private void readMetadata() throws IOException, JpegProcessingException {
    Metadata metadata = JpegMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
    for (Directory directory : metadata.getDirectories()) {
      if (!DIRECTORIES.contains(directory.getName())) {
        report(Sentence.of("The picture holds metadata: {0}.", directory.getName()));
      }
    }
  }

  private BufferedImage decode() throws IOException, Unreadable {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("jpeg");
    ImageReader reader = readers.next();
    while (readers.hasNext() && !reader.getClass().getName().startsWith("com.sun.")) {
      reader = readers.next();
    }
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      reader.setInput(in);
      IIOReadWarningListener warn =
          (source, warning) ->
              report(Sentence.of("The picture's data do not end where the picture does."));
      reader.addIIOReadWarningListener(warn);
      ImageReadParam how = reader.getDefaultReadParam();
      ImageTypeSpecifier usual = reader.getImageTypes(0).next();
      if (usual.getBufferedImageType() == BufferedImage.TYPE_3BYTE_BGR) {
        how.setDestination(
            new BufferedImage(
                usual.getColorModel(),
                Raster.createInterleavedRaster(
                    DataBuffer.TYPE_BYTE,
                    reader.getWidth(0),
                    reader.getHeight(0),
                    RGB.length * reader.getWidth(0),
                    RGB.length,
                    RGB,
                    null),
                false,
                null));
      }
      return reader.read(0, how);
    } finally {
      reader.dispose();
    }
  }

  private int marker() throws Unreadable {
    if (at + 1 >= bytes.length) {
      throw new Unreadable(Sentence.of("The picture breaks off before its end."));
    }
    if (next() != 0xFF) {
      throw new Unreadable(Sentence.of("The picture's parts do not follow on one another."));
    }
    return next();
  }

  private int next() {
    return bytes[at++] & 0xFF;
  }

  private int word() throws Unreadable {
    if (at + 1 >= bytes.length) {
      throw new Unreadable(Sentence.of("The picture breaks off before its end."));
    }
    return next() << 8 | next();
  }

  private boolean startsWith(int from, String text) {
    byte[] wanted = text.getBytes(StandardCharsets.ISO_8859_1);
    return from + wanted.length <= bytes.length
        && Arrays.equals(bytes, from, from + wanted.length, wanted, 0, wanted.length);
  }

  private void report(Sentence what) {
    findings.add(where, what);
  }

  /** A picture that ends the walk. */
  private static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Sentence what;

    Unreadable(Sentence what) {
      super(what.toString());
      this.what = what;
    }
  }
}

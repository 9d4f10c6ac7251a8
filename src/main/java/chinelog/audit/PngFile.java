package chinelog.audit;

import chinelog.problem.Sentence;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Set;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/** Walks a PNG picture from the first byte to the last (W3C PNG, third edition, section 5). */
final class PngFile {

  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final Set<String> CHUNKS =
      Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND", "sRGB", "gAMA", "pHYs");

  private PngFile() {}

  static @Nullable BufferedImage inspect(byte[] bytes, Findings findings, Sentence where) {
    if (bytes.length < 20 || !Arrays.equals(bytes, 0, 8, SIGNATURE, 0, 8)) {
      findings.add(where, Sentence.of("This is not a PNG picture."));
      return null;
    }
    int at = 8;
    String type = "";
    while (at < bytes.length && !type.equals("IEND")) {
      if (at + 12 > bytes.length) {
        findings.add(where, Sentence.of("The picture breaks off before its end."));
        return null;
      }
      int length = ByteBuffer.wrap(bytes, at, 4).getInt();
      if (length < 0 || at + 12L + length > bytes.length) {
        findings.add(where, Sentence.of("A part of this picture is longer than the file."));
        return null;
      }
      type = new String(bytes, at + 4, 4, StandardCharsets.ISO_8859_1);
      if (!CHUNKS.contains(type)) {
        findings.add(
            where, Sentence.of("The picture holds something besides the picture ({0}).", type));
      }
      CRC32 crc = new CRC32();
      crc.update(bytes, at + 4, 4 + length);
      if ((int) crc.getValue() != ByteBuffer.wrap(bytes, at + 8 + length, 4).getInt()) {
        findings.add(where, Sentence.of("A part of the picture is damaged ({0}).", type));
      }
      at += 12 + length;
    }
    if (at != bytes.length) {
      findings.add(
          where, Sentence.of("{0} bytes follow the end of the picture.", bytes.length - at));
    }
    try {
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(bytes));
      if (image != null) {
        return image;
      }
    } catch (IOException | RuntimeException e) {
      // Told below, together with a format that nothing here reads.
    }
    findings.add(where, Sentence.of("This picture cannot be read to its end."));
    return null;
  }
}

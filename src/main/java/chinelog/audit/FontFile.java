package chinelog.audit;

import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** Opens a font file: it must be one font and nothing besides. */
final class FontFile {

  private static final int WOFF2_HEADER = 48;

  private FontFile() {}

  static void inspectTrueType(byte[] bytes, Findings findings) {
    try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(bytes))) {
      long end =
          font.getTables().stream().mapToLong(t -> t.getOffset() + t.getLength()).max().orElse(0);
      if (bytes.length > end + 3) {
        findings.add(
            Sentence.of("the font"),
            Sentence.of("{0} bytes follow the end of the font.", bytes.length - end));
      }
    } catch (IOException | RuntimeException e) {
      findings.add(Sentence.of("the font"), Sentence.of("This font cannot be read."));
    }
  }

  /** Checks the header (W3C WOFF 2.0, section 4.1): whole length, no metadata, no private data. */
  static void inspectWoff2(byte[] bytes, Findings findings) {
    if (bytes.length < WOFF2_HEADER || ByteBuffer.wrap(bytes).getInt() != 0x774F4632) {
      findings.add(Sentence.of("the font"), Sentence.of("This font cannot be read."));
      return;
    }
    ByteBuffer header = ByteBuffer.wrap(bytes, 0, WOFF2_HEADER);
    if (header.getInt(8) != bytes.length) {
      findings.add(
          Sentence.of("the font"), Sentence.of("The file is longer or shorter than its font."));
    }
    if (header.getInt(28) != 0 || header.getInt(40) != 0) {
      findings.add(
          Sentence.of("the font"), Sentence.of("The font carries metadata or private data."));
    }
  }
}

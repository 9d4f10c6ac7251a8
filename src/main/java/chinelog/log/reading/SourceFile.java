package chinelog.log.reading;

import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Reads a text file strictly as UTF-8, with or without a byte order mark, of any line ends. */
public final class SourceFile {

  static final int MOST_BYTES = 4 << 20;

  private SourceFile() {}

  /** The file's text, or null after the problem was noted. */
  public static @Nullable Source read(Path file, String name, Problems problems) {
    byte[] bytes;
    try {
      if (Files.size(file) > MOST_BYTES) {
        problems.error(
            Place.of(name),
            "This text file is larger than 4 MB.",
            "Divide it into several files, or move what is no text out of it.");
        return null;
      }
      bytes = Files.readAllBytes(file);
    } catch (IOException e) {
      problems.error(
          Place.of(name),
          "This file cannot be read.",
          "See that it is there, that you may read it, and that its disk is sound.");
      return null;
    }
    return read(bytes, name, problems);
  }

  /** The text of bytes, or null after the problem was noted. */
  static @Nullable Source read(byte[] bytes, String name, Problems problems) {
    String text = decode(bytes, name, problems);
    return text == null ? null : Source.ofFile(name, text);
  }

  private static @Nullable String decode(byte[] bytes, String name, Problems problems) {
    if (isUtf16(bytes)) {
      problems.error(
          Place.of(name, 1, 1),
          "This is not UTF-8 text, but UTF-16, which old editors call Unicode.",
          "Save the file afresh, and choose UTF-8 as its encoding.");
      return null;
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    String text = normalLineEnds(out.flip().toString());
    if (result.isError()) {
      problems.error(
          Source.ofFile(name, text).at(text.length()),
          "This is not UTF-8 text from here on.",
          "Save the file as UTF-8 in your editor.");
      return null;
    }
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isControl(c)) {
        problems.error(
            Source.ofFile(name, text).at(i),
            Sentence.of(
                "An invisible control character (U+{0}) is here.",
                String.format(Locale.ROOT, "%04X", (int) c)),
            "Delete it; if the whole file looks odd, save it as UTF-8.");
        return null;
      }
    }
    return text;
  }

  /** By its mark, or because every other byte of its beginning is 0. */
  private static boolean isUtf16(byte[] bytes) {
    if (bytes.length < 2) {
      return false;
    }
    int mark = (bytes[0] & 0xff) << 8 | bytes[1] & 0xff;
    return mark == 0xfffe || mark == 0xfeff || bytes[0] == 0 ^ bytes[1] == 0;
  }

  /** Whether a character is neither seen nor white space, so that no edition may hold it. */
  public static boolean isControl(int c) {
    return c < ' ' && c != '\n' && c != '\t' || c == '\u007f';
  }

  private static String normalLineEnds(String text) {
    String bare = text.startsWith("\ufeff") ? text.substring(1) : text;
    return bare.replace("\r\n", "\n").replace('\r', '\n');
  }
}

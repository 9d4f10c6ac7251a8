package chinelog.desk.files;

import chinelog.digest.Sha256;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * A file of the log as it stood when it was read.
 *
 * @param path below the log's folder, with '/' between its parts
 * @param text with its byte order mark and its own line ends; empty where there is no file
 * @param stamp SHA-256 of its bytes; empty where there is no file
 * @param utf8 whether its bytes are UTF-8; if not, the text is a reading of them as good as can be,
 *     and the file becomes UTF-8 when it is written as a whole
 */
public record FileVersion(String path, String text, String stamp, boolean utf8) {

  /** The stamp of a file that is not there. */
  public static final String NONE = "";

  private static final Charset WESTERN = Charset.forName("windows-1252");

  public boolean exists() {
    return !stamp.isEmpty();
  }

  static FileVersion absent(String path) {
    return new FileVersion(path, "", NONE, true);
  }

  static FileVersion of(String path, byte[] bytes) {
    String stamp = Sha256.of(bytes);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return new FileVersion(path, text, stamp, true);
    } catch (CharacterCodingException e) {
      return new FileVersion(path, new String(bytes, guess(bytes)), stamp, false);
    }
  }

  private static Charset guess(byte[] bytes) {
    int mark = bytes.length < 2 ? 0 : (bytes[0] & 0xff) << 8 | bytes[1] & 0xff;
    return mark == 0xfeff || mark == 0xfffe ? StandardCharsets.UTF_16 : WESTERN;
  }
}

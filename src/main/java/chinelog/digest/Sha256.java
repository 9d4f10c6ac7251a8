package chinelog.digest;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The SHA-256 (FIPS 180-4) of bytes, in hexadecimal, such as {@code e3b0c442…}. */
public final class Sha256 {

  private static final int CHUNK = 1 << 16;

  private Sha256() {}

  public static String of(byte[] bytes) {
    return hex(digest().digest(bytes));
  }

  /** Of a text in UTF-8. */
  public static String of(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Of all that is left in a stream, which is not closed. */
  public static String of(InputStream in) throws IOException {
    MessageDigest digest = digest();
    byte[] chunk = new byte[CHUNK];
    for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
      digest.update(chunk, 0, n);
    }
    return hex(digest.digest());
  }

  public static String hex(byte[] digest) {
    return HexFormat.of().formatHex(digest);
  }

  /** For those who add bytes piece by piece. */
  public static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}

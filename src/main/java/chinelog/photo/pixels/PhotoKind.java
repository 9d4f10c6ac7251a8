package chinelog.photo.pixels;

import chinelog.problem.Sentence;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;

/** The format of a file, recognised by its first bytes and never by its name alone. */
public enum PhotoKind {
  JPEG("JPEG"),
  PNG("PNG"),
  GIF("GIF"),
  TIFF("TIFF"),
  WEBP("WebP"),
  HEIF("HEIC");

  private static final Set<String> HEIF_BRANDS =
      Set.of("heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis");

  private final String word;

  PhotoKind(String word) {
    this.word = word;
  }

  /** What people call it, which is also its name among the installed image readers. */
  public String word() {
    return word;
  }

  /** By which a file of this kind is known among a log's photographs. */
  public String ending() {
    return this == JPEG ? "jpg" : word.toLowerCase(Locale.ROOT);
  }

  /**
   * Whether what lies inside a box of pixels reaches only a bounded distance beyond it, so that
   * growing and filling the box removes all of it. WebP and HEIF predict blocks from their
   * neighbours without end, and TIFF may hold anything.
   */
  public boolean keepsRegionsApart() {
    return this == JPEG || this == PNG;
  }

  public static PhotoKind of(String name, byte[] bytes) throws UnusablePhoto {
    if (bytes.length == 0) {
      throw new UnusablePhoto(
          "The file is empty.", "Copy it again from the card, or delete it here.");
    }
    if (begins(bytes, 0, 0xFF, 0xD8, 0xFF)) {
      return JPEG;
    }
    if (begins(bytes, 0, 0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A)) {
      return PNG;
    }
    if (begins(bytes, 0, 'G', 'I', 'F', '8')) {
      return GIF;
    }
    if (begins(bytes, 0, 'R', 'I', 'F', 'F') && begins(bytes, 8, 'W', 'E', 'B', 'P')) {
      return WEBP;
    }
    if (begins(bytes, 4, 'f', 't', 'y', 'p') && HEIF_BRANDS.contains(latin(bytes, 8, 4))) {
      return HEIF;
    }
    String ending = ending(name);
    boolean tiff = begins(bytes, 0, 'I', 'I', 42, 0) || begins(bytes, 0, 'M', 'M', 0, 42);
    if (tiff && (ending.equals("tif") || ending.equals("tiff"))) {
      return TIFF;
    }
    // Raw files of many cameras call themselves TIFF; their first picture is only a thumbnail.
    throw new UnusablePhoto(
        tiff
            ? Sentence.of(
                "This is a raw camera file (.{0}), which cannot be shown as it is.", ending)
            : "This is not a picture of a kind that can be shown.",
        "Save it as JPEG, PNG, TIFF, WebP, GIF or HEIC, or move it out of photos.");
  }

  private static String ending(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private static String latin(byte[] bytes, int from, int length) {
    return bytes.length < from + length
        ? ""
        : new String(bytes, from, length, StandardCharsets.ISO_8859_1);
  }

  private static boolean begins(byte[] bytes, int from, int... values) {
    if (bytes.length < from + values.length) {
      return false;
    }
    for (int i = 0; i < values.length; i++) {
      if ((bytes[from + i] & 0xFF) != values[i]) {
        return false;
      }
    }
    return true;
  }
}

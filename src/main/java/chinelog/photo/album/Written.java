package chinelog.photo.album;

import com.drew.metadata.Metadata;
import com.drew.metadata.iptc.IptcDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What its maker wrote into a photograph's file with another program, such as "The moulds on the
 * board".
 *
 * <p>Nobody has read it over for this log, so it stands in for a caption only where the log gives
 * none, is under whatever the photograph is under, and is not to be shown where a part of the
 * picture is filled. What a camera writes by itself (EXIF ImageDescription) is no caption.
 *
 * @param caption XMP {@code dc:description}, else IPTC IIM 2:120; one line, may be empty
 * @param alt XMP {@code Iptc4xmpCore:AltTextAccessibility} (IPTC Photo Metadata Standard 2021.1);
 *     one line, may be empty
 */
public record Written(String caption, String alt) {

  /** Nothing was written. */
  public static final Written NONE = new Written("", "");

  /** The most that IPTC IIM 2:120 may hold; a longer text is no caption. */
  private static final int LONGEST = 2000;

  private static final String DEFAULT_LANGUAGE = "x-default";

  static Written read(Metadata metadata) {
    String caption = "";
    String alt = "";
    for (XmpDirectory xmp : metadata.getDirectoriesOfType(XmpDirectory.class)) {
      Map<String, String> properties = xmp.getXmpProperties();
      caption = caption.isEmpty() ? text(properties, "dc:description") : caption;
      alt = alt.isEmpty() ? text(properties, "Iptc4xmpCore:AltTextAccessibility") : alt;
    }
    for (IptcDirectory iptc : metadata.getDirectoriesOfType(IptcDirectory.class)) {
      caption = caption.isEmpty() ? line(iptc.getString(IptcDirectory.TAG_CAPTION)) : caption;
    }
    return new Written(caption, alt);
  }

  /** Of a text in several languages the default one, else the first. */
  private static String text(Map<String, String> properties, String name) {
    for (int i = 1; properties.containsKey(name + "[" + i + "]"); i++) {
      String item = name + "[" + i + "]";
      if (DEFAULT_LANGUAGE.equals(properties.get(item + "/xml:lang"))) {
        return line(properties.get(item));
      }
    }
    return line(properties.getOrDefault(name + "[1]", properties.get(name)));
  }

  private static String line(@Nullable String text) {
    if (text == null) {
      return "";
    }
    String line = text.replaceAll("[\\p{Cntrl}\\p{Cf}\\p{Z}\uFFFD]+", " ").strip();
    return line.length() > LONGEST ? "" : line;
  }
}

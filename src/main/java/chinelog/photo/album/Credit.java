package chinelog.photo.album;

import chinelog.label.Clearance;
import chinelog.log.records.Head;
import chinelog.log.records.Marked;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/**
 * Who made a photograph and under what licence it is shown, such as "Tern Lane Workshop" and "All
 * rights reserved", for those who come upon the picture alone.
 *
 * <p>It is written into derivatives as XMP: {@code dc:creator} and {@code dc:rights} (ISO 16684-1,
 * 8.3), in an APP1 segment behind the JFIF header (XMP Specification Part 3, 1.1.3).
 *
 * @param maker may be empty
 * @param licence may be empty
 */
public record Credit(String maker, String licence) {

  /** Nothing is written. */
  public static final Credit NONE = new Credit("", "");

  /** A segment of a JPEG ends at 65,535 bytes, and a character takes up to 6 as it is written. */
  private static final int LONGEST = 5000;

  private static final String SEGMENT = "http://ns.adobe.com/xap/1.0/\0";
  private static final int APP1 = 0xFFE1;

  /** Start of image, and a JFIF header without a thumbnail. */
  private static final int HEADER_BYTES = 20;

  /** The credit a log asks for, as far as readers may see it; a text of pages is left out. */
  public static Credit of(Head head, Clearance clearance) {
    return head.creditPhotos()
        ? new Credit(text(head.maker(), clearance), text(head.licence(), clearance))
        : NONE;
  }

  private static String text(@Nullable Marked<String> text, Clearance clearance) {
    return text == null || !clearance.allows(text.label()) || text.value().length() > LONGEST
        ? ""
        : text.value().strip();
  }

  /** Whether there is nothing to write. */
  public boolean isNone() {
    return equals(NONE);
  }

  /** The same picture with the credit in its place, and nothing else changed. */
  public byte[] into(byte[] jpeg) {
    byte[] packet = (SEGMENT + xmp()).getBytes(StandardCharsets.UTF_8);
    int length = packet.length + 2;
    ByteArrayOutputStream out = new ByteArrayOutputStream(jpeg.length + length + 2);
    out.write(jpeg, 0, HEADER_BYTES);
    for (int word : new int[] {APP1, length}) {
      out.write(word >> 8);
      out.write(word);
    }
    out.writeBytes(packet);
    out.write(jpeg, HEADER_BYTES, jpeg.length - HEADER_BYTES);
    return out.toByteArray();
  }

  public String xmp() {
    StringBuilder xmp =
        new StringBuilder("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">")
            .append("<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">")
            .append("<rdf:Description rdf:about=\"\"")
            .append(" xmlns:dc=\"http://purl.org/dc/elements/1.1/\">");
    if (!maker.isEmpty()) {
      xmp.append("<dc:creator><rdf:Seq><rdf:li>")
          .append(escaped(maker))
          .append("</rdf:li></rdf:Seq></dc:creator>");
    }
    if (!licence.isEmpty()) {
      xmp.append("<dc:rights><rdf:Alt><rdf:li xml:lang=\"x-default\">")
          .append(escaped(licence))
          .append("</rdf:li></rdf:Alt></dc:rights>");
    }
    return xmp.append("</rdf:Description></rdf:RDF></x:xmpmeta>").toString();
  }

  /** XML 1.0 knows no control characters but tab and line ends. */
  private static String escaped(String text) {
    return text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", " ")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\r", "&#13;");
  }
}

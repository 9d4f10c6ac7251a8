package chinelog.book.page;

import chinelog.digest.Sha256;
import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.LineBox;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * A digest of all that decides where pages end, whatever the words are: which elements there are,
 * how high each box and each line is and where it stands, and what the captions of plates say,
 * since they run otherwise at another width. Pages of which it is the same would be made up the
 * same way again.
 */
final class Measures {

  private static final int NUMBERS = 4;

  private final MessageDigest digest = Sha256.digest();
  private final ByteBuffer numbers = ByteBuffer.allocate(NUMBERS * Integer.BYTES);

  private static final Pattern TAG = Pattern.compile("<(\\w+)((?:\\s[^<>]*)?)>");
  private static final Pattern KIND = Pattern.compile("\\s(?:class|id)=\"[^\"]*\"");

  private Measures() {}

  /** Digest of which elements pages are made of, each with its class and id. */
  static String elements(Manuscript manuscript) {
    StringBuilder elements = new StringBuilder();
    Matcher tag = TAG.matcher(manuscript.html());
    while (tag.find()) {
      elements.append(tag.group(1));
      Matcher kind = KIND.matcher(tag.group(2));
      while (kind.find()) {
        elements.append(kind.group());
      }
      elements.append('\n');
    }
    return Sha256.of(elements.toString());
  }

  /** Of pages that were laid out. */
  static String of(PdfBoxRenderer renderer) {
    Measures measures = new Measures();
    NodeList elements = renderer.getDocument().getElementsByTagName("*");
    for (int i = 0; i < elements.getLength(); i++) {
      measures.element((Element) elements.item(i));
    }
    measures.layer(renderer.getRootBox().getLayer());
    return Sha256.hex(measures.digest.digest());
  }

  private void element(Element element) {
    text(element.getTagName());
    text(element.getAttribute("class"));
    text(element.getAttribute("id"));
    if (element.getTagName().equals("figcaption")) {
      text(element.getTextContent());
    }
  }

  private void text(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    digest.update(ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).array());
    digest.update(bytes);
  }

  /** Footnotes and what else stands apart are in layers of their own. */
  private void layer(Layer layer) {
    box(layer.getMaster());
    for (Layer child : layer.getChildren()) {
      layer(child);
    }
  }

  private void box(Box box) {
    if (box instanceof LineBox line) {
      add(1, line.getAbsY(), line.getHeight(), line.getMinPaintingTop());
      add(2, line.getMaxPaintingBottom(), 0, 0);
    } else if (box instanceof BlockBox block) {
      // The width of a picture is that of what it shows.
      add(3, block.getAbsY(), block.getHeight(), block.isReplaced() ? block.getWidth() : 0);
    }
    for (Box child : box.getChildren()) {
      box(child);
    }
  }

  private void add(int kind, int first, int second, int third) {
    numbers.clear();
    numbers.putInt(kind).putInt(first).putInt(second).putInt(third);
    digest.update(numbers.array());
  }
}

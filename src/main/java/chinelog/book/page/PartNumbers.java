package chinelog.book.page;

import chinelog.edition.Plate;
import com.openhtmltopdf.css.constants.CSSName;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Draws numbers upon pictures, each in a disc where the thing is that the key below names. The
 * colours are those of the picture's box: its background and its lettering.
 */
public final class PartNumbers {

  /** Where the numbers stand, as {@link #attribute} writes them. */
  public static final String ATTRIBUTE = "data-parts";

  private static final float RADIUS_PT = 6.5f;
  private static final float RING_PT = 0.8f;
  private static final float SIZE_PT = 8;

  /** Of the size of figures: from their middle down to their foot. */
  private static final float HALF_HEIGHT = 0.33f;

  /** Of a radius: how far the handles of a curve lie out, so that four of them make a circle. */
  private static final float ROUND = 0.5523f;

  private final PDFont font;

  private PartNumbers(PDFont font) {
    this.font = font;
  }

  /** The value of the attribute, such as {@code 0.4 0.25|0.1 0.8}. */
  public static String attribute(List<Plate.Part> parts) {
    return parts.stream().map(p -> p.x() + " " + p.y()).collect(Collectors.joining("|"));
  }

  static void draw(PdfBoxRenderer renderer, PDFont font, PagePlace place) throws IOException {
    PicturesOnPages.draw(renderer, place, ATTRIBUTE, new PartNumbers(font)::number);
  }

  private void number(PDPageContentStream content, PicturesOnPages.Picture picture, String written)
      throws IOException {
    int number = 0;
    for (String part : written.split("\\|")) {
      String[] at = part.split(" ");
      float x = picture.x(Double.parseDouble(at[0]));
      float y = picture.y(Double.parseDouble(at[1]));
      number++;
      Hatching.fill(content, Hatching.color(picture.box(), CSSName.COLOR));
      disc(content, x, y, RADIUS_PT + RING_PT);
      Hatching.fill(content, Hatching.color(picture.box(), CSSName.BACKGROUND_COLOR));
      disc(content, x, y, RADIUS_PT);
      Hatching.fill(content, Hatching.color(picture.box(), CSSName.COLOR));
      String figure = String.valueOf(number);
      content.beginText();
      content.setFont(font, SIZE_PT);
      content.newLineAtOffset(
          x - font.getStringWidth(figure) / 1000 * SIZE_PT / 2, y - SIZE_PT * HALF_HEIGHT);
      content.showText(figure);
      content.endText();
    }
  }

  private static void disc(PDPageContentStream content, float x, float y, float r)
      throws IOException {
    float c = ROUND * r;
    content.moveTo(x + r, y);
    content.curveTo(x + r, y + c, x + c, y + r, x, y + r);
    content.curveTo(x - c, y + r, x - r, y + c, x - r, y);
    content.curveTo(x - r, y - c, x - c, y - r, x, y - r);
    content.curveTo(x + c, y - r, x + r, y - c, x + r, y);
    content.fill();
  }
}

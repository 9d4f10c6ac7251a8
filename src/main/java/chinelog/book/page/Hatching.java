package chinelog.book.page;

import chinelog.edition.Picture;
import chinelog.markup.HatchDrawing;
import com.openhtmltopdf.css.constants.CSSName;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import com.openhtmltopdf.render.PageBox;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;

/**
 * Draws a quiet hatch with one word over the filled parts of pictures, once the pages are laid out.
 * The colours are those of the picture's box: its background, its side and its lettering.
 */
public final class Hatching {

  /** The filled parts of a picture, as {@link #attribute} writes them. */
  public static final String ATTRIBUTE = "data-filled";

  private static final double SIZE_PT = 9;
  private static final double LEAST_PT = 5;
  private static final float LINE_PT = 0.6f;
  private static final float STEP_PT = 4.4f;

  /** Of the size of the letters: from the middle of a line down to its foot. */
  private static final float HALF_HEIGHT = 0.34f;

  private final PdfBoxRenderer renderer;
  private final PDFont font;
  private final PagePlace place;

  private Hatching(PdfBoxRenderer renderer, PDFont font, PagePlace place) {
    this.renderer = renderer;
    this.font = font;
    this.place = place;
  }

  /** The value of the attribute, the word first: {@code withheld|0 0.35 0.48 1}. */
  public static String attribute(String word, List<Picture.Part> filled) {
    return Stream.concat(
            Stream.of(word),
            filled.stream().map(p -> p.left() + " " + p.top() + " " + p.right() + " " + p.bottom()))
        .collect(Collectors.joining("|"));
  }

  static void draw(PdfBoxRenderer renderer, PDFont font, PagePlace place) throws IOException {
    new Hatching(renderer, font, place).within(renderer.getRootBox());
  }

  private void within(Box box) throws IOException {
    if (box instanceof BlockBox block
        && block.isReplaced()
        && block.getElement() != null
        && block.getElement().hasAttribute(ATTRIBUTE)) {
      cover(block);
    }
    for (Box child : new ArrayList<>(box.getChildren())) {
      within(child);
    }
    if (box instanceof InlineLayoutBox inline) {
      for (Object child : inline.getInlineChildren()) {
        if (child instanceof Box inner) {
          within(inner);
        }
      }
    }
  }

  private void cover(BlockBox box) throws IOException {
    String[] written = box.getElement().getAttribute(ATTRIBUTE).split("\\|");
    List<Picture.Part> parts = new ArrayList<>();
    for (int i = 1; i < written.length; i++) {
      String[] sides = written[i].split(" ");
      parts.add(
          new Picture.Part(
              Double.parseDouble(sides[0]),
              Double.parseDouble(sides[1]),
              Double.parseDouble(sides[2]),
              Double.parseDouble(sides[3])));
    }
    for (PageBox page : renderer.getRootBox().getLayer().getPages()) {
      if (page.getTop() <= box.getAbsY() && box.getAbsY() < page.getBottom()) {
        cover(box, page, written[0], parts);
      }
    }
  }

  private void cover(BlockBox box, PageBox page, String word, List<Picture.Part> parts)
      throws IOException {
    PDDocument document = renderer.getPdfDocument();
    PDPage sheet = document.getPage(page.getPageNo());
    float left = place.leftPt(page.getPageNo(), box.getAbsX());
    float top = sheet.getMediaBox().getUpperRightY() - place.fromTopPt(page, box.getAbsY());
    float width = PagePlace.points(box.getContentWidth());
    float height = PagePlace.points(box.getHeight());
    try (PDPageContentStream content =
        new PDPageContentStream(document, sheet, AppendMode.APPEND, true, true)) {
      content.beginMarkedContent(COSName.ARTIFACT);
      for (Picture.Part part : parts) {
        hatch(
            content,
            box,
            (float) (left + part.left() * width),
            (float) (top - part.bottom() * height),
            (float) ((part.right() - part.left()) * width),
            (float) ((part.bottom() - part.top()) * height));
      }
      Picture.Part widest = HatchDrawing.widest(parts);
      word(
          content,
          box,
          word,
          (float) (left + (widest.left() + widest.right()) / 2 * width),
          (float) (top - (widest.top() + widest.bottom()) / 2 * height),
          (widest.right() - widest.left()) * width,
          (widest.bottom() - widest.top()) * height);
      content.endMarkedContent();
    }
  }

  private static void hatch(
      PDPageContentStream content, BlockBox box, float x, float y, float w, float h)
      throws IOException {
    content.saveGraphicsState();
    content.addRect(x, y, w, h);
    content.clip();
    fill(content, color(box, CSSName.BACKGROUND_COLOR));
    content.addRect(x, y, w, h);
    content.fill();
    // One broad line, dashed: each dash is a line of the hatch.
    float reach = (float) Math.hypot(w, h) / 2;
    content.transform(Matrix.getTranslateInstance(x + w / 2, y + h / 2));
    content.transform(Matrix.getRotateInstance(Math.PI / 4, 0, 0));
    FSRGBColor line = color(box, CSSName.BORDER_LEFT_COLOR);
    content.setStrokingColor(line.getRed() / 255f, line.getGreen() / 255f, line.getBlue() / 255f);
    content.setLineWidth(2 * reach);
    content.setLineDashPattern(new float[] {LINE_PT, STEP_PT}, 0);
    content.moveTo(-reach, 0);
    content.lineTo(reach, 0);
    content.stroke();
    content.restoreGraphicsState();
  }

  /** The word on a ground of its own, so that no line runs through it. */
  private void word(
      PDPageContentStream content,
      BlockBox box,
      String word,
      float middleX,
      float middleY,
      double width,
      double height)
      throws IOException {
    String printable = Marks.printable(font, word);
    float size = (float) HatchDrawing.size(word, width, height, SIZE_PT, LEAST_PT);
    if (size == 0 || printable.isEmpty()) {
      return;
    }
    float length = font.getStringWidth(printable) / 1000 * size;
    fill(content, color(box, CSSName.BACKGROUND_COLOR));
    content.addRect(middleX - length / 2 - size / 2, middleY - size, length + size, 2 * size);
    content.fill();
    fill(content, color(box, CSSName.COLOR));
    content.beginText();
    content.setFont(font, size);
    content.newLineAtOffset(middleX - length / 2, middleY - size * HALF_HEIGHT);
    content.showText(printable);
    content.endText();
  }

  private static FSRGBColor color(BlockBox box, CSSName name) {
    return box.getStyle().asColor(name) instanceof FSRGBColor color
        ? color
        : new FSRGBColor(255, 255, 255);
  }

  private static void fill(PDPageContentStream content, FSRGBColor color) throws IOException {
    content.setNonStrokingColor(
        color.getRed() / 255f, color.getGreen() / 255f, color.getBlue() / 255f);
  }
}

package chinelog.book.page;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import com.openhtmltopdf.render.PageBox;
import java.io.IOException;
import java.util.ArrayList;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;

/** Finds pictures on the pages once they are laid out, to draw something upon them. */
record PicturesOnPages(
    PdfBoxRenderer renderer, PagePlace place, String attribute, Drawing drawing) {

  /** Draws upon a picture. */
  interface Drawing {

    /**
     * Draws.
     *
     * @param written the value of the attribute
     */
    void draw(PDPageContentStream content, Picture picture, String written) throws IOException;
  }

  /**
   * Where a picture stands, in points.
   *
   * @param left from the sheet's left side
   * @param top from the sheet's foot up to the picture's top
   */
  record Picture(BlockBox box, float left, float top, float width, float height) {

    float x(double part) {
      return (float) (left + part * width);
    }

    float y(double part) {
      return (float) (top - part * height);
    }
  }

  /** Draws upon every picture that has the attribute; what is drawn is no part of the text. */
  static void draw(PdfBoxRenderer renderer, PagePlace place, String attribute, Drawing drawing)
      throws IOException {
    new PicturesOnPages(renderer, place, attribute, drawing).within(renderer.getRootBox());
  }

  private void within(Box box) throws IOException {
    if (box instanceof BlockBox block
        && block.isReplaced()
        && block.getElement() != null
        && block.getElement().hasAttribute(attribute)) {
      draw(block);
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

  private void draw(BlockBox box) throws IOException {
    PDDocument document = renderer.getPdfDocument();
    for (PageBox page : renderer.getRootBox().getLayer().getPages()) {
      if (page.getTop() > box.getAbsY() || box.getAbsY() >= page.getBottom()) {
        continue;
      }
      PDPage sheet = document.getPage(page.getPageNo());
      Picture picture =
          new Picture(
              box,
              place.leftPt(page.getPageNo(), box.getAbsX()),
              sheet.getMediaBox().getUpperRightY() - place.fromTopPt(page, box.getAbsY()),
              PagePlace.points(box.getContentWidth()),
              PagePlace.points(box.getHeight()));
      try (PDPageContentStream content =
          new PDPageContentStream(document, sheet, AppendMode.APPEND, true, true)) {
        content.beginMarkedContent(COSName.ARTIFACT);
        drawing.draw(content, picture, box.getElement().getAttribute(attribute));
        content.endMarkedContent();
      }
    }
  }
}

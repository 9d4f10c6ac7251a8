package chinelog.book.page;

import java.io.IOException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Sets the boxes of pages that are to be cut, and draws the lines to cut by outside the bleed. */
final class CropMarks {

  private static final float POINTS_PER_MM = 72 / 25.4f;
  private static final float LENGTH_MM = 5;
  private static final float GAP_MM = 1;
  private static final float LINE_PT = 0.25f;

  private CropMarks() {}

  static void draw(PDDocument document, double bleedMm) throws IOException {
    for (PDPage page : document.getPages()) {
      PDRectangle bleed = page.getMediaBox();
      PDRectangle trim = grow(bleed, -bleedMm);
      PDRectangle paper = grow(bleed, LENGTH_MM + GAP_MM);
      page.setMediaBox(paper);
      page.setCropBox(paper);
      page.setBleedBox(bleed);
      page.setTrimBox(trim);
      try (PDPageContentStream content =
          new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
        content.beginMarkedContent(COSName.ARTIFACT);
        content.setLineWidth(LINE_PT);
        for (float x : new float[] {trim.getLowerLeftX(), trim.getUpperRightX()}) {
          line(content, x, bleed.getUpperRightY() + mm(GAP_MM), x, paper.getUpperRightY());
          line(content, x, bleed.getLowerLeftY() - mm(GAP_MM), x, paper.getLowerLeftY());
        }
        for (float y : new float[] {trim.getLowerLeftY(), trim.getUpperRightY()}) {
          line(content, bleed.getUpperRightX() + mm(GAP_MM), y, paper.getUpperRightX(), y);
          line(content, bleed.getLowerLeftX() - mm(GAP_MM), y, paper.getLowerLeftX(), y);
        }
        content.endMarkedContent();
      }
    }
  }

  private static void line(PDPageContentStream content, float x1, float y1, float x2, float y2)
      throws IOException {
    content.moveTo(x1, y1);
    content.lineTo(x2, y2);
    content.stroke();
  }

  private static PDRectangle grow(PDRectangle box, double byMm) {
    float by = mm(byMm);
    return new PDRectangle(
        box.getLowerLeftX() - by,
        box.getLowerLeftY() - by,
        box.getWidth() + 2 * by,
        box.getHeight() + 2 * by);
  }

  private static float mm(double mm) {
    return (float) (mm * POINTS_PER_MM);
  }
}

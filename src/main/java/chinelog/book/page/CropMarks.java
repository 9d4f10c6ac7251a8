package chinelog.book.page;

import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDVectorFont;

/** Sets the boxes of pages that are to be cut, and draws the lines to cut by outside the bleed. */
final class CropMarks {

  private static final float POINTS_PER_MM = 72 / 25.4f;
  private static final float LENGTH_MM = 5;
  private static final float GAP_MM = 1;
  private static final float LINE_PT = 0.25f;
  private static final float SLUG_PT = 6;
  private static final float UNITS = 1000;

  /** Beside the mark at the corner. */
  private static final float BESIDE_MM = 8;

  private CropMarks() {}

  static void draw(PDDocument document, double bleedMm, Manuscript.Slug slug, PDFont font)
      throws IOException {
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
        for (double fold : slug.foldsMm()) {
          float x = trim.getLowerLeftX() + mm(fold);
          line(content, x, bleed.getUpperRightY() + mm(GAP_MM), x, paper.getUpperRightY());
          line(content, x, bleed.getLowerLeftY() - mm(GAP_MM), x, paper.getLowerLeftY());
        }
        if (!slug.words().isEmpty()) {
          float x = trim.getLowerLeftX() + mm(BESIDE_MM);
          outlines(content, font, slug.words(), x, bleed.getUpperRightY() + mm(2 * GAP_MM));
        }
        content.endMarkedContent();
      }
    }
  }

  /**
   * Draws words as outlines: measures of the paper are not to be taken for figures of the model by
   * those who search the text.
   */
  private static void outlines(
      PDPageContentStream content, PDFont font, String words, float x, float y) throws IOException {
    PDVectorFont shapes = (PDVectorFont) font;
    float left = x;
    InputStream codes = new ByteArrayInputStream(font.encode(words));
    while (codes.available() > 0) {
      int code = font.readCode(codes);
      AffineTransform to = AffineTransform.getTranslateInstance(left, y);
      to.scale(SLUG_PT / UNITS, SLUG_PT / UNITS);
      fill(content, shapes.getNormalizedPath(code).getPathIterator(to));
      left += font.getWidth(code) * SLUG_PT / UNITS;
    }
  }

  private static void fill(PDPageContentStream content, PathIterator path) throws IOException {
    float[] to = new float[6];
    float[] at = new float[2];
    boolean isEmpty = path.isDone();
    for (; !path.isDone(); path.next()) {
      switch (path.currentSegment(to)) {
        case PathIterator.SEG_MOVETO -> content.moveTo(to[0], to[1]);
        case PathIterator.SEG_LINETO -> content.lineTo(to[0], to[1]);
        case PathIterator.SEG_QUADTO -> {
          // A curve of the second degree as one of the third.
          float x1 = at[0] + (to[0] - at[0]) * 2 / 3;
          float y1 = at[1] + (to[1] - at[1]) * 2 / 3;
          float x2 = to[2] + (to[0] - to[2]) * 2 / 3;
          float y2 = to[3] + (to[1] - to[3]) * 2 / 3;
          content.curveTo(x1, y1, x2, y2, to[2], to[3]);
          to[0] = to[2];
          to[1] = to[3];
        }
        case PathIterator.SEG_CUBICTO -> {
          content.curveTo(to[0], to[1], to[2], to[3], to[4], to[5]);
          to[0] = to[4];
          to[1] = to[5];
        }
        default -> content.closePath();
      }
      at[0] = to[0];
      at[1] = to[1];
    }
    if (!isEmpty) {
      content.fill();
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

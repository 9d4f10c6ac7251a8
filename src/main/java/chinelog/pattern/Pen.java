package chinelog.pattern;

import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.edition.Pattern;
import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;

/**
 * Draws on one sheet, in mm as printed. Lines follow ISO 128-2: wide 0.35 mm, narrow 0.18 mm,
 * dashes in multiples of the width. What is the part's own is black; what is the sheet's is grey.
 */
record Pen(PDPageContentStream content, Face face, Scans scans) {

  static final double WIDE = 0.35;
  static final double NARROW = 0.18;

  /** Height of capitals that can be read at arm's length. */
  static final double LETTERING = 3.5;

  private static final float GREY = 0.5f;
  private static final float[] SOLID = {};

  /** Long-dashed dotted narrow line, 04.1: for lines of symmetry. */
  private static final float[] CHAIN = dashes(24, 3, 0.5, 3);

  /** Dashed narrow line, 02.1. */
  private static final float[] DASHED = dashes(12, 3);

  private static float[] dashes(double... widths) {
    float[] mm = new float[widths.length];
    for (int i = 0; i < widths.length; i++) {
      mm[i] = (float) (widths[i] * NARROW);
    }
    return mm;
  }

  /** From here on, mm of a sheet count from the corner of what is drawn on. */
  void begin(PaperSize paper) throws IOException {
    double pt = 72 / 25.4;
    content.saveGraphicsState();
    content.transform(
        new Matrix(
            new AffineTransform(
                pt * paper.across(),
                0,
                0,
                pt * paper.up(),
                pt * PaperSize.MARGIN,
                pt * (PaperSize.MARGIN + PaperSize.FOOT))));
  }

  void end() throws IOException {
    content.restoreGraphicsState();
  }

  void clip(Extent box) throws IOException {
    content.saveGraphicsState();
    content.addRect(
        (float) box.left(), (float) box.bottom(), (float) box.width(), (float) box.height());
    content.clip();
  }

  void unclip() throws IOException {
    content.restoreGraphicsState();
  }

  /** What belongs to the sheet and not to a part. */
  void furniture(double widthMm) throws IOException {
    look(GREY, widthMm, SOLID);
  }

  void dashedFurniture() throws IOException {
    look(GREY, NARROW, DASHED);
  }

  void ink() throws IOException {
    look(0, NARROW, SOLID);
  }

  private void look(float grey, double widthMm, float[] dashes) throws IOException {
    content.setStrokingColor(grey, grey, grey);
    content.setNonStrokingColor(grey * 0.8f, grey * 0.8f, grey * 0.8f);
    content.setLineWidth((float) widthMm);
    content.setLineDashPattern(dashes, 0);
  }

  void draw(Placed placed) throws IOException {
    Pattern.Scan scan = placed.pattern().scan();
    if (scan != null) {
      content.saveGraphicsState();
      content.transform(
          new Matrix(
              placed.turned()
                  ? new AffineTransform(0, 1, -1, 0, placed.dx(), placed.dy())
                  : AffineTransform.getTranslateInstance(placed.dx(), placed.dy())));
      content.drawImage(
          scans.image(scan.picture()), 0, 0, (float) scan.widthMm(), (float) scan.heightMm());
      content.restoreGraphicsState();
    }
    for (Stroke stroke : placed.pattern().strokes()) {
      switch (stroke.line()) {
        case CUT -> look(0, WIDE, SOLID);
        case SCORE -> look(0, NARROW, SOLID);
        case CENTRE -> look(0, NARROW, CHAIN);
        case GUIDE -> look(0, NARROW, stroke.closed() ? DASHED : SOLID);
      }
      path(placed, stroke);
    }
    ink();
    for (Pattern.Note note : placed.notes()) {
      write(note.text(), placed.x(note.at()), placed.y(note.at()), note.height(), placed.turned());
    }
  }

  private void path(Placed placed, Stroke stroke) throws IOException {
    boolean begun = false;
    for (Spot p : stroke.points()) {
      float x = (float) placed.x(p);
      float y = (float) placed.y(p);
      if (begun) {
        content.lineTo(x, y);
      } else {
        content.moveTo(x, y);
      }
      begun = true;
    }
    if (stroke.closed()) {
      content.closePath();
    }
    content.stroke();
  }

  void line(double x0, double y0, double x1, double y1) throws IOException {
    content.moveTo((float) x0, (float) y0);
    content.lineTo((float) x1, (float) y1);
    content.stroke();
  }

  void box(Extent box) throws IOException {
    content.addRect(
        (float) box.left(), (float) box.bottom(), (float) box.width(), (float) box.height());
    content.stroke();
  }

  /** A cross in a circle: two of them on top of each other, and the sheets lie right. */
  void registerMark(double x, double y) throws IOException {
    line(x - 4, y, x + 4, y);
    line(x, y - 4, x, y + 4);
    double r = 2;
    double k = 0.5523 * r;
    content.moveTo((float) (x + r), (float) y);
    curve(x + r, y + k, x + k, y + r, x, y + r);
    curve(x - k, y + r, x - r, y + k, x - r, y);
    curve(x - r, y - k, x - k, y - r, x, y - r);
    curve(x + k, y - r, x + r, y - k, x + r, y);
    content.stroke();
  }

  private void curve(double x1, double y1, double x2, double y2, double x, double y)
      throws IOException {
    content.curveTo((float) x1, (float) y1, (float) x2, (float) y2, (float) x, (float) y);
  }

  void write(String text, double x, double y, double height, boolean turned) throws IOException {
    float size = (float) (height * face.em());
    content.beginText();
    content.setTextMatrix(
        new Matrix(
            turned
                ? new AffineTransform(0, 1, -1, 0, x, y)
                : AffineTransform.getTranslateInstance(x, y)));
    for (Face.Run run : face.runs(text)) {
      content.setFont(run.font(), size);
      content.showText(run.text());
    }
    content.endText();
  }

  double width(String text, double height) throws IOException {
    return face.width(text) * height;
  }

  /** Lines no wider than some room. */
  List<String> wrapped(String text, double height, double room) throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      if (!line.isEmpty() && width(line + " " + word, height) > room) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}

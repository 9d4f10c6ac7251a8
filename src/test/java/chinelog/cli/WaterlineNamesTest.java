package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Names and angles of waterlines on the sheets as published, with room around each. */
@ExtendWith(OncePerRun.class)
class WaterlineNamesTest {

  private static final Pattern NAME = Pattern.compile("WL [0-9.]+( = DWL)?|DWL|-?[0-9]+°");

  private static final double POINTS_PER_MM = 72 / 25.4;

  /** Capitals and figures are as high, as a part of the size of the letters. */
  private static final double CAPITALS = 0.65;

  /** What is read together, with its box in the direction of reading, in mm. */
  private record Lettering(String text, boolean turned, Rectangle2D box) {}

  /** Takes together what stands on one line without a gap. */
  private static final class Reader extends PDFTextStripper {

    private final List<Lettering> read = new ArrayList<>();

    @Override
    protected void processTextPosition(TextPosition glyph) {
      Matrix at = glyph.getTextMatrix();
      boolean turned = Math.abs(at.getShearX()) + Math.abs(at.getShearY()) > 0.1;
      double x = (turned ? at.getTranslateY() : at.getTranslateX()) / POINTS_PER_MM;
      double y = (turned ? -at.getTranslateX() : at.getTranslateY()) / POINTS_PER_MM;
      double height = CAPITALS * at.getScalingFactorY() / POINTS_PER_MM;
      Rectangle2D box =
          new Rectangle2D.Double(x, y, glyph.getWidthDirAdj() / POINTS_PER_MM, height);
      Lettering last = read.isEmpty() ? new Lettering("", !turned, box) : read.get(read.size() - 1);
      if (last.turned == turned
          && new Point2D.Double(last.box.getMaxX(), last.box.getY()).distance(x, y) < 0.5) {
        last.box.add(box);
        read.set(read.size() - 1, new Lettering(last.text + glyph.getUnicode(), turned, last.box));
      } else {
        read.add(new Lettering(glyph.getUnicode(), turned, box));
      }
    }
  }

  @Test
  void standApartWhereTheLinesLieCloseTogether(PatternsTest.Fitted fitted) throws Exception {
    Path sheets = fitted.log().path("workshop/workshop").resolve("patterns.pdf");
    List<String> touching = new ArrayList<>();
    int names = 0;
    try (PDDocument pdf = Loader.loadPDF(sheets.toFile())) {
      for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
        List<Lettering> all = names(pdf, page);
        names += all.size();
        for (int i = 0; i < all.size(); i++) {
          for (Lettering other : all.subList(i + 1, all.size())) {
            Lettering one = all.get(i);
            if (one.turned == other.turned && one.box.intersects(other.box)) {
              touching.add("page " + page + ": " + one + " and " + other);
            }
          }
        }
      }
    }
    assertThat(names).isGreaterThan(150);
    assertThat(touching).isEmpty();
  }

  private static List<Lettering> names(PDDocument pdf, int page) throws IOException {
    Reader reader = new Reader();
    reader.setStartPage(page);
    reader.setEndPage(page);
    reader.getText(pdf);
    return reader.read.stream().filter(l -> NAME.matcher(l.text.strip()).matches()).toList();
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.DrawObject;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A scan that was put to scale, on sheets for the maker's own printer. */
class SheetsToScaleTest {

  private static final double MM = 25.4 / 72;

  @TempDir Path folder;

  /** A sheet of 48 by 32 pixels, which count as 8.128 mm by 5.419 mm of paper. */
  private TinyLog log(String patterns) {
    TinyLog log = TinyLog.in(folder).photo("sheets/lines.png");
    log.replace("log.yaml", "all, gets: [site]", "all, gets: [site, patterns]");
    log.replace("log.yaml", "gets: [site]}\n  workshop", "gets: [site, patterns]}\n  workshop");
    log.replace("log.yaml", "limits:", patterns + "\nlimits:");
    log.write(
        "facts.yaml",
        log.read("facts.yaml")
            + "scan.lines: {reckon: scan-scale, true_x: 2.4 m, scan_x: 6 mm, true_y: 2.2 m,"
            + " scan_y: 5.5 mm, under: lines}\n");
    return log;
  }

  @Test
  void itIsPrintedAtTheModelsSizeInTheWorkshopAlone() throws IOException {
    TinyLog log = log("patterns: {scans: full}");
    Said said = log.run("publish");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    // 400 times the paper, at 1:16: 203.2 mm by 135.5 mm, turned to fit A4.
    List<Matrix> images = images(log.path("workshop/workshop/patterns.pdf"));
    assertThat(images).hasSize(1);
    assertThat(images.get(0).getShearY() * MM).isCloseTo(203.2, within(0.05));
    assertThat(-images.get(0).getShearX() * MM).isCloseTo(135.47, within(0.05));
    assertThat(log.path("published/public/patterns.pdf")).doesNotExist();
    assertThat(log.path("workshop/workshop/patterns")).doesNotExist();
    assertThat(log.run("audit").status()).isEqualTo(Main.DONE);
  }

  @Test
  void aLargeOneIsDividedAmongSheetsThatOverlap() throws IOException {
    TinyLog log = log("patterns: {scans: model}");
    log.replace("facts.yaml", "true_x: 2.4 m", "true_x: 240 mm");
    log.replace("facts.yaml", "true_y: 2.2 m", "true_y: 220 mm");
    Said said = log.run("publish", "--for", "workshop");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    List<Matrix> images = images(log.path("workshop/workshop/patterns.pdf"));
    assertThat(images).hasSizeGreaterThan(1);
    for (Matrix image : images) {
      double length = Math.hypot(image.getScaleX(), image.getShearY()) * MM;
      assertThat(length).isCloseTo(325.12, within(0.05));
    }
  }

  @Test
  void whatCannotBeMeantIsTold() {
    TinyLog log = log("patterns: {scans: model}");
    log.replace("facts.yaml", "true_x: 2.4 m", "true_x: 24 m");
    log.replace("facts.yaml", "true_y: 2.2 m", "true_y: 22 m");
    assertThat(log.run("check").err())
        .contains("sheets/lines.png: error", "33 m long", "scans: full");
    log.replace("log.yaml", "scans: model", "scans: modle");
    assertThat(log.run("check").err()).contains("Did you mean \"model\"?");
  }

  private static List<Matrix> images(Path pdf) throws IOException {
    List<Matrix> found = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (PDPage page : document.getPages()) {
        PDFStreamEngine engine = new PDFStreamEngine() {};
        engine.addOperator(new Concatenate(engine));
        engine.addOperator(new Save(engine));
        engine.addOperator(new Restore(engine));
        engine.addOperator(
            new DrawObject(engine) {
              @Override
              public void process(Operator operator, List<COSBase> operands) {
                found.add(engine.getGraphicsState().getCurrentTransformationMatrix().clone());
              }
            });
        engine.processPage(page);
      }
    }
    return found;
  }
}

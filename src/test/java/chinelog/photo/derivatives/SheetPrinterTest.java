package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.photo.JpegWalk;
import chinelog.photo.Shared;
import chinelog.photo.Shots;
import chinelog.problem.ProblemException;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationSquare;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class SheetPrinterTest {

  @TempDir Path folder;
  private SheetPrinter printer;

  @BeforeEach
  void begin() throws IOException {
    Files.createDirectories(folder.resolve("sheets"));
    printer = new SheetPrinter(folder);
  }

  @Test
  void aPageOfAPdfBecomesFreshPixelsWithoutTheRemarksStuckOnIt() throws IOException {
    Files.write(folder.resolve("sheets/lines.pdf"), pdf());

    assertThat(printer.pages("sheets/lines.pdf")).isEqualTo(2);
    Darkroom.Prints prints = printer.print("sheets/lines.pdf", 2);

    // 8 × 4 inches at 150 dpi.
    assertThat(prints.prints())
        .extracting(p -> p.widthPx() + "x" + p.heightPx())
        .containsExactly("320x160", "800x400", "1200x600");
    BufferedImage read = ImageIO.read(prints.prints().get(2).jpeg().toFile());
    assertThat(new Color(read.getRGB(300, 300)).getBlue()).isGreaterThan(240);
    assertThat(new Color(read.getRGB(300, 300)).getRed()).isLessThan(20);
    assertThat(new Color(read.getRGB(900, 300))).as("where the remark is").isEqualTo(Color.WHITE);
    for (Darkroom.Print print : prints.prints()) {
      JpegWalk.assertClean(Files.readAllBytes(print.jpeg()));
    }
    assertThat(printer.print("sheets/lines.pdf", 2)).isEqualTo(prints);
  }

  @Test
  void aScanIsPrintedUpright() throws IOException {
    byte[] scan = Shots.withExif(Shots.jpeg(Shots.scene(300, 200, 1), 0.9), 6, "", "", "");
    Files.write(folder.resolve("sheets/scan.jpg"), scan);

    assertThat(printer.pages("sheets/scan.jpg")).isEqualTo(1);
    assertThat(printer.print("sheets/scan.jpg", 1).prints())
        .extracting(p -> p.widthPx() + "x" + p.heightPx())
        .containsExactly("200x300");
  }

  @Test
  void aPageThatIsNotThereAndASheetThatIsNoneAreRefusedInWords() throws IOException {
    Files.write(folder.resolve("sheets/lines.pdf"), pdf());
    Files.writeString(folder.resolve("sheets/broken.pdf"), "%PDF-1.7 and nothing");
    Files.writeString(folder.resolve("sheets/notes.txt"), "notes");

    assertThatThrownBy(() -> printer.print("sheets/lines.pdf", 3))
        .hasMessageContaining("There is no page 3");
    assertThatThrownBy(() -> printer.print("sheets/broken.pdf", 1))
        .hasMessageContaining("cannot be drawn");
    assertThatThrownBy(() -> printer.print("sheets/notes.txt", 1))
        .hasMessageContaining("neither a PDF nor a picture");
    assertThatThrownBy(() -> printer.print("../lines.pdf", 1))
        .hasMessageContaining("not a file that lies in the log");
  }

  @Test
  void hostilePdfsFromElsewhereArePrintedCleanOrRefused() throws IOException {
    List<Path> files = new ArrayList<>(Shared.files("corpus/11-pdf-hostile"));
    files.addAll(Shared.files("corpus/09-pdf-failed-redaction"));
    for (Path file : files) {
      if (!file.toString().endsWith(".pdf")) {
        continue;
      }
      Files.copy(file, folder.resolve("sheets").resolve(file.getFileName()));
      try {
        Darkroom.Prints prints = printer.print("sheets/" + file.getFileName(), 1);
        for (Darkroom.Print print : prints.prints()) {
          JpegWalk.assertClean(Files.readAllBytes(print.jpeg()));
        }
      } catch (ProblemException refused) {
        assertThat(refused.problem().remedy()).endsWith(".");
      }
    }
  }

  private static byte[] pdf() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage(PDRectangle.A4));
      PDPage page = new PDPage(new PDRectangle(576, 288));
      document.addPage(page);
      try (PDPageContentStream content = new PDPageContentStream(document, page)) {
        content.setNonStrokingColor(Color.BLUE);
        content.addRect(0, 0, 288, 288);
        content.fill();
      }
      PDAnnotationSquare remark = new PDAnnotationSquare();
      remark.setRectangle(new PDRectangle(400, 100, 80, 80));
      remark.setInteriorColor(new PDColor(new float[] {1, 0, 0}, PDDeviceRGB.INSTANCE));
      remark.constructAppearances();
      page.setAnnotations(List.of(remark));
      document.save(bytes);
    }
    return bytes.toByteArray();
  }
}

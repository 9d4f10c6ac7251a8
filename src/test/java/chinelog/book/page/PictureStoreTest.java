package chinelog.book.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.edition.Picture;
import chinelog.markup.Theme;
import chinelog.problem.ProblemException;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PictureStoreTest {

  private static final int WIDTH = 40;

  private static final int HEIGHT = 30;

  @TempDir Path folder;

  @Test
  void aPictureIsPrinted() throws IOException {
    assertThat(print(jpeg(WIDTH))).exists();
  }

  /** Damage that a kept file may take without becoming longer or shorter. */
  @ParameterizedTest
  @ValueSource(strings = {"its beginning", "all of it", "its size"})
  void aPictureThatIsDamagedIsToldOfAndNotPassedOver(String damaged) throws IOException {
    byte[] jpeg = jpeg(damaged.equals("its size") ? WIDTH + 1 : WIDTH);
    if (!damaged.equals("its size")) {
      Arrays.fill(jpeg, 0, damaged.equals("all of it") ? jpeg.length : 4, (byte) 0);
    }
    assertThatThrownBy(() -> print(jpeg))
        .isInstanceOf(ProblemException.class)
        .hasMessage(
            "The picture of plate-012 that is kept there is damaged."
                + " Delete the folder .chinelog and run the command again.");
  }

  private static byte[] jpeg(int width) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(width, HEIGHT, BufferedImage.TYPE_INT_RGB), "jpeg", out);
    return out.toByteArray();
  }

  private Path print(byte[] jpeg) throws IOException {
    Picture picture =
        new Picture(
            "plate-012",
            List.of(new Picture.Rendition(WIDTH, HEIGHT, () -> new ByteArrayInputStream(jpeg))),
            List.of());
    PictureStore pictures = new PictureStore();
    String html =
        "<html lang=\"en\"><head><title>Plate</title></head><body><div class=\"body\"><p><img src=\""
            + pictures.address(picture, 50)
            + "\" alt=\"A plate\"/></p></div></body></html>";
    Manuscript manuscript =
        new Manuscript(
            html,
            pictures,
            Locale.UK,
            LocalDate.of(2026, 3, 14),
            Trim.A4,
            "Under agreement: ",
            Manuscript.Slug.NONE);
    Path pdf = folder.resolve("plate.pdf");

    new Printer(Theme.load(Theme.USUAL, null).bookFonts(), 0).print(manuscript, pdf);
    return Files.exists(pdf) ? pdf : folder;
  }
}

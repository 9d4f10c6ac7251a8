package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.audit.Canary;
import chinelog.label.Clearance;
import chinelog.log.records.Readers;
import chinelog.withhold.Correspondence;
import chinelog.withhold.Withholder;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CanariesTest {

  private static final LocalDate DAY = LocalDate.of(2026, 5, 20);

  @TempDir Path folder;

  @Test
  void theAuditLooksForWordsInsideWithheldPhotographsAndNotForThoseInsideShownOnes()
      throws IOException {
    Files.writeString(
        folder.resolve("log.yaml"),
        """
        title: Building Merrow
        agreements:
          lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02}
        """);
    Path photos = Files.createDirectory(folder.resolve("photos"));
    Files.writeString(
        photos.resolve("photos.yaml"), "b.jpg: {under: lines}\nc.jpg: {leave-out: true}\n");
    Files.write(photos.resolve("a.jpg"), shot(1, "Clamps along the sheer"));
    Files.write(photos.resolve("b.jpg"), shot(2, "The knuckle, 31 mm from the rabbet line"));
    Files.write(photos.resolve("c.jpg"), shot(3, "Nobody is to see"));

    Workshop.Opened opened = Workshop.open(folder, DAY, DAY, ZoneId.of("UTC"), step -> {});
    Readers readers =
        opened.log().readers().stream().filter(r -> r.id().equals("public")).findFirst().get();
    Withholder.Withheld withheld =
        Withholder.prepare(
                opened.log(),
                opened.facts(),
                opened.album(),
                new LogPictures(opened.log(), new Clearance(new TreeSet<>()), step -> {}),
                readers,
                DAY,
                java.util.Set.of(),
                Correspondence.NONE)
            .against(List.of());

    assertThat(Canaries.of(opened, withheld))
        .extracting(Canary::text)
        .contains("mm from the rabbet line", "Nobody is to see")
        .doesNotContain("Clamps along the sheer");
    assertThat(Canaries.shown(opened, withheld)).contains("Clamps along the sheer");
  }

  private static byte[] shot(int shade, String caption) throws IOException {
    ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
    BufferedImage image = new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB);
    image.setRGB(7, 7, 0xFFFFFF / shade);
    ImageIO.write(image, "jpeg", jpeg);
    byte[] xmp =
        ("http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x='adobe:ns:meta/'>"
                + "<rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>"
                + "<rdf:Description xmlns:dc='http://purl.org/dc/elements/1.1/' dc:description='"
                + caption
                + "'/></rdf:RDF></x:xmpmeta>")
            .getBytes(StandardCharsets.UTF_8);
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.writeBytes(Arrays.copyOf(jpeg.toByteArray(), 2));
    all.writeBytes(
        new byte[] {
          (byte) 0xFF, (byte) 0xE1, (byte) (xmp.length + 2 >> 8), (byte) (xmp.length + 2)
        });
    all.writeBytes(xmp);
    all.writeBytes(Arrays.copyOfRange(jpeg.toByteArray(), 2, jpeg.size()));
    return all.toByteArray();
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.CubicCurve2D;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import javax.imageio.ImageIO;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What readers see first, and what they who get no site are led to. */
class FirstPictureTest {

  @TempDir Path folder;

  @Test
  void neitherAFilledPictureNorADrawingStandsFirst() throws IOException {
    TinyLog log =
        TinyLog.in(folder)
            .write("photos/curves.png", drawing())
            .write("photos/deck.png", deck())
            .write(
                "photos/photos.yaml",
                "keel.png: {regions: [{box: [0, 0, 50 %, 50 %], under: lines}]}\n")
            .replace(
                TinyLog.NOTE,
                "](../photos/keel.png)\n",
                "](../photos/keel.png)\n\n![Curves](../photos/curves.png)\n\n"
                    + "![The deck](../photos/deck.png)\n");
    TinyLog.Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.out() + said.err()).isEqualTo(Main.DONE);
    Document home = Jsoup.parse(log.read("published/public/site/index.html"));
    assertThat(home.select("main img").eachAttr("alt"))
        .as("hero and head of the post")
        .isNotEmpty()
        .allMatch("The deck"::equals);
  }

  @Test
  void anAddressDoesNotStandInTheWayOfReadersWhoGetABookAlone() {
    TinyLog log =
        TinyLog.in(folder)
            .replace("log.yaml", "readers:\n", "address: https://merrow.example/\nreaders:\n")
            .replace(
                "log.yaml",
                "  workshop:",
                "  client: {title: The client, party-to: [], gets: [book]}\n  workshop:");
    TinyLog.Said said = log.run("publish", "--for", "client");
    assertThat(said.status()).as(said.out() + said.err()).isEqualTo(Main.DONE);
  }

  /** Thin dark lines on light paper. */
  private static byte[] drawing() throws IOException {
    BufferedImage sheet = new BufferedImage(1200, 850, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = sheet.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, 1200, 850);
    g.setColor(Color.BLACK);
    g.setStroke(new BasicStroke(1.5f));
    for (int i = 0; i < 10; i++) {
      g.draw(new Line2D.Double(100 + 100 * i, 100, 100 + 100 * i, 700));
      g.draw(new CubicCurve2D.Double(80, 650 - 20 * i, 400, 700, 800, 690, 1100, 200 + 25 * i));
    }
    g.dispose();
    return png(sheet);
  }

  private static byte[] deck() throws IOException {
    BufferedImage scene = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = scene.createGraphics();
    Random random = new Random(21);
    for (int i = 0; i < 60; i++) {
      g.setColor(new Color(random.nextInt(1 << 24)));
      g.fillOval(random.nextInt(600), random.nextInt(440), 120, 90);
    }
    g.dispose();
    return png(scene);
  }

  private static byte[] png(BufferedImage picture) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", bytes);
    return bytes.toByteArray();
  }
}

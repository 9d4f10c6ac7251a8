package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.photo.Darkroom;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FastPhotosTest {

  @TempDir Path folder;

  @Test
  void fastPhotosAreOtherBytesOfTheSameSizesAndTheSummarySaysSo() throws IOException {
    assumeTrue(Darkroom.hasFastWay(), "libjpeg-turbo is not here, so it is not tried");
    TinyLog log = TinyLog.in(folder);
    log.remove(TinyLog.PHOTO).write("photos/keel.jpg", large());
    log.replace(TinyLog.NOTE, "keel.png", "keel.jpg");

    TinyLog.Said plain = log.run("publish", "--for", "public");
    SortedMap<String, byte[]> carefully = pictures(log);
    TinyLog.Said fast = log.run("publish", "--for", "public", "--fast-photos");
    SortedMap<String, byte[]> quickly = pictures(log);

    assertThat(plain.status()).as(plain.out() + plain.err()).isZero();
    assertThat(plain.out()).doesNotContain("libjpeg-turbo");
    assertThat(fast.status()).as(fast.out() + fast.err()).isZero();
    assertThat(fast.out()).contains("Photographs were reduced by libjpeg-turbo.");
    assertThat(sizes(quickly)).isEqualTo(sizes(carefully)).contains("2400x1600", "320x213");
    assertThat(quickly.values()).doesNotContainAnyElementsOf(carefully.values());

    log.run("publish", "--for", "public");
    assertThat(pictures(log).values())
        .as("the usual way afterwards is as it was")
        .containsExactlyElementsOf(carefully.values());
  }

  /** Larger than the largest derivative by enough for a smaller decode. */
  private static byte[] large() throws IOException {
    BufferedImage picture = new BufferedImage(3600, 2400, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = picture.createGraphics();
    g.setPaint(new GradientPaint(0, 0, Color.ORANGE, 3600, 2400, Color.DARK_GRAY));
    g.fillRect(0, 0, 3600, 2400);
    g.setColor(Color.RED);
    g.fillOval(700, 500, 1900, 1300);
    g.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(picture, "jpg", bytes);
    return bytes.toByteArray();
  }

  private static SortedMap<String, byte[]> pictures(TinyLog log) {
    SortedMap<String, byte[]> pictures = new TreeMap<>();
    log.everything()
        .forEach(
            (name, text) -> {
              if (name.startsWith("published/public/") && name.endsWith(".jpg")) {
                pictures.put(name, text.getBytes(StandardCharsets.ISO_8859_1));
              }
            });
    return pictures;
  }

  private static List<String> sizes(SortedMap<String, byte[]> pictures) throws IOException {
    List<String> sizes = new ArrayList<>();
    for (byte[] jpeg : pictures.values()) {
      BufferedImage picture = ImageIO.read(new ByteArrayInputStream(jpeg));
      sizes.add(picture.getWidth() + "x" + picture.getHeight());
    }
    sizes.sort(null);
    return sizes;
  }
}

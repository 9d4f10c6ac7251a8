package chinelog.photo.likeness;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shots;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.pixels.Box;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.Kernel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BurstTest {

  private static final BufferedImage BOAT = Shots.scene(600, 400, 1);

  @TempDir Path folder;
  private Logs logs;

  @BeforeEach
  void begin() {
    logs = new Logs(folder);
  }

  @Test
  void theSharpestOfPhotographsInARowIsProposed() throws IOException {
    logs.photo("photos/a.jpg", shot(blurred(BOAT), "T-20", "10:00:00"))
        .photo("photos/b.jpg", shot(BOAT, "T-20", "10:00:02"))
        .photo("photos/c.jpg", shot(blurred(blurred(BOAT)), "T-20", "10:00:40"));

    assertThat(bursts()).containsExactly("a b c: b");
    assertThat(
            Burst.find(logs.open(), new Darkroom(folder), PhotoProgress.SILENT).get(0).reminder())
        .hasToString(
            "photos/a.jpg: reminder: 3 photographs taken in a row look alike, up to photos/c.jpg;"
                + " the sharpest is photos/b.jpg."
                + " If one is enough, write leave-out: true for the others in photos.yaml.");
  }

  @Test
  void twoAreNoBurstNorAreThreeThatALongPauseParts() throws IOException {
    logs.photo("photos/a.jpg", shot(BOAT, "T-20", "10:00:00"))
        .photo("photos/b.jpg", shot(blurred(BOAT), "T-20", "10:00:10"))
        .photo("photos/c.jpg", shot(blurred(blurred(BOAT)), "T-20", "10:01:11"));

    assertThat(bursts()).isEmpty();
  }

  @Test
  void anotherSubjectOrAnotherCameraEndsARow() throws IOException {
    logs.photo("photos/a.jpg", shot(BOAT, "T-20", "10:00:00"))
        .photo("photos/b.jpg", shot(blurred(BOAT), "T-20", "10:00:01"))
        .photo("photos/c.jpg", shot(Shots.scene(600, 400, 77), "T-20", "10:00:02"))
        .photo("photos/d.jpg", shot(blurred(blurred(BOAT)), "P-9", "10:00:02"));

    assertThat(bursts()).isEmpty();
  }

  @Test
  void rowsOfTwoCamerasThatWorkAtOnceAreToldApart() throws IOException {
    for (int i = 0; i < 3; i++) {
      BufferedImage boat = i == 1 ? BOAT : Shots.with(blurred(BOAT), new Box(i, 0, i + 1, 1), i);
      logs.photo("photos/p" + i + ".jpg", shot(boat, "P-9", "10:00:0" + i));
      logs.photo("photos/t" + i + ".jpg", shot(boat, "T-20", "10:00:0" + i));
    }

    assertThat(bursts()).containsExactly("p0 p1 p2: p1", "t0 t1 t2: t1");
  }

  private List<String> bursts() throws IOException {
    return Burst.find(logs.open(), new Darkroom(folder), PhotoProgress.SILENT).stream()
        .map(
            b ->
                String.join(" ", b.photographs().stream().map(BurstTest::name).toList())
                    + ": "
                    + name(b.sharpest()))
        .toList();
  }

  private static String name(Photograph photograph) {
    return photograph.file().path().replaceAll("photos/|\\.jpg", "");
  }

  private static byte[] shot(BufferedImage image, String camera, String time) {
    return Shots.withExif(Shots.jpeg(image, 0.9), 1, camera, "2026:04:01 " + time, "");
  }

  private static BufferedImage blurred(BufferedImage image) {
    float[] ninth = new float[9];
    Arrays.fill(ninth, 1 / 9f);
    BufferedImage blurred =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
    return new ConvolveOp(new Kernel(3, 3, ninth), ConvolveOp.EDGE_NO_OP, null)
        .filter(image, blurred);
  }
}

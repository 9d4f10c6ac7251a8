package chinelog.photo.likeness;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shared;
import chinelog.photo.Shots;
import chinelog.photo.album.Album;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.pixels.Box;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LikenessTest {

  @TempDir Path folder;

  @Test
  void aCopySavedAgainACropAndATurnedCopyAreFoundAndAStrangerIsNot() throws IOException {
    BufferedImage scene = Shots.scene(800, 600, 1);
    Logs logs =
        new Logs(folder)
            .photo("photos/a-withheld.jpg", Shots.jpeg(scene, 0.9))
            .photo("photos/b-again.jpg", Shots.jpeg(scene, 0.5))
            .photo("photos/c-crop.jpg", Shots.jpeg(part(scene, 40, 30, 740, 560), 0.9))
            .photo("photos/d-turned.jpg", Shots.withExif(Shots.jpeg(scene, 0.8), 6, "", "", ""))
            .photo("photos/e-lighter.png", Shots.png(lighter(scene)))
            .photo("photos/f-stranger.jpg", Shots.jpeg(Shots.scene(800, 600, 2), 0.9));

    assertThat(found(logs.open(), "photos/a-withheld.jpg"))
        .containsExactly(
            "photos/b-again.jpg",
            "photos/c-crop.jpg",
            "photos/d-turned.jpg",
            "photos/e-lighter.png");
  }

  @Test
  void whatIsWithheldItselfOrLeftOutIsNotReported() throws IOException {
    byte[] shot = Shots.jpeg(Shots.scene(400, 300, 1), 0.9);
    Album album =
        new Logs(folder)
            .photo("photos/a.jpg", shot)
            .photo("photos/b.jpg", Shots.jpeg(Shots.scene(400, 300, 1), 0.5))
            .photo("photos/copy of a.jpg", shot)
            .open();

    assertThat(found(album, "photos/a.jpg", "photos/b.jpg")).isEmpty();
    assertThat(found(album)).isEmpty();
  }

  @Test
  void inABurstLessWillDo() throws IOException {
    BufferedImage scene = Shots.scene(800, 600, 1);
    BufferedImage moved =
        Shots.painted(scene, new Box(180, 150, 440, 380), new Color(0x20, 0x40, 0x20));
    Album album =
        new Logs(folder)
            .photo("photos/a.jpg", timed(scene, "2026:03:14 09:10:00"))
            .photo("photos/b.jpg", timed(moved, "2026:03:14 09:10:02"))
            .photo("photos/c.jpg", timed(lighter(moved), "2026:03:14 10:10:02"))
            .open();

    assertThat(found(album, "photos/a.jpg")).containsExactly("photos/b.jpg");
  }

  @Test
  void verdictsAreRememberedAndForgottenWhenDamaged() throws IOException {
    BufferedImage scene = Shots.scene(400, 300, 1);
    Album album =
        new Logs(folder)
            .photo("photos/a.jpg", Shots.jpeg(scene, 0.9))
            .photo("photos/b.jpg", Shots.jpeg(scene, 0.5))
            .open();
    List<String> first = found(album, "photos/a.jpg");
    Path kept;
    try (var files = Files.list(folder.resolve(".chinelog/likeness"))) {
      kept = files.findFirst().orElseThrow();
    }

    assertThat(found(album, "photos/a.jpg")).isEqualTo(first).containsExactly("photos/b.jpg");
    Files.writeString(kept, Files.readString(kept).substring(70));
    assertThat(found(album, "photos/a.jpg")).isEqualTo(first);
  }

  @Test
  void onePhotographMoreIsTheOnlyOneToBeCompared() throws IOException {
    BufferedImage scene = Shots.scene(400, 300, 1);
    Logs logs =
        new Logs(folder)
            .photo("photos/a.jpg", Shots.jpeg(scene, 0.9))
            .photo("photos/b.jpg", Shots.jpeg(scene, 0.5))
            .photo("photos/c.jpg", Shots.jpeg(Shots.scene(400, 300, 2), 0.9));
    assertThat(found(logs.open(), "photos/a.jpg")).containsExactly("photos/b.jpg");

    Album album = logs.photo("photos/d.jpg", Shots.jpeg(scene, 0.7)).open();
    List<Integer> looks = new ArrayList<>();
    List<Likeness> alike =
        Likeness.find(
            album, new Darkroom(folder), Set.of("photos/a.jpg"), (done, of) -> looks.add(of));

    assertThat(alike)
        .extracting(l -> l.open().file().path())
        .containsExactly("photos/b.jpg", "photos/d.jpg");
    assertThat(looks).as("the withheld one and the new one").containsExactly(2, 2);
  }

  /** The demo's drawing, photographed twice from slightly different places, and nothing else. */
  @Test
  void ofTheDemosPhotographsOnlyTheNextOfTheDrawingIsFound() throws IOException {
    Logs logs = new Logs(folder);
    for (Path file : Shared.files("scenes/photos")) {
      logs.photo("photos/" + file.getFileName(), Files.readAllBytes(file));
    }

    assertThat(found(logs.open(), "photos/T20_0415.jpg")).containsExactly("photos/T20_0416.jpg");
  }

  private List<String> found(Album album, String... withheld) throws IOException {
    Set<String> paths = new TreeSet<>(List.of(withheld));
    return Likeness.find(album, new Darkroom(folder), paths, PhotoProgress.SILENT).stream()
        .map(l -> l.open().file().path())
        .sorted()
        .toList();
  }

  private static byte[] timed(BufferedImage image, String time) {
    return Shots.withExif(Shots.jpeg(image, 0.9), 1, "T-20", time, "");
  }

  private static BufferedImage part(BufferedImage image, int l, int t, int r, int b) {
    BufferedImage part = new BufferedImage(r - l, b - t, BufferedImage.TYPE_3BYTE_BGR);
    part.createGraphics().drawImage(image, -l, -t, null);
    return part;
  }

  private static BufferedImage lighter(BufferedImage image) {
    BufferedImage lighter = new BufferedImage(image.getWidth(), image.getHeight(), image.getType());
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        Color c = new Color(image.getRGB(x, y));
        lighter.setRGB(
            x,
            y,
            new Color(c.getRed() / 2 + 100, c.getGreen() / 2 + 100, c.getBlue() / 2 + 100)
                .getRGB());
      }
    }
    return lighter;
  }
}

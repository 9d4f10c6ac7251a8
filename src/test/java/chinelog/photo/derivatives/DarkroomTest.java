package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.log.records.PhotoFile;
import chinelog.photo.JpegWalk;
import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shots;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom.Print;
import chinelog.photo.derivatives.Darkroom.Prints;
import chinelog.photo.pixels.Box;
import chinelog.photo.pixels.Orientation;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DarkroomTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "3000, 1500, '320x160 800x400 1600x800 2400x1200'",
    "900, 1801, '160x320 400x800 800x1600 900x1801'",
    "200, 100, 200x100",
    "1, 1, 1x1",
    "5000, 3, '320x1 800x1 1600x1 2400x1'"
  })
  void sizesAreThoseAskedForAndNeverLargerThanTheSource(int w, int h, String expected)
      throws IOException {
    Prints prints = print(Shots.jpeg(Shots.scene(w, h, 1), 0.9));

    assertThat(prints.prints().stream().map(p -> p.widthPx() + "x" + p.heightPx()))
        .containsExactly(expected.split(" "));
    for (Print print : prints.prints()) {
      BufferedImage read = ImageIO.read(print.jpeg().toFile());
      assertThat(read.getWidth()).isEqualTo(print.widthPx());
      assertThat(read.getHeight()).isEqualTo(print.heightPx());
      JpegWalk.assertClean(Files.readAllBytes(print.jpeg()));
    }
  }

  @Test
  void nothingBehindTheEndOfAPictureAndNoCameraDataReachesAPrint() throws IOException {
    byte[] shot =
        Shots.withExif(
            Shots.jpeg(Shots.scene(400, 300, 1), 0.9), 6, "T-20", "2026:04:01 18:40:11", "+01:00");
    byte[] trailed = Arrays.copyOf(shot, shot.length + 9000);
    Arrays.fill(trailed, shot.length, trailed.length, (byte) 'x');

    for (Print print : print(trailed).prints()) {
      JpegWalk.assertClean(Files.readAllBytes(print.jpeg()));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "1, 0.75", "2, 0.88", "3, 0.92", "4, 0.98", "5, 0.75", "6, 0.88", "7, 0.92", "8, 0.98"
  })
  void twoPhotographsThatDifferOnlyInsideARegionGiveTheSameBytes(int orientation, double quality)
      throws IOException {
    PhotoFile.Region region = Logs.region(0.21, 0.33, 0.48, 0.57);
    Orientation turn = Orientation.of(orientation);
    int w = turn.swapsSides() ? 501 : 777;
    int h = turn.swapsSides() ? 777 : 501;
    Box upright =
        new Box(
            (int) Math.ceil(0.21 * w),
            (int) Math.ceil(0.33 * h),
            (int) Math.floor(0.48 * w),
            (int) Math.floor(0.57 * h));
    Box stored = turn.stored(upright, w, h);
    BufferedImage scene = Shots.scene(777, 501, 5);
    byte[] one = camera(Shots.with(scene, stored, 11), orientation, quality);
    byte[] other = camera(Shots.with(scene, stored, 12), orientation, quality);

    assertThat(bytes(print(folder.resolve("a"), one, region)))
        .isEqualTo(bytes(print(folder.resolve("b"), other, region)));
    assertThat(bytes(print(folder.resolve("a"), one)))
        .as("unfilled, they differ")
        .isNotEqualTo(bytes(print(folder.resolve("b"), other)));
  }

  /** ITU-T T.81, A.2.3: blocks of one scan's unit number ten at most, so 4 by 2 is the largest. */
  @ParameterizedTest
  @CsvSource({"1, 1", "2, 1", "1, 2", "2, 2", "4, 1", "1, 4", "4, 2", "2, 4"})
  void soTheyDoHoweverTheirColoursAreThinnedOut(int h, int v) throws IOException {
    PhotoFile.Region region = Logs.region(0.21, 0.33, 0.48, 0.57);
    Box box = new Box(164, 166, 372, 285);
    BufferedImage scene = Shots.scene(777, 501, 5);
    byte[] one = Shots.jpegInBlocks(Shots.with(scene, box, 11), h, v);
    byte[] other = Shots.jpegInBlocks(Shots.with(scene, box, 12), h, v);

    assertThat(one).as("as asked").containsSequence(1, h << 4 | v, 0, 2, 0x11, 1, 3, 0x11, 1);
    assertThat(bytes(print(folder.resolve("a"), one, region)))
        .isEqualTo(bytes(print(folder.resolve("b"), other, region)));
    assertThat(bytes(print(folder.resolve("a"), one)))
        .as("unfilled, they differ")
        .isNotEqualTo(bytes(print(folder.resolve("b"), other)));
  }

  @Test
  void whatAKilledRunLeftInTheCacheIsClearedAndWhatIsFreshIsNot() throws IOException {
    Path prints = Files.createDirectories(folder.resolve(".chinelog/prints"));
    Path old = Files.createDirectory(prints.resolve("new123"));
    Files.write(old.resolve("320x213.jpg"), new byte[9]);
    Path fresh = Files.createDirectory(prints.resolve("new456"));
    Path kept = Files.createDirectory(prints.resolve("ab"));
    FileTime longAgo = FileTime.from(Instant.parse("2026-01-01T00:00:00Z"));
    Files.setLastModifiedTime(old, longAgo);
    Files.setLastModifiedTime(kept, longAgo);

    print(Shots.jpeg(Shots.scene(90, 70, 4), 0.9));

    assertThat(old).doesNotExist();
    assertThat(fresh).exists();
    assertThat(kept).exists();
  }

  @Test
  void aFilledRegionIsOneColourInEverySize() throws IOException {
    byte[] shot = Shots.jpeg(Shots.scene(2600, 1700, 3), 0.9);

    for (Print print : print(shot, Logs.region(0.25, 0.25, 0.75, 0.75)).prints()) {
      BufferedImage read = ImageIO.read(print.jpeg().toFile());
      for (int y = print.heightPx() / 4; y < print.heightPx() * 3 / 4; y++) {
        for (int x = print.widthPx() / 4; x < print.widthPx() * 3 / 4; x++) {
          Color colour = new Color(read.getRGB(x, y));
          // JPEG at this quality strays by a few levels near the region's edge.
          assertThat(List.of(colour.getRed(), colour.getGreen(), colour.getBlue()))
              .allMatch(v -> Math.abs(v - 0x8C) <= 6);
        }
      }
    }
  }

  @Test
  void aRegionWithoutSenseFillsTheWholePicture() throws IOException {
    byte[] shot = Shots.jpeg(Shots.scene(300, 200, 3), 0.9);

    assertThat(colour(print(shot, Logs.region(0.8, 0.1, 0.2, 0.5)))).isEqualTo("#8c8c8c");
    assertThat(colour(print(shot, Logs.region(Double.NaN, 0.1, 0.2, 0.5)))).isEqualTo("#8c8c8c");
  }

  @Test
  void theSameSourceGivesTheSameBytesWithAColdAndAWarmCache() throws IOException {
    byte[] shot = Shots.jpeg(Shots.scene(1000, 700, 4), 0.9);
    List<ByteBuffer> cold = bytes(print(folder.resolve("a"), shot));

    assertThat(bytes(print(folder.resolve("a"), shot))).isEqualTo(cold);
    assertThat(bytes(print(folder.resolve("b"), shot))).isEqualTo(cold);
  }

  @Test
  void whatIsKeptIsNotMadeAgainAndWhatIsDamagedIs() throws IOException {
    Album album =
        new Logs(folder).photo("photos/a.jpg", Shots.jpeg(Shots.scene(900, 700, 4), 0.9)).open();
    Photograph photograph = album.photographs().get(0);
    Prints first = new Darkroom(folder).print(photograph, List.of());
    List<ByteBuffer> bytes = bytes(first);
    Files.delete(folder.resolve("photos/a.jpg"));

    assertThat(new Darkroom(folder).print(photograph, List.of())).isEqualTo(first);

    Files.write(first.prints().get(1).jpeg(), new byte[] {1, 2, 3});
    assertThatThrownBy(() -> new Darkroom(folder).print(photograph, List.of()))
        .as("the kept print is damaged and its source is gone")
        .isInstanceOf(IOException.class);

    Files.write(folder.resolve("photos/a.jpg"), Shots.jpeg(Shots.scene(900, 700, 4), 0.9));
    assertThat(bytes(new Darkroom(folder).print(photograph, List.of()))).isEqualTo(bytes);
  }

  @Test
  void aPhotographThatChangedSinceTheAlbumWasOpenedIsRefused() throws IOException {
    Album album =
        new Logs(folder).photo("photos/a.jpg", Shots.jpeg(Shots.scene(90, 70, 4), 0.9)).open();
    Files.write(folder.resolve("photos/a.jpg"), Shots.jpeg(Shots.scene(90, 70, 5), 0.9));

    assertThatThrownBy(() -> new Darkroom(folder).print(album.photographs().get(0), List.of()))
        .hasMessageContaining("changed while");
  }

  @Test
  void aDamagedPhotographCostsOneMessageAndNotTheRun() throws IOException {
    byte[] good = Shots.jpeg(Shots.scene(400, 300, 1), 0.9);
    byte[] garbled = good.clone();
    // The end marker stays where it was, so only a decoder can tell.
    Arrays.fill(garbled, good.length / 2, good.length - 2, (byte) 0);
    Album album =
        new Logs(folder)
            .photo("photos/a.jpg", Shots.jpeg(Shots.scene(400, 300, 2), 0.9))
            .photo("photos/b.jpg", garbled)
            .photo("photos/c.jpg", good)
            .open();
    List<Darkroom.Order> orders =
        album.photographs().stream().map(p -> new Darkroom.Order(p, List.of())).toList();

    Darkroom.Development development = new Darkroom(folder).develop(orders, PhotoProgress.SILENT);

    assertThat(development.prints()).containsOnlyKeys(orders.get(0), orders.get(2));
    assertThat(development.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.toString()).contains("photos/b.jpg").contains("damaged"));
  }

  @Test
  void whatIsTransparentBecomesWhite() throws IOException {
    BufferedImage clear = new BufferedImage(64, 64, BufferedImage.TYPE_INT_ARGB);

    assertThat(colour(print(Shots.png(clear)))).isEqualTo("#ffffff");
  }

  @Test
  void greyStaysAsLightAsItWasInEightAndSixteenBits() throws IOException {
    BufferedImage eight = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
    BufferedImage sixteen = new BufferedImage(64, 64, BufferedImage.TYPE_USHORT_GRAY);
    for (int i = 0; i < 64 * 64; i++) {
      eight.getRaster().setSample(i % 64, i / 64, 0, 0x60);
      sixteen.getRaster().setSample(i % 64, i / 64, 0, 0x6060);
    }

    assertThat(colour(print(Shots.png(eight)))).isEqualTo("#606060");
    assertThat(colour(print(folder.resolve("b"), Shots.png(sixteen)))).isEqualTo("#606060");
    assertThat(colour(print(folder.resolve("c"), Shots.jpeg(eight, 1)))).isEqualTo("#606060");
  }

  /** The mean colour of the smallest. */
  private static String colour(Prints prints) throws IOException {
    BufferedImage small = ImageIO.read(prints.prints().get(0).jpeg().toFile());
    long[] sums = new long[3];
    int[] pixels =
        small.getRGB(0, 0, small.getWidth(), small.getHeight(), null, 0, small.getWidth());
    for (int pixel : pixels) {
      sums[0] += pixel >> 16 & 0xFF;
      sums[1] += pixel >> 8 & 0xFF;
      sums[2] += pixel & 0xFF;
    }
    int n = pixels.length;
    return String.format("#%02x%02x%02x", sums[0] / n, sums[1] / n, sums[2] / n);
  }

  private Prints print(byte[] shot, PhotoFile.Region... regions) throws IOException {
    return print(folder, shot, regions);
  }

  private static Prints print(Path folder, byte[] shot, PhotoFile.Region... regions)
      throws IOException {
    Album album = new Logs(folder).photo("photos/a.jpg", shot).open();
    assertThat(album.problems()).noneMatch(p -> p.isError());
    return new Darkroom(folder).print(album.photographs().get(0), List.of(regions));
  }

  private static byte[] camera(BufferedImage image, int orientation, double quality) {
    return Shots.withExif(Shots.jpeg(image, quality), orientation, "T-20", "", "");
  }

  private static List<ByteBuffer> bytes(Prints prints) throws IOException {
    List<ByteBuffer> all = new ArrayList<>();
    for (Print print : prints.prints()) {
      all.add(ByteBuffer.wrap(Files.readAllBytes(print.jpeg())));
    }
    return all;
  }
}

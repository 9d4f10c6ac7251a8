package chinelog.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TurboTest {

  @TempDir Path folder;

  @BeforeEach
  void begin() {
    assumeTrue(Turbo.find().isPresent(), "libjpeg-turbo is not here, so it is not tried");
  }

  @Test
  void bothWaysGiveTheSameSizesAndPicturesThatLookTheSame() throws IOException {
    byte[] shot = Shots.withExif(Shots.jpeg(Shots.scene(4000, 3001, 1), 0.9), 6, "T-20", "", "");
    Photograph photograph =
        new Logs(folder).photo("photos/a.jpg", shot).open().photographs().get(0);
    List<Darkroom.Print> plain = new Darkroom(folder).print(photograph, List.of()).prints();
    List<Darkroom.Print> fast =
        new Darkroom(folder, true, Credit.NONE).print(photograph, List.of()).prints();

    assertThat(fast).hasSameSizeAs(plain);
    for (int i = 0; i < plain.size(); i++) {
      Pixels a = Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(plain.get(i).jpeg()));
      Pixels b = Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(fast.get(i).jpeg()));
      assertThat(b.widthPx()).isEqualTo(a.widthPx());
      assertThat(b.heightPx()).isEqualTo(a.heightPx());
      assertThat(Ssim.of(a.luma().bytes(), b.luma().bytes(), a.widthPx(), a.heightPx()))
          .isGreaterThan(0.9);
      JpegWalk.assertClean(Files.readAllBytes(fast.get(i).jpeg()));
    }
  }

  /** ITU-T T.81, A.1.1: how many samples of luma stand beside one of colour. */
  @ParameterizedTest
  @CsvSource({"1, 1, 1", "2, 1, 6", "1, 2, 3", "2, 2, 8", "4, 1, 5", "2, 2, 1"})
  void coloursStayInTheirPlaceHoweverTheyAreThinnedOut(int h, int v, int orientation)
      throws IOException {
    BufferedImage scene =
        Shots.painted(Shots.scene(901, 603, 5), new Box(300, 200, 601, 402), Color.RED);
    byte[] shot = Shots.jpegInBlocks(scene, h, v);
    Orientation turn = Orientation.of(orientation);
    Picture careful = Decoder.decode(PhotoKind.JPEG, shot).scaled(320, 214).upright(turn);
    Planes small = Turbo.find().orElseThrow().decode(shot, 320).orElseThrow();

    Pixels one = Decoder.decode(PhotoKind.JPEG, careful.encoded());
    byte[] fast = small.scaled(320, 214).upright(turn).encoded();
    Pixels other = Decoder.decode(PhotoKind.JPEG, fast);

    JpegWalk.assertClean(fast);
    assertThat(other.widthPx()).isEqualTo(one.widthPx());
    assertThat(other.heightPx()).isEqualTo(one.heightPx());
    long off = 0;
    for (int i = 0; i < one.bgr().length; i++) {
      off += Math.abs((one.bgr()[i] & 0xFF) - (other.bgr()[i] & 0xFF));
    }
    assertThat((double) off / one.bgr().length).as("mean distance in levels").isLessThan(3);
  }

  /** T.81 allows it, and no camera writes it; so the library does not know it. */
  @Test
  void anUnheardOfThinningOfColoursIsLeftToTheCarefulWay() {
    byte[] shot = Shots.jpegInBlocks(Shots.scene(901, 603, 5), 4, 2);

    assertThat(Turbo.find().orElseThrow().decode(shot, 320)).isEmpty();
  }

  @Test
  void whereARegionIsFilledBothWaysGiveTheSameBytes() throws IOException {
    byte[] shot = Shots.jpeg(Shots.scene(3000, 2000, 1), 0.9);
    Photograph photograph =
        new Logs(folder).photo("photos/a.jpg", shot).open().photographs().get(0);
    var region = List.of(Logs.region(0.2, 0.2, 0.4, 0.4));

    assertThat(new Darkroom(folder, true, Credit.NONE).print(photograph, region))
        .isEqualTo(new Darkroom(folder).print(photograph, region));
  }

  @Test
  void whatItWarnsOfIsLeftToTheCarefulWay() {
    byte[] shot = Shots.jpeg(Shots.scene(3000, 2000, 1), 0.9);
    byte[] garbled = shot.clone();
    Arrays.fill(garbled, shot.length / 2, shot.length - 2, (byte) 0);
    Turbo turbo = Turbo.find().orElseThrow();

    assertThat(turbo.decode(shot, 1600)).isPresent();
    assertThat(turbo.decode(garbled, 1600)).isEmpty();
    assertThat(turbo.decode(Arrays.copyOf(shot, shot.length - 2), 1600)).isEmpty();
    assertThat(turbo.decode(shot, 2999)).as("no smaller size would do").isEmpty();
  }
}

package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.photo.Logs;
import chinelog.photo.Shots;
import chinelog.photo.album.Exif;
import chinelog.photo.album.Photograph;
import chinelog.photo.pixels.Box;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.Pixels;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files made by other programs where those are installed. The camera files that the values were
 * published with cannot be had here, so files of ours are given the same values.
 */
@Timeout(120)
class OtherProgramsTest {

  private static final int TYPE_LENGTH = 4;

  @TempDir Path folder;

  /** Of the program that was run last. */
  private int status;

  /**
   * The values are those of ianare/exif-samples, commit 5332a9c, jpg/Kodak_CX7530.jpg; the picture
   * is ours, and ExifTool wrote them into it.
   */
  @Test
  void whatExifToolWroteIsRead() throws IOException, InterruptedException {
    Path jpeg = write("a.jpg", Shots.jpeg(Shots.scene(100, 78, 1), 0.9));
    run(
        "exiftool",
        "-q",
        "-overwrite_original",
        "-DateTimeOriginal=2005:08:13 09:47:23",
        "-Orientation#=1",
        "-FNumber=4.6",
        "-ExposureTime=1/250",
        jpeg.toString());

    Photograph photograph = photograph("photos/a.jpg", jpeg);

    assertThat(photograph.taken()).isEqualTo(LocalDateTime.of(2005, 8, 13, 9, 47, 23));
    assertThat(photograph.orientation()).isEqualTo(1);
    assertThat(photograph.widthPx() + "x" + photograph.heightPx()).isEqualTo("100x78");
  }

  /**
   * Time, offset and orientation are those of ianare/exif-samples, commit 5332a9c,
   * heic/mobile/iphone_13_pro_max.HEIC, and so is a turn in the container beside one in EXIF. The
   * file is made by heif-enc, which writes no turn; one is put in the place of a property of equal
   * length that nobody needs (ISO/IEC 23008-12, 6.5.10, and 6.5.6).
   */
  @Test
  void aHeicPictureThatIsTurnedInContainerAndExifIsTurnedOnce()
      throws IOException, InterruptedException {
    BufferedImage scene =
        Shots.painted(Shots.scene(320, 240, 1), new Box(0, 0, 160, 120), Color.RED);
    Path jpeg = write("a.jpg", Shots.jpeg(scene, 0.95));
    run(
        "exiftool",
        "-q",
        "-overwrite_original",
        "-DateTimeOriginal=2022:02:16 12:55:41",
        "-OffsetTimeOriginal=+01:00",
        "-Orientation#=6",
        jpeg.toString());
    Path heic = folder.resolve("a.heic");
    run("heif-enc", jpeg.toString(), "-o", heic.toString());
    requireProgram("heif-convert");
    byte[] bytes = Files.readAllBytes(heic);
    String latin = new String(bytes, StandardCharsets.ISO_8859_1);
    int property = latin.indexOf("pixi");
    assertThat(property).as("as heif-enc of libheif 1.15 writes it").isPositive();
    System.arraycopy("irot".getBytes(StandardCharsets.US_ASCII), 0, bytes, property, TYPE_LENGTH);
    // Quarters of a turn to the left.
    bytes[property + TYPE_LENGTH] = 3;
    Path turned = write("b.heic", bytes);

    Photograph photograph = photograph("photos/b.heic", turned);
    Exif exif = Exif.read(bytes);
    Path jpg = new Darkroom(folder).print(photograph, List.of()).prints().get(0).jpeg();
    Pixels upright = Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(jpg));

    assertThat(photograph.widthPx() + "x" + photograph.heightPx()).isEqualTo("240x320");
    assertThat(upright.widthPx() + "x" + upright.heightPx()).isEqualTo("240x320");
    assertThat(red(upright, 180, 60)).as("the red corner is at the upper right").isTrue();
    assertThat(red(upright, 60, 60)).isFalse();
    assertThat(red(upright, 180, 260)).isFalse();
    assertThat(exif.offset()).isEqualTo(ZoneOffset.ofHours(1));
    assertThat(exif.taken(ZoneId.of("Europe/London")))
        .isEqualTo(LocalDateTime.of(2022, 2, 16, 11, 55, 41));
  }

  private static boolean red(Pixels pixels, int x, int y) {
    int at = 3 * (y * pixels.widthPx() + x);
    byte[] bgr = pixels.bgr();
    return (bgr[at + 2] & 0xFF) > 200 && (bgr[at] & 0xFF) < 60 && (bgr[at + 1] & 0xFF) < 60;
  }

  private Photograph photograph(String path, Path file) throws IOException {
    return new Logs(folder).photo(path, Files.readAllBytes(file)).open().photographs().get(0);
  }

  private Path write(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  private void run(String... command) throws IOException, InterruptedException {
    String said = say(command);
    assertThat(status).as(command[0] + " said " + said).isZero();
  }

  private String say(String... command) throws IOException, InterruptedException {
    requireProgram(command[0]);
    Path said = folder.resolve("said");
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    status = process.waitFor();
    return Files.readString(said);
  }

  private static void requireProgram(String name) {
    boolean found =
        Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
            .anyMatch(f -> Files.isExecutable(Path.of(f, name)));
    assumeTrue(found, name + " is not here, so this is not tried");
  }
}

package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.photo.Icc;
import chinelog.photo.Shared;
import chinelog.photo.Shots;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.Pixels;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Colours come out as sRGB.
 *
 * <p>The green that both wide spaces give for sRGB 0, 128, 0 is that of the CSS Color Module Level
 * 4 tests (web-platform-tests, css/css-color, display-p3-001 and a98rgb-001), as several public
 * test suites repeat it: {@code color(display-p3 0.21604 0.49418 0.13151)} and {@code color(a98-rgb
 * 0.281363 0.498012 0.116746)}. Here they are rounded to 8 bits first, which costs up to two steps.
 */
class ColourTest {

  @ParameterizedTest
  @CsvSource({
    "p3, png, 55, 126, 34, 0, 128, 0",
    "p3, jpeg, 55, 126, 34, 0, 128, 0",
    "adobe, png, 72, 127, 30, 0, 128, 0",
    "adobe, jpeg, 72, 127, 30, 0, 128, 0",
    "p3, png, 255, 255, 255, 255, 255, 255",
    "adobe, png, 255, 255, 255, 255, 255, 255",
    "p3, png, 128, 128, 128, 128, 128, 128",
    // Outside of sRGB: the nearest there is.
    "p3, png, 0, 255, 0, 0, 255, 0",
    "adobe, jpeg, 255, 0, 0, 255, 0, 0",
    "none, png, 55, 126, 34, 55, 126, 34",
    "none, jpeg, 55, 126, 34, 55, 126, 34"
  })
  void aWideSpaceIsBroughtToSrgbByItsProfile(
      String space, String format, int r, int g, int b, int red, int green, int blue)
      throws IOException {
    BufferedImage image = flat(r << 16 | g << 8 | b);
    byte[] profile =
        Map.of("p3", Icc.displayP3(), "adobe", Icc.adobeRgb(), "none", new byte[0]).get(space);
    byte[] plain = format.equals("png") ? Shots.png(image) : Shots.jpeg(image, 1);
    byte[] file = plain;
    if (profile.length > 0) {
      file = format.equals("png") ? Icc.inPng(plain, profile) : Icc.inJpeg(plain, profile);
    }

    assertColour(file, red, green, blue);
  }

  /** A step of 16 bits is 257th of one of 8: 0x6060 is 0x60 and 0x60FF nearly 0x61. */
  @ParameterizedTest
  @CsvSource({"24672, 24672, 24672, 96, 96, 96", "65535, 32896, 24831, 255, 128, 97"})
  void sixteenBitsAreRoundedToEight(int r, int g, int b, int red, int green, int blue)
      throws IOException {
    assertColour(Shots.png(sixteen(r, g, b)), red, green, blue);
    assertColour(tiff(sixteen(r, g, b)), red, green, blue);
  }

  @Test
  void sixteenBitsWithAProfileAreBroughtToSrgbToo() throws IOException {
    // The very values of the CSS tests, as 16 bits hold them.
    byte[] png = Shots.png(sixteen(14158, 32386, 8619));

    assertColour(Icc.inPng(png, Icc.displayP3()), 0, 128, 0);
  }

  /**
   * Without a profile inks have no certain colour; this is what ImageMagick 6.9.11 makes of a YCCK
   * picture, reduced to 4 by 4 pixels with {@code -colorspace sRGB -scale 4x4!}, which takes means
   * as this test does.
   */
  @Test
  void inksAreReadAsAGeneralPurposeProgramReadsThem() throws IOException {
    Path file = Shared.folder("corpus/01-exif-cameras").resolve("pillow__pil_sample_cmyk.jpg");
    int[] reds = {38, 1, 1, 1, 72, 113, 79, 62, 27, 40, 29, 19, 1, 1, 1, 1};
    int[] greens = {6, 4, 4, 4, 8, 10, 8, 7, 5, 6, 6, 5, 4, 4, 4, 4};

    Pixels picture = Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(file));

    for (int i = 0; i < 16; i++) {
      assertThat(mean(picture, i, 2)).isCloseTo(reds[i], within(2.0));
      assertThat(mean(picture, i, 1)).isCloseTo(greens[i], within(2.0));
    }
  }

  /** The mean of one channel (0 blue, 1 green, 2 red) over one of four by four equal parts. */
  private static double mean(Pixels picture, int part, int channel) {
    int width = picture.widthPx() / 4;
    int height = picture.heightPx() / 4;
    byte[] bgr = picture.bgr();
    long sum = 0;
    for (int y = part / 4 * height; y < (part / 4 + 1) * height; y++) {
      for (int x = part % 4 * width; x < (part % 4 + 1) * width; x++) {
        sum += bgr[3 * (y * picture.widthPx() + x) + channel] & 0xFF;
      }
    }
    return (double) sum / (width * height);
  }

  private static BufferedImage sixteen(int r, int g, int b) {
    ColorModel model =
        new ComponentColorModel(
            java.awt.color.ColorSpace.getInstance(java.awt.color.ColorSpace.CS_sRGB),
            false,
            false,
            java.awt.Transparency.OPAQUE,
            DataBuffer.TYPE_USHORT);
    WritableRaster raster = model.createCompatibleWritableRaster(64, 48);
    for (int i = 0; i < 64 * 48; i++) {
      raster.setPixel(i % 64, i / 64, new int[] {r, g, b});
    }
    return new BufferedImage(model, raster, false, null);
  }

  private static byte[] tiff(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    var writers = ImageIO.getImageWritersByFormatName("tiff");
    ImageWriter writer = writers.next();
    while (!writer.getClass().getName().startsWith("com.sun.")) {
      writer = writers.next();
    }
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      writer.write(image);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  private static BufferedImage flat(int rgb) {
    BufferedImage image = new BufferedImage(64, 48, BufferedImage.TYPE_3BYTE_BGR);
    for (int i = 0; i < 64 * 48; i++) {
      image.setRGB(i % 64, i / 64, rgb);
    }
    return image;
  }

  private static void assertColour(byte[] file, int red, int green, int blue) throws IOException {
    PhotoKind kind = PhotoKind.of("a.tif", file);
    byte[] bgr = Decoder.decode(kind, file).bgr();
    int middle = 3 * (24 * 64 + 32);
    assertThat(bgr[middle + 2] & 0xFF).as("red").isCloseTo(red, within(2));
    assertThat(bgr[middle + 1] & 0xFF).as("green").isCloseTo(green, within(2));
    assertThat(bgr[middle] & 0xFF).as("blue").isCloseTo(blue, within(2));
  }
}

package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.JpegWalk;
import chinelog.photo.Logs;
import chinelog.photo.Shots;
import chinelog.photo.album.Credit;
import chinelog.photo.album.Photograph;
import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.xmp.XmpDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** ISO 16684-1 (XMP), 8.3: dc:creator is an ordered array, dc:rights an alternative by language. */
class CreditTest {

  private static final Credit CREDIT = new Credit("Tern Lane & <Sons>", "Alle Rechte \u00a9 2026");

  @TempDir Path folder;
  private Photograph photograph;

  @BeforeEach
  void begin() {
    byte[] shot =
        Shots.withExif(
            Shots.withIptc(Shots.jpeg(Shots.scene(900, 700, 4), 0.9), 120, "The moulds"),
            1,
            "T-20",
            "2026:04:01 18:40:11",
            "");
    photograph = new Logs(folder).photo("photos/a.jpg", shot).open().photographs().get(0);
  }

  @Test
  void makerAndLicenceStandInEverySizeAndNothingElse()
      throws IOException, ImageProcessingException {
    for (byte[] jpeg : prints(CREDIT)) {
      Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(jpeg));
      assertThat(metadata.getDirectories())
          .extracting(Directory::getName)
          .containsOnly("JPEG", "JFIF", "Huffman", "XMP", "File Type");
      Map<String, String> xmp =
          metadata.getFirstDirectoryOfType(XmpDirectory.class).getXmpProperties();
      assertThat(xmp).containsEntry("dc:creator[1]", CREDIT.maker());
      assertThat(xmp).containsEntry("dc:rights[1]", CREDIT.licence());
      assertThat(xmp).containsEntry("dc:rights[1]/xml:lang", "x-default");
    }
  }

  @Test
  void withoutItsSegmentAPictureIsTheOneWithoutACredit() throws IOException {
    List<byte[]> plain = prints(Credit.NONE);
    List<byte[]> credited = prints(CREDIT);

    assertThat(credited).hasSameSizeAs(plain);
    for (int i = 0; i < plain.size(); i++) {
      byte[] bytes = credited.get(i);
      int length = 2 + ((bytes[22] & 0xFF) << 8 | bytes[23] & 0xFF);
      byte[] without = Arrays.copyOf(bytes, bytes.length - length);
      System.arraycopy(bytes, 20 + length, without, 20, without.length - 20);
      assertThat(without).isEqualTo(plain.get(i));
      JpegWalk.assertClean(without);
    }
  }

  @Test
  void eachCreditIsKeptApart() throws IOException {
    Credit other = new Credit("Tern Lane & <Sons>", "");

    assertThat(prints(CREDIT).get(0)).isNotEqualTo(prints(other).get(0));
    assertThat(prints(Credit.NONE).get(0)).isNotEqualTo(prints(other).get(0));
    assertThat(prints(CREDIT).get(0)).isEqualTo(prints(CREDIT).get(0));
  }

  @Test
  void anEmptyCreditLeavesPicturesWithoutMetadata() throws IOException {
    JpegWalk.assertClean(prints(new Credit("", "")).get(0));
  }

  private List<byte[]> prints(Credit credit) throws IOException {
    Darkroom darkroom = new Darkroom(folder, credit);
    List<byte[]> all = new java.util.ArrayList<>();
    for (Darkroom.Print print : darkroom.print(photograph, List.of()).prints()) {
      all.add(Files.readAllBytes(print.jpeg()));
    }
    return all;
  }
}

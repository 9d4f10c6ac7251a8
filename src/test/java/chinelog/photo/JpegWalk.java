package chinelog.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;

/**
 * Walks a JPEG segment by segment (ITU-T T.81, annex B) and demands that it holds a picture and
 * nothing else: start, JFIF without thumbnail, tables, frame, one scan, end, and not a byte more.
 */
public final class JpegWalk {

  private JpegWalk() {}

  public static void assertClean(byte[] bytes) {
    List<Integer> markers = new ArrayList<>();
    assertThat(u16(bytes, 0)).as("start of image").isEqualTo(0xFFD8);
    int at = 2;
    while (true) {
      int marker = u16(bytes, at);
      markers.add(marker);
      int length = u16(bytes, at + 2);
      if (marker == 0xFFE0) {
        assertThat(length).as("JFIF without a thumbnail").isEqualTo(16);
      }
      at += 2 + length;
      if (marker == 0xFFDA) {
        break;
      }
    }
    assertThat(markers).isSubsetOf(0xFFE0, 0xFFDB, 0xFFC0, 0xFFC4, 0xFFDA);
    assertThat(markers).filteredOn(m -> m == 0xFFC0 || m == 0xFFDA).hasSize(2);
    while (u16(bytes, at) >> 8 != 0xFF || u16(bytes, at) == 0xFF00) {
      at++;
    }
    assertThat(u16(bytes, at)).as("end of image").isEqualTo(0xFFD9);
    assertThat(bytes).as("bytes up to the end of the picture").hasSize(at + 2);
  }

  private static int u16(byte[] bytes, int at) {
    return (bytes[at] & 0xFF) << 8 | bytes[at + 1] & 0xFF;
  }
}

package chinelog.book;

import chinelog.edition.Picture;
import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.extend.FSStreamFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * The pictures of one printed edition, each under one address such as {@code
 * picture:plate-012.jpg}, so that it is stored once however often and however large it is shown.
 */
final class PictureStore implements FSStreamFactory {

  static final String SCHEME = "picture";

  /** Fine enough for print at arm's length, without the weight of 300: common practice. */
  private static final double DOTS_PER_INCH = 240;

  private static final double MM_PER_INCH = 25.4;

  private final Map<String, Picture> pictures = new HashMap<>();
  private final Map<String, Double> widest = new HashMap<>();

  /** The address of a picture that is to be shown this wide. */
  String address(Picture picture, double widthMm) {
    String address = SCHEME + ":" + picture.id() + ".jpg";
    pictures.put(address, picture);
    widest.merge(address, widthMm, Math::max);
    return address;
  }

  @Override
  public FSStream getUrl(String address) {
    Picture picture = pictures.get(address);
    if (picture == null) {
      throw new IllegalArgumentException("not a picture of this edition: " + address);
    }
    double widthMm = widest.getOrDefault(address, 0.0);
    int widthPx = (int) Math.ceil(widthMm / MM_PER_INCH * DOTS_PER_INCH);
    return new Stream(picture.atLeast(widthPx).jpeg());
  }

  private record Stream(Picture.Bytes jpeg) implements FSStream {
    @Override
    public InputStream getStream() {
      try {
        return jpeg.open();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public Reader getReader() {
      return new InputStreamReader(getStream(), StandardCharsets.ISO_8859_1);
    }
  }
}

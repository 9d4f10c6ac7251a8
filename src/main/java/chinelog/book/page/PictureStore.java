package chinelog.book.page;

import chinelog.edition.Picture;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.extend.FSStreamFactory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * The pictures of one printed edition, each under one address such as {@code
 * picture:plate-012.jpg}, so that it is stored once however often and however large it is shown.
 */
public final class PictureStore implements FSStreamFactory {

  static final String SCHEME = "picture";

  /** Fine enough for print at arm's length, without the weight of 300: common practice. */
  private static final double DOTS_PER_INCH = 240;

  private static final double MM_PER_INCH = 25.4;

  private final Map<String, Picture> pictures;
  private final Map<String, Double> widest;

  public PictureStore() {
    this(new HashMap<>(), new HashMap<>());
  }

  private PictureStore(Map<String, Picture> pictures, Map<String, Double> widest) {
    this.pictures = pictures;
    this.widest = widest;
  }

  /** The same pictures, each as small as there is one. */
  PictureStore small() {
    return new PictureStore(Map.copyOf(pictures), Map.of());
  }

  Map<String, Picture> byAddress() {
    return Map.copyOf(pictures);
  }

  /** The address of a picture that is to be shown this wide. */
  public String address(Picture picture, double widthMm) {
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
    return new Stream(picture.id(), picture.atLeast(widthPx));
  }

  /** The library would pass over a picture that is none, and print the page without it. */
  private record Stream(String id, Picture.Rendition rendition) implements FSStream {
    @Override
    public InputStream getStream() {
      try (InputStream jpeg = rendition.jpeg().open()) {
        byte[] bytes = jpeg.readAllBytes();
        if (!isWhole(bytes)) {
          throw new ProblemException(
              Place.of(".chinelog"),
              Sentence.of("The picture of {0} that is kept there is damaged.", id),
              "Delete the folder .chinelog and run the command again.");
        }
        return new ByteArrayInputStream(bytes);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private boolean isWhole(byte[] bytes) throws IOException {
      ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
      try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
        reader.setInput(in, true, true);
        return reader.getWidth(0) == rendition.widthPx()
            && reader.getHeight(0) == rendition.heightPx();
      } catch (IIOException e) {
        return false;
      } finally {
        reader.dispose();
      }
    }

    @Override
    public Reader getReader() {
      return new InputStreamReader(getStream(), StandardCharsets.ISO_8859_1);
    }
  }
}

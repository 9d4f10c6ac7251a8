package chinelog.edition;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/**
 * A picture as its readers may see it: upright, sRGB, without metadata, regions filled.
 *
 * @param id names it within the edition, such as {@code plate-012}; counted over the edition alone
 * @param renditions JPEG, from the smallest to the largest; at least one; all of the same shape
 * @param filled what is filled with one colour, as readers see
 */
public record Picture(String id, List<Rendition> renditions, List<Part> filled) {

  public Picture {
    renditions = List.copyOf(renditions);
    filled = List.copyOf(filled);
  }

  public Rendition largest() {
    return renditions.get(renditions.size() - 1);
  }

  /** The smallest rendition at least this wide, else the largest. */
  public Rendition atLeast(int widthPx) {
    return renditions.stream()
        .filter(r -> r.widthPx() >= widthPx)
        .findFirst()
        .orElseGet(this::largest);
  }

  /** Width by height. */
  public double shape() {
    return (double) largest().widthPx() / largest().heightPx();
  }

  public boolean isPortrait() {
    return largest().heightPx() > largest().widthPx();
  }

  /** A part of a picture, as fractions of its width and height from its left top corner. */
  public record Part(double left, double top, double right, double bottom) {}

  /** One size of a picture. */
  public record Rendition(int widthPx, int heightPx, Bytes jpeg) {}

  /** Bytes that are read when wanted, so that an edition need not hold them all. */
  @FunctionalInterface
  public interface Bytes {
    InputStream open() throws IOException;
  }
}

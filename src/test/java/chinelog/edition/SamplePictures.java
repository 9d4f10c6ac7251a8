package chinelog.edition;

import chinelog.edition.Picture.Rendition;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/** Pictures for a sample edition: the demo photographs if they are at hand, else painted ones. */
final class SamplePictures {

  private static final int[] WIDTHS_PX = {480, 960, 1600};
  private static final int[] PAINTED_WIDTHS_PX = {48, 96};

  private final @Nullable Path photographs;

  /**
   * @param photographs folder of the demo photographs; null paints small pictures instead
   */
  SamplePictures(@Nullable Path photographs) {
    this.photographs = photographs;
  }

  /** The folder of the demo photographs, beside the checkout or below {@code chinelog.shared}. */
  static @Nullable Path findPhotographs() {
    String told = System.getProperty("chinelog.shared");
    List<Path> shared =
        told != null
            ? List.of(Path.of(told))
            : List.of(Path.of("../shared"), Path.of("../../shared"));
    return shared.stream()
        .map(s -> s.resolve("scenes/photos"))
        .filter(Files::isDirectory)
        .findFirst()
        .orElse(null);
  }

  /**
   * @param quarterTurns clockwise turns that bring the stored picture upright
   */
  Picture picture(String id, String file, int quarterTurns) {
    try {
      Path folder = photographs;
      BufferedImage full =
          folder == null ? painted(id, quarterTurns) : turned(folder.resolve(file), quarterTurns);
      List<Rendition> renditions = new ArrayList<>();
      for (int width : folder == null ? PAINTED_WIDTHS_PX : WIDTHS_PX) {
        int height = Math.round((float) width * full.getHeight() / full.getWidth());
        byte[] jpeg = jpeg(scaled(full, width, height));
        renditions.add(new Rendition(width, height, () -> new ByteArrayInputStream(jpeg)));
      }
      return new Picture(id, renditions, List.of());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static BufferedImage turned(Path file, int quarterTurns) throws IOException {
    BufferedImage stored = ImageIO.read(file.toFile());
    boolean across = quarterTurns % 2 == 1;
    int width = across ? stored.getHeight() : stored.getWidth();
    int height = across ? stored.getWidth() : stored.getHeight();
    BufferedImage upright = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = upright.createGraphics();
    g.translate(width / 2.0, height / 2.0);
    g.rotate(Math.PI / 2 * quarterTurns);
    g.translate(-stored.getWidth() / 2.0, -stored.getHeight() / 2.0);
    g.drawImage(stored, 0, 0, null);
    g.dispose();
    return upright;
  }

  private static BufferedImage painted(String id, int quarterTurns) {
    boolean portrait = quarterTurns % 2 == 1;
    int width = portrait ? 96 : 128;
    int height = portrait ? 128 : 96;
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    Color sky = Color.getHSBColor(Math.floorMod(id.hashCode(), 97) / 97f, 0.3f, 0.8f);
    g.setPaint(new GradientPaint(0, 0, sky, width, height, sky.darker().darker()));
    g.fillRect(0, 0, width, height);
    g.dispose();
    return image;
  }

  private static BufferedImage scaled(BufferedImage full, int width, int height) {
    BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = small.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    g.drawImage(full, 0, 0, width, height, null);
    g.dispose();
    return small;
  }

  private static byte[] jpeg(BufferedImage image) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", out);
    return out.toByteArray();
  }
}

package chinelog.photo.likeness;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.pixels.Pixels;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/**
 * Holds the first look at two pictures against the whole comparison of them. The normal run tries
 * one pair of each kind; longer: {@code -Dchinelog.variants=24} for so many of each way.
 */
class FeatureMatcherTest {

  private static final int VARIANTS = Integer.getInteger("chinelog.variants", 0);

  private static final List<Warps.Family> WAYS =
      VARIANTS == 0 ? List.of(Warps.Family.TILT_TO_60) : List.of(Warps.Family.values());

  @Test
  void aDrawingThatWouldBeFoundIsLookedFor() throws IOException {
    assertAllAreLookedFor(Look.LINES, Warps.drawing(5));
  }

  @Test
  void aPhotographThatWouldBeFoundIsLookedFor() throws IOException {
    assertAllAreLookedFor(Look.PLAIN, scene("T20_0506.jpg"));
  }

  @Test
  void aStrangerIsNotComparedFurther() throws IOException {
    List<Features> stranger = views(Look.PLAIN, Strangers.BRICKS.make(new Random(5)));
    List<Features> original = views(Look.PLAIN, scene("T20_0549.jpg"));

    assertThat(FeatureMatcher.mayShow(original, stranger)).isFalse();
    assertThat(FeatureMatcher.mayShow(original, original)).isTrue();
  }

  private static void assertAllAreLookedFor(Look look, BufferedImage original) throws IOException {
    List<Features> upright = views(look, original);
    List<Features> all =
        Stream.concat(upright.stream(), look.tilted(pixels(original)).stream()).toList();
    BufferedImage ground = scene("T20_0412.jpg");
    List<String> passedOver = new ArrayList<>();
    int found = 0;
    for (Warps.Family way : WAYS) {
      for (int i = 0; i < Math.max(1, VARIANTS); i++) {
        Random random = new Random(31L * way.ordinal() + 7000L * i);
        List<Features> seen = views(look, Warps.make(way, original, ground, random));
        if (FeatureMatcher.find(all, seen, look.enough()) != null) {
          found++;
          if (!FeatureMatcher.mayShow(upright, seen)) {
            passedOver.add(way + " " + i);
          }
        }
      }
    }
    assertThat(passedOver).isEmpty();
    assertThat(found).isPositive();
  }

  private static List<Features> views(Look look, BufferedImage image) throws IOException {
    return look.upright(pixels(image));
  }

  private static Pixels pixels(BufferedImage image) {
    return Pixels.of(image);
  }

  private static BufferedImage scene(String name) throws IOException {
    BufferedImage image = ImageIO.read(Path.of("sample-log/photos", name).toFile());
    BufferedImage rgb =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    rgb.createGraphics().drawImage(image, 0, 0, null);
    return rgb;
  }
}

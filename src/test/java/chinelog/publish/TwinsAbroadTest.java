package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * Non-interference to the byte: two logs that differ only in what everybody may not see are
 * published in other surroundings (locale, zone, folder, order and times of files, cold and warm
 * cache), and the files, their names and times, and what the maker is told are the same.
 */
@Isolated("it sets the language and the zone of the whole Java")
class TwinsAbroadTest {

  private static final int PAIRS = Integer.getInteger("chinelog.byte-pairs", 4);
  private static final List<Locale> LOCALES =
      List.of(Locale.forLanguageTag("tr"), Locale.forLanguageTag("ar-EG"), Locale.GERMANY);
  private static final List<String> ZONES = List.of("Etc/GMT+12", "Pacific/Kiritimati", "UTC");

  private final Locale locale = Locale.getDefault();
  private final TimeZone zone = TimeZone.getDefault();

  @TempDir Path temp;

  @AfterEach
  void putTheSurroundingsBack() {
    Locale.setDefault(locale);
    TimeZone.setDefault(zone);
  }

  @Test
  void publishedTreesOfTwinsAreEqual() throws IOException {
    for (int seed = 0; seed < PAIRS; seed++) {
      Path one = new SmallLog(seed, 1000 + seed).write(temp.resolve("one" + seed));
      Path other =
          new SmallLog(seed, 5000 + seed).write(temp.resolve("a longer way/to the other" + seed));
      String told = ByteTwinsTest.publish(one, "public");
      Locale.setDefault(LOCALES.get(seed % LOCALES.size()));
      TimeZone.setDefault(TimeZone.getTimeZone(ZONES.get(seed % ZONES.size())));
      assertThat(ByteTwinsTest.publish(other, "public")).isEqualTo(told);
      Map<String, String> tree = ByteTwinsTest.tree(other, "public");
      assertThat(tree).isEqualTo(ByteTwinsTest.tree(one, "public"));
      putTheSurroundingsBack();
      if (seed == 0) {
        ByteTwinsTest.publish(other, "public");
        assertThat(ByteTwinsTest.tree(other, "public")).as("with a warm cache").isEqualTo(tree);
      }
    }
  }
}

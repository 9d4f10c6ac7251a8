package chinelog.book.setting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

@Isolated("it sets the language of the whole Java")
class SurroundingsTest {

  @Test
  void theLastOfTwoBooksPutsBackTheLanguageOfTheComputer() {
    Locale usual = Locale.getDefault();
    String home = System.getProperty("user.home");
    Locale.setDefault(Locale.forLanguageTag("tr"));
    try {
      Surroundings first = new Surroundings();
      Surroundings second = new Surroundings();
      first.close();
      assertThat(Locale.getDefault()).isEqualTo(Locale.ROOT);
      second.close();
      assertThat(Locale.getDefault()).isEqualTo(Locale.forLanguageTag("tr"));
      assertThat(System.getProperty("user.home")).isEqualTo(home);
    } finally {
      Locale.setDefault(usual);
    }
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The same log on computers of other languages and zones. */
@Isolated("it sets the language and the zone of the whole Java")
@Timeout(60)
class AbroadTest {

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({
    "en-GB, Europe/London",
    "de-DE, Europe/Berlin",
    "tr-TR, Asia/Istanbul",
    "ar-EG-u-nu-arab, Africa/Cairo",
    "th-TH-u-ca-buddhist-nu-thai, Pacific/Kiritimati",
    "ja-JP-u-ca-japanese, America/Adak"
  })
  void theComputersOwnLanguageAndZoneChangeNothing(String locale, String zone) {
    Locale usual = Locale.getDefault();
    TimeZone home = TimeZone.getDefault();
    TinyLog plain = TinyLog.in(folder.resolve("a"));
    TinyLog abroad = TinyLog.in(folder.resolve("b"));
    Said expected = plain.run("publish");
    String reckoned = plain.run("reckon").out();
    try {
      Locale.setDefault(Locale.forLanguageTag(locale));
      TimeZone.setDefault(TimeZone.getTimeZone(zone));
      Said said = abroad.run("publish");
      assertThat(said.err()).isEqualTo(expected.err());
      assertThat(said.out())
          .isEqualTo(expected.out().replace(plain.folder().toString(), folder + "/b"));
      assertThat(abroad.run("reckon").out()).isEqualTo(reckoned);
      assertThat(abroad.replace("log.yaml", "scale: 1:16", "SCALEI: 1:16").run("check").err())
          .contains("log.yaml:3:1: error: \"SCALEI\" is not a key here. Did you mean \"scale\"?");
    } finally {
      Locale.setDefault(usual);
      TimeZone.setDefault(home);
    }
    assertThat(PublishingTest.published(abroad)).isEqualTo(PublishingTest.published(plain));
  }
}

package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordingTest {

  private static final Pattern PART = Pattern.compile("\\{[0-9]}");

  private static Map<String, String> table(String path) throws IOException {
    return Resources.properties(Resources.text("/chinelog/" + path + ".properties"));
  }

  @ParameterizedTest(name = "{0} in {1}")
  @CsvSource({
    "markup/wording,de", "markup/wording,nl", "markup/wording,fr", "markup/wording,es",
    "withhold/messages,de", "withhold/messages,nl", "withhold/messages,fr", "withhold/messages,es",
    "book/words,de", "book/words,nl", "book/words,fr", "book/words,es",
    "log/titles,de", "log/titles,nl", "log/titles,fr", "log/titles,es",
    "publish/steps,de", "publish/steps,nl", "publish/steps,fr", "publish/steps,es",
    "reckon/messages,de", "reckon/messages,nl", "reckon/messages,fr", "reckon/messages,es",
  })
  void everyTableHasAllWordsOfTheEnglishOneWithTheSamePlacesToFillIn(String path, String language)
      throws IOException {
    Map<String, String> english = table(path);
    Map<String, String> own = table(path + "_" + language);
    assertThat(own.keySet()).isEqualTo(english.keySet());
    own.forEach(
        (key, text) -> {
          assertThat(parts(text)).as(key).isEqualTo(parts(english.get(key)));
          // java.text.MessageFormat takes ' for a quote and would lose it.
          assertThat(text).as(key).isNotBlank().doesNotContain("'");
        });
  }

  private static TreeSet<String> parts(String text) {
    TreeSet<String> parts = new TreeSet<>();
    PART.matcher(text).results().forEach(found -> parts.add(found.group()));
    return parts;
  }

  @Test
  void wordsDatesAndNumbersFollowTheLanguage() {
    Wording german = Wording.of(Locale.forLanguageTag("de-AT"));
    assertThat(german.text("nav.stages")).isEqualTo("Bauabschnitte");
    assertThat(german.date(LocalDate.of(2026, 3, 14))).isEqualTo("14. März 2026");
    assertThat(german.number(1.5)).isEqualTo("1,5");
    assertThat(german.language()).isEqualTo("de");
    assertThat(Wording.of(Locale.FRANCE).count("post.minutes", 6))
        .isEqualTo("6 minutes de lecture");
  }

  @Test
  void aLanguageWithoutATableFallsBackToEnglishAndSaysSo() {
    Wording finnish = Wording.of(Locale.forLanguageTag("fi"));
    assertThat(finnish.text("nav.stages")).isEqualTo("Stages");
    assertThat(finnish.language()).isEqualTo("en");
    assertThat(finnish.number(1.5)).isEqualTo("1,5");
  }
}

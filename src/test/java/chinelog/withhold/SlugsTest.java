package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

@Isolated("it sets the language of the whole Java")
class SlugsTest {

  private final Slugs slugs = new Slugs();

  @Test
  void lettersLoseTheirAccentsAndAllElseBecomesHyphens() {
    assertThat(slugs.make("The drawings come out!")).isEqualTo("the-drawings-come-out");
    assertThat(slugs.make("Über Spanten, größer")).isEqualTo("uber-spanten-grosser");
    assertThat(slugs.make("Модель 1:16")).isEqualTo("1-16");
    assertThat(slugs.make("¿¡!?")).isEqualTo("page");
  }

  @Test
  void theSameTitleTwiceGetsTwoNames() {
    assertThat(slugs.make("Planking")).isEqualTo("planking");
    assertThat(slugs.make("planking")).isEqualTo("planking-2");
  }

  @Test
  void longTitlesEndAtAWord() {
    assertThat(slugs.make("word ".repeat(40))).hasSizeLessThanOrEqualTo(60).endsWith("word");
  }

  @Test
  void namesDoNotDependOnTheMachinesLanguage() {
    java.util.Locale before = java.util.Locale.getDefault();
    try {
      java.util.Locale.setDefault(java.util.Locale.forLanguageTag("tr-TR"));
      assertThat(slugs.make("INITIAL")).isEqualTo("initial");
    } finally {
      java.util.Locale.setDefault(before);
    }
  }
}

package chinelog.book.setting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.apache.fop.hyphenation.HyphenationTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HyphensTest {

  /** As dictionaries divide them, from memory, but with three letters or more after a break. */
  @ParameterizedTest
  @CsvSource({
    "en-GB, planking, plank-ing",
    "en-US, hyphenation, hy-phen-ation",
    "de, Spantenplan, Span-ten-plan",
    "fr, maquette, ma-quette",
    "it, modellino, mo-del-lino",
    "es, cubierta, cu-bierta"
  })
  void wordsAreDividedByTheRulesOfTheirLanguage(String language, String word, String divided)
      throws Exception {
    assertThat(Hyphens.of(Locale.forLanguageTag(language)).hyphenateText(word))
        .isEqualTo(divided.replace('-', '\u00AD'));
  }

  @Test
  void aLanguageWhosePatternsMayNotBePassedOnForAllWeKnowIsLeftUndivided() throws Exception {
    assertThat(HyphenationTree.class.getResource("/hyph/ru.hyp")).isNotNull();
    String word = "\u043c\u043e\u0434\u0435\u043b\u0438\u0440\u043e\u0432\u0430\u043d\u0438\u0435";
    assertThat(Hyphens.of(Locale.forLanguageTag("ru")).hyphenateText(word)).isEqualTo(word);
  }

  @Test
  void allPatternsWhoseLicenceIsNamedAreThere() {
    assertThat(Hyphens.LICENCES.keySet())
        .allMatch(name -> HyphenationTree.class.getResource("/hyph/" + name + ".hyp") != null);
  }

  @Test
  void namesAndShortWordsAreNotDivided() throws Exception {
    assertThat(Hyphens.of(Locale.UK).hyphenateText("McKenzie has a keel"))
        .isEqualTo("McKenzie has a keel");
  }
}

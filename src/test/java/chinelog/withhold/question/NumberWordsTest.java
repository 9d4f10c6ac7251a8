package chinelog.withhold.question;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.quantity.NumberWords;
import com.ibm.icu.text.RuleBasedNumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Numbers spelled out, against ICU4J's rules for spelling (Unicode CLDR, rule-based number
 * formats).
 */
class NumberWordsTest {

  @ParameterizedTest
  @ValueSource(strings = {"en", "de", "nl", "fr", "es"})
  void everyNumberThatIcuSpellsIsRead(String language) {
    Locale locale = new Locale(language);
    RuleBasedNumberFormat icu = new RuleBasedNumberFormat(locale, RuleBasedNumberFormat.SPELLOUT);
    NumberWords words = NumberWords.of(locale);
    List<String> unread = new ArrayList<>();
    for (String rules : icu.getRuleSetNames()) {
      if (!rules.startsWith("%spellout-cardinal") && !rules.equals("%spellout-numbering")) {
        continue;
      }
      for (int n = 0; n <= 9999; n++) {
        String spelled = icu.format(n, rules);
        StringBuilder letters = new StringBuilder();
        for (Letters.Word word : Letters.all(spelled)) {
          if (!words.joins(word.letters())) {
            letters.append(word.letters());
          }
        }
        if (words.find(letters.toString()) != n) {
          unread.add(rules + " " + n + " " + spelled);
        }
      }
    }
    assertThat(unread).isEmpty();
  }
}

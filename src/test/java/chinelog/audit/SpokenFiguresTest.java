package chinelog.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures read back from words, by hand: common practice, no source. */
class SpokenFiguresTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "she is eleven point two metres long | 11.2 m",
        "elf Komma zwei Meter | 11.2 m",
        "elf komma twee meter | 11.2 m",
        "onze virgule deux mètres | 11.2 m",
        "once coma dos metros | 11.2 m",
        "eleven point two zero metres | 11.20 m",
        "elf­hundert­zwölf Gramm | 1112 g",
        "twelve thousand five hundred and one grams | 12501 g",
        "four hundred and forty inches | 440 in",
        "twenty-seven and nine sixteenths inches | 27 9/16 in",
        "vingt-sept pouces neuf seizièmes | 27 9/16 in",
        "veintisiete pulgadas y nueve dieciseisavos | 27 9/16 in",
        "siebenundzwanzig und neun Sechzehntel Zoll | 27 9/16 in",
        "zevenentwintig en negen zestiende inch | 27 9/16 in",
        "one thirty-second of an inch | 0 1/32 in",
        "two and a half inches | 2 1/2 in",
        "one to sixteen | 1:16",
        "eins zu sechzehn | 1:16",
        "twenty-one pounds sixty-three | 21.63 GBP",
        "doce euros con cuarenta | 12.40 EUR",
        "one point eight seven three kilograms | 1.873 kg"
      })
  void aFigureInWordsIsRead(String spoken, String written) {
    assertThat(List.of(SpokenFigures.in(spoken).split("\f"))).contains(written);
  }
}

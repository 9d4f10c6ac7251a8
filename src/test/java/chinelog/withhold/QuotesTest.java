package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Text;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuotesTest {

  /** Common practice of English printers, no source. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      delimiter = ';',
      value = {
        "It's the yard's;It’s the yard’s",
        "the boats' keels;the boats’ keels",
        "\"Half a mil,\" he said.;“Half a mil,” he said.",
        "'Half a mil,' he said, 'at most.';‘Half a mil,’ he said, ‘at most.’",
        "\"He said 'no'.\";“He said ‘no’.”",
        "(\"twice\");(“twice”)",
        "in the '80s;in the ’80s",
        "'tis done;’tis done",
        "a spar of 5' 6\", no more;a spar of 5′ 6″, no more",
        "a ½\" plank;a ½″ plank",
        "\"size 6\" it says;“size 6” it says",
        "nothing here;nothing here",
        "already “so” and ’80s;already “so” and ’80s",
      })
  void setsMarksAsEnglishPrintersDo(String typed, String set) {
    assertThat(new Quotes(Locale.UK).set(typed)).isEqualTo(set);
  }

  /** Unicode CLDR 45, delimiters; for double marks. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      delimiter = ';',
      value = {
        "de;Sie hieß \"Merrow\".;Sie hieß „Merrow“.",
        "fr;Le \"Merrow\" n'est pas là.;Le «\u00a0Merrow\u00a0» n’est pas là.",
        "es;La \"Merrow\" flota.;La «Merrow» flota.",
        "nl;De \"Merrow\" vaart 's avonds.;De “Merrow” vaart ’s avonds.",
      })
  void setsMarksAsEachLanguageDoes(String language, String typed, String set) {
    assertThat(new Quotes(Locale.forLanguageTag(language)).set(typed)).isEqualTo(set);
  }

  @Test
  void aQuotationRunsOnThroughEmphasisAndNotThroughCode() {
    List<Text.Run> line =
        List.of(
            new Text.Plain("\"The "),
            new Text.Emphasis(List.of(new Text.Plain("Merrow\""))),
            new Text.Plain(" reads "),
            new Text.CodeRun("\"it's\""),
            new Text.Footnote(List.of(new Text.Plain("\"So.\""))),
            new Text.Plain("'"));
    assertThat(new Quotes(Locale.UK).set(line))
        .containsExactly(
            new Text.Plain("“The "),
            new Text.Emphasis(List.of(new Text.Plain("Merrow”"))),
            new Text.Plain(" reads "),
            new Text.CodeRun("\"it's\""),
            new Text.Footnote(List.of(new Text.Plain("“So.”"))),
            new Text.Plain("’"));
  }
}

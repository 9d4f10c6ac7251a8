package chinelog.talk;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures as they are spoken, by hand in five languages; where no source is named, by the grammar
 * of each, as its speakers say it: common practice.
 */
class SpeechTest {

  private static final Map<String, Locale> LOCALES =
      Map.of(
          "en", Locale.UK,
          "de", Locale.GERMANY,
          "nl", Locale.forLanguageTag("nl-NL"),
          "fr", Locale.FRANCE,
          "es", Locale.forLanguageTag("es-ES"));

  private static Speech speech(String language) {
    return new Speech(LOCALES.get(language));
  }

  /**
   * Source: the tests of ICU's rule-based number formats (RbnfTest, methods TestEnglishSpellout,
   * TestFrenchSpellout, TestGermanSpellout, TestSpanishSpellout), soft hyphens taken out; English
   * with its "and", which ICU calls verbose.
   */
  @ParameterizedTest
  @CsvSource({
    "en,15,fifteen",
    "en,73,seventy-three",
    "en,106,one hundred and six",
    "en,579,five hundred and seventy-nine",
    "fr,21,vingt-et-un",
    "fr,71,soixante-et-onze",
    "fr,80,quatre-vingts",
    "fr,579,cinq cent soixante-dix-neuf",
    "de,73,dreiundsiebzig",
    "de,127,einhundertsiebenundzwanzig",
    "es,26,veintiséis",
    "es,106,ciento seis",
    "es,579,quinientos setenta y nueve",
    "es,15943,quince mil novecientos cuarenta y tres",
    "nl,73,drieënzeventig",
    "nl,579,vijfhonderdnegenenzeventig"
  })
  void numbersAreSpelledAsCldrHasThem(String language, String number, String spelled) {
    assertThat(new Numerals(LOCALES.get(language)).plain(new BigDecimal(number)))
        .isEqualTo(spelled);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "en | 700 mm | seven hundred millimetres",
        "de | 700 mm | siebenhundert Millimeter",
        "nl | 700 mm | zevenhonderd millimeter",
        "fr | 700 mm | sept cents millimètres",
        "es | 700 mm | setecientos milímetros",
        "en | 11.20 m | eleven point two metres",
        "de | 11,20 m | elf Komma zwei Meter",
        "nl | 11,20 m | elf komma twee meter",
        "fr | 11,20 m | onze virgule deux mètres",
        "es | 11,20 m | once coma dos metros",
        "en | 3/16 in | three sixteenths of an inch",
        "de | 3/16 in | drei Sechzehntel Zoll",
        "nl | 3/16 in | drie zestiende inch",
        "fr | 3/16 in | trois seizièmes de pouce",
        "es | 3/16 in | tres dieciseisavos de pulgada",
        "en | 2 1/2 in | two and a half inches",
        "de | 2 1/2 in | zweieinhalb Zoll",
        "nl | 2 1/2 in | twee en een halve inch",
        "fr | 2 1/2 in | deux pouces et demi",
        "es | 2 1/2 in | dos pulgadas y media",
        "en | 1/2 in | half an inch",
        "de | ¾ in | drei Viertel Zoll",
        "fr | 1/2 in | un demi-pouce",
        "es | 1/2 in | media pulgada",
        "en | 1:16 | one to sixteen",
        "de | 1:16 | eins zu sechzehn",
        "nl | 1:16 | een op zestien",
        "fr | 1:16 | un sur seize",
        "es | 1:16 | uno a dieciséis",
        "en | 0.005 in | five thousandths of an inch",
        "de | 0,005 in | fünf Tausendstel Zoll",
        "nl | 0,005 in | vijf duizendste inch",
        "fr | 0,005 in | cinq millièmes de pouce",
        "es | 0,005 in | cinco milésimas de pulgada",
        "en | 412 g ± 1 g | four hundred and twelve grams plus or minus one gram",
        "de | 412 g ± 1 g | vierhundertzwölf Gramm plus minus ein Gramm",
        "nl | 412 g ± 1 g | vierhonderdtwaalf gram plus of min een gram",
        "fr | 412 g ± 1 g | quatre cent douze grammes plus ou moins un gramme",
        "es | 412 g ± 1 g | cuatrocientos doce gramos más o menos un gramo",
        "en | £21.60 | twenty-one pounds sixty",
        "de | 12,40 € | zwölf Euro vierzig",
        "nl | € 12,40 | twaalf euro veertig",
        "fr | 12,40 € | douze euros quarante",
        "es | 12,40 € | doce euros con cuarenta",
        "en | 2 h 30 min | two hours thirty minutes",
        "de | 1 h 30 min | eine Stunde dreißig Minuten",
        "nl | 2 h 30 min | twee uur dertig minuten",
        "fr | 21 h | vingt-et-une heures",
        "es | 21 h | veintiuna horas",
        "en | 14 March 2026 | the fourteenth of March twenty twenty-six",
        "de | am 14. März 2026 | am vierzehnten März zweitausendsechsundzwanzig",
        "nl | 14 maart 2026 | veertien maart tweeduizendzesentwintig",
        "fr | 1er mars 2026 | premier mars deux mille vingt-six",
        "es | 14 de marzo de 2026 | catorce de marzo de dos mil veintiséis",
        "en | 2026-04-02 | the second of April twenty twenty-six",
        "en | 18:30 | eighteen thirty",
        "de | 18:30 | achtzehn Uhr dreißig",
        "en | approx. 5 mm, e.g. no. 3 | approximately five millimetres, for example number three",
        "de | ca. 5 mm, z. B. Nr. 3 | etwa fünf Millimeter, zum Beispiel Nummer drei",
        "nl | bijv. 5 mm | bijvoorbeeld vijf millimeter",
        "fr | env. 5 mm | environ cinq millimètres",
        "es | aprox. 5 mm | aproximadamente cinco milímetros",
        "en | 20 × 30 mm | twenty by thirty millimetres",
        "en | 10–12 mm | ten to twelve millimetres",
        "en | 120 g/m² | one hundred and twenty grams per square metre",
        "de | 120 g/m² | einhundertzwanzig Gramm pro Quadratmeter",
        "en | 1,250 g | one thousand two hundred and fifty grams",
        "de | 1.250 g | eintausendzweihundertfünfzig Gramm",
        "en | 34 GBP/h | thirty-four pounds per hour",
        "en | −3 mm | minus three millimetres",
        "en | 1.5 Ah | one point five ampere hours",
      })
  void figuresAreSpokenAsTheirLanguageSpeaksThem(String language, String written, String spoken) {
    assertThat(speech(language).say(written)).isEqualTo(spoken);
  }

  @Test
  void whatIsNoFigureStaysAsItIs() {
    for (String text :
        new String[] {
          "See T20_0430 and SY-1142/3.", "She said no. He left.", "Cut the 3D part.", "v1.2.3"
        }) {
      assertThat(speech("en").say(text)).isEqualTo(text);
    }
    assertThat(speech("en").say("We had 700 in April."))
        .isEqualTo("We had seven hundred in April.");
    assertThat(speech("de").say("1 Planke")).isEqualTo("1 Planke");
    assertThat(new Speech(Locale.ITALY).say("700 mm, circa")).isEqualTo("700 mm, circa");
  }

  @Test
  void aSentenceMayBeginWithAFigure() {
    Sentences sentences = new Sentences(Locale.UK, speech("en"), "[withheld]");
    assertThat(sentences.of("The sum is soon done. 0.24 m² of cloth drinks it."))
        .containsExactly(
            new Shot.Said("The sum is soon done.", "The sum is soon done."),
            new Shot.Said(
                "0.24 m² of cloth drinks it.",
                "Zero point two four square metres of cloth drinks it."));
    assertThat(sentences.of("Look at No. 3 of 14. 3. 2026 again.")).hasSize(1);
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is withheld, typed openly: a name, a figure, a passage, a number of a sheet. Nothing is
 * published until the maker has marked it or let it stand.
 */
@Timeout(120)
@Order(2)
class TypedOpenlyTest {

  @TempDir private Path folder;

  /** A log whose only open note holds {@code text}, in a language. */
  private TinyLog log(String language, String text) {
    TinyLog log = TinyLog.in(folder);
    log.write(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        maker: Tern Lane Workshop
        client: {value: Ravel Sound Pilotage Office, under: client}
        scale: 1:16
        language: LANGUAGE
        zone: Europe/London
        currency: GBP
        rate: {value: 34 GBP/h, under: client}
        sheets: {under: lines}
        agreements:
          lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02, until: never}
          client: {with: White & Daughters, covers: who ordered her, until: never}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          workshop: {title: The workshop, party-to: all, gets: [site]}
        """
            .replace("LANGUAGE", language));
    log.write(
        "facts.yaml",
        """
        full.loa: {is: 11.20 m, title: Length over all}
        full.beam: {is: 2.99 m, title: Beam, under: lines}
        hull.beam: full.beam / scale
        hull.draught: {is: 52 mm, title: Draught, under: lines}
        hull.volume: {is: 2377 cm³, title: Volume, under: lines}
        stem.height: {is: 190 mm, title: Height of the stem, under: lines}
        transom.angle: {is: 134 deg, title: Angle of the transom, under: lines}
        price.quoted: {is: 3480 GBP, title: Price quoted, under: client}
        strake.width: {is: 12 mm, title: Width of a strake}
        """);
    log.write(
        "entries/2026-03-20-drawings.md",
        """
        ---
        title: The drawings
        under: lines
        ---
        Sheet SY-1142/3 came by post, for hull No. 1174, order 88213. The forefoot is hollowed out like a spoon, and Brannock
        says that nobody has ever built her right. Der Vorfuß ist ausgehöhlt wie ein Löffel
        und steigt zur Hacke. De voorvoet is uitgehold als een lepel en stijgt naar de hak. Le
        brion est creusé comme une cuiller et monte vers le talon. El pie de roda está vaciado
        como una cuchara y sube hasta el talón.
        """);
    return log.write(TinyLog.NOTE, "---\ntitle: The keel\n---\nA quiet day. " + text + "\n");
  }

  private void asks(String language, String text) {
    TinyLog log = log(language, text);
    TinyLog.Said said = log.run("publish", "--for", "public");
    assertThat(said.err())
        .as(text)
        .containsPattern(TinyLog.NOTE + ":\\d+:\\d+: " + TinyLog.QUESTION);
    assertThat(said.status()).as(text).isEqualTo(Main.PROBLEMS);
    assertThat(log.path("published/public")).as(text).doesNotExist();
  }

  private void doesNotAsk(String language, String text) {
    TinyLog.Said said = log(language, text).run("check");
    assertThat(said.err())
        .as(text)
        .doesNotContainPattern(TinyLog.QUESTION + " ?: ")
        .doesNotContain("error: ");
    assertThat(said.status()).as(text).isEqualTo(Main.DONE);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "She is for the Ravel Sound Pilotage Office.",
        "She is for Ravel Sound.",
        "She is for the ravel sound pilotage office.",
        "A man from Ravel came by.",
        "The Pilotage Office rang.",
        "The RSPO rang.",
        "Write to ravelsoundpilotageoffice.example for more.",
        "Write to someone@skerrickyard.example for more.",
        "The roll from Skerrick Yard lies on the bench.",
        "Skerrick sent a roll.",
        "Got skerrick's roll today.",
        "The Skerricks are a patient lot.",
        "Skerick Yard sent a roll.",
        "SKERRICK YARD",
        "Sk\u00e9rrick sent it.",
        "Skerrick-Yard sent it.",
        "The people at White and Daughters were kind.",
        "The people at White & Daughters were kind.",
        "Mrs White rang this morning.",
        "I told White that it would be May.",
        "The sheet is SY-1142/3.",
        "The sheet is SY 1142/3.",
        "The sheet is sy1142-3.",
        "Ask Brannock.",
        "![The roll from Skerrick Yard](../photos/keel.png)",
        "[The roll](https://skerrick-yard.example/)",
        "- one\n- the roll from Skerrick\n",
        "| What | Who |\n|---|---|\n| roll | Skerrick |\n",
        "Called.[^1]\n\n[^1]: By Skerrick.",
        "> Skerrick said so."
      })
  void aNameIsAsked(String text) {
    asks("en-GB", "\n\n" + text);
  }

  /** In German a capital tells nothing, and elsewhere nothing at the beginning of a sentence. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ Office rang about the fittings.",
        "en-GB @ White's answer came late.",
        "en-GB @ Dr White.",
        "en-GB @ White has not written.",
        "en-GB @ Sent off (Office).",
        "de-DE @ Zwei Bilder geschickt, Büro.",
        "de-DE @ Büro rief wegen der Beschläge an.",
        "de-DE @ Büro hat wegen der Beschläge angerufen.",
        "de-DE @ Heute Büro angerufen.",
        "de-DE @ Brief von Büro im Kasten.",
        "de-DE @ Noch zwei Bilder für Büro gemacht.",
        "de-DE @ Auch Firma Büro war da.",
        "de-DE @ Niemand da, sagt Büro.",
        "de-DE @ Office fragt nach der Farbe.",
        "de-DE @ Die Daughters waren da.",
        "nl-NL @ Office belde over het beslag.",
        "nl-NL @ Office heeft nog niet geschreven.",
        "nl-NL @ Een brief van Office op de mat.",
        "fr-FR @ Office a appelé pour les ferrures.",
        "fr-FR @ Office demande une autre couleur.",
        "fr-FR @ Les photos sont parties chez Office.",
        "es-ES @ Office llamó por los herrajes.",
        "es-ES @ Office quiere otra mano.",
        "es-ES @ Dos fotos para Office esta noche."
      })
  void anEverydayWordThatStandsAsANameIsAsked(String language, String text) {
    TinyLog log = log(language, text);
    log.replace("log.yaml", "with: Skerrick Yard", "with: Büro Skerrick Yard");
    TinyLog.Said said = log.run("check");
    assertThat(said.err())
        .as(text)
        .containsPattern(TinyLog.NOTE + ":\\d+:\\d+: " + TinyLog.QUESTION);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ Office chairs make poor trestles.",
        "en-GB @ White oak for the stem.",
        "en-GB @ White and green, two coats each.",
        "de-DE @ Das Büro war kalt.",
        "de-DE @ Im Büro liegt noch Papier.",
        "de-DE @ Weiß zuerst, dann Grün.",
        "de-DE @ Die Farbe ist ein warmes Weiß.",
        "de-DE @ Mit Weiß gestrichen.",
        "de-DE @ Ein Büro braucht Platz.",
        "nl-NL @ Het kantoor was koud.",
        "fr-FR @ Le bureau était froid.",
        "es-ES @ La oficina estaba fría."
      })
  void anEverydayWordThatDoesNotIsNotAsked(String language, String text) {
    TinyLog log = log(language, text);
    log.replace("log.yaml", "with: Skerrick Yard", "with: Büro Skerrick Yard");
    assertThat(log.run("check").err()).as(text).doesNotContainPattern(TinyLog.QUESTION + " ?: ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "White primer went on.",
        "Two coats of white, then green.",
        "The daughters of the house came to see her.",
        "The office was cold, the yard wet.",
        "White oak for the stem. Merrow will like it.",
        "Tern Lane Workshop was quiet.",
        "A pilot came, and a sound like ravens.",
        "Nothing but the keel.",
        "The ladle went out like a spoon. Nobody has ever seen it."
      })
  void ordinaryWordsAreNotAsked(String text) {
    doesNotAsk("en-GB", text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ The beam is 2.99 m.",
        "en-GB @ Somewhere it says 2.99 m.",
        "en-GB @ Somewhere it says 2990 mm.",
        "en-GB @ Somewhere it says 299 cm.",
        "en-GB @ Somewhere it says 187 mm.",
        "en-GB @ Somewhere it says 186.9 mm.",
        "en-GB @ Somewhere it says 18.7 cm.",
        "en-GB @ Somewhere it says 7.36 in.",
        "en-GB @ Somewhere it says 7 23/64 in.",
        "en-GB @ Somewhere it says 9 ft 9 3/4 in.",
        "en-GB @ Somewhere it says 9.81 ft.",
        "en-GB @ Her beam is 187.",
        "en-GB @ Her beam is about 190 mm.",
        "en-GB @ Her beam is 19 cm.",
        "en-GB @ She is 3 m wide at full size.",
        "en-GB @ She is 2 m 99 somewhere.",
        "en-GB @ Somewhere one hundred and eighty-seven millimetres.",
        "en-GB @ Somewhere a hundred and eighty seven mm.",
        "en-GB @ Somewhere two point nine nine metres.",
        "en-GB @ Two metres ninety-nine, somewhere.",
        "en-GB @ She draws 52 mm.",
        "en-GB @ Cut at 52 mm.",
        "en-GB @ She draws two inches, or fifty-two millimetres.",
        "en-GB @ The stem is 190 mm.",
        "en-GB @ The price was £3,480.",
        "en-GB @ It came to 3480 in the end.",
        "en-GB @ It came to 3,480 GBP.",
        "en-GB @ Quoted at three thousand four hundred and eighty pounds.",
        "en-GB @ At £34 an hour one thinks twice.",
        "en-GB @ The rate is 34 an hour.",
        "en-GB @ She displaces 2.377 L.",
        "en-GB @ She displaces 2377 cm3.",
        "en-GB @ She displaces 145.1 in³.",
        "de-DE @ Irgendwo steht 2,99 m.",
        "de-DE @ Die Breite ist 187.",
        "de-DE @ Irgendwo hundertsiebenundachtzig Millimeter.",
        "de-DE @ Irgendwo einhundertsiebenundachtzig mm.",
        "de-DE @ Irgendwo zwei Komma neun neun Meter.",
        "de-DE @ Der Tiefgang ist zweiundfünfzig Millimeter.",
        "de-DE @ Der Preis war 3.480 Pfund.",
        "de-DE @ Angeboten für dreitausendvierhundertachtzig Pfund.",
        "de-DE @ Sie ist knapp 19 cm breit.",
        "nl-NL @ Ergens staat 2,99 m.",
        "nl-NL @ De breedte is 187.",
        "nl-NL @ Ergens honderdzevenentachtig millimeter.",
        "nl-NL @ Ergens twee komma negen negen meter.",
        "nl-NL @ De diepgang is tweeënvijftig millimeter.",
        "nl-NL @ De prijs was 3480 pond.",
        "nl-NL @ Drieduizendvierhonderdtachtig pond kost ze.",
        "nl-NL @ Ze is bijna 19 cm breed.",
        "fr-FR @ Quelque part 2,99 m.",
        "fr-FR @ Sa largeur est de 187.",
        "fr-FR @ Quelque part cent quatre-vingt-sept millimètres.",
        "fr-FR @ Quelque part deux virgule quatre-vingt-dix-neuf mètres.",
        "fr-FR @ Son tirant est de cinquante-deux millimètres.",
        "fr-FR @ Le prix était de 3 480 livres.",
        "fr-FR @ Trois mille quatre cent quatre-vingts livres, dit le devis.",
        "fr-FR @ Elle est large de 19 cm.",
        "es-ES @ En algún lugar 2,99 m.",
        "es-ES @ La manga es de 187.",
        "es-ES @ En algún lugar ciento ochenta y siete milímetros.",
        "es-ES @ En algún lugar dos coma noventa y nueve metros.",
        "es-ES @ El calado es de cincuenta y dos milímetros.",
        "es-ES @ El precio era de 3.480 libras.",
        "es-ES @ Tres mil cuatrocientas ochenta libras cuesta.",
        "es-ES @ Tiene 19 cm de ancho."
      })
  void aFigureIsAsked(String language, String text) {
    asks(language, text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "She is 11.20 m long over all.",
        "Each strake is 12 mm wide.",
        "Six strips, two pots of tea and 40 minutes.",
        "On 28 March at 10:45 the clamp came off.",
        "The plank was 3 mm too short.",
        "Scale 1:16, as ever; number 52 bus home.",
        "Sanded with 240 grit at 300 rpm.",
        "Planks of 430 mm, spaced at 15 mm."
      })
  void anotherFigureIsNotAsked(String text) {
    doesNotAsk("en-GB", text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "The forefoot is hollowed out like a spoon.",
        "the forefoot is hollowed out like a SPOON",
        "I know: forefoot is hollowed out like a spoon, they say.",
        "Nobody has ever built her right.",
        "He says that nobody has ever built her right.",
        "hollowed  out,\nlike a spoon, and a ladle"
      })
  void aPassageIsAsked(String text) {
    asks("en-GB", text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ She has a forefoot hollowed out like a spoon.",
        "de-DE @ Der Vorfuß ist ausgehöhlt wie ein Löffel.",
        "de-DE @ DER VORFUSS IST AUSGEHÖHLT WIE EIN LÖFFEL",
        "de-DE @ Man sieht: ausgehöhlt wie ein Löffel und steigt …",
        "de-DE @ > ist *ausgehöhlt* wie ein Löffel",
        "nl-NL @ De voorvoet is uitgehold als een lepel.",
        "nl-NL @ de voorvoet is uitgehold als een lepel en",
        "nl-NL @ - uitgehold als een lepel en stijgt naar de hak",
        "nl-NL @ Kijk: uitgehold als een **lepel** en stijgt.",
        "fr-FR @ Le brion est creusé comme une cuiller.",
        "fr-FR @ le brion est creuse comme une cuiller",
        "fr-FR @ On le voit creusé comme une cuiller et monte vers le talon.",
        "fr-FR @ « creusé comme une cuiller et monte vers »",
        "es-ES @ El pie de roda está vaciado como una cuchara.",
        "es-ES @ El pie de roda esta vaciado como una cuchara",
        "es-ES @ Se ve vaciado como una cuchara y sube hasta el talón.",
        "es-ES @ `vaciado como una cuchara y sube hasta`"
      })
  void aPassageOfAnotherLanguageIsAsked(String language, String text) {
    asks(language, "\n\n" + text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ It came on 20 March.",
        "en-GB @ It came on 20 March 2026.",
        "en-GB @ It came on the 20th of March.",
        "en-GB @ It came on March 20.",
        "en-GB @ It came on March 20th, 2026.",
        "en-GB @ It came on 2026-03-20.",
        "en-GB @ It came on 20/03/2026.",
        "en-GB @ It came on 3/20/2026.",
        "en-GB @ It came on 20 Mar.",
        "en-GB @ Signed on 2 March.",
        "en-GB @ It came on the twentieth of March.",
        "en-GB @ It came on March the twentieth.",
        "en-GB @ March 20 was a wet day.",
        "en-GB @ It came on 20-Mar-2026.",
        "en-GB @ It came on 20/3, by van.",
        "en-GB @ IMG 20260320 shows it.",
        "de-DE @ Es kam am zwanzigsten März.",
        "de-DE @ Der zwanzigste März war nass.",
        "de-DE @ Es kam am 20ten März.",
        "nl-NL @ Het kwam op de twintigste maart.",
        "nl-NL @ Het kwam op twintig maart.",
        "nl-NL @ Het kwam de 20e maart.",
        "fr-FR @ Il est arrivé le vingt mars.",
        "fr-FR @ Il est arrivé le 20 du mois de mars.",
        "es-ES @ Llegó el veinte de marzo.",
        "es-ES @ Llegó el día veinte de marzo de 2026.",
        "de-DE @ Es kam am 20. März.",
        "de-DE @ Es kam am 20. März 2026.",
        "de-DE @ Es kam am 20.03.2026.",
        "de-DE @ Es kam am 20.3. mit der Post.",
        "nl-NL @ Het kwam op 20 maart.",
        "nl-NL @ Het kwam op 20-03-2026.",
        "fr-FR @ Il est arrivé le 20 mars.",
        "fr-FR @ Il est arrivé le 20/03/2026.",
        "es-ES @ Llegó el 20 de marzo.",
        "es-ES @ Llegó el 20 de marzo de 2026."
      })
  void aDayIsAsked(String language, String text) {
    asks(language, text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "It came on 25 March, as did the glue.",
        "It came on 21 March.",
        "It came on 20 April.",
        "It came on 20 March 2025.",
        "Twenty marched by; 20 mark the place.",
        "We may twenty times march; in March twelve came.",
        "A turn and 20/3 of another."
      })
  void anotherDayIsNotAsked(String text) {
    doesNotAsk("en-GB", text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ No. 1174 is on the bench.",
        "en-GB @ I call her 1174.",
        "en-GB @ Her yard number: 1174.",
        "en-GB @ The order, 88213, is in.",
        "en-GB @ It is drawing 1142.",
        "de-DE @ Nr. 1174 liegt auf der Werkbank.",
        "de-DE @ Baunummer 1174 liegt auf der Werkbank.",
        "nl-NL @ Bouwnummer 1174 ligt op de bank.",
        "fr-FR @ Le n° 1174 est sur l'établi.",
        "fr-FR @ La commande 88213 est là.",
        "es-ES @ El casco 1174 está en el banco.",
        "es-ES @ El n.º 1174 está en el banco."
      })
  void aNumberThatNamesAThingIsAsked(String language, String text) {
    asks(language, text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"The lime came as 1174 mm strips.", "It is 11.74 of them.", "No 1174 g of it."})
  void aNumberThatCountsIsNotAsked(String text) {
    doesNotAsk("en-GB", text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "en-GB @ The transom stands at an angle of 134 degrees.",
        "en-GB @ Her beam is 3.59 times the draught.",
        "en-GB @ She displaces 2.4 l.",
        "de-DE @ Der Spiegel steht im Winkel von 134 Grad.",
        "de-DE @ Die Breite ist das 3,59-fache des Tiefgangs.",
        "nl-NL @ De hoek van de spiegel is 134 graden.",
        "nl-NL @ De breedte is 3,59 keer de diepgang.",
        "fr-FR @ L'angle est de cent trente-quatre degrés.",
        "fr-FR @ La largeur vaut 3,59 fois le tirant d'eau.",
        "es-ES @ El ángulo del espejo es de 134 grados.",
        "es-ES @ La manga es 3,59 veces el calado."
      })
  void anAngleAndARatioAreAsked(String language, String text) {
    asks(language, text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "title @ title: Building Merrow for Skerrick",
        "stages @ stages: {moulds: {title: Moulds of Skerrick}}",
        "about @ about: The roll came from Skerrick Yard.",
        "licence @ licence: Show it, but ask Skerrick Yard."
      })
  void everyTextOfTheLogIsRead(String key, String line) {
    TinyLog log = log("en-GB", "Nothing.");
    String head = log.read("log.yaml");
    log.write("log.yaml", head.replaceAll("(?m)^" + key + ":.*\n", "") + line + "\n");
    TinyLog.Said said = log.run("check");
    assertThat(said.err()).contains("question: ");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @Test
  void wordsForAPhotographAreRead() {
    TinyLog log = log("en-GB", "Nothing.");
    for (String words : new String[] {"caption: From Skerrick", "alt: The beam is 187 mm"}) {
      log.write("photos/photos.yaml", "keel.png: {" + words + "}\n");
      assertThat(log.run("check").err()).as(words).contains("question: ");
    }
  }

  @Test
  void anAnswerLetsItStandUntilTheTextOrTheAgreementChanges() throws Exception {
    TinyLog log = log("en-GB", "Mrs White rang. \n\nMr White rang.");
    TinyLog.Said said = log.run("check");
    assertThat(said.err()).contains("2 questions; one answer settles it all");
    String written = said.err().replaceAll("(?s).*answers.yaml: (- .*?\\}).*", "$1");
    log.write("answers.yaml", written.replace("\u2026", "She is another White") + "\n");
    assertThat(log.run("check").err()).doesNotContain("question: ");
    assertThat(log.run("check").status()).isEqualTo(Main.DONE);

    TinyLog.Said published = log.run("publish", "--for", "public");
    assertThat(published.status()).as(published.err()).isEqualTo(Main.DONE);
    assertThat(log.everything().entrySet())
        .filteredOn(e -> e.getKey().startsWith("published/public"))
        .isNotEmpty()
        .noneMatch(e -> e.getValue().contains("another White"));

    String note = log.read(TinyLog.NOTE);
    log.write(TinyLog.NOTE, note.replace("Mr White rang.", "Mr White rang about the boat."));
    assertThat(log.run("check").err()).contains("1 question;");
    log.write(TinyLog.NOTE, note);
    log.replace("log.yaml", "who ordered her", "who has ordered her");
    assertThat(log.run("check").err()).contains("2 questions;");
    assertThat(Files.exists(log.path("answers.yaml"))).isTrue();
  }

  @Test
  void whoIsPartyIsNotAsked() {
    TinyLog log = log("en-GB", "The beam is 2.99 m, says Skerrick Yard.");
    assertThat(log.run("publish", "--for", "workshop").status()).isEqualTo(Main.DONE);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "- {questions: [q0123456789], answer: may-stand, on: 2026-05-01}",
        "- {questions: [q0123456789], answer: maybe, reason: x, on: 2026-05-01}",
        "- {questions: [x], answer: may-stand, reason: x, on: 2026-05-01}",
        "- {questions: [q0123456789], answer: may-stand, reason: \"\", on: 2026-05-01}",
        "- {questions: [q0123456789], answer: may-stand, reason: …, on: 2026-05-01}",
        "- {questions: [q0123456789], answer: may-stand, reason: x}",
        "- {questions: [q0123456789], answer: may-stand, reason: x, on: 2036-05-01}",
        "questions: [q0123456789]",
        "- may-stand"
      })
  void aWrongAnswerIsToldWithItsPlace(String answer) {
    TinyLog.Said said = log("en-GB", "Nothing.").write("answers.yaml", answer + "\n").run("check");
    assertThat(said.err()).containsPattern("answers.yaml:\\d+:\\d+: error: ");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @Test
  void anAnswerAboutNothingIsToldToBeVoid() {
    String answer = "- {questions: [q0123456789], answer: may-stand, reason: x, on: 2026-05-01}\n";
    TinyLog.Said said = log("en-GB", "Nothing.").write("answers.yaml", answer).run("check");
    assertThat(said.err()).contains("answers.yaml:1:3: reminder: This answer is void");
    assertThat(said.status()).isEqualTo(Main.DONE);
  }
}

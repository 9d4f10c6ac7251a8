package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One build from the first command to the client's edition, by the command line alone: the rowing
 * skiff Curlew, for whose lines the Pell Loft asked silence, and for whose oars the Ash Bank.
 */
class FromScratchTest {

  @TempDir Path folder;

  private TinyLog log;

  @Test
  void aMakerComesFromNothingToTheClientsEdition() throws Exception {
    begin();
    sayWhoMaySeeWhat();
    bringPhotographsIn();
    writeNotes();
    settleWhatCheckFinds();
    lookAtADraft();
    askInWriting();
    publish();
    publishAgain();
  }

  private void begin() {
    log = TinyLog.empty(folder.resolve("curlew"));
    Said said = log.run("begin", "--name", "Curlew", "--scale", "1:8");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    said = log.run("check");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.err()).isEmpty();
  }

  private void sayWhoMaySeeWhat() throws IOException {
    replace("# maker: Tern Lane Workshop ", "maker: Tern Lane Workshop ");
    replace(
        "# client: {value: The harbour office, under: lines}",
        "client: The Gannel Rowing Club\nrate: 30 GBP/h\ntell: {client: [client]}\n#");
    replace(
        "# agreements:",
        """
        agreements:
          lines: {with: Pell Loft, covers: "the lines plan, and all taken from it", from: 2026-03-02, until: never}
          oars: {with: The Ash Bank, covers: the drawing of the oars, from: 2026-03-02, until: never}
        sheets: {under: lines, oars.png: {under: oars}}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          client: {title: The client, party-to: [oars], gets: [site, handover, letter, photo-sheet, quotation]}
          workshop: {title: The workshop, party-to: all, gets: [patterns]}
        budgets: {stock.larch.used: 40, hours: 60 h}
        posts: {words: 60}
        letter: {since: 2026-03-20, text: "Dear rowers, the planking goes well."}
        handover: {care: Rinse and dry her., running: One rower sits amidships.}
        """);
    // Drawings that are open to nobody; what is taken from them follows.
    Files.createDirectories(log.path("sheets"));
    log.photo("sheets/lines.png").photo("sheets/oars.png");
    log.write(
        "facts.yaml",
        """
        full.loa: {is: 4.88 m ± 5 mm, title: Length over all}
        hull.loa: full.loa / scale
        full.beam: {is: 1.37 m, title: Beam, from: sheets/lines.png}
        full.oar: {is: 2.36 m, title: Length of an oar, from: sheets/oars.png}
        form: {reckon: hull-form, offsets: offsets, draught: 16 mm, water: fresh, under: lines}
        moulds: {reckon: moulds, offsets: offsets, thickness: 1 mm, siding: 2 mm, draught: 16 mm, board: 80 mm, under: lines}
        """);
    String table = log.read("tables/offsets.csv");
    log.write(
        "tables/offsets.csv",
        table.replace("WL 20 ", "WL 10 ").replace("WL 40 ", "WL 25 ").replace("WL 60 ", "WL 45 ")
            + """
            0,0,6,18,40,55,60,58
            1,150,2,44,66,76,58,79
            2,300,0,50,72,83,58,85
            3,450,2,36,60,74,64,79
            4,600,8,4,18,32,76,44
            """);
    log.write(
        "log.yaml",
        log.read("log.yaml")
            + "\ntables: {offsets: {under: lines}}\nlimits: {a: {title: Length, rule: hull.loa <= 25 in}}\n");
    log.write(
        "stock.yaml",
        "- {material: larch, title: \"Larch strip, 2 mm\", bought: 30, price: 24 GBP, hazards: [dust]}\n");
    log.write(
        "quotation.yaml",
        """
        title: A second Curlew
        stages: {moulds: fixed, planking: fixed}
        built: {length: 610 mm}
        wanted: {length: 610 mm}
        tax: 20 %
        margin: 15 %
        """);
  }

  private void bringPhotographsIn() {
    TinyLog card = TinyLog.empty(folder.resolve("card"));
    int minute = 0;
    for (String day : List.of("2026-03-16", "2026-03-25", "2026-03-28")) {
      card.photo("DCIM/P" + minute + ".jpg", LocalDateTime.parse(day + "T18:0" + minute++ + ":00"));
    }
    Said said =
        TinyLog.say(
            "gather", folder.resolve("card/DCIM").toString(), "--into", log.path("").toString());
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.path("photos/2026-03-16/P0.jpg")).exists();
  }

  private void writeNotes() {
    log.remove("entries/2026-06-01-the-log-is-begun.md");
    log.write(
        "entries/2026-03-16-moulds.md",
        """
        ---
        stage: moulds
        ---
        # Five moulds

        Five moulds stand on the board, chalked and straight. The widest of them is
        [171 mm]{under=lines} across, and it took an evening to persuade it upright.

        ![The moulds](../photos/2026-03-16/P0.jpg)
        """);
    log.write(
        "entries/2026-03-25-planking.md",
        """
        ---
        stage: planking
        used: {larch: 24}
        ---
        # Larch

        The first twelve strakes a side went on without a word. Larch bends when it is asked
        in the morning, and not at all after lunch. She is to be [](fact:hull.loa) long.

        ## What the loft drew {under=lines}

        The garboard is to be 31 mm at the widest.
        """);
    log.write("entries/2026-03-28-oars.txt", "The oars are shaved, and balance on a finger.\n");
    log.write(
        "hours.csv",
        "date,time,stage\n2026-03-16,3 h 30 min,moulds\n2026-03-25,\"09:00-12:00, 13:30-15:00\",planking\n"
            + "2026-03-26,2 h,planking\n");
  }

  /** Every refusal says what to write, and once that is written it does not come back. */
  private void settleWhatCheckFinds() {
    Said said = log.run("check");
    assertThat(said.status()).as(said.out()).isEqualTo(Main.PROBLEMS);
    // A photograph of the day of a section that is withheld, and a length that is nearly that of
    // the
    // waterline, which is worked out from the offsets. What is asked is told with what answers it.
    assertThat(said.err())
        .contains("photos/2026-03-25/P1.jpg: question: ", "form.lwl", "2 questions; 2 answers")
        .contains("This day has photographs and no hours: 2026-03-28.")
        .doesNotContain("error:");
    log.write("answers.yaml", answers(said.err()));
    said = log.run("check");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out())
        .contains(
            "3 entries, 3 photographs", "Posts for client:", " words, 1 min", "Not looked at");
    assertThat(log.run("reckon", "--shopping").out())
        .isEqualTo("Larch strip, 2 mm: 10, about £8.00 (40 planned, 30 bought)\n");
  }

  private static String answers(String asked) {
    return Pattern.compile("- \\{questions: .*?\\}")
        .matcher(asked)
        .results()
        .map(m -> m.group().replace("\u2026", "Everybody may know this"))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private void lookAtADraft() {
    Said said = log.run("publish", "--draft", "--for", "client");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.path("workshop/client.draft/site/index.html")).exists();
    assertThat(log.path("published")).doesNotExist();
  }

  private void askInWriting() {
    Said said = log.run("form", "agreement", "lines");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    said = log.run("form", "release", "full.beam", "--for", "client");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(text("workshop/forms/release-full-beam.pdf"))
        .contains("Pell Loft", "Beam: 1.37 m", "licensed lawyer");
  }

  private void publish() {
    Said said = log.run("publish");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.run("audit").status()).isEqualTo(Main.DONE);
    String open = site("public");
    assertThat(open)
        .contains("Building Curlew", "610", "Larch bends", "balance on a finger")
        .doesNotContain(
            "Pell", "Ash Bank", "Gannel", "171 mm", "garboard", "2.36", "1.37", "30.00");
    String client = site("client");
    assertThat(client)
        .contains("2.36")
        .doesNotContain("171 mm", "garboard", "1.37", "30.00", "Pell");
    assertThat(text("published/client/letter.pdf"))
        .contains(
            "The Gannel Rowing Club", "Dear rowers", "25 March 2026 Larch", "6 h 30 min worked");
    assertThat(text("published/client/photographs.pdf")).contains("Plate 2", "Plate 3");
    assertThat(text("published/client/quotation.pdf"))
        .contains("A second Curlew", "Price before tax", "Signature")
        .doesNotContain("30.00", "margin");
    assertThat(text("published/client/handover.pdf")).contains("Rinse and dry her");
    assertThat(log.path("published/workshop")).doesNotExist();
    assertThat(text("workshop/workshop/patterns.pdf")).contains("Mould");
  }

  /** The very next run has nothing to do, and one after an edit does it once. */
  private void publishAgain() {
    assertThat(log.run("publish").out()).contains("stands").doesNotContain("audit     clean");
    log.write(
        "entries/2026-03-28-oars.txt", "The oars are shaved, and balance on a finger. So do I.\n");
    assertThat(log.run("publish", "--for", "public").out()).contains("audit     clean");
    assertThat(log.run("publish", "--for", "public").out()).contains("stands");
  }

  private void replace(String old, String by) {
    log.replace("log.yaml", old, by);
  }

  private String site(String readers) {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> walk = Files.walk(log.path("published/" + readers + "/site"))) {
      for (Path page : walk.filter(p -> p.toString().endsWith(".html")).sorted().toList()) {
        all.append(Files.readString(page));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all.toString().replaceAll("[\\s\u00a0\u202f]+", " ");
  }

  private String text(String pdf) {
    try (PDDocument document = Loader.loadPDF(log.path(pdf).toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0\u202f]+", " ");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

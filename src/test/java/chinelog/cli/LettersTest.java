package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Letters to those who follow the build, and forms for the other side of an agreement. */
class LettersTest {

  @TempDir Path folder;

  private TinyLog log() {
    TinyLog log = TinyLog.in(folder);
    log.replace(
        "log.yaml", "currency: GBP", "currency: GBP\nmaker: Tern Lane\nclient: Harbour Board");
    log.replace(
        "log.yaml",
        "  workshop: {",
        "  client: {title: The client, party-to: [], gets: [letter, photo-sheet, quotation]}\n"
            + "  workshop: {");
    log.replace("log.yaml", "limits:", "tell: {client: [client]}\nrate: 34 GBP/h\nlimits:");
    log.replace(
        "log.yaml",
        "limits:",
        "letter:\n  since: 2026-03-20\n  text: |\n    Dear Harbour Board, the keel lies."
            + "\n    The frames are [nine in number]{under=lines}.\nlimits:");
    log.photo("photos/T20_1.jpg", LocalDateTime.of(2026, 3, 25, 12, 0));
    log.write(
        "quotation.yaml",
        "title: A sister\nstages: {planking: fixed}\nbuilt: {length: hull.loa}\n"
            + "wanted: {length: 700 mm}\ntax: 20 %\nmargin: 10 %\n");
    return log;
  }

  private static String text(Path pdf) {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0\u202f\u2009]+", " ");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theClientGetsWhatTheClientMaySeeAndNothingElse() {
    TinyLog log = log();
    Said said = log.run("publish", "--for", "client");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    String letter = text(log.path("published/client/letter.pdf"));
    assertThat(letter)
        .contains("Tern Lane", "1 June 2026", "Harbour Board", "Progress of Merrow")
        .contains("the keel lies", "Since 20 March 2026", "The keel goes down")
        .contains("Planking under way; 3 h 30 min worked", "Plate 1")
        .doesNotContain("nine in number");
    assertThat(text(log.path("published/client/photographs.pdf")))
        .contains("Photographs of Merrow", "Plate 1", "Plate 2");
    // The price, and neither the rate nor the margin.
    assertThat(text(log.path("published/client/quotation.pdf")))
        .contains("A sister", "Price before tax £", "Tax £", "Signature")
        .doesNotContain("34.00", "3 h 30");
    assertThat(log.read("records/client/register.txt"))
        .contains("under lines", "under your own affairs");
    assertThat(log.run("audit", "--for", "client").status()).isEqualTo(Main.DONE);
  }

  @Test
  void whoIsNotToldTheClientsNameIsNotToldTheLetter() {
    TinyLog log = log();
    log.replace("log.yaml", "tell: {client: [client]}\n", "");
    log.replace("log.yaml", "gets: [site]}\n  client", "gets: [site, letter]}\n  client");
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(text(log.path("published/public/letter.pdf")))
        .contains("Progress of Merrow")
        .doesNotContain("Harbour", "the keel lies", "nine");
  }

  @Test
  void aQuotationThatRestsOnWhatIsPromisedStopsThePublishing() {
    TinyLog log = log();
    log.replace(TinyLog.NOTE, "time: 09:10-12:40", "time: {value: 09:10-12:40, under: lines}");
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err())
        .contains("quotation.yaml: error: The quotation rests on what is under lines");
    log.remove("quotation.yaml");
    assertThat(log.run("check").err()).contains("but this file does not make one");
  }

  @Test
  void anAgreementIsPrintedInTheLogsOwnWords() {
    TinyLog log = log();
    Said said = log.run("form", "agreement", "lines");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out()).contains("licensed lawyer");
    String form = text(log.path("workshop/forms/agreement-lines.pdf"));
    assertThat(form)
        .contains("Skerrick Yard", "the lines plan", "2 March 2026", "without end", "Tern Lane")
        .contains("no legal advice", "licensed lawyer", "Signature")
        .doesNotContain("Harbour Board");
    // One that was filled in is never overwritten, and the form counts as no part of the log.
    log.write("workshop/forms/agreement-lines.pdf", "signed");
    assertThat(log.run("form", "agreement", "lines").out()).contains("agreement-lines-2.pdf");
    assertThat(log.read("workshop/forms/agreement-lines.pdf")).isEqualTo("signed");
    assertThat(log.run("check").err()).doesNotContain("workshop");
    assertThat(log.run("form", "agreement", "line").err()).contains("Did you mean \"lines\"?");
  }

  @Test
  void leaveIsAskedForOneThingAndTellsNothingOfAnother() {
    TinyLog log = log();
    log.replace(
        "log.yaml", "  lines: {with", "  sails: {with: The loft, covers: sails}\n  lines: {with");
    log.write(
        "facts.yaml",
        """
        full.loa: {is: 11.20 m ± 5 mm, title: Length over all}
        hull.loa: full.loa / scale
        full.beam: {is: 3.04 m, title: Beam, under: lines}
        full.luff: {is: 6.35 m, title: Secret luff, under: [lines, sails]}
        """);
    Said said = log.run("form", "release", "full.beam", "--for", "client");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out()).contains("- {fact: full.beam, under: lines, by: …, on: 2026-06-01");
    assertThat(text(log.path("workshop/forms/release-full-beam.pdf")))
        .contains(
            "Asking leave to show", "Beam: 3.04 m", "The client", "Leave is given in these words");
    // Under two agreements, and neither side may learn of it what it is not party to.
    assertThat(log.run("form", "release", "full.luff").err()).contains("under lines, sails");
    said = log.run("form", "release", "full.luff", "--under", "sails");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(text(log.path("workshop/forms/release-full-luff.pdf")))
        .contains("a figure", "The loft")
        .doesNotContain("6.35", "Secret luff", "Skerrick");
    assertThat(log.run("form", "release", "full.loa").err()).contains("under no agreement");
    assertThat(log.run("form", "release", "full.bean").err()).contains("full.beam");
    assertThat(log.run("form", "release", "full.beam", "--for", "cleint").err()).contains("client");
    assertThat(log.run("form", "receipt", "full.beam").status()).isEqualTo(Main.USAGE);
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets and pages under agreements of their own. */
class SheetAgreementsTest {

  @TempDir Path folder;

  private TinyLog log() {
    TinyLog log = TinyLog.in(folder);
    log.replace(
        "log.yaml",
        "  lines: {with",
        "  sails: {with: The loft, covers: the sails}\n  lines: {with");
    log.replace(
        "log.yaml",
        "  workshop: {",
        "  sailmaker: {title: The sailmaker, party-to: [sails], gets: [site]}\n  workshop: {");
    log.replace(
        "log.yaml",
        "limits:",
        "sheets: {under: lines, sails.pdf: {under: sails, pages: {2: lines}}}\nlimits:");
    log.write("sheets/sails.pdf", pages(2)).write("sheets/lines.pdf", pages(1));
    log.write(
        "facts.yaml",
        """
        full.loa: {is: 11.20 m ± 5 mm, title: Length over all}
        hull.loa: full.loa / scale
        full.luff: {is: 6.35 m, title: Luff, from: sheets/sails.pdf#1}
        full.mast: {is: 8.75 m, title: Mast, from: sheets/sails.pdf#2}
        full.beam: {is: 3.04 m, title: Beam, from: sheets/lines.pdf}
        full.foot: {is: 2.15 m, title: Foot, from: sheets/sails.pdf}
        """);
    return log;
  }

  private static byte[] pages(int count) {
    try (PDDocument pdf = new PDDocument()) {
      for (int i = 0; i < count; i++) {
        pdf.addPage(new PDPage());
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      pdf.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void whatIsTakenFromAPageFollowsThePage() {
    TinyLog log = log();
    Said said = log.run("publish", "--for", "public", "--for", "sailmaker");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    String open = log.read("published/public/site/figures.html");
    assertThat(open).contains("11.200").doesNotContain("6.35", "8.75", "3.04", "2.15");
    // The sailmaker is party to the first page, not to the second, nor to what is of both.
    String sails = log.read("published/sailmaker/site/figures.html");
    assertThat(sails).contains("6.35").doesNotContain("8.75", "3.04", "2.15");
    assertThat(log.read("records/sailmaker/register.txt"))
        .contains(
            "full.mast, under lines",
            "full.beam, under lines",
            "full.foot, under the agreements lines and sails");
  }

  @Test
  void whereNoneIsNamedOneCoversThemAll() {
    TinyLog log = log();
    log.replace(
        "log.yaml",
        "{under: lines, sails.pdf: {under: sails, pages: {2: lines}}}",
        "{under: lines}");
    log.run("publish", "--for", "sailmaker");
    assertThat(log.read("published/sailmaker/site/figures.html")).doesNotContain("6.35");
  }

  @Test
  void slipsAreErrors() {
    TinyLog log = log();
    String right = "sails.pdf: {under: sails, pages: {2: lines}}";
    for (String wrong :
        new String[] {
          "sail.pdf: sails",
          "sails.pdf: sail",
          "sails.pdf: {undr: sails}",
          "sails.pdf: {pages: {two: lines}}",
          "sails.pdf: {pages: {2: line}}",
          "sails.pdf: {pages: {2: {}}}",
          "sails.pdf: {pages: {2: {undr: lines}}}"
        }) {
      log.replace("log.yaml", right, wrong);
      Said said = log.run("check");
      assertThat(said.status()).as(wrong).isEqualTo(Main.PROBLEMS);
      assertThat(said.err()).as(wrong).contains("log.yaml:16:");
      log.replace("log.yaml", wrong, right);
    }
    log.replace("log.yaml", "sheets: {under: lines, ", "sheets: {");
    assertThat(log.run("check").err()).contains("\"under\" is missing here");
    log.replace("log.yaml", "sheets: {sails.pdf", "sheets: {lines.pdf: [lines, sails], sails.pdf");
    assertThat(log.run("check").err()).doesNotContain("error");
  }
}

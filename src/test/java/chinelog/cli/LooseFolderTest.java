package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDateTime;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A folder of notes and photographs whose owner has never heard of log.yaml. */
@Timeout(60)
@Order(2)
class LooseFolderTest {

  private static final String LONG = "The strip went on and came off again. ".repeat(100);

  @TempDir private Path folder;

  private TinyLog loose() {
    return TinyLog.empty(folder.resolve("merrow-notes"))
        .write("2026-03-14 Drawings.md", "Nothing but paper so far.\n\n" + LONG)
        .write("2026-03-17.md", "# Seven moulds\n\n![](pictures/moulds.png)\n\n" + LONG)
        .write("02 Planking/2026-03-25.md", "# Keel plank\n\nGlued.\n\n" + LONG)
        .write("02 Planking/2026-03-28.md", "# Half a basket\n\nGlued.\n\n" + LONG)
        .photo("pictures/moulds.png")
        .photo("2026-03-28 \u00fcber #2.png");
  }

  @Test
  void titleStagesAndDatesAreTakenFromWhatIsThere() {
    TinyLog log = loose();
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).isZero();
    assertThat(said.out()).contains("4 entries, 2 plates");
    String home = log.read("published/public/site/index.html");
    assertThat(home).contains("Merrow notes");
    String stages = log.read("published/public/site/stages.html");
    assertThat(stages).contains(">Planking<", "Keel plank", "Half a basket");
    // An id holds no space: HTML, Living Standard, 3.2.6, "the id attribute".
    assertThat(stages).contains("id=\"02-Planking\"").doesNotContain("02 ");
  }

  @Test
  void theEntriesAreDividedIntoPostsOfAboutEqualLength() {
    TinyLog log = loose();
    log.run("publish", "--for", "public");
    // Four notes of 800 words are three posts of about five minutes, the shorter ones last.
    assertThat(
            log.everything().keySet().stream()
                .filter(f -> f.startsWith("published/public/site/posts/")))
        .extracting(f -> f.substring(f.lastIndexOf('/') + 1))
        .hasSizeBetween(2, 3)
        .contains("drawings.html");
  }

  @Test
  void whatTheNotesTellNothingOfHasNoPageAndStandsInNoMenu() {
    TinyLog log = loose();
    log.run("publish", "--for", "public");
    assertThat(log.path("published/public/site/figures.html")).doesNotExist();
    assertThat(log.path("published/public/site/materials.html")).doesNotExist();
    assertThat(site(log)).doesNotContain("figures.html", "materials.html").contains("plates.html");
    log.write(
        "2026-03-30.md",
        "---\nstage: planking\ntime: 2 h\nmeasured: {hull.loa: 700 mm}\n---\nMeasured.\n");
    log.run("publish", "--for", "public");
    assertThat(log.read("published/public/site/index.html"))
        .contains("href=\"figures.html\"", "href=\"materials.html\"");
    assertThat(log.read("published/public/site/materials.html"))
        .contains(">2\u202fh<")
        .doesNotContain(">Planned<");
  }

  @Test
  void photographsAloneHaveNoEmptyPagesBesideThem() {
    TinyLog log =
        TinyLog.empty(folder.resolve("photos"))
            .photo("a.jpg", LocalDateTime.of(2026, 3, 19, 16, 2))
            .photo("b.jpg", LocalDateTime.of(2026, 3, 20, 16, 2));
    assertThat(log.run("publish", "--for", "public").status()).isZero();
    assertThat(log.path("published/public/site/series.html")).doesNotExist();
    assertThat(log.path("published/public/site/terms.html")).doesNotExist();
    assertThat(log.read("published/public/site/index.html"))
        .contains("<p class=\"onward\"><a href=\"plates.html\">")
        .doesNotContain("series.html", "terms.html");
    assertThat(log.read("published/public/site/plates.html"))
        .contains("<h2>March 19, 2026</h2>", "<h2>March 20, 2026</h2>")
        .doesNotContain("Without an entry", "<ul class=\"wall\">\n</ul>");
  }

  @Test
  void oneNoteAloneIsToldOnceAndWithoutWordsOfAgreementsThatNobodyMade() {
    TinyLog log =
        TinyLog.empty(folder.resolve("one"))
            .write("2026-03-14.md", "# Begun\n\nNothing but paper.\n");
    assertThat(log.run("publish").status()).isZero();
    assertThat(log.path("workshop/workshop/site/plates.html")).doesNotExist();
    assertThat(log.path("workshop/workshop/site/stages.html")).doesNotExist();
    assertThat(log.read("workshop/workshop/site/posts/begun.html"))
        .contains("class=\"entry alone\"")
        .doesNotContain("under-banner", "the sheets", "plates.html", "stages.html");
    assertThat(log.path("workshop/workshop/build-book.pdf")).exists();
    assertThat(log.path("workshop/workshop/handover.pdf")).doesNotExist();
    assertThat(log.read("published/public/site/index.html")).doesNotContain(">0<");
  }

  @Test
  void withoutAnAddressThePageForWrongAddressesBringsItsStyleAlongAndOnlyThat() throws Exception {
    TinyLog log = loose();
    log.run("publish", "--for", "public");
    String page = log.read("published/public/site/404.html");
    String style = page.substring(page.indexOf("<style>") + 7, page.indexOf("</style>"));
    String hash =
        Base64.getEncoder()
            .encodeToString(
                MessageDigest.getInstance("SHA-256")
                    .digest(style.getBytes(StandardCharsets.UTF_8)));
    // Content Security Policy Level 3, 6.7.3.3: a style element is allowed by its content's hash.
    assertThat(page).contains("style-src 'self' 'sha256-" + hash + "';");
    assertThat(style).contains("--paper:").doesNotContain("url(");
    assertThat(page).doesNotContain("site.css", "<nav");
    // It is shown under any wrong address: no path relative to that leads to the first page.
    assertThat(page.replace("href=\"#text\"", "")).doesNotContain("<a href=", "src=");
    assertThat(page).contains("whatever comes after the name of the site");
    assertThat(log.read("published/public/site/index.html")).doesNotContain("<style", "sha256-");
  }

  @Test
  void whatWouldBeAnErrorInALogIsAReminderHere() {
    TinyLog log = loose().write("shopping.md", "Glue.\n\n![](pictures/gone.png)\n");
    Said said = log.run("check");
    assertThat(said.status()).isZero();
    assertThat(said.err())
        .contains("shopping.md: reminder: This note has no date; ")
        .contains("shopping.md:3:1: reminder: There is no photograph \"pictures/gone.png\".");
  }

  @Test
  void aDateThatIsWrittenInAnotherWayBeginsANotesNameTooUnlessItMayMeanTwoDays() {
    TinyLog log =
        loose()
            .write("14.3.2026 paper.md", "One.\n")
            .write("2026_03_19.md", "Two.\n")
            .write("21 March 2026, frames.md", "Three.\n")
            .write("3-4-2026.md", "Four.\n")
            .write("1.2.10 Glue.md", "Five.\n");
    Said said = log.run("check");
    assertThat(said.status()).isZero();
    assertThat(said.err().lines().filter(line -> line.contains("has no date")))
        .hasSize(2)
        .anyMatch(
            line ->
                line.startsWith("3-4-2026.md: ")
                    && line.endsWith("its date, such as 2026-03-04-drawings.md."))
        .anyMatch(line -> line.startsWith("1.2.10 Glue.md: "));
    log.run("publish", "--for", "public");
    assertThat(site(log)).contains("2026-03-14", "2026-03-19", "2026-03-21");
  }

  @Test
  void notesOfAnotherKindAreNamedAndTheRestOfAFolderIsNot() {
    TinyLog log =
        loose()
            .write("a.txt", "One.\n")
            .write("b.txt", "Two.\n")
            .write("c.docx", "Three.\n")
            .write("d.xls", "Four.\n");
    assertThat(log.run("check").err())
        .contains(
            "a.txt: reminder: This file is not read, nor b.txt. If it is a note, let its name")
        .contains(
            "c.docx: reminder: This file is not read. If it is a note, save it as plain text,")
        .doesNotContain("d.xls");
  }

  @Test
  void aLogYamlThatIsMisnamedIsNotTakenForNone() {
    for (String name : List.of("log.yml", "Log.yaml", "log.yaml.txt")) {
      TinyLog log = TinyLog.in(folder.resolve(name)).move("log.yaml", name);
      Said said = log.run("publish");
      assertThat(said.status()).as(name).isEqualTo(Main.PROBLEMS);
      assertThat(said.err()).as(name).contains("log.yaml");
      assertThat(Files.exists(log.path("published"))).as(name).isFalse();
    }
  }

  private static String site(TinyLog log) {
    return log.everything().entrySet().stream()
        .filter(file -> file.getKey().startsWith("published/") && file.getKey().endsWith(".html"))
        .map(Map.Entry::getValue)
        .collect(Collectors.joining());
  }

  @Test
  void anUndatedNoteTakesTheDayOfItsFirstPhotographThatTellsOne() {
    TinyLog log =
        loose()
            .write("ribbands.md", "Bent on.\n\n![](pictures/moulds.png) ![](pictures/a.jpg)\n")
            .photo("pictures/a.jpg", LocalDateTime.of(2026, 3, 19, 16, 2));
    Said said = log.run("check");
    assertThat(said.status()).isZero();
    assertThat(said.err())
        .contains(
            "ribbands.md: reminder: This note has no date; 2026-03-19 is taken, the day its"
                + " photograph pictures/a.jpg was taken.");
    log.run("publish", "--for", "public");
    assertThat(site(log)).contains("<time datetime=\"2026-03-19\">");
  }

  @Test
  void inALogTooAndWithTheClockOfTheCameraPutRight() {
    TinyLog log =
        TinyLog.in(folder.resolve("clock"))
            .write("entries/ribbands.md", "Bent on.\n\n![](../photos/a.jpg)\n")
            .photo("photos/a.jpg", LocalDateTime.of(2026, 3, 20, 0, 40));
    assertThat(log.run("check").err()).contains("2026-03-20 is taken, the day its photograph");
    log.replace("log.yaml", "stages:", "clocks: {T-20: 1 h 12 min}\nstages:");
    assertThat(log.run("check").err()).contains("2026-03-19 is taken, the day its photograph");
  }

  @Test
  void theDayOfAPhotographUnderAnAgreementIsNotToldByANoteThatIsUnderNone() {
    TinyLog log =
        TinyLog.in(folder.resolve("under"))
            .write("entries/ribbands.md", "Bent on.\n\n![](../photos/a.jpg){under=lines}\n")
            .photo("photos/a.jpg", LocalDateTime.of(2026, 3, 20, 0, 40));
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).contains("entries/ribbands.md: error: This note has no date. Begin");
    log.write("entries/ribbands.md", "Bent on.\n\n![](../photos/a.jpg)\n")
        .write("photos/photos.yaml", "a.jpg: {under: lines}\n");
    assertThat(log.run("check").err())
        .contains("entries/ribbands.md: error: This note has no date. Begin");
  }

  @Test
  void aDiaryInOneFileIsDividedAtItsDatedHeadingsAndTheHeadingsAboveNameTheStages() {
    TinyLog log =
        TinyLog.empty(folder.resolve("diary"))
            .write(
                "diary.md",
                """
                # Building Merrow

                Begun in the spring.

                ## Moulds

                ### 2026-03-17: Seven of them

                Cut and faired.

                ### 18 March 2026

                On the board.

                ## Planking

                Cedar from the loft.

                ### 25 Mar 2026 - The keel plank

                Glued.
                """);
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).isZero();
    assertThat(said.err()).doesNotContain("no date");
    assertThat(said.out()).contains("3 entries");
    String stages = log.read("published/public/site/stages.html");
    assertThat(stages)
        .contains(">Moulds<", "Seven of them", ">Planking<", "The keel plank")
        .doesNotContain(">Building Merrow</h2>");
    assertThat(stages.indexOf("Seven of them")).isLessThan(stages.indexOf(">Planking<"));
    assertThat(stages.indexOf("The keel plank")).isGreaterThan(stages.indexOf(">Planking<"));
    assertThat(site(log))
        .contains("Cedar from the loft.", "Begun in the spring.", "<time datetime=\"2026-03-18\">");
  }

  @Test
  void theHeadingOfAWholeDiaryIsNoStage() {
    TinyLog log =
        TinyLog.empty(folder.resolve("diary"))
            .write("diary.md", "# My boat\n\n## 2026-03-17\n\nCut.\n\n## 2026-03-18\n\nGlued.\n");
    assertThat(log.run("publish", "--for", "public").out()).contains("2 entries");
    assertThat(log.path("published/public/site/stages.html")).doesNotExist();
  }
}

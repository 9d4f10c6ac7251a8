package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A draft is for the maker alone, and a trial run does not count as given out. */
class DraftTest {

  @TempDir Path folder;

  @Test
  void aDraftStandsInTheWorkshopAndIsNowhereTakenDown() {
    TinyLog log = TinyLog.in(folder);
    log.replace("log.yaml", "gets: [site]}\n  workshop", "gets: [site, book]}\n  workshop");
    Said said = log.run("publish", "--draft", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out())
        .contains("Draft for public", log.path("workshop/public.draft/site/index.html").toString());
    assertThat(log.read("workshop/public.draft/site/index.html")).contains("Building Merrow");
    assertThat(log.path("workshop/public.draft/build-book.pdf")).doesNotExist();
    assertThat(log.path("published")).doesNotExist();
    assertThat(log.everything().keySet())
        .noneMatch(f -> f.endsWith("ledger.csv") || f.endsWith("published.txt"));
    // Withheld afterwards, a figure that only a draft has shown is not out.
    log.replace("facts.yaml", "title: Length over all}", "title: Length over all, under: lines}");
    log.replace("log.yaml", "rule: hull.loa <= 36 in", "rule: hull.loa <= 36 in, under: lines");
    said = log.run("publish", "--for", "public");
    assertThat(said.err()).doesNotContain("already out");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.run("publish", "--draft").status()).isEqualTo(Main.DONE);
    assertThat(log.path("workshop/workshop.draft/site/index.html")).isNotEmptyFile();
  }

  @Test
  void whatWouldStopThePublishingDoesNotStopADraft() {
    TinyLog log = TinyLog.in(folder);
    log.write(TinyLog.NOTE, log.read(TinyLog.NOTE) + "\nSkerrick Yard sent a roll.\n");
    Said said = log.run("publish", "--draft", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.err()).contains("reminder", "Skerrick");
    assertThat(log.path("workshop/public.draft/site/index.html")).isNotEmptyFile();
    assertThat(log.run("publish", "--for", "public").status()).isEqualTo(Main.PROBLEMS);
    assertThat(log.path("published")).doesNotExist();
  }

  @Test
  void checkFindsWhatPublishingWouldRefuse() {
    TinyLog log = TinyLog.in(folder);
    log.write(
        "facts.yaml",
        """
        full.loa: {is: 11.20 m, title: Length over all, under: lines}
        hull.loa: {is: 700 mm, title: Length}
        """);
    Said published = log.run("publish", "--for", "public");
    assertThat(published.status()).isEqualTo(Main.PROBLEMS);
    String refused =
        published.err().lines().filter(l -> l.contains("error")).findFirst().orElseThrow();
    Said checked = log.run("check");
    assertThat(refused).contains("Shown: hull.loa, scale. So full.loa can be worked out");
    assertThat(checked.err()).contains(refused.substring(0, refused.indexOf(" Record a release")));
    assertThat(checked.status()).isEqualTo(Main.PROBLEMS);
  }

  @Test
  void aReleaseThatFreesNothingIsTold() {
    TinyLog log = TinyLog.in(folder);
    log.write(
        "log.yaml",
        log.read("log.yaml")
            + """
            releases:
              - {fact: hull.loa, under: lines, by: Ann, on: 2026-04-02, words: Do, for: [public]}
            """);
    assertThat(log.run("check").err())
        .contains(
            "log.yaml:17:5",
            "This release frees nothing: \u201chull.loa\u201d is under no agreement");
  }

  @Test
  void readersWhoGetOnlyABookMayBeToldWhereTheSiteStands() {
    TinyLog log = TinyLog.in(folder);
    log.replace(
        "log.yaml",
        "  public: {title: Everybody, party-to: [], gets: [site]}",
        "  public: {title: Everybody, party-to: [], gets: [book]}");
    log.write("log.yaml", "address: https://merrow.example/\n" + log.read("log.yaml"));
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.run("audit", "--for", "public").status()).isEqualTo(Main.DONE);
  }
}

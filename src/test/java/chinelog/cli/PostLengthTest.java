package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.Collections;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How long posts are: what the maker wants, and what {@code check} tells of them. */
class PostLengthTest {

  @TempDir Path folder;

  private TinyLog tenEveningsOfAHundredWords() {
    TinyLog log = TinyLog.in(folder).remove(TinyLog.NOTE);
    String text = String.join(" ", Collections.nCopies(100, "plank"));
    for (int day = 10; day < 20; day++) {
      log.write(
          "entries/2026-04-" + day + "-evening.md",
          "---\nstage: planking\n---\n# Evening " + day + "\n\n" + text + "\n");
    }
    return log;
  }

  @Test
  void aWantedLengthTakesThePlaceOfAList() {
    TinyLog log = tenEveningsOfAHundredWords();
    log.replace("log.yaml", "limits:", "posts: {words: 300}\nlimits:");
    Said said = log.run("check");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out())
        .contains("Posts for public:\n   1  Evening 10: 4 entries, 400 words, 2 min\n")
        .contains("   2  Evening 14: ", "   3  Evening 17: ")
        .doesNotContain("   4  ");
  }

  @Test
  void minutesAreReckonedAtThePaceOfSilentReading() {
    TinyLog log = tenEveningsOfAHundredWords();
    log.replace("log.yaml", "limits:", "posts: {minutes: 2}\nlimits:");
    // Two minutes are 476 words: two posts of five evenings are nearest to them.
    assertThat(log.run("check").out())
        .contains("   1  Evening 10: 5 entries, 500 words, 2 min", "   2  Evening 15: 5 entries");
  }

  @Test
  void whatIsNoLengthIsToldWithWhatWouldBe() {
    TinyLog log = tenEveningsOfAHundredWords();
    log.replace("log.yaml", "limits:", "posts: {words: long}\nlimits:");
    assertThat(log.run("check").err()).contains("log.yaml:14:16: error: \"long\"", "such as 900");
    log.replace("log.yaml", "{words: long}", "{words: 300, minutes: 2}");
    assertThat(log.run("check").err()).contains("either a list of posts, or one length");
    log.replace("log.yaml", "{words: 300, minutes: 2}", "{lines: 30}");
    assertThat(log.run("check").err()).contains("\"lines\" is not a key here");
  }

  @Test
  void checkSaysWhatItHasNotLookedAtAndLooksAtItWhenTold() {
    TinyLog log = TinyLog.in(folder);
    assertThat(log.run("check").out())
        .contains("Not looked at: the finished files.", "check --all");
    log.replace("log.yaml", "all, gets: [site]", "all, gets: [site, handover]");
    assertThat(log.run("check").out()).contains("Not looked at: whether all finds room");
    Said all = log.run("check", "--all");
    assertThat(all.status()).as(all.err()).isEqualTo(Main.DONE);
    assertThat(all.out()).contains("Every edition was made, searched and thrown away");
    assertThat(log.path("published")).doesNotExist();
    assertThat(log.everything().keySet())
        .noneMatch(f -> f.endsWith("ledger.csv") || f.endsWith("published.txt"))
        .noneMatch(f -> f.endsWith(".html") || f.endsWith(".pdf"));
    assertThat(log.run("check", "--all", "--json").status()).isEqualTo(Main.USAGE);
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Planned use, and what is still to be bought. */
class ShoppingTest {

  @TempDir Path folder;

  @Test
  void whatIsPlannedBeyondWhatWasBoughtIsToBeBought() {
    TinyLog log = TinyLog.in(folder);
    log.replace(
        "log.yaml",
        "limits:",
        "budgets: {stock.cedar.used: 84, stock.brass_rod.used: 1.5 m}\nlimits:");
    Said said = log.run("reckon", "--shopping");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    // 24 of the 60 that cost 21.60.
    assertThat(said.out())
        .isEqualTo(
            "Brass rod: 1.5 m (1.5 m planned, none bought)\n"
                + "Cedar strip: 24, about £8.64 (84 planned, 60 bought)\n");
    // Nobody but the workshop learns of the plan.
    assertThat(log.run("publish", "--for", "public").status()).isEqualTo(Main.DONE);
    assertThat(log.read("published/public/site/figures.html")).doesNotContain("84", "rass");
    log.replace("log.yaml", "cedar.used: 84", "cedar.used: 84 m");
    said = log.run("reckon", "--shopping");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).contains("log.yaml:14:29: error", "bought in another unit");
  }

  @Test
  void useBeyondWhatWasBoughtIsAQuestion() {
    TinyLog log = TinyLog.in(folder).replace(TinyLog.NOTE, "cedar: 6", "cedar: 66");
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err())
        .contains(TinyLog.NOTE + ":5:8: question: \"cedar\": 66 are used")
        .contains("has no lot for 6. Were more bought?")
        .doesNotContain("error:");
    assertThat(log.run("publish").status()).isEqualTo(Main.PROBLEMS);
    assertThat(log.run("reckon", "--shopping").out())
        .startsWith("Cedar strip: 6, about £2.16 (66 used, 60 bought)");
    log.write("stock.yaml", log.read("stock.yaml") + "- {material: cedar, bought: 6}\n");
    assertThat(log.run("check").status()).isEqualTo(Main.DONE);
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Money and the client's name are the workshop's own until the log says who may see them. */
class OwnAffairsTest {

  private static final List<String> AFFAIRS =
      List.of("21.60", "2.16", "34.00", "119.00", "4.75", "475.00", "Ravel Sound Pilotage Office");

  @TempDir Path folder;

  private TinyLog log() {
    TinyLog log = TinyLog.in(folder);
    log.replace(
        "log.yaml",
        "currency: GBP\n",
        "currency: GBP\nrate: 34 GBP/h\nclient: Ravel Sound Pilotage Office\n"
            + "budgets: {cost: 475 GBP}\n");
    log.replace(
        "log.yaml", "agreements:\n", "agreements:\n  motor: {with: Lee Bank, covers: its motor}\n");
    log.replace(
        "log.yaml", "limits:\n", "limits:\n  dear: {title: Dear, rule: cost.total <= 475 GBP}\n");
    log.replace(
        "log.yaml",
        "  workshop:",
        "  client: {title: The client, party-to: [lines], gets: [site, book]}\n  workshop:");
    log.write("facts.yaml", log.read("facts.yaml") + "fee.paint: 4.75 GBP * 100\n");
    return log.write("tables/fees.csv", "what,fee [GBP]\nstand,4.75\n");
  }

  private static String edition(TinyLog log, String place) {
    return log.everything().entrySet().stream()
        .filter(e -> e.getKey().startsWith(place) && e.getKey().endsWith(".html"))
        .map(Map.Entry::getValue)
        .collect(Collectors.joining());
  }

  @Test
  void withoutAWordNobodyElseIsTold() {
    TinyLog log = log();
    Said said = log.run("publish");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    for (String readers : List.of("public", "client")) {
      assertThat(edition(log, "published/" + readers))
          .contains("Cedar strip")
          .doesNotContain(AFFAIRS)
          .doesNotContain("own-", "\u00a3");
    }
    assertThat(edition(log, "workshop/workshop"))
        .contains("2.16", "119.00", "Ravel Sound Pilotage Office")
        .doesNotContain("own-money", "own-client");
    assertThat(log.run("audit").out()).contains("public: clean", "client: clean");
  }

  @Test
  void theLogSaysWhoIsTold() {
    TinyLog log = log();
    log.replace(
        "log.yaml",
        "currency: GBP\n",
        "currency: GBP\ntell: {money: [client], client: [public, client]}\n");
    assertThat(log.run("publish").status()).isEqualTo(Main.DONE);
    assertThat(edition(log, "published/client"))
        .contains("2.16", "119.00", "Ravel Sound Pilotage Office");
    assertThat(edition(log, "published/public"))
        .contains("Ravel Sound Pilotage Office")
        .doesNotContain(AFFAIRS.subList(0, 6));
  }

  @Test
  void whatIsUnderAnAgreementIsToldToThoseWhoArePartyToIt() {
    TinyLog log = log();
    log.replace("log.yaml", "rate: 34 GBP/h", "rate: {value: 34 GBP/h, under: lines}");
    assertThat(log.run("publish").status()).isEqualTo(Main.DONE);
    assertThat(edition(log, "published/client")).contains("34.00").doesNotContain("2.16");
    assertThat(edition(log, "published/public")).doesNotContain(AFFAIRS);
  }

  @Test
  void moneyAndNameTypedOpenlyAreAskedAbout() {
    TinyLog log = log();
    log.write(
        TinyLog.NOTE,
        log.read(TinyLog.NOTE)
            + "\nThe cedar was \u00a321.60, for the Ravel Sound Pilotage Office.\n");
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err())
        .contains("the price of cedar", "the workshop's own", "tell: {money: [public]}")
        .contains("the client", "tell: {client: [public]}");
    assertThat(log.run("publish").status()).isEqualTo(Main.PROBLEMS);
    log.replace(
        "log.yaml",
        "currency: GBP\n",
        "currency: GBP\ntell: {money: [client, public], client: [public, client]}\n");
    assertThat(log.run("check").err()).doesNotContain("question");
  }

  @Test
  void whoIsToldMustBeKnown() {
    TinyLog log = log();
    log.replace(
        "log.yaml", "currency: GBP\n", "currency: GBP\ntell: {money: [clients], mony: []}\n");
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err())
        .contains("\"mony\" is not a key here", "\"clients\" is not the name of readers");
  }
}

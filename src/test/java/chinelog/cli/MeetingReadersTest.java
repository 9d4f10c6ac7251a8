package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Readers who meet lay side by side what each was given: one has a total, the others have parts of
 * it that the first has not. What is then left must be no secret to all of them.
 */
class MeetingReadersTest {

  @TempDir private Path folder;

  /**
   * A total of parts, told to the public by a release. The public may see the first part alone, the
   * client one more, and the yard another; the secret is for none of them.
   *
   * @param parts of one kind, such as hours
   * @param kept whether there is a part besides that nobody is told, so that nothing can be worked
   *     out
   */
  private TinyLog log(String parts, int groups, boolean kept) {
    TinyLog log = TinyLog.empty(folder);
    StringBuilder releases = new StringBuilder();
    for (String agreement : List.of("lines", "client", "yard", "kept")) {
      releases
          .append("  - {fact: ")
          .append(parts.equals("hours") ? "hours.total" : "sum.all")
          .append(", under: ")
          .append(agreement)
          .append(", for: [public], by: Ottoline Marsden, on: 2026-03-30, words: Tell them}\n");
    }
    log.write(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        language: en-GB
        zone: Europe/London
        currency: GBP
        tell: {money: [public, client, yard]}
        agreements:
          lines: {with: Skerrick Yard, covers: the lines, from: 2026-03-02, until: never}
          client: {with: Ravel Sound, covers: her order, from: 2026-03-02, until: never}
          yard: {with: Hythe Slipway, covers: her launch, from: 2026-03-02, until: never}
          kept: {with: Port Arkle, covers: her berth, from: 2026-03-02, until: never}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          client: {title: The client, party-to: [client], gets: [site]}
          yard: {title: The slipway, party-to: [yard], gets: [site]}
          workshop: {title: The workshop, party-to: all, gets: [site]}
        releases:
        """
            + releases);
    String[] labels = {"", "lines", "client", groups > 2 ? "yard" : "", kept ? "kept" : ""};
    int[] values = {137, 219, 171, 253, 191};
    StringBuilder facts = new StringBuilder();
    StringBuilder names = new StringBuilder();
    for (int i = 0; i < labels.length; i++) {
      String under = labels[i].isEmpty() ? "" : ", under: " + labels[i];
      names.append(i == 0 ? "" : " + ").append("sum.part").append(i);
      switch (parts) {
        case "hours" ->
            log.write(
                "entries/" + LocalDate.of(2026, 3, 3).plusWeeks(i) + "-day.md",
                "---\ntitle: Day "
                    + (char) ('A' + i)
                    + "\ntime: "
                    + (labels[i].isEmpty()
                        ? values[i] + " min"
                        : "{value: " + values[i] + " min, under: " + labels[i] + "}")
                    + "\n---\nA quiet day.\n");
        case "mass" -> facts.append(fact(i, values[i] + " g", under));
        case "length" -> facts.append(fact(i, values[i] + " mm", under));
        default -> facts.append(fact(i, values[i] + " GBP", under));
      }
    }
    return log.write("facts.yaml", parts.equals("hours") ? "" : facts + "sum.all: " + names + "\n");
  }

  private static String fact(int i, String value, String under) {
    return "sum.part"
        + i
        + ": {is: "
        + value
        + ", title: Piece "
        + (char) ('A' + i)
        + under
        + "}\n";
  }

  @ParameterizedTest
  @CsvSource({
    "hours, 2",
    "hours, 3",
    "mass, 2",
    "mass, 3",
    "length, 2",
    "length, 3",
    "money, 2",
    "money, 3"
  })
  void whatTheyCanSubtractIsReckonedWithBeforeAnythingIsPrinted(String parts, int groups) {
    Said said = log(parts, groups, false).run("check");
    assertThat(said.err()).containsPattern("error: .*(sum.part1|hours.entry.2026_03_10)");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  /** What is never told to any of them keeps the others from being worked out. */
  @ParameterizedTest
  @CsvSource({"mass, 2", "length, 3", "money, 2"})
  void whatCannotBeSubtractedIsPublished(String parts, int groups) {
    Said said = log(parts, groups, true).run("check");
    assertThat(said.err()).doesNotContain("error: ");
  }

  /** In whatever order, one after the other, they get what they get. */
  @ParameterizedTest
  @CsvSource({
    "hours, public client yard", "hours, client yard public", "hours, yard public client",
    "mass, public client yard", "mass, client yard public", "money, yard public client",
    "length, yard public client", "length, client yard public", "money, public client yard"
  })
  void theLastOfThemIsNotGivenWhatWasMissing(String parts, String order) {
    TinyLog log = log(parts, 3, false);
    List<String> groups = List.of(order.split(" "));
    for (String group : groups.subList(0, 2)) {
      Said said = log.run("publish", "--for", group);
      assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    }
    Said said = log.run("publish", "--for", groups.get(2));
    assertThat(said.err()).containsPattern("error: .*(sum.part1|hours.entry.2026_03_10)");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(log.path("published/" + groups.get(2))).doesNotExist();
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever uploads the whole of {@code published} gives away nothing that is under an agreement. */
class FullCopyTest {

  private static final String SECRET = "Her beam is a promise kept.";

  @TempDir Path folder;

  private TinyLog log() {
    TinyLog log = TinyLog.in(folder);
    return log.write(TinyLog.NOTE, log.read(TinyLog.NOTE) + "\n" + SECRET + " {under=lines}\n");
  }

  @Test
  void theEditionOfThoseWhoArePartyToAllStandsInTheWorkshop() {
    TinyLog log = log();
    log.replace(
        "log.yaml",
        "readers:\n",
        "readers:\n  partner: {title: The partner, party-to: all, gets: [site]}\n");
    Said said = log.run("publish");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out())
        .contains(log.path("workshop/workshop/site/index.html").toString())
        .contains(log.path("workshop/partner/site/index.html").toString());
    assertThat(log.everything().entrySet())
        .filteredOn(e -> e.getKey().startsWith("published/"))
        .isNotEmpty()
        .noneMatch(e -> e.getKey().startsWith("published/workshop"))
        .noneMatch(e -> e.getValue().contains(SECRET));
    assertThat(log.everything().entrySet())
        .filteredOn(e -> e.getKey().startsWith("workshop/workshop/"))
        .anyMatch(e -> e.getValue().contains(SECRET));
    assertThat(log.run("audit").out()).contains("workshop: clean", "partner: clean");
    assertThat(log.run("check").err()).isEmpty();
  }

  /** Whom the readers are party to, and whether that is everything. */
  private static final Map<String, Boolean> PARTIES = new TreeMap<>();

  static {
    for (String all : List.of("all", "\"all\"", "'all'", "[lines, client]", "[client, lines]")) {
      PARTIES.put(all, true);
    }
    for (String some : List.of("[]", "[lines]", "[client]", "[\"lines\"]", "['client']")) {
      PARTIES.put(some, false);
    }
  }

  /** What they are called and what they get besides the site. */
  private static final List<String> CALLED =
      List.of(
          "{title: All of us, party-to: P, gets: [site]}", "{party-to: P, gets: [site, letter]}");

  @Test
  void whoIsPartyToEverythingDecidesAndNotWhatTheyAreCalled() {
    TinyLog log = log();
    log.replace(
        "log.yaml",
        "readers:\n",
        "  client: {with: Nemo Trust, covers: who ordered her, until: never}\nreaders:\n");
    List<Boolean> whole = new ArrayList<>();
    List<String> told = new ArrayList<>();
    for (Map.Entry<String, Boolean> party : PARTIES.entrySet()) {
      for (String called : CALLED) {
        log.replace(
            "log.yaml",
            "readers:\n",
            "readers:\n  r"
                + whole.size()
                + ": "
                + called.replace("P", party.getKey()).replace("{party", "{title: R, party")
                + "\n");
        if (party.getValue()) {
          told.add("r" + whole.size());
        }
        whole.add(party.getValue());
      }
    }
    log.replace(
        "log.yaml", "readers:\n", "tell: {money: " + told + ", client: " + told + "}\nreaders:\n");
    Said said = log.run("publish");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    for (int i = 0; i < whole.size(); i++) {
      String place = (whole.get(i) ? "workshop/r" : "published/r") + i;
      assertThat(log.path(place + "/site/index.html")).as(place).exists();
    }
    assertThat(log.everything().entrySet())
        .filteredOn(e -> e.getKey().startsWith("published/"))
        .isNotEmpty();
  }

  @Test
  void anOldFullCopyIsToldAndLeftAlone() {
    TinyLog log = log().write("published/workshop/site/index.html", SECRET);
    for (String command : new String[] {"check", "publish", "audit", "publish"}) {
      Said said = log.run(command);
      assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
      assertThat(said.err())
          .as(command)
          .contains("published/workshop: reminder: ", "its place is now workshop/workshop");
      assertThat(log.read("published/workshop/site/index.html")).isEqualTo(SECRET);
    }
    assertThat(log.path("workshop/workshop/site/index.html")).isNotEmptyFile();
  }

  @Test
  void aFolderOfTheMakersOwnThatIsCalledWorkshopIsReadAndKept() {
    TinyLog log = TinyLog.empty(folder.resolve("loose"));
    log.write("workshop/2026-03-25.md", "The bench was swept.\n");
    assertThat(log.run("publish").status()).isEqualTo(Main.DONE);
    String posts =
        log.everything().entrySet().stream()
            .filter(e -> e.getKey().startsWith("published/public/site/posts/"))
            .map(Map.Entry::getValue)
            .reduce("", String::concat);
    assertThat(posts).contains("The bench was swept.");
    Path copy = folder.resolve("copy");
    TinyLog.say("keep", log.folder().toString(), "--into", copy.toString());
    assertThat(copy.resolve("data/workshop/2026-03-25.md")).exists();
    assertThat(copy.resolve("data/workshop/workshop")).doesNotExist();
  }
}

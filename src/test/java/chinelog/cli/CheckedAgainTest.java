package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a check remembers decides nothing: it tells what it would have found anew. */
class CheckedAgainTest {

  private static final String MEMORY = ".chinelog/standing/.check";

  /** A question, a reminder, and nothing that is wrong. */
  private static final String NOTE =
      """
      ---
      title: A visit
      stage: planking
      ---
      Mr Farquharson of Skerrick Yard came to look at the half breadths of 10, 20 and 30 mm.
      """;

  @TempDir private Path folder;
  private TinyLog log;

  @BeforeEach
  void layDown() {
    log = TinyLog.in(folder.resolve("log")).write("entries/2026-03-28-visit.md", NOTE);
    log.run("publish");
  }

  private Said anew() throws IOException {
    Files.deleteIfExists(log.path(MEMORY));
    return log.run("check");
  }

  @Test
  void theSecondTimeTheSameIsToldFromMemory() throws IOException {
    Said first = anew();
    FileTime kept = Files.getLastModifiedTime(log.path(MEMORY));
    assertThat(first.err()).contains("question");
    assertThat(log.run("check")).isEqualTo(first);
    assertThat(log.run("check", "--json").out()).contains("\"sound\": false");
    assertThat(Files.getLastModifiedTime(log.path(MEMORY))).isEqualTo(kept);
  }

  private static Map<String, Consumer<TinyLog>> changes() {
    Map<String, Consumer<TinyLog>> all = new LinkedHashMap<>();
    all.put("an answer", l -> l.write("answers.yaml", "- {questions: [q0], answer: may-stand}\n"));
    all.put("no answer", l -> l.remove("answers.yaml"));
    all.put("a word", l -> l.replace("entries/2026-03-28-visit.md", "came", "went"));
    all.put("less", l -> l.replace("entries/2026-03-28-visit.md", "Mr Farquharson of ", ""));
    all.put("a name", l -> l.replace("log.yaml", "with: Skerrick Yard", "with: Farquharson"));
    all.put("a limit", l -> l.replace("log.yaml", "<= 36 in", "<= 26 in"));
    all.put("a fact", l -> l.replace("facts.yaml", "11.20 m", "11.30 m"));
    all.put("a lot", l -> l.replace("stock.yaml", "bought: 60", "bought: 5"));
    all.put("a cell", l -> l.replace("tables/offsets.csv", "2,30", "2,3O"));
    all.put("a cell put right", l -> l.replace("tables/offsets.csv", "2,3O", "2,30"));
    all.put("a photograph", l -> l.photo("photos/2026-03-28_1.png"));
    all.put("its words", l -> l.write("photos/photos.yaml", "keel.png: {under: lines}\n"));
    all.put("a sheet", l -> l.write("sheets/lines.txt", "no drawing"));
    all.put("a sheet gone", l -> l.remove("sheets/lines.txt"));
    all.put("hours", l -> l.write("hours.csv", "date,stage,hours\n2026-03-29,planking,2\n"));
    all.put("a theme", l -> l.write("themes/mine/theme.yaml", "x: ["));
    all.put("a published file", l -> l.write("published/public/site/index.html", "mine"));
    all.put("a ledger", l -> l.write("records/public/ledger.csv", "x"));
    all.put("a newer program", l -> l.write("records/published-by.txt", "chinelog 99.0.0\n"));
    all.put("a key", l -> l.replace("log.yaml", "subject:", "subjekt:"));
    return all;
  }

  @Test
  void aChangeOfAnyKindOfFileIsFoundAsIfNothingWereRemembered() throws IOException {
    Said before = log.run("check");
    int told = 0;
    for (Map.Entry<String, Consumer<TinyLog>> change : changes().entrySet()) {
      change.getValue().accept(log);
      Said after = log.run("check");
      assertThat(after).as(change.getKey()).isEqualTo(anew());
      assertThat(log.run("check")).as(change.getKey()).isEqualTo(after);
      told += after.equals(before) ? 0 : 1;
      before = after;
    }
    assertThat(told).as("changes that are told of").isGreaterThan(changes().size() * 2 / 3);
  }

  @Test
  void anotherDayIsAnotherCheck() {
    log.replace(
            "log.yaml", "from: 2026-03-02", "from: 2026-03-02, until: 2026-06-02, afterwards: free")
        .replace(TinyLog.NOTE, "---\nThe keel", "under: lines\n---\nThe keel");
    String then = on("2026-06-01T10:00:00Z");
    assertThat(on("2026-06-01T22:00:00Z")).isEqualTo(then);
    assertThat(on("2026-06-03T10:00:00Z")).contains("the end of lines on 2026-06-02");
    assertThat(on("2026-03-26T10:00:00Z")).contains("2026-03-28");
    assertThat(on("2026-06-01T10:00:00Z")).isEqualTo(then).doesNotContain("the end of lines");
  }

  private String on(String instant) {
    StringWriter said = new StringWriter();
    PrintWriter out = new PrintWriter(said, true);
    Main.run(
        new String[] {"check", log.folder().toString()},
        new Terminal(out, out, false),
        Clock.fixed(Instant.parse(instant), ZoneId.of("Europe/London")));
    return said.toString();
  }

  @Test
  void aMemoryThatIsNotAsItWasWrittenCountsForNothing() throws IOException {
    Said first = anew();
    String kept = log.read(MEMORY);
    log.write(MEMORY, kept.replace("question\tQUESTION", "problem\tREMINDER"));
    assertThat(log.read(MEMORY)).isNotEqualTo(kept);
    assertThat(log.run("check")).isEqualTo(first);
    log.write(MEMORY, kept.substring(0, kept.length() / 2));
    assertThat(log.run("check")).isEqualTo(first);
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.SortedMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hours that stand outside a note count like a note's. */
class HoursFileTest {

  @TempDir Path folder;

  private TinyLog log(String hours) {
    return TinyLog.in(folder)
        .replace("log.yaml", "planking: {title: Planking}", "planking: {}\n  fairing: {}")
        .write("hours.csv", hours);
  }

  private String reckoned(TinyLog log, String fact) {
    Said said = log.run("reckon", fact, "--as", "csv");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    return said.out();
  }

  private static String page(TinyLog log, String name) {
    return log.read("published/public/site/" + name).replace('\u00a0', ' ').replace('\u202f', ' ');
  }

  @Test
  void theyCountWithTheNoteOfTheirDayAndByThemselves() {
    TinyLog log =
        log(
            """
            date,time,stage
            2026-03-25,1 h 15 min,planking
            2026-03-26,"09:00-10:00, 14:00-15:00",fairing
            2026-03-27,30 min,
            """);
    // The note of the 25th has 3 h 30 min of its own.
    assertThat(reckoned(log, "hours.stage.planking")).contains("285");
    assertThat(reckoned(log, "hours.stage.fairing")).contains("120");
    assertThat(reckoned(log, "hours")).contains("435");
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    // No page is made of a day that no note tells.
    assertThat(said.out()).contains("1 entry");
    assertThat(page(log, "figures.html")).contains("7 h 15 min");
    assertThat(log.everything().toString()).doesNotContain("hours.csv#2026-03-26-fairing.html");
  }

  @Test
  void theyFollowTheMarksOfTheirStageAndTheirOwn() {
    TinyLog log =
        log(
            """
            date,time,stage,under
            2026-03-26,11 h,fairing,
            2026-03-27,7 h,planking,lines
            """);
    log.replace("log.yaml", "fairing: {}", "fairing: {under: lines}");
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    String shown = page(log, "index.html") + page(log, "figures.html");
    assertThat(shown).contains("3 h 30 min").doesNotContain("14 h 30", "10 h 30", "21 h 30");
    assertThat(log.read("records/public/register.txt")).contains("hours.csv:2", "hours.csv:3");
  }

  @Test
  void hoursThatLeaveNoTraceChangeNothingThatReadersGet() {
    TinyLog log = log("date,time,stage,under\n");
    log.replace("log.yaml", "from: 2026-03-02", "from: 2026-03-02, presence: nothing");
    log.replace(
        "log.yaml",
        "planking: {}",
        "planking: {start: 2026-03-01, finish: 2026-05-01, hours: 40 h}");
    assertThat(log.run("publish", "--for", "public").status()).isEqualTo(Main.DONE);
    SortedMap<String, String> before = published(log);
    log.write(
        "hours.csv",
        "date,time,stage,under\n2026-03-25,1 h,planking,lines\n2026-04-20,9 h,fairing,lines\n");
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(published(log)).isEqualTo(before);
  }

  private static SortedMap<String, String> published(TinyLog log) {
    SortedMap<String, String> all = log.everything();
    all.keySet().removeIf(f -> !f.startsWith("published/"));
    return all;
  }

  @Test
  void whatCannotBeReadIsToldWithItsPlace() {
    assertThat(log("day,time\n2026-03-26,2 h\n").run("check").err())
        .contains("hours.csv:1:1: error: \"day\" is no column here.");
    assertThat(log("date,time,stage\n2026-03-26,2 h,plonking\n").run("check").err())
        .contains("hours.csv:2:16: error: \"plonking\"", "planking");
    assertThat(log("date,time,under\n2026-03-26,2 h,line\n").run("check").err())
        .contains("hours.csv:2:16: error: \"line\" is not an agreement");
    assertThat(log("date,time\n26.3.2026,2 h\n").run("check").err())
        .contains("hours.csv:2:1: error", "2026-03-26");
    assertThat(log("date,time\n2026-03-26,09:00-10:00,14:00-15:00\n").run("check").err())
        .contains("hours.csv:2:1: error: This line has 3 cells", "in quotation marks");
    assertThat(log("date,time\n2026-03-25,10:00-11:00\n").run("check").err())
        .contains("hours.csv:2:12: error: This overlaps");
    TinyLog misnamed = log("date,time\n").move("hours.csv", "hour.csv");
    assertThat(misnamed.run("check").err()).contains("Rename it to \"hours.csv\".");
  }

  @Test
  void aDayWithPhotographsAndNoHoursIsRecalled() {
    TinyLog log = log("date,time\n");
    log.write("entries/2026-03-28-late.md", "---\nstage: planking\n---\n# Late\n\nOne more.\n");
    log.photo("photos/T20_1.jpg", LocalDateTime.of(2026, 3, 28, 20, 0));
    assertThat(log.run("check").err())
        .contains("This day has photographs and no hours: 2026-03-28.", "hours.csv");
    log.write("hours.csv", "date,time\n2026-03-28,2 h\n");
    assertThat(log.run("check").err()).doesNotContain("no hours");
  }

  @Test
  void aPlainTextIsANote() {
    TinyLog log = log("date,time\n");
    log.write("entries/2026-03-29-seam.txt", "The last seam is closed.\n");
    log.write(TinyLog.NOTE, log.read(TinyLog.NOTE) + "\nSee [the seam](2026-03-29-seam.txt).\n");
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.out()).contains("2 entries");
    log.write("entries/2026-03-29-seam.md", "The same again.\n");
    assertThat(log.run("check").err()).contains("2026-03-29-seam.txt", "2026-03-29-seam.md");
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class CommandLineTest {

  /** What a terminal showed before anybody could make it larger: common practice, no source. */
  private static final int SCREEN_LINES = 24;

  private static final int SCREEN_COLUMNS = 80;

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "begin",
        "gather",
        "check",
        "reckon",
        "publish",
        "audit",
        "form",
        "keep",
        "completion",
        "manual",
      })
  void helpFitsAScreenAndEndsWithAnExample(String command) {
    Said said = command.isEmpty() ? TinyLog.say("--help") : TinyLog.say(command, "--help");
    assertThat(said.status()).isZero();
    assertThat(said.err()).isEmpty();
    List<String> lines = said.out().lines().toList();
    assertThat(lines).hasSizeLessThan(SCREEN_LINES);
    assertThat(lines).allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(SCREEN_COLUMNS));
    assertThat(lines.subList(lines.lastIndexOf("") + 1, lines.size()))
        .allSatisfy(l -> assertThat(l).contains(" chinelog " + command))
        .first(InstanceOfAssertFactories.STRING)
        .startsWith("Example: ");
  }

  @Test
  void aCommandThatIsTypedOffTheScreenNamesTheFolderInOnePiece() {
    assertThat(Terminal.command("check", Path.of("merrow"))).isEqualTo("chinelog check merrow");
    assertThat(Terminal.command("check", Path.of("my build")))
        .isEqualTo("chinelog check \"my build\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "|Name a command.",
        "publsh x|Did you mean: chinelog publish?",
        "check|Missing required parameter: 'LOG'",
        "check --quick x|Unknown option: '--quick'",
        "check a b|Unmatched argument at index 2: 'b'",
        "gather a|Missing required option: '--into=LOG'",
        "publish x --as-of yesterday|\u201cyesterday\u201d is no date. Write year-month-day,",
        "publish x --as-of 2026-02-30|\u201c2026-02-30\u201d is no date. Write year-month-day,",
        "publish x --as-of 2126-05-20|2126-05-20 is yet to come,",
        "audit x --as-of 2126-05-20|2126-05-20 is yet to come,",
        "reckon x --as xml|expected one of [TABLE, CSV, JSON]",
      })
  void wrongUsageIsToldWithTwo(String args, String words) {
    Said said = TinyLog.say(args == null ? new String[0] : args.split(" "));
    assertThat(said.status()).isEqualTo(Main.USAGE);
    assertThat(said.out()).isEmpty();
    assertThat(said.err()).contains(words).doesNotContain("Exception");
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "reckon", "publish", "audit"})
  void aFolderThatIsNotThereOrIsAFileIsToldInOneLine(String command) throws IOException {
    Path nowhere = folder.resolve("nowhere");
    Path file = Files.writeString(folder.resolve("file"), "x");
    Said missing = TinyLog.say(command, nowhere.toString());
    assertThat(missing.status()).isEqualTo(Main.PROBLEMS);
    assertThat(missing.err())
        .startsWith(nowhere + ": error: There is no such folder. Name the folder");
    assertThat(nowhere).doesNotExist();
    assertThat(TinyLog.say(command, file.toString()).err())
        .startsWith(file + ": error: This is no folder. Name the folder");
  }

  @Test
  void readersThatAreNotNamedAreToldWithThoseThatAre() {
    TinyLog log = TinyLog.in(folder);
    assertThat(log.run("publish", "--for", "pubic"))
        .isEqualTo(
            new Said(
                Main.PROBLEMS,
                "",
                """
                log.yaml: error: This log names no readers \u201cpubic\u201d. Did you mean "public"?
                1 error
                Nothing was published; what stood before still stands.
                """));
    assertThat(log.run("publish", "--for", "../../x").err()).contains("public, workshop");
  }

  @Test
  void aNewLogIsCheckedAndPublishedWithoutAWord() {
    String log = folder.resolve("my build \u00e9 #1").toString();
    assertThat(TinyLog.say("begin", log).status()).isZero();
    assertThat(TinyLog.say("check", log).err()).isEmpty();
    Said said = TinyLog.say("publish", log, "--for", "public");
    assertThat(said.err()).isEmpty();
    assertThat(said.status()).isZero();
    assertThat(Path.of(log, "published/public/site/index.html")).isNotEmptyFile();
    assertThat(Path.of(log, "published/public/build-book.pdf")).isNotEmptyFile();
  }

  @Test
  void beginOverwritesNothing() throws IOException {
    Path mine = Files.writeString(folder.resolve("mine.txt"), "mine");
    for (Path place : List.of(folder, mine)) {
      Said said = TinyLog.say("begin", place.toString());
      assertThat(said.status()).isEqualTo(Main.USAGE);
      assertThat(said.err())
          .contains("holds something already, and nothing of yours is overwritten");
    }
    assertThat(TinyLog.say("begin", mine + "/log").status()).isEqualTo(Main.PROBLEMS);
    assertThat(TinyLog.empty(folder).everything()).containsOnlyKeys("mine.txt");
  }

  @Test
  void photographsComeInFromAFolderOrAZipOnceAndTheCardStaysAsItIs() throws IOException {
    TinyLog card = TinyLog.empty(folder.resolve("card"));
    card.photo("DCIM/a.png").photo("DCIM/M\u00f6we #1 100%.jpg").photo("other/a.png");
    card.write("DCIM/broken.jpg", "x").write("DCIM/empty.jpg", "");
    SortedMap<String, String> before = card.everything();
    TinyLog log = TinyLog.in(folder.resolve("log"));
    assertThat(log.run("check").status()).isZero();
    Said first = TinyLog.say("gather", card.folder().toString(), "--into", log.folder().toString());
    assertThat(first.status()).isZero();
    assertThat(first.out())
        .endsWith("3 photographs brought in, 0 are there already, 2 passed over.\n");
    assertThat(first.err()).contains("DCIM/broken.jpg: reminder: ", "DCIM/empty.jpg: reminder: ");
    assertThat(card.everything()).isEqualTo(before);
    assertThat(log.run("check").status()).isZero();

    Path zip = folder.resolve("card.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
      copy(card, out);
    }
    Said second = TinyLog.say("gather", zip.toString(), "--into", log.folder().toString());
    assertThat(second.out())
        .endsWith("0 photographs brought in, 3 are there already, 2 passed over.\n");
  }

  private static void copy(TinyLog card, ZipOutputStream out) throws IOException {
    for (String name : card.everything().keySet()) {
      out.putNextEntry(new ZipEntry(name));
      Files.copy(card.path(name), (OutputStream) out);
      out.closeEntry();
    }
  }

  @Test
  void gatherRefusesWhatIsNoCardAndALogWhoseClocksItCannotRead() throws IOException {
    TinyLog log = TinyLog.in(folder.resolve("log"));
    SortedMap<String, String> before = log.everything();
    String into = log.folder().toString();
    Path text = Files.writeString(folder.resolve("notes.txt"), "x");
    assertThat(TinyLog.say("gather", folder + "/no", "--into", into).err())
        .startsWith(folder + "/no: error: There is no such folder or zip.");
    assertThat(TinyLog.say("gather", text.toString(), "--into", into).err())
        .startsWith(text + ": error: This is neither a folder nor a zip that can be opened.");
    assertThat(TinyLog.say("gather", text.toString(), "--into", into, "--fast", "T=1 kg").err())
        .contains(
            "\u201c1 kg\u201d does not say how far a clock is fast. Write such as 1 h 12 min.");
    assertThat(log.everything()).isEqualTo(before);

    Path card = TinyLog.empty(folder.resolve("card")).photo("a.png").folder();
    log.replace("log.yaml", "currency: GBP", "currency: GBP\nclocks: {T-20: an hour}");
    Said said = TinyLog.say("gather", card.toString(), "--into", into);
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).startsWith("log.yaml:7:16: error: \"an hour\" does not say how far");
    assertThat(log.path("photos/undated")).doesNotExist();
  }
}

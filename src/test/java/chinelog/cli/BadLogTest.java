package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a careless maker may put into a log, and what is told of it. */
@Timeout(30)
class BadLogTest {

  private static final String NOTE = TinyLog.NOTE;
  private static final String PHOTO = TinyLog.PHOTO;
  private static final String CHARTED =
      """
      hull.loa: 700 mm
      full.loa: 11.2 m
      """;

  @TempDir private Path folder;

  /**
   * @param errors what every line that tells an error begins with, in order
   */
  record Case(String name, Consumer<TinyLog> spoil, List<String> errors) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Case of(String name, Consumer<TinyLog> spoil, String... errors) {
    return new Case(name, spoil, List.of(errors));
  }

  /** A case in which words of the note are replaced. */
  private static Case note(String name, String old, String by, String... errors) {
    return of(name, log -> log.replace(NOTE, old, by), errors);
  }

  private static Case head(String name, String old, String by, String... errors) {
    return of(name, log -> log.replace("log.yaml", old, by), errors);
  }

  private static Case facts(String name, String text, String... errors) {
    return of(name, log -> log.write("facts.yaml", CHARTED + text), errors);
  }

  private static Consumer<TinyLog> cut(String photo) {
    return log ->
        log.photo(photo)
            .with(
                () -> {
                  byte[] whole = Files.readAllBytes(log.path(photo));
                  Files.write(log.path(photo), Arrays.copyOf(whole, whole.length * 2 / 3));
                });
  }

  static Stream<Case> photographs() {
    return Stream.of(
        of(
            "a photograph that is not there",
            log -> log.remove(PHOTO),
            NOTE + ":9:1: error: There is no photograph \"../photos/keel.png\"."),
        of(
            "a photograph that is text",
            log -> log.write(PHOTO, "hello"),
            PHOTO + ": error: This is not a picture"),
        of(
            "a photograph of no bytes",
            log -> log.write(PHOTO, ""),
            PHOTO + ": error: The file is empty."),
        of("a PNG cut short", cut(PHOTO), PHOTO + ": error: The picture is damaged"),
        of("a JPEG cut short", cut("photos/a.jpg"), "photos/a.jpg: error: The picture is damaged"),
        of(
            "a folder in the place of a photograph",
            log -> log.remove(PHOTO).write(PHOTO + "/x.txt", "x"),
            NOTE + ":9:1: error: There is no photograph"),
        of(
            "two photographs of one name, and none of them named by its folder",
            log -> log.photo("photos/a/keel.png").replace(NOTE, "../photos/keel", "keel"),
            NOTE
                + ":9:1: error: There is no photograph \"keel.png\". It lies in another folder;"
                + " write ../photos/a/keel.png, or ../photos/keel.png."),
        of(
            "two names that differ in capitals",
            log -> log.photo("photos/KEEL.png"),
            PHOTO + ": error: Its name and that of photos/KEEL.png differ only in capitals"),
        of(
            "two names that differ in the coding of an accent",
            log -> log.photo("photos/cafe\u0301.png").photo("photos/caf\u00e9.png"),
            "photos/caf\u00e9.png: error: Its name and that of"),
        of(
            "regions pinned by what is no SHA-256, told once and with what to write",
            log ->
                log.write(
                    "photos/photos.yaml",
                    "keel.png: {sha256: 12ab, regions: [{box: [0, 0, 0.5, 1], under: lines}]}\n"),
            "photos/photos.yaml:1:1: error: The photograph photos/keel.png has regions, but no"),
        of(
            "words about a photograph that is not there",
            log -> log.write("photos/photos.yaml", "kiel.png: {caption: x}\n"),
            "photos/photos.yaml:1:1: error: There is no photograph \"kiel.png\" in this folder."
                + " Did you mean \"keel.png\"?"));
  }

  static Stream<Case> notes() {
    return Stream.of(
        of(
            "a decimal comma between braces",
            log ->
                log.replace(
                    NOTE, "time:", "measured: {hull.beam: 19 cm, hull.draught: 52,5 mm}\ntime:"),
            NOTE + ":4:44: error: A comma parts the values here, and \"5 mm\" stands alone."),
        of(
            "an earlier measurement without its unit",
            log ->
                log.replace(NOTE, "time:", "measured: {hull.loa: 701}\ntime:")
                    .write(
                        "entries/2026-03-26-again.md",
                        "---\nmeasured: {hull.loa: 700 mm}\n---\nAgain.\n"),
            NOTE + ":4:12: error: \"hull.loa\" is measured as 701, but its plan is in m"),
        of(
            "a fact apart from its brackets",
            log -> log.replace(NOTE, "lies straight", "is [700 mm] (fact:hull.loa)"),
            NOTE + ":7:21: error: A space stands between the brackets and the fact"),
        of(
            "a fact without its colon",
            log -> log.replace(NOTE, "lies straight", "is [700 mm](fact/hull.loa)"),
            NOTE
                + ":7:13: error: This links to \"fact/hull.loa\", which is no entry of the log. If a"),
        of(
            "a note without a date",
            log -> log.move(NOTE, "entries/keel.md"),
            "entries/keel.md: error: This note has no date. Begin its name with its date"),
        of(
            "a name with a date in the future",
            log -> log.move(NOTE, "entries/2026-06-02-keel.md"),
            "entries/2026-06-02-keel.md: error: 2026-06-02 has not come yet; today is 2026-06-01."),
        note(
            "a key with a date in the future",
            "stage: planking",
            "date: 2027-01-01",
            NOTE + ":3:7: error: 2027-01-01 has not come yet"),
        note(
            "a date written in another order",
            "stage: planking",
            "date: 25/03/2026",
            NOTE + ":3:7: error: \"25/03/2026\" is not a date as it is written here."),
        note(
            "a day that the calendar does not have",
            "stage: planking",
            "date: 2026-02-30",
            NOTE + ":3:7: error: There is no day 2026-02-30."),
        note(
            "a stage that is not in the plan",
            "planking",
            "plonking",
            NOTE
                + ":3:8: error: \"plonking\" is not a stage of this log."
                + " Did you mean \"planking\"?"),
        note(
            "a measurement without a unit",
            "used: {cedar: 6}",
            "measured: {hull.loa: 700}",
            NOTE + ":5:12: error: \"hull.loa\" is measured as 700, but its plan is in m"),
        note(
            "a measurement in an unknown unit",
            "used: {cedar: 6}",
            "measured: {hull.loa: 700 milimeters}",
            NOTE + ":5:26: error: \"milimeters\" is not a unit."),
        note(
            "a measurement of the wrong dimension",
            "used: {cedar: 6}",
            "measured: {hull.loa: 700 g}",
            NOTE + ":5:12: error: \"hull.loa\" is measured as 700 g, but its plan is in m"),
        note(
            "a weighing in millimetres",
            "used: {cedar: 6}",
            "weighed: {hull: 412 mm}",
            NOTE + ":5:17: error: \"mm\" is not the unit of a mass. Write a mass, such as 412 g."),
        note(
            "a material that was never bought",
            "cedar",
            "ceder",
            NOTE + ":5:8: error: \"ceder\" is not a material of stock.yaml."),
        note(
            "times that overlap in one entry",
            "09:10-12:40",
            "09:10-12:40, 12:00-13:00",
            NOTE + ":4:20: error: This overlaps with the time at " + NOTE + ":4:7."),
        of(
            "times that overlap between entries",
            log -> log.write("entries/2026-03-25-two.md", "---\ntime: 12:00-13:00\n---\nx\n"),
            "entries/2026-03-25-two.md:2:7: error: This overlaps with the time at " + NOTE),
        note(
            "a time that is none",
            "09:10-12:40",
            "nine to twelve",
            NOTE + ":4:7: error: \"nine to twelve\" is no time at work."),
        note(
            "an unknown agreement in a key",
            "stage: planking",
            "under: linse",
            NOTE
                + ":3:8: error: \"linse\" is not an agreement of this log."
                + " Did you mean \"lines\"?"),
        note(
            "an unknown agreement in a mark",
            "straight.",
            "straight. {under=linse}",
            NOTE + ":7:25: error: \"linse\" is not an agreement of this log."),
        note(
            "a mark attached to nothing",
            "The keel lies",
            "{under=lines}\n\nThe keel lies",
            NOTE + ":7:1: error: This mark is attached to nothing"),
        note(
            "a mark that is misspelt",
            "straight.",
            "straight. {udner=lines}",
            NOTE + ":7:25: error: \"{udner=lines}\" cannot be read as a mark."),
        note(
            "a class of a picture where a mark stands",
            "straight.",
            "straight. {.wide}",
            NOTE
                + ":7:25: error: \"{.wide}\" cannot be read as a mark. Write it in quotes behind the"
                + " address of the picture"),
        note(
            "a figure that disagrees with its fact",
            "straight.",
            "[1.19 m](fact:hull.loa) long.",
            NOTE + ":7:15: error: \"1.19 m\" is written, but \"hull.loa\" is 700.0"),
        note(
            "a figure of a fact that is not there",
            "straight.",
            "[](fact:hull.lao) long.",
            NOTE + ":7:15: error: There is no fact \"hull.lao\". Did you mean \"hull.loa\"?"),
        of(
            "keys that are not closed",
            log -> log.write(NOTE, "---\ntitle: x\nHello\n"),
            NOTE + ":1:1: error: The keys at the top of this note are not closed."),
        of(
            "a note in another coding",
            log ->
                log.write(NOTE, "The keel is gr\u00fcn.\n".getBytes(StandardCharsets.ISO_8859_1)),
            NOTE + ":1:15: error: This is not UTF-8 text from here on."),
        of(
            "a note that is a link",
            log ->
                log.with(
                    () ->
                        Files.createSymbolicLink(
                            log.path("entries/2026-03-26-x.md"), log.path("facts.yaml"))),
            "entries/2026-03-26-x.md: error: This is a link to somewhere else."),
        of(
            "a folder that leads into itself",
            log ->
                log.with(
                    () -> Files.createSymbolicLink(log.path("entries/loop"), log.path("entries"))),
            "entries/loop: error: This is a link to somewhere else."));
  }

  static Stream<Case> figures() {
    return Stream.of(
        facts(
            "a formula that refers to nothing",
            "a: full.lao / scale\n",
            "facts.yaml:3:4: error: \"a\" needs \"full.lao\", but there is no such fact."
                + " Did you mean \"full.loa\"?"),
        facts(
            "a formula that refers to itself",
            "a: a / 2\n",
            "facts.yaml:3:1: error: \"a\" is reckoned from itself."),
        facts(
            "formulas in a circle",
            "a: b + 1 m\nb: c * 2\nc: a / 3\n",
            "facts.yaml:3:1: error: \"a\" rests on itself: a \u2192 b \u2192 c \u2192 a."),
        facts(
            "a division by zero",
            "a: 3 m / (scale - 16)\n",
            "facts.yaml:3:8: error: \"a\": This divides by zero."),
        facts(
            "a number that is too large",
            "a: 10 ^ 999999999\n",
            "facts.yaml:3:7: error: \"a\": This power has no value."),
        facts(
            "a sum of lengths and masses",
            "a: 3 m + 4 g\n",
            "facts.yaml:3:8: error: \"a\": \"g\" cannot be turned into \"m\"."),
        facts(
            "a formula that ends too early, and one that rests on it",
            "a: 3 m +\nb: a * 2\n",
            "facts.yaml:3:9: error: \"a\": The formula ends too early."),
        facts(
            "a bracket that is not closed",
            "a: (3 m\n",
            "facts.yaml:3:8: error: \"a\": A bracket is not closed."),
        facts(
            "twenty thousand brackets",
            "a: " + "(".repeat(20_000) + "1 m\n",
            "facts.yaml:3:4: error: \"a\": This formula is longer than 4000 characters."),
        of(
            "a limit on a fact that could not be reckoned",
            log -> log.replace("facts.yaml", "full.loa / scale", "full.loa / scael"),
            "facts.yaml:2:22: error: \"hull.loa\" needs \"scael\""),
        head(
            "a limit of the wrong dimension",
            "36 in",
            "36 g",
            "log.yaml:15:42: error: Limit \"Length over all\": \"g\" cannot be turned into \"m\"."),
        of(
            "rows of unequal length",
            log -> log.write("tables/offsets.csv", "station,half [mm]\n0,10\n1,20,3\n2\n"),
            "tables/offsets.csv:3:1: error: This row has 3 cells, but the table has 2 columns.",
            "tables/offsets.csv:4:1: error: This row has 1 cell, but the table has 2 columns."),
        of(
            "a quotation mark that is not closed",
            log -> log.write("tables/offsets.csv", "station,half [mm]\n0,\"10\n1,20\n"),
            "tables/offsets.csv:2:3: error: The quotation mark of this cell is not closed."),
        of(
            "a word among the figures",
            log -> log.write("tables/offsets.csv", "station,half [mm]\n0,ten\n"),
            "tables/offsets.csv:2:3: error: \"ten\" is not a number of mm."),
        of(
            "a table of nothing",
            log -> log.write("tables/offsets.csv", ""),
            "tables/offsets.csv: error: This table is empty."),
        of(
            "two currencies",
            log -> log.replace("stock.yaml", "GBP", "EUR"),
            "stock.yaml:4:10: error: This is in EUR, but the log's money is GBP."));
  }

  static Stream<Case> settings() {
    return Stream.of(
        of(
            "a folder that is called log.yaml",
            log -> log.remove("log.yaml").write("log.yaml/x", "x"),
            "log.yaml: error: This is a folder, but a file has this name in a log."),
        of(
            "a folder that is called facts.yaml",
            log ->
                log.remove("facts.yaml")
                    .write("facts.yaml/x", "x")
                    .replace("log.yaml", "hull.loa <= 36 in", "scale <= 36"),
            "facts.yaml: error: This is a folder, but a file has this name in a log."),
        of(
            "a file that is called sheets",
            log -> log.write("sheets", "x"),
            "sheets: error: This is a file, but a folder has this name in a log."),
        of(
            "a log.yaml that is a link",
            log ->
                log.move("log.yaml", "real.txt")
                    .with(
                        () -> Files.createSymbolicLink(log.path("log.yaml"), log.path("real.txt"))),
            "log.yaml: error: This is a link to somewhere else."),
        of(
            "a log.yaml by another name",
            log -> log.move("log.yaml", "log.yml"),
            "log.yml: error: No file of this name is read here. Rename it to \"log.yaml\"."),
        of(
            "a log.yaml of nothing",
            log -> log.write("log.yaml", "# later\n"),
            "log.yaml: error: This file says nothing."),
        of(
            "a log.yaml that is a list",
            log -> log.write("log.yaml", "- a\n"),
            "log.yaml:1:1: error: Here stands a list, where a group of keys belongs."),
        of(
            "a bracket that is not closed in log.yaml",
            log -> log.write("log.yaml", "title: [a\nsubject: b\n"),
            "log.yaml:2:8: error: A [ or { is not closed"),
        of(
            "a tab in log.yaml",
            log -> log.replace("log.yaml", "  planking:", "\tplanking:"),
            "log.yaml:8:1: error: A tab stands here."),
        of(
            "a key that stands twice",
            log -> log.write("log.yaml", log.read("log.yaml") + "title: Another\n"),
            "log.yaml:16:1: error: \"title\" stands here a second time."),
        head(
            "a colon in a title",
            "title: Building Merrow",
            "title: Merrow: the build",
            "log.yaml:1:14: error: A second \": \" stands in this value"),
        head(
            "a yes",
            "currency: GBP",
            "credit-photos: yes\ncurrency: GBP",
            "log.yaml:6:16: error: Programs disagree on what a bare \"yes\" means."),
        head(
            "a zone that is misspelt",
            "London",
            "Lundon",
            "log.yaml:5:7: error: \"Europe/Lundon\" is not a time zone."
                + " Did you mean \"Europe/London\"?"),
        head(
            "a theme that is not there",
            "currency: GBP",
            "currency: GBP\ntheme: slipwya",
            "log.yaml: error: There is no theme \"slipwya\". Did you mean \"slipway\"?"),
        head(
            "a paper that is misspelt",
            "currency: GBP",
            "currency: GBP\npaper: leter",
            "log.yaml:7:8: error: \"leter\" is not a size of paper that is known here."
                + " Did you mean \"letter\"?"),
        head(
            "readers that lead out of the log",
            "  public: {",
            "  ../x: {title: X, party-to: [], gets: [site]}\n  public: {",
            "log.yaml:12:3: error: \"../x\" cannot be the name of readers."),
        head(
            "a rate that is no rate",
            "currency: GBP",
            "currency: GBP\nrate: 34 GBP",
            "log.yaml:7:7: error: \"GBP\" is not the unit of money per hour."),
        of(
            "a folder of nothing",
            log -> log.everything().keySet().forEach(log::remove),
            "log.yaml: error: This folder holds no log"));
  }

  private static List<String> errors(Said said) {
    return said.err().lines().filter(line -> line.contains(": error: ")).toList();
  }

  private void tells(Case wrong) {
    TinyLog log = TinyLog.in(folder);
    wrong.spoil().accept(log);
    SortedMap<String, String> before = log.everything();
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(errors(said))
        .zipSatisfy(wrong.errors(), (told, begin) -> assertThat(told).startsWith(begin))
        .allSatisfy(told -> assertThat(told).containsPattern("([.?]|[0-9a-f]{64})$"));
    assertThat(said.err()).doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(log.everything()).containsAllEntriesOf(before);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void photographs(Case wrong) {
    tells(wrong);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void notes(Case wrong) {
    tells(wrong);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void figures(Case wrong) {
    tells(wrong);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void settings(Case wrong) {
    tells(wrong);
  }

  @ParameterizedTest
  @CsvSource({"true,\\n", "true,\\r\\n", "false,\\r\\n", "false,\\r"})
  void byteOrderMarksAndAnyLineEndsAreNoMistake(boolean mark, String end) {
    TinyLog log = TinyLog.in(folder);
    String ends = end.replace("\\n", "\n").replace("\\r", "\r");
    for (String file :
        List.of("log.yaml", "facts.yaml", "stock.yaml", NOTE, "tables/offsets.csv")) {
      log.write(file, (mark ? "\ufeff" : "") + log.read(file).replace("\n", ends));
    }
    Said said = log.run("check");
    assertThat(said.err()).isEmpty();
    assertThat(said.status()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "my photo.png",
        "Ma\u00dfstab \u00e9l\u00e8ve.png",
        "sheet #1.png",
        "100%.png",
        "100%20.png",
        "it's.png",
        "a&b;c.png",
        "what?.png",
        "(1).png",
        "-x.png"
      })
  void oddNamesOfPhotographsAreFoundAsWritten(String name) {
    TinyLog log = TinyLog.in(folder).move(PHOTO, "photos/" + name);
    log.replace(NOTE, "../photos/keel.png", "<../photos/" + name.replace("%", "%25") + ">");
    Said said = log.run("check");
    assertThat(said.err()).isEmpty();
    assertThat(said.out()).startsWith("1 entry, 1 photograph, 20 facts: no errors.\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"it \"is\".png", "a\\b.png", "{under=lines}.png", "a\nb.png"})
  void namesThatTheNoteCannotHoldAreToldAndNothingElseHappens(String name) {
    TinyLog log = TinyLog.in(folder).move(PHOTO, "photos/" + name);
    log.replace(NOTE, "../photos/keel.png", "<../photos/" + name + ">");
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(errors(said)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"2026-03-25 Kiel \u00fc #1 100% \"q\".md", "2026-03-25.md"})
  void oddNamesOfNotesAreReadAsTheyAre(String name) {
    TinyLog log = TinyLog.in(folder).move(NOTE, "entries/" + name);
    Said said = log.run("check");
    assertThat(said.err()).isEmpty();
    assertThat(said.out()).startsWith("1 entry, 1 photograph, 20 facts: no errors.\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"check", "reckon", "publish", "audit"})
  void everyCommandRefusesALogWithAMistakeAndSaysTheSame(String command) {
    TinyLog log = TinyLog.in(folder).replace(NOTE, "planking", "plonking");
    Map<String, String> before = log.everything();
    Said said = log.run(command);
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(errors(said)).singleElement().asString().startsWith(NOTE + ":3:8: error: ");
    assertThat(log.everything()).containsAllEntriesOf(before);
    assertThat(log.path("published")).doesNotExist();
  }
}

package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.log.records.BookChapters;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Paper;
import chinelog.log.records.Valuation;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NewLogTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);

  private static final NewLog.Beginning MERROW = new NewLog.Beginning("Merrow", "1:16");

  private static final LocalDate LATER = TODAY.plusMonths(3);
  private static final String UNKNOWN = "qqqqqqqqqqqqqqqq: 1";
  private static final String FIRST = "entries/" + LATER + "-the-log-is-begun.md";
  private static final List<String> FILES =
      List.of(
          "log.yaml", "facts.yaml", "stock.yaml", "quotation.yaml", "photos/photos.yaml", FIRST);

  @TempDir Path folder;

  @Test
  void aLogLaidDownReadsWithoutAnyProblem() throws IOException {
    NewLog.layDown(folder.resolve("merrow"), TODAY, MERROW);
    LogReader.Reading reading = new LogReader(TODAY, ZoneOffset.UTC).read(folder.resolve("merrow"));
    assertThat(reading.problems()).isEmpty();
    // The first note speaks to the maker; readers see it once it has become the maker's own.
    assertThat(reading.log().entries()).isEmpty();
    assertThat(reading.log().stages()).hasSize(3);
    // Nothing of another boat is in it.
    assertThat(reading.log().statements()).isEmpty();
    assertThat(reading.log().stock()).isEmpty();
    assertThat(reading.log().tables()).hasSize(1);
    assertThat(reading.log().tables().get(0).rows()).isEmpty();

    Path note = folder.resolve("merrow/entries/" + TODAY + "-the-log-is-begun.md");
    Files.writeString(note, "The first strip is on.\n", StandardOpenOption.APPEND);
    Log own = new LogReader(TODAY, ZoneOffset.UTC).read(folder.resolve("merrow")).log();
    assertThat(own.entries()).extracting(Entry::date).containsExactly(TODAY);
  }

  @Test
  void everyRemarkThatTeachesAKeyReadsWithoutAnErrorOnceItsSignIsTakenAway() throws Exception {
    Path merrow = laidDownWithoutSigns();
    LogReader.Reading reading = new LogReader(LATER, ZoneOffset.UTC).read(merrow);
    assertThat(reading.problems()).isEmpty();
    Log log = reading.log();
    assertThat(log.promises()).containsExactly("lines");
    // Readers of the example are party to nothing that the designer was promised.
    assertThat(log.readers())
        .filteredOn(r -> !r.id().equals("workshop"))
        .isNotEmpty()
        .noneMatch(r -> r.partyTo().contains("lines"));
    assertThat(log.releases()).hasSize(4);
    assertThat(log.head().budgets()).hasSize(4);
    assertThat(log.head().clocks()).hasSize(1);
    assertThat(log.head().valuation()).isEqualTo(Valuation.AVERAGE);
    assertThat(log.head().paper()).isEqualTo(Paper.LETTER);
    assertThat(log.head().chapters()).isEqualTo(BookChapters.POSTS);
    assertThat(log.limits()).hasSize(1);
    assertThat(log.posts()).hasSize(1);
    assertThat(log.handover()).filteredOn(h -> !h.text().isEmpty()).hasSize(2);
    assertThat(log.stages()).hasSize(4);
    assertThat(log.requests()).hasSize(1);
    assertThat(log.statements()).hasSize(3);
    assertThat(log.photos().get(0).regions()).hasSize(1);
    assertThat(log.entries().get(1).weighed()).hasSize(2);
    PriceReader.Reading price = PriceReader.read(merrow.resolve("quotation.yaml"), log, LATER);
    assertThat(price.problems()).isEmpty();
    assertThat(price.plan()).isNotNull();
  }

  /** A key that no reader knows is answered with those it knows; each of them must be taught. */
  @Test
  void everyKeyThatIsKnownIsShownSomewhere() throws Exception {
    Path merrow = laidDownWithoutSigns();
    StringBuilder shown = new StringBuilder();
    for (String name : FILES) {
      Path file = merrow.resolve(name);
      String text = Files.readString(file);
      shown.append(text);
      String fence = name.endsWith(".md") ? "---\n" : "";
      String asked =
          text.replaceFirst(fence, fence + UNKNOWN + "\n").replace("{", "{" + UNKNOWN + ", ");
      Files.writeString(
          file, name.matches("(facts|stock).*") ? text.replace("{", "{" + UNKNOWN + ", ") : asked);
    }
    LogReader.Reading reading = new LogReader(LATER, ZoneOffset.UTC).read(merrow);
    List<Problem> problems = new ArrayList<>(reading.problems());
    problems.addAll(
        PriceReader.read(merrow.resolve("quotation.yaml"), reading.log(), LATER).problems());
    SortedSet<String> known = new TreeSet<>();
    for (Problem problem : problems) {
      if (problem.what().toString().endsWith(" is not a key here.")) {
        assertThat(problem.remedy()).startsWith("Write one of: ");
        String list = problem.remedy().toString().substring("Write one of: ".length());
        known.addAll(List.of(list.substring(0, list.length() - 1).split(", ")));
      }
    }
    assertThat(known)
        .contains("clocks", "valuation", "party-to", "rule", "opening", "columns", "is", "hazards")
        .contains("where", "z", "box", "looked-at", "learnt", "tax", "presence", "finish", "text");
    assertThat(known)
        .allSatisfy(
            key ->
                assertThat(shown)
                    .as(key)
                    .containsPattern("(?m)(^|[ {])" + key + ": *\\S|^" + key + ":$"));
  }

  /** A new log with every remark made a line, and the files there that they speak of. */
  private Path laidDownWithoutSigns() throws Exception {
    Path merrow = folder.resolve("merrow");
    NewLog.layDown(merrow, LATER, MERROW);
    Path photo = Files.writeString(merrow.resolve("photos/T20_0412.jpg"), "a photograph");
    Files.writeString(merrow.resolve("sheets/lines.pdf"), "a sheet");
    Files.writeString(merrow.resolve("tables/offsets.csv"), "station,price\n1,2\n");
    Files.writeString(merrow.resolve("entries/2026-03-14-the-log-is-begun.md"), "Begun.\n");
    String sha256 =
        HexFormat.of()
            .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(photo)));
    for (String name : FILES) {
      Path file = merrow.resolve(name);
      Files.writeString(
          file,
          Files.readString(file)
              .replaceAll("(?m)^( *)# (?=(  )*(\"?[\\w.-]+\"?: |[\\w.-]+:$|- \\{))", "$1")
              .replaceAll("PINNED|LOOKED", sha256));
    }
    return merrow;
  }

  @Test
  void nameAndScaleStandInTheLogHoweverTheyAreSpelt() throws IOException {
    for (String name : List.of("Curlew", "Curlew: a \"skiff\" #2", "- Curlew", "true", "C\\D")) {
      Path log = folder.resolve("log" + Math.abs(name.hashCode()));
      NewLog.layDown(log, TODAY, new NewLog.Beginning(name, "1/2 in = 1 ft"));
      LogReader.Reading reading = new LogReader(TODAY, ZoneOffset.UTC).read(log);
      assertThat(reading.problems()).as(name).isEmpty();
      assertThat(reading.log().head().subject()).isNotNull();
      assertThat(reading.log().head().subject().value()).isEqualTo(name);
      assertThat(reading.log().head().title().value()).isEqualTo("Building " + name);
      assertThat(reading.log().head().scale().value()).isEqualByComparingTo("24");
    }
    Path bare = folder.resolve("my-boat");
    NewLog.layDown(bare, TODAY, NewLog.Beginning.UNKNOWN);
    Log log = new LogReader(TODAY, ZoneOffset.UTC).read(bare).log();
    assertThat(log.head().title().value()).isEqualTo("My boat");
    assertThat(log.head().scale()).isNull();
    assertThat(log.head().subject()).isNull();
  }

  @Test
  void aFolderWithAnythingInItIsLeftAlone() throws IOException {
    Files.writeString(folder.resolve(".keep"), "mine");
    assertThatThrownBy(() -> NewLog.layDown(folder, TODAY, MERROW))
        .isInstanceOf(DirectoryNotEmptyException.class);
    assertThat(folder).isDirectoryContaining("glob:**/.keep");
    assertThat(folder.resolve("log.yaml")).doesNotExist();
  }

  @Test
  void aFileIsNotOverwritten() throws IOException {
    Path file = Files.writeString(folder.resolve("merrow"), "mine");
    assertThatThrownBy(() -> NewLog.layDown(file, TODAY, MERROW))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("mine");
  }
}

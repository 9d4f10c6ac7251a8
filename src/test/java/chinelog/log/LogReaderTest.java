package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Readers;
import chinelog.log.records.Sheet;
import chinelog.log.records.Stage;
import chinelog.log.records.Table;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.assertj.core.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogReaderTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

  @TempDir Path folder;

  @Test
  void titlesThatTheLogDoesNotGiveAreInItsLanguage() throws IOException {
    write("log.yaml", "title: Merrow\nlanguage: de-AT\nhandover: {setting-up: Ein Griff.}\n");
    Log german = read().log();
    assertThat(german.readers())
        .extracting(Readers::title)
        .containsExactly("Alle", "Die Werkstatt");
    assertThat(german.handover()).extracting(HandoverSection::title).containsExactly("Aufbauen");
    write("log.yaml", "title: Merrow\nlanguage: fi\nreaders: {workshop: {title: Verstas}}\n");
    assertThat(read().log().readers())
        .extracting(Readers::title)
        .containsExactly("Everybody", "Verstas");
  }

  @Test
  void everyKindOfRecordIsReadWithItsAgreements() throws IOException {
    write(
        "log.yaml",
        """
        title: Building Merrow
        client: {value: A. N. Owner, under: client}
        scale: 1:16
        language: en-GB
        zone: Europe/London
        currency: GBP
        closeness: 2 %
        rate: {value: 34 GBP/h, under: client}
        clocks: {"T20": 1 h 12 min, "DSV": -30 s}
        budgets: {mass: 2.30 kg}
        hero: photos/T20_0412.jpg
        about: |
          Some text.

          Known to few. {under=lines}
        stages:
          drawings: {title: The drawings, start: 2026-03-14, hours: 6 h, under: client}
        agreements:
          lines: {with: Skerrick Yard, covers: the lines, until: 2027-01-01, afterwards: free, presence: nothing}
          client: {with: A. N. Owner}
        sheets: {under: lines}
        readers:
          client: {title: The client, party-to: [client, lines], gets: [book]}
        releases:
          - {sheet: sheets/lines.pdf#2, under: lines, by: Skerrick Yard, on: 2026-04-02, words: "Yes.", for: [public, client]}
        limits: {length: {title: Length, rule: hull.loa <= 36 in}}
        posts: [{title: One, entries: [2026-03-14-a], opening: photos/T20_0412.jpg}]
        handover:
          care: Wipe it.
          spares: {text: None., under: client}
        tables: {offsets: {under: lines, columns: {"keel": {under: client}}}}
        """);
    write(
        "facts.yaml",
        """
        full.loa: {is: 11.20 m ± 5 mm, title: Length, from: sheets/lines.pdf, on: 2026-03-14, under: [lines, client]}
        hull: {reckon: hull-form, water: {value: fresh, under: client}}
        """);
    write(
        "stock.yaml",
        "- {material: cedar_strip, bought: 60, price: {value: 21.60 GBP, under: client}}\n");
    write("tables/offsets.csv", "station,x [mm],keel [mm],under\n0,1 1/2,,\n1,2,3,client\n");
    write("sheets/lines.pdf", "x");
    write("photos/T20_0412.jpg", "x");
    write(
        "photos/photos.yaml",
        """
        T20_0412.jpg:
          caption: Her *bow*
          taken: 2026-05-16 10:16:04
          sha256: 2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881
          regions: [{box: [0, 0.37, 0.47, 1], under: lines}]
        """);
    write(
        "entries/2026-03-14-a.md",
        """
        ---
        stage: drawings
        time: 23:00-01:30, PT1H30M
        used: {cedar_strip: {amount: 6, where: keel, under: client}}
        measured: {hull.loa: 700 mm}
        weighed: {hull: {is: 412 g, x: 350 mm, z: 40 mm}}
        under: lines
        ---
        # The drawings {under=client}

        ![](../photos/T20_0412.jpg) and [](fact:hull.loa)
        """);
    LogReader.Reading reading = read();
    Log log = reading.log();

    assertThat(reading.problems()).isEmpty();
    assertThat(log.head().client())
        .isEqualTo(new Marked<>("A. N. Owner", Label.of("client"), Place.of("log.yaml", 2, 17)));
    assertThat(log.head().scale().value()).isEqualByComparingTo("16");
    assertThat(log.head().closeness()).isEqualByComparingTo(new BigDecimal("0.02"));
    assertThat(log.head().clocks())
        .containsEntry("T20", Duration.ofMinutes(72))
        .containsEntry("DSV", Duration.ofSeconds(-30));
    assertThat(log.head().about())
        .extracting(Block::label)
        .containsExactly(Label.NONE, Label.of("lines"));
    assertThat(log.stages().get(0).label()).isEqualTo(Label.of("client"));
    assertThat(log.agreements().get("lines").isFreeOn(LocalDate.of(2027, 1, 2))).isTrue();
    assertThat(log.readers())
        .extracting(Readers::id)
        .containsExactly("public", "client", "workshop");
    assertThat(log.readers().get(2).partyTo())
        .containsExactly("client", "lines", "own-client", "own-money");
    assertThat(log.releases().get(0).name()).isEqualTo("sheets/lines.pdf#2");
    assertThat(log.limits().get(0).place()).isEqualTo(Place.of("log.yaml", 26, 40));
    assertThat(log.posts().get(0).opening()).isEqualTo("photos/T20_0412.jpg");
    assertThat(log.handover())
        .extracting(HandoverSection::label)
        .containsExactly(Label.NONE, Label.of("client"));
    assertThat(log.handover().get(1).text().get(0).label()).isEqualTo(Label.of("client"));
    assertThat(log.statements().get(0).label()).isEqualTo(Label.of("client", "lines"));
    assertThat(log.requests().get(0).inputs().get("water").label()).isEqualTo(Label.of("client"));
    assertThat(log.stock().get(0).price().label()).isEqualTo(Label.of("client"));
    Table offsets = log.tables().get(0);
    assertThat(offsets.label()).isEqualTo(Label.of("lines"));
    assertThat(offsets.columns())
        .extracting(Table.Column::name)
        .containsExactly("station", "x", "keel");
    assertThat(offsets.columns().get(2).label()).isEqualTo(Label.of("client"));
    assertThat(offsets.rows())
        .extracting(Table.Row::label)
        .containsExactly(Label.NONE, Label.of("client"));
    assertThat(offsets.rows().get(0).cells().get(1).quantity()).hasToString("1.5 mm");
    assertThat(offsets.rows().get(0).cells().get(2).quantity()).isNull();
    assertThat(log.sheets()).extracting(Sheet::label).containsExactly(Label.of("lines"));
    PhotoFile photo = log.photos().get(0);
    assertThat(photo.taken()).isEqualTo(LocalDateTime.of(2026, 5, 16, 10, 16, 4));
    assertThat(photo.regions()).extracting(PhotoFile.Region::bottom).containsExactly(1.0);
    Entry entry = log.entries().get(0);
    assertThat(entry.title().value()).isEqualTo("The drawings");
    assertThat(entry.title().label()).isEqualTo(Label.of("client", "lines"));
    assertThat(entry.text()).extracting(Block::label).containsExactly(Label.of("client"));
    assertThat(images(entry)).extracting(Inline.Image::path).containsExactly("photos/T20_0412.jpg");
    assertThat(entry.worked())
        .extracting(Entry.Worked::duration)
        .containsExactly(Duration.ofMinutes(150), Duration.ofMinutes(90));
    assertThat(entry.used().get(0).label()).isEqualTo(Label.of("client", "lines"));
    assertThat(entry.weighed().get(0).z()).hasToString("40 mm");
  }

  @Test
  void aFolderWithoutLogYamlIsTakenAsItIs() throws IOException {
    write("2026-03-14 first day.md", "No heading.\n");
    write("planking/2026-03-15.md", "---\ntags: [boat]\n---\n# Planks\n\n<b>Done</b> {1}\n");
    write("planking/later.md", "Text.\n");
    write("README.md", "# About\n\n[a](missing.md) ![](https://merrow.example/x.png)\n");
    write("2026-03-14/x.JPG", "x");
    write("sheets/lines.pdf", "x");
    Files.setLastModifiedTime(
        folder.resolve("README.md"), FileTime.from(Instant.parse("2026-01-02T12:00:00Z")));
    LogReader.Reading reading = read();
    Log log = reading.log();

    assertThat(reading.problems()).noneMatch(Problem::isError);
    assertThat(reading.problems())
        .extracting(Problem::toString)
        .anyMatch(p -> p.contains("planking/later.md: reminder: This note has no date; 2026-03-15"))
        .anyMatch(p -> p.startsWith("planking/2026-03-15.md:6:1: reminder: HTML"));
    assertThat(log.entries())
        .extracting(e -> e.date() + " " + e.stage() + " " + e.title().value())
        .containsExactly(
            "2026-03-14  First day",
            "2026-03-14  About",
            "2026-03-15 planking Planks",
            "2026-03-15 planking Later");
    assertThat(log.stages()).extracting(Stage::id).containsExactly("planking");
    assertThat(log.photos()).extracting(PhotoFile::path).containsExactly("2026-03-14/x.JPG");
    assertThat(log.sheets()).extracting(Sheet::label).containsExactly(Label.of("sheets"));
    assertThat(log.readers()).extracting(Readers::id).containsExactly("public", "workshop");
    assertThat(log.readers().get(0).partyTo()).isEmpty();
    assertThat(log.readers().get(1).partyTo()).containsExactly("own-client", "own-money", "sheets");
  }

  @Test
  void aMarkStopsEvenAFolderWithoutLogYaml() throws IOException {
    write("2026-03-14.md", "Text. {under=lines}\n");
    write("2026-03-15.md", "---\nunder: lines\n---\nText.\n");
    write("2026-03-16.md", "Text. {undr=lines}\n");
    assertThat(errors()).hasSize(3);
  }

  @Test
  void settingsUnderAWrongNameStop() throws IOException {
    write("log.yml", "title: Building Merrow\n");
    write("2026-03-14.md", "Text.\n");
    assertThat(errors())
        .containsExactly(
            "log.yml: error: No file of this name is read here. Rename it to \"log.yaml\".");
  }

  @Test
  void aByteOrderMarkAndWindowsLineEndsMakeNoDifference() throws IOException {
    write("log.yaml", "\ufefftitle: Building Merrow\r\nscale: 1:16\r\ntitel: x\r\n");
    write("entries/2026-03-14-a.md", "\ufeff---\r\ntitle: A\r\n---\r\nText\r\nmore {x}\r\n");
    assertThat(errors())
        .extracting(e -> e.split(" ")[0])
        .containsExactly("entries/2026-03-14-a.md:5:6:", "log.yaml:3:1:");
  }

  @Test
  void textThatIsNoUtf8IsToldWithItsLine() throws IOException {
    write("log.yaml", "title: Building Merrow\n");
    Path note = folder.resolve("entries/2026-03-14-a.md");
    Files.createDirectories(note.getParent());
    Files.write(note, "One\nTwo caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(errors())
        .containsExactly(
            "entries/2026-03-14-a.md:2:8: error: This is not UTF-8 text from here on. Save the file as UTF-8 in your editor.");
  }

  @Test
  void namesWithSpacesAccentsAndSignsAreFoundHoweverTheyAreWritten() throws IOException {
    // A file system that cannot store the name cannot be asked for it either.
    String jnu = System.getProperty("sun.jnu.encoding", "");
    Assumptions.assumeThat(jnu).as("encoding of file names").isEqualToIgnoringCase("UTF-8");
    write("log.yaml", "title: Building Merrow\n");
    for (String name :
        List.of(
            "a b.jpg",
            "caf\u00e9.jpg",
            "a#b.jpg",
            "100%.jpg",
            "it's \"so\".jpg",
            "a%20b.jpg",
            "(1).jpg")) {
      write("photos/" + name, "x");
    }
    write(
        "entries/2026-03-14-a.md",
        """
        ![](<../photos/a b.jpg>) ![](../photos/a%20b.jpg) ![](../photos/cafe\u0301.jpg)
        ![](../photos/caf%C3%A9.jpg) ![](../photos/a#b.jpg) ![](../photos/a%23b.jpg)
        ![](../photos/100%.jpg) ![](../photos/100%25.jpg) ![](../photos/it's%20%22so%22.jpg)
        ![](../photos/a%2520b.jpg) ![](../photos/(1).jpg) ![](../photos/\\(1\\).jpg)
        """);
    LogReader.Reading reading = read();
    assertThat(reading.problems()).isEmpty();
    assertThat(images(reading.log().entries().get(0)))
        .extracting(Inline.Image::path)
        .containsExactly(
            "photos/a b.jpg",
            "photos/a b.jpg",
            "photos/caf\u00e9.jpg",
            "photos/caf\u00e9.jpg",
            "photos/a#b.jpg",
            "photos/a#b.jpg",
            "photos/100%.jpg",
            "photos/100%.jpg",
            "photos/it's \"so\".jpg",
            "photos/a%20b.jpg",
            "photos/(1).jpg",
            "photos/(1).jpg");
  }

  @Test
  void aLinkOutOfTheLogIsRefused() throws IOException {
    write("log.yaml", "title: Building Merrow\n");
    Files.createDirectories(folder.resolve("photos"));
    Files.createSymbolicLink(folder.resolve("photos/x.jpg"), folder.resolve("log.yaml"));
    Files.createSymbolicLink(folder.resolve("entries"), folder.resolve("photos"));
    assertThat(errors())
        .containsExactly(
            "entries: error: This is a link to somewhere else. Put the file itself here, so that the log is whole.",
            "photos/x.jpg: error: This is a link to somewhere else. Put the file itself here, so that the log is whole.");
  }

  @Test
  void aFileThatMayNotBeReadIsTold() throws IOException {
    write("log.yaml", "title: Building Merrow\n");
    write("entries/2026-03-14-a.md", "Text.\n");
    Path note = folder.resolve("entries/2026-03-14-a.md");
    Assumptions.assumeThat(note.toFile().setReadable(false) && !Files.isReadable(note))
        .as("whether this user can be kept from a file")
        .isTrue();
    assertThat(errors())
        .singleElement()
        .asString()
        .startsWith("entries/2026-03-14-a.md: error: This file cannot be read.");
  }

  @Test
  void aMissingFolderIsLeftToTheCaller() {
    Path missing = folder.resolve("none");
    assertThatThrownBy(() -> new LogReader(TODAY, ZoneOffset.UTC).read(missing))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void aBrokenLogYamlIsOneProblemAndNotAHundred() throws IOException {
    write("log.yaml", "title: \"Building Merrow\nagreements:\n  lines: {with: x}\n");
    write("stock.yaml", "- {material: glue, bought: 1 kg, price: 3 GBP}\n");
    write(
        "entries/2026-03-14-a.md", "---\nunder: lines\nstage: moulds\n---\nText. {under=client}\n");
    assertThat(errors()).singleElement().asString().startsWith("log.yaml:");
    assertThat(read().log().entries().get(0).label()).isEqualTo(Label.of("lines"));
  }

  @Test
  void anEmptyLogYamlIsAskedForItsTitleAndNothingElseIsTold() throws IOException {
    write("log.yaml", "# nothing yet\n");
    write("entries/2026-03-14-a.md", "Text. {under=lines}\n");
    assertThat(errors()).extracting(e -> e.split(" ")[0]).containsExactly("log.yaml:");
  }

  private static List<Inline.Image> images(Entry entry) {
    return Block.runs(entry.text())
        .filter(Inline.Image.class::isInstance)
        .map(Inline.Image.class::cast)
        .toList();
  }

  @Test
  void linksBetweenEntriesLeadToOneThatIsThere() throws IOException {
    write("log.yaml", "title: Building Merrow\n");
    write("entries/2026-03-14-a.md", "[see](<later/2026-03-15 b.md>)\n");
    write("entries/later/2026-03-15 b.md", "[see](../2026-03-14-a.md#part)\n");
    assertThat(read().problems()).isEmpty();
    write("entries/2026-03-14-a.md", "[see](<2026-03-15 b.md>)\n");
    assertThat(read().problems())
        .singleElement()
        .satisfies(p -> assertThat(p.what()).contains("which is no entry of the log"));
  }

  @Test
  void whatIsForThePrinterIsMadeOnlyForThoseWhoAskForIt() throws IOException {
    write(
        "log.yaml",
        """
        title: Building Merrow
        readers:
          client: {title: The client, gets: [handover, handover-sheets, print-ready]}
        """);
    LogReader.Reading reading = read();
    assertThat(reading.problems()).noneMatch(Problem::isError);
    assertThat(reading.log().readers())
        .filteredOn(readers -> readers.id().equals("client"))
        .flatExtracting(Readers::outputs)
        .containsExactly(
            Readers.Output.HANDOVER, Readers.Output.HANDOVER_SHEETS, Readers.Output.PRINT_READY);
    assertThat(reading.log().readers())
        .filteredOn(readers -> readers.id().equals("workshop"))
        .flatExtracting(Readers::outputs)
        .doesNotContain(Readers.Output.HANDOVER_SHEETS, Readers.Output.PRINT_READY);
  }

  private List<String> errors() throws IOException {
    return read().problems().stream().filter(Problem::isError).map(Problem::toString).toList();
  }

  private LogReader.Reading read() throws IOException {
    return new LogReader(TODAY, ZoneOffset.UTC).read(folder);
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }
}

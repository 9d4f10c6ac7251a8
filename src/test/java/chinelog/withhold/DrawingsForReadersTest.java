package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.edition.Diagram;
import chinelog.edition.Drawing;
import chinelog.edition.Edition;
import chinelog.edition.Timeline;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.markup.DrawingSvg;
import chinelog.markup.Theme;
import chinelog.markup.Wording;
import chinelog.photo.album.Album;
import chinelog.problem.Problem;
import chinelog.reckon.Reckoner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What readers get drawn, and what they could measure in it. */
class DrawingsForReadersTest {

  private static final LocalDate MAY = LocalDate.of(2026, 5, 31);

  private static final String HULL =
      """
      station,x [mm],keel [mm],sheer [mm],sheer half-breadth [mm],WL 20 half-breadth [mm],WL 40 half-breadth [mm],WL 60 half-breadth [mm]
      0,0,10,100,60,30,45,52
      1,150,2,98,80,50,66,74
      2,300,0,100,90,55,74,84
      3,450,0,105,70,30,47,58
      4,600,8,115,25,4,9,14
      """;

  private static final String MASSES =
      """
      item,mass [g],x [mm],z [mm],under
      Shell,900,290,60,
      Cells,700,300,25,
      Engine,400,260,35,
      """;

  @TempDir Path folder;

  @BeforeEach
  void layDown() throws IOException {
    write(
        "log.yaml",
        """
        title: Building Merrow
        scale: 1:16
        zone: UTC
        language: en-GB
        agreements:
          lines: {with: Skerrick Yard, covers: the lines, presence: note}
          cargo: {with: The harbour, covers: what she carries, presence: nothing}
        readers:
          public: {title: Everybody, party-to: []}
          yard: {title: The yard, party-to: [lines]}
        stages:
          moulds: {title: Moulds, start: 2026-04-01, finish: 2026-04-04}
          planking: {title: Planking, start: 2026-04-05, finish: 2026-06-20}
          rigging: {title: Rigging, start: 2026-06-21, finish: 2026-06-30}
        """);
    write("tables/offsets.csv", HULL);
    write("tables/masses.csv", MASSES);
    write(
        "facts.yaml",
        """
        form: {reckon: hull-form, offsets: offsets, draught: 40 mm}
        floats: {reckon: afloat, offsets: offsets, masses: masses}
        """);
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private void add(String name, String text) throws IOException {
    write(name, Files.readString(folder.resolve(name)) + text);
  }

  private void entry(String day, String stage, String front) throws IOException {
    write(
        "entries/" + day + "-day.md", "---\nstage: " + stage + "\n" + front + "\n---\n\nA day.\n");
  }

  private Withholder.Withheld edition(String readers) throws IOException {
    LogReader.Reading reading = new LogReader(MAY, ZoneOffset.UTC).read(folder);
    assertThat(reading.problems()).filteredOn(Problem::isError).isEmpty();
    Log log = reading.log().until(MAY);
    Reckoner.Reckoning reckoning = Reckoner.reckon(log);
    assertThat(reckoning.problems()).filteredOn(Problem::isError).isEmpty();
    Readers group =
        log.readers().stream().filter(r -> r.id().equals(readers)).findFirst().orElseThrow();
    return Withholder.prepare(
            log,
            reckoning.facts(),
            new Album(List.of(), List.of()),
            new NoPictures(),
            group,
            MAY,
            Set.of(),
            Correspondence.NONE)
        .against(List.of());
  }

  private List<Drawing> drawn(String readers) throws IOException {
    return edition(readers).edition().contents().drawings();
  }

  private static List<String> ids(List<Drawing> drawings) {
    return drawings.stream().map(Drawing::id).toList();
  }

  @Test
  void openTablesAreDrawnForEverybodyToATenthOfAUnit() throws IOException {
    List<Drawing> drawings = drawn("public");

    assertThat(ids(drawings)).containsExactly("lines-form", "balance-floats");
    drawings.stream()
        .map(d -> (Diagram) d)
        .flatMap(d -> d.shapes().stream())
        .flatMap(DrawingsForReadersTest::places)
        .forEach(
            p -> {
              assertThat(p.x() * 10).isEqualTo(Math.rint(p.x() * 10));
              assertThat(p.y() * 10).isEqualTo(Math.rint(p.y() * 10));
            });
    assertThat(drawings.get(1).table().rows())
        .extracting(r -> r.get(1))
        .containsExactly("900 g", "700 g", "400 g");
  }

  private static Stream<Spot> places(Diagram.Shape shape) {
    if (shape instanceof Diagram.Line line) {
      return line.points().stream();
    }
    return Stream.of(shape instanceof Diagram.Disc disc ? disc.at() : ((Diagram.Note) shape).at());
  }

  @Test
  void noDrawingTellsReadersOfATableThatTheyMayNotSee() throws IOException {
    add("log.yaml", "tables: {offsets: {under: lines}}\n");
    Edition.Contents before = edition("public").edition().contents();
    assertThat(before.drawings()).isEmpty();
    assertThat(ids(drawn("yard"))).containsExactly("lines-form", "balance-floats");
    assertThat(drawn("yard").get(0).under()).containsExactly("lines");

    write("tables/offsets.csv", HULL.replace("55,74,84", "51,70,81"));

    assertThat(edition("public").edition().contents()).isEqualTo(before);
  }

  @Test
  void aReleasedFigureDrawsNoCurve() throws IOException {
    add(
        "log.yaml",
        """
        tables: {offsets: {under: lines}}
        releases:
          - fact: [form.volume, form.lwl, floats.gm]
            under: lines
            by: Ada Skerrick
            on: 2026-04-02
            words: You may give these.
            for: [public]
        """);
    assertThat(drawn("public")).isEmpty();
  }

  @Test
  void aMassThatIsNotedAsWithheldLeavesNoBalanceToMeasure() throws IOException {
    write("tables/masses.csv", MASSES + "Pilot,650,340,80,lines\n");
    assertThat(ids(drawn("public"))).containsExactly("lines-form");
  }

  @Test
  void aMassOfWhichNothingShowsIsInNoCentreAndNoTotal() throws IOException {
    List<Drawing> without = drawn("public");
    write("tables/masses.csv", MASSES + "Pilot,650,340,80,cargo\n");

    List<Drawing> told = drawn("public");

    assertThat(told).isEqualTo(without);
    assertThat(svg(told)).isEqualTo(svg(without)).doesNotContain("Pilot");
  }

  private static String svg(List<Drawing> drawings) throws IOException {
    StringBuilder all = new StringBuilder();
    for (Drawing drawing : drawings) {
      all.append(DrawingSvg.forScreen(drawing, Theme.load("", null), Wording.of(Locale.UK)));
      all.append(DrawingSvg.forPrint(drawing, Theme.load("", null), Wording.of(Locale.UK), 120));
    }
    return all.toString();
  }

  @Test
  void theDrawingOfWhatIsLeftIsNotShownBesideAReleasedFigureOfTheWhole() throws IOException {
    write("tables/masses.csv", MASSES + "Pilot,650,340,80,cargo\n");
    add(
        "log.yaml",
        """
        releases:
          - fact: floats.mass
            under: cargo
            by: The harbour
            on: 2026-04-02
            words: You may give her mass.
            for: [public]
        """);
    assertThat(ids(drawn("public"))).containsExactly("lines-form");
  }

  @Test
  void stripsAreDoneAsFarAsTheCountsThatReadersSee() throws IOException {
    write(
        "facts.yaml",
        "planks: {reckon: planking, offsets: offsets, strip_width: 12 mm, laid: strips.laid}\n");
    entry("2026-04-06", "planking", "measured: {strips.laid: 3}");
    entry("2026-04-08", "planking", "measured: {strips.laid: 5}");
    List<Drawing> two = drawn("public");
    entry("2026-04-09", "planking", "measured: {strips.laid: 9}\nunder: cargo");

    Diagram shell = (Diagram) two.get(0);
    assertThat(strips(shell, Ink.DONE)).isEqualTo(3);
    assertThat(strips(shell, Ink.DONE_NEXT)).isEqualTo(2);
    assertThat(shell.table().rows())
        .containsExactly(List.of("6 April 2026", "3"), List.of("8 April 2026", "5"));
    assertThat(shell.description()).endsWith("So far 5 strips are laid on a side.");
    assertThat(drawn("public").get(0)).isEqualTo(shell);
    List<Edition.Entry> told = edition("public").edition().contents().entries();
    assertThat(told).hasSize(2);
    Diagram second = (Diagram) told.get(1).drawings().get(0);
    assertThat(strips((Diagram) told.get(0).drawings().get(0), Ink.DONE_NEXT)).isEqualTo(3);
    assertThat(strips(second, Ink.DONE)).isEqualTo(3);
    assertThat(strips(second, Ink.DONE_NEXT)).isEqualTo(2);
    assertThat(second.description()).contains("5 strips are laid, the lighter 2 of them");
  }

  @Test
  void stripsLaidFromBothEdgesAreDoneAtBoth() throws IOException {
    write(
        "facts.yaml",
        "planks: {reckon: planking, offsets: offsets, strip_width: 12 mm, laid: strips.laid,"
            + " order: both}\n");
    entry("2026-04-06", "planking", "measured: {strips.laid: 3}");
    List<Ink> strips =
        ((Diagram) drawn("public").get(0))
            .shapes().stream()
                .filter(s -> s instanceof Diagram.Line line && line.closed())
                .map(s -> ((Diagram.Line) s).ink())
                .toList();
    int last = strips.size() - 1;
    assertThat(strips.subList(0, 3)).containsExactly(Ink.DONE, Ink.DONE, Ink.COMING);
    assertThat(strips.subList(last - 1, last + 1)).containsExactly(Ink.COMING, Ink.DONE);
  }

  @Test
  void aShellThatMayNotBeSeenStandsInNoEntry() throws IOException {
    write(
        "facts.yaml",
        "planks: {reckon: planking, offsets: offsets, strip_width: 12 mm, laid: strips.laid,"
            + " under: lines}\n");
    entry("2026-04-06", "planking", "measured: {strips.laid: 3}");
    assertThat(edition("public").edition().contents().entries().get(0).drawings()).isEmpty();
    assertThat(edition("yard").edition().contents().entries().get(0).drawings()).hasSize(1);
  }

  private static long strips(Diagram diagram, Ink ink) {
    return diagram.shapes().stream()
        .filter(s -> s instanceof Diagram.Line line && line.ink() == ink)
        .count();
  }

  @Test
  void theDaysOfABuildAreThoseOfTheEntriesThatReadersSee() throws IOException {
    write("facts.yaml", "");
    entry("2026-04-02", "moulds", "time: 2 h");
    entry("2026-04-03", "moulds", "time: 1 h 30 min");
    entry("2026-04-06", "planking", "time: 4 h");
    List<Drawing> told = drawn("public");
    entry("2026-04-20", "planking", "time: 5 h\nunder: cargo");
    entry("2026-04-21", "planking", "time: 5 h\nunder: lines");

    Timeline time = (Timeline) told.get(0);
    assertThat(time.rows()).extracting(Timeline.Row::title).containsExactly("Moulds", "Planking");
    assertThat(time.rows().get(0).days())
        .extracting(d -> d.hours().doubleValue())
        .containsExactly(2.0, 1.5);
    assertThat(time.rows().get(0).done()).isEqualTo(LocalDate.of(2026, 4, 3));
    assertThat(time.rows().get(1).finish()).isEqualTo(LocalDate.of(2026, 6, 20));
    assertThat(drawn("public")).isEqualTo(told);
    assertThat(((Timeline) drawn("yard").get(0)).rows().get(1).days()).hasSize(2);
  }
}

package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogReader;
import chinelog.log.records.Entry;
import chinelog.problem.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What once gave a wrong figure without a word: each is told, with its place. */
class WrongInSilenceTest {

  private static final String OFFSETS =
      """
      station,x [mm],keel [mm],WL 20 half-breadth [mm],WL 40 half-breadth [mm]
      0,0,0,20,40
      1,200,0,40,60
      2,400,0,40,60
      3,600,0,10,15
      """;

  @TempDir private Path folder;
  private Reckoner.Reckoning reckoned;

  @BeforeEach
  void aLog() {
    write("log.yaml", "title: Building Heron\nscale: 1:16\n");
  }

  private void write(String file, String text) {
    try {
      Files.createDirectories(folder.resolve(file).getParent());
      Files.writeString(folder.resolve(file), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private LogReader.Reading read() {
    try {
      return new LogReader(LocalDate.of(2026, 6, 30), ZoneOffset.UTC).read(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<String> told() {
    LogReader.Reading reading = read();
    reckoned = Reckoner.reckon(reading.log());
    List<Problem> all = new ArrayList<>(reading.problems());
    all.addAll(reckoned.problems());
    return all.stream().map(Problem::toString).toList();
  }

  private double figure(String name) {
    return reckoned.facts().find(name).orElseThrow().value().value().doubleValue();
  }

  @Test
  void theEndThatStationsAreMeasuredFromIsAskedUntilTheHeadingTellsIt() {
    write("tables/offsets.csv", OFFSETS);
    write("facts.yaml", "form: {reckon: hull-form, offsets: offsets, draught: 40 mm}\n");
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith("tables/offsets.csv:1:9: reminder: The heading does not say from which end")
        .contains("\"x from aft\" or \"x from bow\"");
    double fromAft = figure("form.lcb");
    write("tables/offsets.csv", OFFSETS.replace("x [mm]", "x from bow [mm]"));
    assertThat(told()).isEmpty();
    assertThat(figure("form.lcb"))
        .isCloseTo(600 - fromAft, org.assertj.core.api.Assertions.within(1e-9));
    write("tables/offsets.csv", OFFSETS);
    write(
        "facts.yaml", "form: {reckon: hull-form, offsets: offsets, draught: 40 mm, origin: bow}\n");
    assertThat(told()).isEmpty();
    write("tables/offsets.csv", OFFSETS.replace("x [mm]", "x from aft [mm]"));
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith("tables/offsets.csv:1:9: error: The column \"x from aft\" says otherwise");
  }

  @Test
  void aColumnThatNothingReadsIsToldWithItsPlace() {
    write(
        "tables/offsets.csv",
        OFFSETS.replace("x [mm]", "x from aft [mm]").replace("WL 40", "WI 40"));
    write("facts.yaml", "form: {reckon: hull-form, offsets: offsets, draught: 20 mm}\n");
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith(
            "tables/offsets.csv:1:59: reminder: The column \"WI 40 half-breadth\" is not read by"
                + " hull-form.");
    write("tables/runs.csv", "run,time [s],wind [m/s],seen by\n1,8.4,2,me\n2,9.1,2,me\n");
    write("facts.yaml", "trial: {reckon: runs, runs: runs, course: 10 m}\nwind: mean(runs.wind)\n");
    assertThat(told()).isEmpty();
    write("facts.yaml", "trial: {reckon: runs, runs: runs, course: 10 m}\n");
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith("tables/runs.csv:1:14: reminder: The column \"wind\" is not read by runs.");
  }

  @Test
  void theBoatWeighedOnTopOfHerPartsIsAskedAbout() {
    write("entries/2026-03-14-a.md", "---\nweighed: {hull: 550 g, deck: 230 g}\n---\nA.\n");
    write("entries/2026-03-15-b.md", "---\nweighed: {cells: 236 g}\n---\nB.\n");
    assertThat(told()).isEmpty();
    write("entries/2026-03-16-c.md", "---\nweighed: {heron: 1019 g}\n---\nC.\n");
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith("entries/2026-03-16-c.md:2:11: reminder: \"heron\" weighs 1019 g, about what")
        .contains("all 3 parts weighed before do", "counts them twice", "{model.mass: 1019 g}");
    write("entries/2026-03-16-c.md", "---\nweighed: {whole_boat: 1240 g}\n---\nC.\n");
    assertThat(told()).singleElement().asString().contains("\"whole_boat\" weighs 1240 g");
    write("entries/2026-03-16-c.md", "---\nmeasured: {model.mass: 1019 g}\n---\nC.\n");
    assertThat(told()).isEmpty();
    assertThat(figure("mass.total")).isEqualTo(1016);
  }

  @Test
  void ballastThatWouldLieOutsideTheHullIsToldSo() {
    write("tables/masses.csv", "item,mass [g],x [mm]\nHull,1500,330\nMotor,800,180\n");
    String facts =
        "b: {reckon: balance, masses: masses, displacement: 2374 g, lcb: 307 mm, lwl: 653 mm}\n";
    write("facts.yaml", facts.replace("307", "350.18"));
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith("facts.yaml:1:1: reminder: \"b.ballast_at\": ballast would have to lie outside")
        .contains("2599 mm forward of its aft end");
    write("facts.yaml", facts);
    write("tables/masses.csv", "item,mass [g],x [mm]\nHull,900,330\nMotor,400,180\n");
    assertThat(told()).isEmpty();
    write("tables/masses.csv", "item,mass [g],x [mm]\nHull,1500,330\nMotor,800,380\n");
    assertThat(told()).singleElement().asString().contains("aft of its aft end");
  }

  @Test
  void stripsAreCountedWholeAndJoinedOnesBesides() {
    // 24 strips a side of 700 mm out of lengths of 1000 mm: 48 whole, 34 if the rest is scarfed on.
    write("tables/girths.csv", "station,x [mm],girth [mm]\n0,0,100\n1,350,120\n2,700,110\n");
    write(
        "facts.yaml",
        "p: {reckon: planking, girths: girths, strip_width: 5 mm, wastage: 0 %, stock_length: 1 m}");
    assertThat(told()).isEmpty();
    assertThat(figure("p.strips")).isEqualTo(24);
    assertThat(figure("p.pieces")).isEqualTo(48);
    assertThat(figure("p.pieces_joined")).isEqualTo(34);
    write(
        "facts.yaml",
        "p: {reckon: planking, girths: girths, strip_width: 5 mm, wastage: 0 %, stock_length: 1.4 m}");
    told();
    assertThat(figure("p.pieces")).isEqualTo(24);
  }

  @Test
  void headingsAreDatedAsPeopleWriteDates() throws IOException {
    Files.delete(folder.resolve("log.yaml"));
    write(
        "diary.md",
        """
        # Planking

        ## 14.03.2026 Garboards

        On.

        ## Friday 20 March 2026

        Dry.

        ## Samstag, 21. März 2026: Schleifen

        Ab.

        ## Planking 22 March 2026

        No date begins this heading.
        """);
    LogReader.Reading reading = read();
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.log().entries())
        .extracting(Entry::date)
        .containsExactly(
            LocalDate.of(2026, 3, 14), LocalDate.of(2026, 3, 20), LocalDate.of(2026, 3, 21));
    assertThat(reading.log().entries())
        .extracting(e -> e.title().value())
        .contains("Garboards", "Schleifen");
  }

  @Test
  void aHeadingOfAnotherDayInANoteOfOneDayIsTold() {
    write("entries/2026-03-14-a.md", "# Garboards\n\nOn.\n\n## Friday 20 March 2026\n\nDry.\n");
    assertThat(told())
        .singleElement()
        .asString()
        .startsWith("entries/2026-03-14-a.md:5:1: reminder: This heading is dated 2026-03-20, but");
    write("entries/2026-03-14-a.md", "## 14.03.2026\n\nOn.\n\n## 3/4/2026\n\nDry.\n");
    assertThat(told())
        .singleElement()
        .asString()
        .contains("This heading may mean 2026-03-04 or 2026-04-03.");
  }
}

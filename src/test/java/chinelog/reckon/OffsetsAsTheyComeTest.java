package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.log.LogReader;
import chinelog.problem.Problem;
import chinelog.quantity.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One hull, a wedge, written down in all the ways in which tables of offsets come. */
class OffsetsAsTheyComeTest {

  private static final String PLAIN =
      "station,x [in],keel [in],WL 6 half-breadth [in],WL 12 half-breadth [in]\n"
          + "A,0,0,3,6\nB,24,0,3.5,7\nC,48,0,2,4\n";

  @TempDir private Path folder;

  private final List<Problem> problems = new ArrayList<>();

  private Facts reckon(String offsets, String manner) throws IOException {
    Files.writeString(folder.resolve("log.yaml"), "title: Building Merrow\nscale: 1/4 in = 1 ft\n");
    Files.createDirectories(folder.resolve("tables"));
    Files.writeString(folder.resolve("tables/offsets.csv"), offsets);
    Files.writeString(
        folder.resolve("facts.yaml"),
        "form: {reckon: hull-form, offsets: offsets, draught: 9 in, "
            + (manner.isEmpty() ? "origin: aft" : manner)
            + "}\n");
    LogReader.Reading reading =
        new LogReader(LocalDate.of(2026, 6, 30), ZoneOffset.UTC).read(folder);
    problems.addAll(reading.problems());
    Reckoner.Reckoning reckoned = Reckoner.reckon(reading.log());
    problems.addAll(reckoned.problems());
    return reckoned.facts();
  }

  private static double in(Facts facts, String name, String unit) throws Exception {
    return facts.find(name).orElseThrow().value().doubleIn(Unit.parse(unit));
  }

  private void same(String offsets, String manner) throws Exception {
    Facts plain = reckon(PLAIN, "");
    Facts facts = reckon(offsets, manner);
    assertThat(problems).isEmpty();
    for (String name : new String[] {"form.volume", "form.lcb", "form.vcb", "form.bm"}) {
      String unit = name.equals("form.volume") ? "cm³" : "mm";
      assertThat(in(facts, name, unit)).as(name).isCloseTo(in(plain, name, unit), within(1e-6));
    }
  }

  @Test // 1/4 in to the foot is 1:48
  void anArchitectsScaleIsAScale() throws Exception {
    assertThat(in(reckon(PLAIN, ""), "scale", "")).isEqualTo(48);
  }

  @Test
  void feetInchesAndEighthsAreRead() throws Exception {
    same(
        "station,x [ft-in-8],keel [in],WL 6 half-breadth [ft-in-8],WL 12 half-breadth [ft-in-8]\n"
            + "A,0-0-0,0,0-3-0,0-6-0\nB,2-0-0,0,0-3-4,0-7-0\nC,4-0-0,0,0-2-0,0-4-0\n",
        "");
    same(
        "station,x [ft-in-8],keel [in],WL 0-6-0 half-breadth [ft-in-8],WL 1 ft half-breadth [ft-in-8]\n"
            + "A,0-0-0,0,0-3-0,0-6-0\nB,2-0-0,0,0-3-4,0-7-0\nC,4-0-0,0,0-2-0,0-4-0\n",
        "");
    Facts facts =
        reckon(
            "station,x [ft-in-8],keel [in],WL 12 half-breadth [ft-in-8]\n"
                + "A,0-0-0,0,2-7-4+\nB,2-0-0,0,2-7-4-\nC,4-0-0,0,2-7-4\n",
            "");
    // 31 1/2 in and a sixteenth more and less, at nine twelfths of the height.
    assertThat(in(facts, "form.area_a", "in²")).isCloseTo(31.5625 * 9 / 12 * 9, within(1e-9));
    assertThat(in(facts, "form.area_b", "in²")).isCloseTo(31.4375 * 9 / 12 * 9, within(1e-9));
  }

  @Test
  void linesFromTheBowAndFullBreadthsAreTurned() throws Exception {
    same(
        "station,x [in],keel [in],WL 6 breadth [in],WL 12 breadth [in]\n"
            + "C,0,0,4,8\nB,24,0,7,14\nA,48,0,6,12\n",
        "origin: bow, breadths: full");
  }

  @Test
  void semicolonsAndDecimalCommasAreRead() throws Exception {
    same(
        "station;x [in];keel [in];WL 6,0 half-breadth [in];WL 12,0 half-breadth [in]\n"
            + "A;0;0;3;6\nB;24;0;3,5;7\nC;48,0;0;2;4\n",
        "");
  }

  @Test
  void twoDecimalSignsInOneTableAreAsked() throws Exception {
    reckon("station;x [in];keel [in];WL 12 half-breadth [in]\nA;0;0;3,5\nB;24;0;3.5\n", "");
    assertThat(problems)
        .anyMatch(
            p -> p.toString().startsWith("tables/offsets.csv:3:8: error: \"3.5\" has a point"));
  }

  @Test // the rabbet at 1 in and 1 in out: a bottom twice as flat as a wedge's there
  void theRabbetIsAPointOfTheOutline() throws Exception {
    Facts facts =
        reckon(
            "station,x [in],keel [in],rabbet [in],rabbet half-breadth [in],WL 12 half-breadth [in]\n"
                + "A,0,0,1,1,12\nB,24,0,1,1,12\nC,48,0,1,1,12\n",
            "");
    assertThat(problems).isEmpty();
    assertThat(in(facts, "form.area_b", "in²")).isCloseTo(81, within(1e-6));
  }
}

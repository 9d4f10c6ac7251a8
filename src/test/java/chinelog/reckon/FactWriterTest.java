package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** The formats other programs rely on; they change only with the documentation. */
class FactWriterTest {

  private static final Log LOG =
      LogFixture.merrow()
          .scale("16")
          .state("full.loa", "11.20 m ± 5 mm", "lines")
          .state("hull.loa", "full.loa / scale")
          .entry("2026-03-14", LocalDate.of(2026, 3, 14), "", e -> e.weighed("hull", "412 g"))
          .build();

  @Test
  void csvHasOneHeadingAndOneLineForEachFact() {
    assertThat(FactWriter.csv(Reckoner.reckon(LOG).facts().byName().values(), LOG))
        .isEqualTo(
            """
            name,title,value,unit,tolerance,origin,date,under,place,formula,inputs,entry
            full.loa,Full loa,11.2,m,0.005,stated,,lines,facts.yaml:1:1,,,
            growth.2026_03_14.hull,Mass of all parts weighed until 2026-03-14,412,g,,reckoned,2026-03-14,,entries/2026-03-14.md:30:3,mass.hull,mass.hull,2026-03-14
            hull.loa,Hull loa,0.7,m,0.0003125,reckoned,,lines,facts.yaml:2:1,full.loa / scale,full.loa scale,
            mass.hull,"Hull, mass",412,g,,weighed,2026-03-14,,entries/2026-03-14.md:30:3,,,2026-03-14
            mass.total,Mass of all parts weighed,412,g,,reckoned,2026-03-14,,entries/2026-03-14.md:30:3,mass.hull,mass.hull,
            scale,Scale,16,,,stated,,,log.yaml:4:8,,,
            """);
  }

  @Test
  void jsonIsAnArrayOfObjects() {
    assertThat(
            FactWriter.json(
                java.util.List.of(Reckoner.reckon(LOG).facts().find("hull.loa").orElseThrow()),
                LOG))
        .isEqualTo(
            """
            [
              {"name": "hull.loa", "title": "Hull loa", "value": 0.7, "unit": "m", "tolerance": 0.0003125, "origin": "reckoned", "date": null, "under": ["lines"], "place": "facts.yaml:2:1", "formula": "full.loa / scale", "inputs": ["full.loa", "scale"], "entry": null}
            ]
            """);
  }

  @Test
  void theTableLinesUp() {
    String table = FactWriter.table(Reckoner.reckon(LOG).facts().byName().values(), LOG);
    assertThat(table.lines().map(l -> l.indexOf("Hull loa")).filter(i -> i > 0))
        .containsExactly(table.lines().findFirst().orElseThrow().indexOf("Full loa"));
  }

  @Test
  void aWordIsAsWideAsATerminalShowsIt() {
    assertThat(FactWriter.width("girth")).isEqualTo(5);
    assertThat(FactWriter.width("be\u0301zier")).isEqualTo(6);
    assertThat(FactWriter.width("船体")).isEqualTo(4);
  }
}

package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import chinelog.quantity.NumberStyle;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class ExplanationTest {

  private static final NumberStyle STYLE = new NumberStyle(Locale.UK, 64);

  private static final Log LOG =
      LogFixture.merrow()
          .scale("16")
          .sheet("sheets/lines.pdf", "lines")
          .stateFrom("full.loa", "11.20 m ± 5 mm", "sheets/lines.pdf")
          .state("hull.loa", "full.loa / scale")
          .state("hull.half", "hull.loa / 2 + 0 * hull.loa")
          .build();

  private static Fact fact(Facts facts, String name) {
    return facts.find(name).orElseThrow();
  }

  @Test
  void theTreeShowsFormulaInputsAndWhereTheyStand() {
    Facts facts = Reckoner.reckon(LOG).facts();
    assertThat(Explanation.tree(fact(facts, "hull.loa"), LOG, facts))
        .containsExactly(
            "hull.loa = full.loa ÷ scale = 700.00 mm ± 0.32 mm   reckoned, facts.yaml:2:1,"
                + " under lines",
            "├─ full.loa = 11.200 m ± 0.005 m   stated, facts.yaml:1:1, from sheets/lines.pdf,"
                + " under lines",
            "└─ scale = 16   stated, log.yaml:4:8");
  }

  @Test
  void aPartThatWasToldIsNotToldAgain() {
    Log log =
        LogFixture.merrow()
            .state("a", "1 mm")
            .state("b", "2 * a")
            .state("c", "b + (b - 2 * b) + d")
            .state("d", "3 * b")
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    List<String> tree = Explanation.tree(fact(facts, "c"), log, facts);
    assertThat(tree).hasSize(5);
    assertThat(tree.get(4)).contains("b = 2 × a").endsWith("(see above)");
  }

  @Test
  void aLongSumIsNoWallOfFigures() {
    LogFixture log = LogFixture.merrow();
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      log.state("a" + i, i + " mm").state("part.p" + i, "a" + i + " / 2");
      parts.add("part.p" + i);
    }
    log.state("whole", String.join(" + ", parts));
    Facts facts = Reckoner.reckon(log.build()).facts();
    List<String> tree = Explanation.tree(fact(facts, "whole"), log.build(), facts);
    assertThat(tree).hasSize(12);
    assertThat(tree.get(0).replace('\u202f', ' ')).startsWith("whole = the sum of 10 = 22.5 mm");
    assertThat(tree.get(3).replace('\u202f', ' ')).startsWith("├─ part.p2 = a2 ÷ 2 = 1 mm");
    assertThat(tree.get(11)).startsWith("(Ask for one of these by its name");
  }

  @Test
  void theWorkingIsInWordsAndRoundsOnlyWhatItShows() {
    Facts facts = Reckoner.reckon(LOG).facts();
    assertThat(Explanation.working(fact(facts, "hull.loa"), facts, STYLE, n -> true, f -> true))
        .extracting(s -> s.text().replace('\u202f', ' '))
        .containsExactly("Hull loa = Full loa ÷ Scale", "= 11.200 m ÷ 16", "= 700.00 mm ± 0.32 mm");
  }

  @Test
  void aReaderWhoMayNotSeeAnInputLearnsNothingOfIt() {
    Facts facts = Reckoner.reckon(LOG).facts();
    assertThat(
            Explanation.working(
                fact(facts, "hull.loa"), facts, STYLE, n -> !n.equals("full.loa"), f -> true))
        .extracting(WorkedLine::text)
        .containsExactly("Worked out from figures of which not all are shown here.");
  }

  @Test
  void whatWasNotReckonedHasNoWorking() {
    Facts facts = Reckoner.reckon(LOG).facts();
    assertThat(Explanation.working(fact(facts, "full.loa"), facts, STYLE, n -> true, f -> true))
        .isEmpty();
  }
}

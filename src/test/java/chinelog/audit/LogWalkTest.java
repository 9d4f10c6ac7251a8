package chinelog.audit;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Clearance;
import chinelog.log.EveryMark;
import chinelog.log.records.Log;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Whatever can be put under an agreement gives the audit something to look for. */
class LogWalkTest {

  /**
   * Ends of places whose mark covers nothing that could be read: how long somebody worked is a
   * reckoned figure, a region is pixels, and a rule across the page has no words.
   */
  private static final Set<String> NOTHING_TO_READ =
      Set.of("entries.worked.label", "photos.regions.label", ".Rule.label");

  @Test
  void everyPlaceThatCanBeMarkedIsLookedFor() {
    int without = withheld(EveryMark.unmarked());
    List<String> forgotten = new ArrayList<>();
    EveryMark.all()
        .forEach(
            (place, log) -> {
              boolean isMute = NOTHING_TO_READ.stream().anyMatch(place::endsWith);
              if (!isMute && withheld(log) <= without) {
                forgotten.add(place);
              }
            });
    assertThat(forgotten).isEmpty();
  }

  private static int withheld(Log log) {
    Clearance nobody = Clearance.of(Set.of(), log.agreements().values(), LocalDate.of(2026, 6, 1));
    LogWalk walk = new LogWalk(log, "public", nobody);
    walk.walk();
    return walk.secrets().withheld() + walk.secrets().tooCommon().size();
  }
}

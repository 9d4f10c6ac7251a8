package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.EveryMark;
import chinelog.log.records.Log;
import chinelog.reckon.Facts;
import chinelog.withhold.question.Sight;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Whatever can be put under an agreement is taken out before anything is reckoned, or copied. */
class RedactorTest {

  /**
   * Beginnings of places that are copied into an edition only as the readers may see them: texts
   * and titles by {@code TextCopier} and {@code EditionMaker}, photographs and sheets by {@code
   * PlateMaker}; and the supplier of a lot, which no edition has.
   */
  private static final Set<String> COPIED_WITH_LEAVE =
      Set.of(
          "head.title",
          "head.subject",
          "head.kind",
          "head.about",
          "head.maker",
          "head.client",
          "head.licence",
          "head.hero",
          "head.letter",
          "stages.about",
          "handover.text",
          "entries.title",
          "entries.text",
          "photos",
          "sheets",
          "stock.supplier");

  @Test
  void everyPlaceThatCanBeMarkedIsTakenOutOrCopiedWithLeave() {
    List<String> kept = new ArrayList<>();
    EveryMark.all()
        .forEach(
            (place, log) -> {
              boolean isCopied = COPIED_WITH_LEAVE.stream().anyMatch(place::startsWith);
              if (!isCopied && sift(log) == log) {
                kept.add(place);
              }
            });
    assertThat(kept).isEmpty();
  }

  private static Log sift(Log log) {
    Facts none =
        new Facts(
            Collections.unmodifiableSortedMap(new TreeMap<>()),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    Sight sight = new Sight(log, log.readers().get(0), LocalDate.of(2026, 6, 1));
    return new Redactor(new WholeLog(log, none), new Account(sight)).sift();
  }
}

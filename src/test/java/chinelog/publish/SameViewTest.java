package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Plate;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(OncePerRun.class)
class SameViewTest {

  /** The hull on its board was photographed from one place, from the moulds to the glass. */
  @Test
  void theSameViewIsFoundFromDayToDay(Demo demo) throws IOException {
    assertThat(demo.edition("public").contents().sameView())
        .extracting(Plate::date)
        .containsExactly(
            LocalDate.of(2026, 3, 17),
            LocalDate.of(2026, 3, 21),
            LocalDate.of(2026, 3, 28),
            LocalDate.of(2026, 4, 8),
            LocalDate.of(2026, 4, 11),
            LocalDate.of(2026, 4, 15));
  }

  @Test
  void itHoldsOnlyPlatesThatItsReadersSeeWhole(Demo demo) throws IOException {
    for (String readers : List.of("public", "client", "workshop")) {
      Contents contents = demo.edition(readers).contents();
      assertThat(contents.plates()).containsAll(contents.sameView());
      assertThat(contents.sameView())
          .allMatch(p -> p.picture().filled().isEmpty() && p.under().isEmpty());
    }
  }
}

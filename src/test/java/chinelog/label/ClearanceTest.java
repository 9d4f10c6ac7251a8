package chinelog.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class ClearanceTest {

  private static final LocalDate END = LocalDate.of(2026, 6, 30);
  private static final Agreement KEPT =
      new Agreement("lines", "Skerrick Yard", "drawings", null, END, false, Presence.NOTE);
  private static final Agreement FREED =
      new Agreement("trials", "Skerrick Yard", "trials", null, END, true, Presence.NOTE);
  private static final Agreement ENDLESS =
      new Agreement("client", "A client", "name", null, null, true, Presence.NOTHING);

  private static Clearance on(LocalDate day, String... granted) {
    return Clearance.of(List.of(granted), List.of(KEPT, FREED, ENDLESS), day);
  }

  @Test
  void readersOfOneAgreementDoNotSeeWhatIsUnderAnother() {
    assertThat(on(END, "lines").allows(Label.of("lines"))).isTrue();
    assertThat(on(END, "lines").allows(Label.of("client"))).isFalse();
    assertThat(on(END, "lines").allows(Label.of("client", "lines"))).isFalse();
    assertThat(on(END, "lines", "client").allows(Label.of("client", "lines"))).isTrue();
  }

  @Test
  void everybodySeesWhatIsUnderNothing() {
    assertThat(on(END).allows(Label.NONE)).isTrue();
  }

  @Test
  void anEndFreesOnlyWhereTheAgreementSaysSoAndOnlyFromTheDayAfter() {
    assertThat(on(END).allows(Label.of("trials"))).isFalse();
    assertThat(on(END.plusDays(1)).allows(Label.of("trials"))).isTrue();
    assertThat(on(END.plusYears(50)).allows(Label.of("lines"))).isFalse();
  }

  @Test
  void aMissingEndNeverComes() {
    assertThat(on(LocalDate.of(9999, 12, 31)).allows(Label.of("client"))).isFalse();
  }

  @Test
  void joiningLabelsIsUnion() {
    Label a = Label.of("lines");
    Label b = Label.of("client");
    assertThat(a.join(b)).isEqualTo(b.join(a)).isEqualTo(Label.of("client", "lines"));
    assertThat(a.join(Label.NONE)).isEqualTo(a);
    assertThat(a.join(a)).isEqualTo(a);
    assertThat(a.join(b).without("lines")).isEqualTo(b);
  }
}

package chinelog.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class LabelTest {

  private static final LocalDate END = LocalDate.of(2027, 1, 1);

  private static final List<Label> ALL =
      List.of(
          Label.NONE,
          Label.of("client"),
          Label.of("lines"),
          Label.of("client", "lines"),
          Label.of("yard"));

  /**
   * Denning, "A lattice model of secure information flow", CACM 19 (1976): join is a least upper
   * bound.
   */
  @Test
  void joiningIsALattice() {
    for (Label a : ALL) {
      assertThat(a.join(a)).isEqualTo(a);
      assertThat(a.join(Label.NONE)).isEqualTo(a);
      for (Label b : ALL) {
        assertThat(a.join(b)).isEqualTo(b.join(a));
        assertThat(a.join(b).agreements()).containsAll(a.agreements()).containsAll(b.agreements());
        for (Label c : ALL) {
          assertThat(a.join(b).join(c)).isEqualTo(a.join(b.join(c)));
        }
      }
    }
  }

  @Test
  void readersSeeWhatIsJoinedOnlyIfTheySeeAllItsParts() {
    for (Label clearance : ALL) {
      Clearance readers = new Clearance(clearance.agreements());
      for (Label a : ALL) {
        for (Label b : ALL) {
          assertThat(readers.allows(a.join(b))).isEqualTo(readers.allows(a) && readers.allows(b));
        }
      }
    }
  }

  @Test
  void aReleaseTakesOffOneAgreementAndNoOther() {
    Label both = Label.of("client", "lines");
    assertThat(both.without("lines")).isEqualTo(Label.of("client"));
    assertThat(both.without("yard")).isEqualTo(both);
    assertThat(Label.of("lines").without("lines").isNone()).isTrue();
  }

  @Test
  void aLabelIsNotChangedThroughTheSetItWasMadeFrom() {
    TreeSet<String> ids = new TreeSet<>(List.of("lines"));
    Label label = new Label(ids);
    ids.clear();
    assertThat(label).isEqualTo(Label.of("lines"));
    assertThatThrownBy(() -> label.agreements().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }

  @Test
  void aLabelIsSpokenInOneOrder() {
    assertThat(Label.of("lines", "client")).hasToString("client + lines");
    assertThat(Label.of("lines").inWords()).hasToString("lines");
    assertThat(Label.of("lines", "client").inWords())
        .hasToString("the agreements client and lines");
    assertThat(Label.of("lines", Agreement.OWN_MONEY).inWords())
        .hasToString("lines and your own affairs");
    assertThat(Label.NONE).hasToString("public");
  }

  @Test
  void theEndOfAnAgreementFreesOnlyIfItSaysSoAndOnlyTheDayAfter() {
    assertThat(agreement(END, true).isFreeOn(END)).isFalse();
    assertThat(agreement(END, true).isFreeOn(END.plusDays(1))).isTrue();
    assertThat(agreement(END, false).isFreeOn(END.plusYears(99))).isFalse();
    assertThat(agreement(null, true).isFreeOn(LocalDate.MAX)).isFalse();
  }

  @Test
  void clearanceIsWhatIsGrantedAndWhatHasBecomeFree() {
    List<Agreement> all = List.of(agreement(END, true));
    assertThat(Clearance.of(List.of("client"), all, END).agreements()).containsExactly("client");
    assertThat(Clearance.of(List.of("client"), all, END.plusDays(1)).agreements())
        .containsExactly("client", "lines");
  }

  private static Agreement agreement(
      @org.jspecify.annotations.Nullable LocalDate until, boolean free) {
    return new Agreement("lines", "Skerrick Yard", "the lines", null, until, free, Presence.NOTE);
  }
}

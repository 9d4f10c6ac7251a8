package chinelog.book.writing;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Figure;
import java.util.List;
import org.junit.jupiter.api.Test;

class FigurePagesTest {

  @Test
  void figuresOfManyPartsAreToldApartFromOthersAndPartsCountUpwards() {
    Parts parts =
        Parts.of(
            List.of(
                figure("a", "Station 0, girth"),
                figure("b", "Station 10, girth"),
                figure("c", "Station 2, girth"),
                figure("d", "Station 0, area"),
                figure("e", "Station 10, area"),
                figure("f", "Station 2, area"),
                figure("g", "Mast, rails and fittings")));
    assertThat(parts.aspects()).containsExactly("girth", "area");
    assertThat(parts.byPart().keySet()).containsExactly("Station 0", "Station 2", "Station 10");
    assertThat(parts.others()).extracting(Figure::name).containsExactly("g");
  }

  @Test
  void twoPartsAreTooFewForATable() {
    Parts parts =
        Parts.of(
            List.of(
                figure("a", "Hull, mass"),
                figure("b", "Hull, centre"),
                figure("c", "Mast, mass"),
                figure("d", "Mast, centre")));
    assertThat(parts.byPart()).isEmpty();
    assertThat(parts.others()).hasSize(4);
  }

  @Test
  void theParticularsAreThoseOfTheModelAsBuiltAndNotWhatWentIntoIt() {
    List<Figure> chosen =
        Particulars.of(
            List.of(
                figure("built.loa", "Length as built"),
                figure("glass.resin", "Resin to pour"),
                figure("hull.loa", "Length"),
                figure("hull.beam", "Beam"),
                figure("mass.total", "Mass"),
                figure("trial.course", "Measured course"),
                figure("trial.speed", "Speed on trial")));
    assertThat(chosen)
        .extracting(Figure::name)
        .containsExactly("built.loa", "hull.beam", "mass.total", "trial.speed");
  }

  @Test
  void whatAllCautionsEndWithIsFoundBySentences() {
    assertThat(
            Cautions.commonEnd(
                List.of("Wear gloves. Ask the maker. Be slow.", "Wash. Ask the maker. Be slow.")))
        .isEqualTo(" Ask the maker. Be slow.");
    assertThat(Cautions.commonEnd(List.of("Wear gloves.", "Old gloves."))).isEmpty();
    assertThat(Cautions.commonEnd(List.of("Wear gloves. Be slow."))).isEmpty();
  }

  @Test
  void stepsRunOnAsSentences() {
    assertThat(FigurePages.inOneLine(List.of("Each zone by itself.", "Area: 2 m²", "= 4 m²")))
        .isEqualTo("Each zone by itself. Area: 2 m² = 4 m²");
  }

  private static Figure figure(String name, String title) {
    return new Figure(
        name, title, "Group", "1 mm", "", "", "stated", null, List.of(), List.of(), List.of());
  }
}

package chinelog.book.writing;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Figure;
import chinelog.markup.Particulars;
import chinelog.markup.Parts;
import chinelog.markup.TextMarkup;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class FigurePagesTest {

  @Test
  void figuresOfManyPartsAreToldApartFromOthers() {
    Parts parts =
        Parts.of(
            List.of(
                of("a", "Station 0", "girth"),
                of("b", "Station 2", "girth"),
                of("c", "Station 10", "girth"),
                of("d", "Station 0", "area"),
                of("e", "Station 2", "area"),
                of("f", "Station 10", "area"),
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
                of("a", "Hull", "mass"),
                of("b", "Hull", "centre"),
                of("c", "Mast", "mass"),
                of("d", "Mast", "centre")));
    assertThat(parts.byPart()).isEmpty();
    assertThat(parts.others()).hasSize(4);
  }

  @Test
  void theParticularsAreThoseOfTheModelAsBuiltAndNotWhatWentIntoIt() {
    List<Figure> chosen =
        Particulars.of(
            List.of(
                chief("mass.total", 4, "total"),
                figure("glass.resin", "Resin to pour"),
                chief("hull.loa", 1, "loa"),
                chief("hull.beam", 1, "beam"),
                chief("built.loa", 0, "loa"),
                figure("trial.course", "Measured course"),
                chief("trial.speed", 6, "speed")));
    assertThat(chosen)
        .extracting(Figure::name)
        .containsExactly("built.loa", "hull.beam", "mass.total", "trial.speed");
  }

  /** Whatever else is said of many parts: stations have areas and girths, parts have masses. */
  @Test
  void theParticularsAreOfTheWholeAndNotOfItsParts() {
    List<Figure> figures = new ArrayList<>();
    for (String station : List.of("Station 0", "Station 5", "Station 10")) {
      figures.add(of(station + "a", station, "area"));
      figures.add(of(station + "g", station, "girth"));
    }
    for (String part : List.of("Ballast", "Hull", "Mast")) {
      Figure.Chief chief = new Figure.Chief(4, part);
      figures.add(figure(part + "m", part, new Figure.Cell(part, "mass"), chief));
      figures.add(figure(part + "x", part, new Figure.Cell(part, "centre"), chief));
    }
    figures.add(chief("mass.total", 4, "total"));
    assertThat(Particulars.of(figures)).extracting(Figure::name).containsExactly("mass.total");
  }

  @Test
  void whatAllCautionsEndWithIsFoundBySentences() {
    assertThat(
            TextMarkup.commonEnd(
                List.of("Wear gloves. Ask the maker. Be slow.", "Wash. Ask the maker. Be slow.")))
        .isEqualTo(" Ask the maker. Be slow.");
    assertThat(TextMarkup.commonEnd(List.of("Wear gloves.", "Old gloves."))).isEmpty();
    assertThat(TextMarkup.commonEnd(List.of("Wear gloves. Be slow."))).isEmpty();
  }

  @Test
  void stepsRunOnAsSentences() {
    assertThat(
            FigurePages.inOneLine(
                List.of(
                    WorkedLine.of(WorkedLine.Kind.HOW, Fragment.words("Each zone by itself.")),
                    WorkedLine.of(
                        WorkedLine.Kind.GIVEN,
                        Fragment.words("Area: "),
                        Fragment.figure("2 m²", "m²")),
                    WorkedLine.of(
                        WorkedLine.Kind.RESULT,
                        Fragment.sign("= "),
                        Fragment.figure("4 m²", "m²")))))
        .isEqualTo("Each zone by itself. Area: 2 m² = 4 m²");
  }

  private static Figure figure(String name, String title) {
    return figure(name, title, null, null);
  }

  private static Figure of(String name, String part, String aspect) {
    return figure(name, part + ", " + aspect, new Figure.Cell(part, aspect), null);
  }

  private static Figure chief(String name, int rank, String what) {
    return figure(name, name, null, new Figure.Chief(rank, what));
  }

  private static Figure figure(
      String name, String title, Figure.@Nullable Cell cell, Figure.@Nullable Chief chief) {
    return new Figure(
        name,
        title,
        "Group",
        "1 mm",
        "",
        "",
        "stated",
        null,
        List.of(),
        List.of(),
        cell,
        chief,
        Figure.About.ANYTHING,
        List.of());
  }
}

package chinelog.book.page;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.book.Press;
import chinelog.edition.SampleEdition;
import chinelog.markup.Theme;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ImpositionTest {

  @TempDir Path folder;

  @Test
  void eightPagesGoOnTwoSheets() {
    assertThat(Imposition.sides(8))
        .containsExactly(List.of(8, 1), List.of(2, 7), List.of(6, 3), List.of(4, 5));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4, 5, 7, 12, 21})
  void everyPageIsOnExactlyOneSideAndFacesItsNeighbourInTheFold(int pages) {
    List<List<Integer>> sides = Imposition.sides(pages);
    int places = sides.size() * 2;
    assertThat(sides.stream().flatMap(List::stream).sorted())
        .containsExactlyElementsOf(IntStream.rangeClosed(1, places).boxed().toList());
    assertThat(places - pages).isBetween(0, 3);
    assertThat(sides).allMatch(side -> side.get(0) + side.get(1) == places + 1);
  }

  @Test
  void theSheetsAreLyingA4AndHoldTheWordsOfTheBooklet() throws Exception {
    Path pdf = folder.resolve("sheets.pdf");
    Press.printHandoverSheets(
        SampleEdition.forPublic(),
        Theme.load(Theme.USUAL, null),
        Press.Options.of(SampleEdition.forPublic(), false),
        pdf);
    try (PDDocument sheets = Loader.loadPDF(pdf.toFile())) {
      // ISO 216: A4 is 210 mm by 297 mm; a point is 1/72 inch.
      assertThat(sheets.getPage(0).getMediaBox().getWidth()).isBetween(838f, 842f);
      assertThat(sheets.getPage(0).getMediaBox().getHeight()).isBetween(594f, 596f);
      assertThat(sheets.getNumberOfPages() % 2).isZero();
      assertThat(new PDFTextStripper().getText(sheets))
          .contains("Record of handover")
          .contains("What she is");
    }
  }

  @Test
  void thePagesOnTheSheetsAreTaggedInTheOrderOfTheBooklet() throws Exception {
    Path pdf = folder.resolve("sheets.pdf");
    Press.printHandoverSheets(
        SampleEdition.forPublic(),
        Theme.load(Theme.USUAL, null),
        Press.Options.of(SampleEdition.forPublic(), false),
        pdf);
    try (PDDocument sheets = Loader.loadPDF(pdf.toFile())) {
      var catalog = sheets.getDocumentCatalog();
      assertThat(catalog.getMarkInfo().isMarked()).isTrue();
      var document = (PDStructureElement) catalog.getStructureTreeRoot().getKids().get(0);
      List<String> told =
          document.getKids().stream()
              .map(kid -> ((PDStructureElement) kid).getAlternateDescription())
              .toList();
      assertThat(told).startsWith("Page 1 of the booklet", "Page 2 of the booklet");
      assertThat(told)
          .containsExactlyElementsOf(
              IntStream.rangeClosed(1, told.size())
                  .mapToObj(n -> "Page " + n + " of the booklet")
                  .toList());
      String metadata = new String(catalog.getMetadata().toByteArray(), StandardCharsets.UTF_8);
      assertThat(metadata).contains("Merrow").doesNotContain("<pdfaid:part>");
    }
  }
}

package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a reader hears who follows the tags: ISO 14289-1, 7.2, asks for the logical order. */
class ReadingOrderTest {

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "SHEETS")
  void theTagsRunThroughThePagesInOrder(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      List<Integer> pages = Pdf.byTags(document).stream().map(Pdf.Piece::page).toList();
      assertThat(pages).isSorted();
      assertThat(pages.get(0)).isZero();
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"BOOK", "WORKSHOP_BOOK"})
  void aFootnoteIsReadAfterTheParagraphThatCallsIt(Prints print) throws Exception {
    String read = text(print);
    int called = read.indexOf("feet and inches to the outside of the planking");
    int rest = read.indexOf("into something that a steel rule can show");
    int note = read.indexOf("The planking of the real");
    int next = read.indexOf("waterline is");
    assertThat(List.of(called, rest, note, next)).isSorted().doesNotContain(-1);
  }

  @ParameterizedTest
  @EnumSource(names = {"BOOK", "WORKSHOP_BOOK"})
  void aCaptionIsReadWhereItsPlateStands(Prints print) throws Exception {
    String read = text(print);
    int before = read.indexOf("All thirteen are up");
    int caption = read.indexOf("Plate 4");
    // A plate may let paragraphs of its entry go first, but never leaves its chapter.
    int after = read.indexOf("Stage 3");
    assertThat(List.of(before, caption, after)).isSorted().doesNotContain(-1);
  }

  @ParameterizedTest
  @EnumSource(names = {"BOOK", "BOOKLET"})
  void theTitleOnTheCoverIsReadFirst(Prints print) throws Exception {
    assertThat(text(print).replaceFirst("^(Build book|Handover booklet)", "").strip())
        .startsWith("Building Merrow");
  }

  @Test
  void theHeadOfATableIsPrintedOnEveryPageAndReadOnce() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.LONG_TABLE.bytes())) {
      String head = "Half-breadth";
      assertThat(new PDFTextStripper().getText(document).split(head, -1)).hasSizeGreaterThan(4);
      assertThat(text(Prints.LONG_TABLE).split(head, -1)).hasSize(2);
    }
  }

  /** ISO 14289-1, 7.1: content is either tagged or an artifact. */
  @ParameterizedTest
  @EnumSource
  void everyNumberedContentOfAPageIsReachedByATagAndBackAgain(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      assertThat(Pdf.numbersOnPages(document))
          .isNotEmpty()
          .isEqualTo(Pdf.numbersInTags(document))
          .isEqualTo(Pdf.numbersInParentTree(document));
    }
  }

  private static String text(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      return Pdf.byTags(document).stream()
          .map(piece -> piece.text().replace("\u00AD", ""))
          .collect(Collectors.joining(" "))
          .replaceAll("\\s+", " ");
    }
  }
}

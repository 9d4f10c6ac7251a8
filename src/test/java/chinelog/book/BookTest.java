package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BookTest {

  @Test
  void theContentsNameThePageOnWhichAChapterBegins() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      String page = printed(document, pageWith(document, "Stage 3"));
      assertThat(text(document, pageWith(document, "Contents")))
          .containsPattern("Planking " + page + "\\b");
    }
  }

  @Test
  void theIndexNamesThePagesThatSpeakOfAMaterialOnceEach() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      String text =
          Pdf.byTags(document).stream().map(Pdf.Piece::text).collect(Collectors.joining());
      String index = text.substring(text.lastIndexOf("Index"));
      String entry = printed(document, pageWith(document, "One piece of 160"));
      assertThat(index).contains("Epoxy resin, " + entry + ", ");
      assertThat(index).doesNotContainPattern("(?<!\\d)(\\d+), \\1(?!\\d)");
    }
  }

  @Test
  void theBookmarksLeadToEveryChapterAndItsEntries() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      List<String> titles = new ArrayList<>();
      for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
        titles.add(item.getTitle());
        item.children().forEach(child -> titles.add("- " + child.getTitle()));
      }
      assertThat(titles)
          .containsSubsequence("Moulds", "- Six moulds", "- All thirteen", "Planking", "Index");
    }
  }

  @Test
  void theWorkshopCopyMarksInTheHeadExactlyThePagesThatShowWhatIsUnderAnAgreement()
      throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.WORKSHOP_BOOK.bytes())) {
      int plate = pageWith(document, "The lines plan, unrolled at last");
      assertThat(text(document, plate)).contains("Under agreement: Skerrick Yard");
      int free = pageWith(document, "Stage 3");
      assertThat(text(document, free)).isNotEmpty().doesNotContain("Under agreement:");
      assertThat(text(document, 3)).doesNotContain("Under agreement:");
    }
  }

  @Test
  void theOpenBookHasNoMarkOfAnAgreement() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      assertThat(new PDFTextStripper().getText(document)).doesNotContain("Under agreement:");
    }
  }

  @Test
  void theBookletLeavesOutWhatTheMakerLeftEmpty() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOKLET.bytes())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("Care ").doesNotContain("Handling").doesNotContain("Spares");
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"BOOK", "WORKSHOP_BOOK", "LETTER_BOOK", "PRINTERS_BOOK"})
  void theFrontMatterIsNumberedInRomanAndTheBodyFromOneOnARightPage(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      int first = pageWith(document, "A figure in the text is the figure in the appendix");
      assertThat(printed(document, 1)).isEqualTo("i");
      assertThat(printed(document, 4)).isEqualTo("iv");
      assertThat(text(document, 4)).contains("Contents").startsWith("iv ");
      assertThat(printed(document, first)).isEqualTo("1");
      assertThat(first % 2).isOne();
      for (int page = first; page <= document.getNumberOfPages(); page++) {
        assertThat(text(document, page).split(" "))
            .as("page %d of the file", page)
            .contains(printed(document, page));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"BOOK", "LETTER_BOOK"})
  void leftPagesAreHeadedByTheChapterAndRightOnesByTheEntry(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      List<String> chapters = new ArrayList<>();
      List<String> parts = new ArrayList<>();
      for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
        chapters.add(item.getTitle());
        parts.add(item.getTitle());
        item.children().forEach(child -> parts.add(child.getTitle()));
      }
      int first = pageWith(document, "A figure in the text is the figure in the appendix");
      for (int page = first; page <= document.getNumberOfPages(); page++) {
        List<String> titles = page % 2 == 0 ? chapters : parts;
        assertThat(titles).as("page %d of the file", page).contains(head(document, page));
      }
    }
  }

  private static String head(PDDocument document, int page) throws Exception {
    PDFTextStripperByArea stripper = new PDFTextStripperByArea();
    PDRectangle crop = document.getPage(page - 1).getCropBox();
    PDRectangle trim = document.getPage(page - 1).getTrimBox();
    double top = crop.getUpperRightY() - trim.getUpperRightY();
    stripper.addRegion("head", new Rectangle2D.Double(0, top + 45, crop.getWidth(), 22));
    stripper.extractRegions(document.getPage(page - 1));
    return stripper.getTextForRegion("head").strip();
  }

  /** The number of a page of the file as its label says it. */
  private static String printed(PDDocument document, int page) throws Exception {
    return document.getDocumentCatalog().getPageLabels().getLabelsByPageIndices()[page - 1];
  }

  /** 0 if there is none. */
  private static int pageWith(PDDocument document, String words) throws Exception {
    for (int page = 1; page <= document.getNumberOfPages(); page++) {
      if (text(document, page).contains(words)) {
        return page;
      }
    }
    return 0;
  }

  private static String text(PDDocument document, int page) throws Exception {
    if (page == 0) {
      return "";
    }
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    return stripper.getText(document).replaceAll("\\s+", " ");
  }
}

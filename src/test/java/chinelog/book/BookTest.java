package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class BookTest {

  @Test
  void theContentsNameThePageOnWhichAChapterBegins() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      int page = pageWith(document, "Stage 3");
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
      int entry = pageWith(document, "One piece of 160");
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
  void theBookletSaysPlainlyWhichSectionsTheMakerLeftEmpty() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOKLET.bytes())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text)
          .contains("Handling The maker has written nothing for this section.")
          .contains("Spares The maker has written nothing for this section.")
          .doesNotContain("Care The maker has written nothing");
    }
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

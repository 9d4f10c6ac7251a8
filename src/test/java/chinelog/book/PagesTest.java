package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PagesTest {

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "SHEETS")
  void nothingPrintedRunsOffItsPageOrIntoTheMargin(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      List<String> outside = new ArrayList<>();
      for (int number = 1; number <= document.getNumberOfPages(); number++) {
        PDPage page = document.getPage(number - 1);
        PDRectangle trim = page.getTrimBox();
        float left = trim.getLowerLeftX() - page.getCropBox().getLowerLeftX();
        // Nothing but the cover's picture may come nearer to the cut than 10 mm.
        float margin = number == 1 ? 0 : 28;
        for (TextPosition glyph : glyphs(document, number)) {
          float x = glyph.getXDirAdj() - left;
          if (x < margin || x + glyph.getWidthDirAdj() > trim.getWidth() - margin + 0.5) {
            outside.add(number + ": " + glyph.getUnicode() + " at " + x);
          }
        }
      }
      assertThat(outside).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "SHEETS")
  void noPageAfterTheFrontIsNearlyEmpty(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      List<Integer> empty = new ArrayList<>();
      for (int number = 4; number <= document.getNumberOfPages(); number++) {
        float height = document.getPage(number - 1).getCropBox().getHeight();
        // Without the running heads and the numbers at the foot; a plate has its caption below it.
        double lowest =
            glyphs(document, number).stream()
                .mapToDouble(TextPosition::getYDirAdj)
                .filter(y -> y < height * 0.9)
                .max()
                .orElse(0);
        boolean isLast = number == document.getNumberOfPages();
        if (lowest < height * (isLast ? 0.15 : 0.3)) {
          empty.add(number);
        }
      }
      assertThat(empty).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyFontIsEmbeddedAndNoGlyphIsMissing(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      Set<PDFont> fonts = new HashSet<>();
      for (int number = 1; number <= document.getNumberOfPages(); number++) {
        glyphs(document, number).forEach(glyph -> fonts.add(glyph.getFont()));
      }
      assertThat(fonts).isNotEmpty().allMatch(PDFont::isEmbedded);
      String text = new PDFTextStripper().getText(document);
      assertThat(text).doesNotContain("#");
      assertThat(text.contains("\uFFFD")).isEqualTo(print == Prints.SIGNS);
    }
  }

  @Test
  void fractionsLigaturesAndSuperscriptsComeOutAsTheyWereWritten() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text)
          .contains("Red cedar strip 3⁄16 × 1⁄16 in × 24 in")
          .contains("Glass cloth 160 g/m²")
          .contains("first evening")
          .doesNotContain("ﬁ")
          .doesNotContain("ﬂ");
    }
  }

  @ParameterizedTest
  @EnumSource
  void eachPictureIsStoredOnceAndHoldsNothingButTheImage(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      Set<String> seen = new TreeSet<>();
      for (COSStream picture : pictures(document)) {
        byte[] jpeg;
        try (var in = picture.createRawInputStream()) {
          jpeg = in.readAllBytes();
        }
        String bytes = new String(jpeg, StandardCharsets.ISO_8859_1);
        assertThat(seen.add(bytes)).as("stored once").isTrue();
        // APP1 carries EXIF and XMP, APP13 IPTC, COM comments: ITU-T T.81, table B.1.
        assertThat(bytes).doesNotContain("Exif\0").doesNotContain("http://ns.adobe.com/xap");
        assertThat(bytes).doesNotContain("Photoshop 3.0");
      }
      assertThat(seen).isNotEmpty();
    }
  }

  /** The library marks a background for every line of text; there are none. */
  @ParameterizedTest
  @EnumSource
  void nothingIsMarkedAsAnArtifactWhereNothingIsPainted(Prints print) throws Exception {
    try (PDDocument document = Loader.loadPDF(print.bytes())) {
      for (PDPage page : document.getPages()) {
        List<Object> tokens = new PDFStreamParser(page).parse();
        for (int i = 3; i < tokens.size(); i++) {
          if (tokens.get(i) instanceof Operator end && end.getName().equals("EMC")) {
            assertThat(tokens.get(i - 3)).isNotEqualTo(COSName.ARTIFACT);
          }
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void noAddressOfAFileIsInIt(Prints print) {
    assertThat(new String(print.bytes(), StandardCharsets.ISO_8859_1))
        .doesNotContain("file:")
        .doesNotContain(System.getProperty("user.home") + "/")
        .doesNotContain(System.getProperty("java.io.tmpdir") + "/");
  }

  @ParameterizedTest
  @EnumSource(
      names = {"BOOK", "BOOKLET", "SHEETS", "LETTER_BOOK", "PRINTERS_BOOK", "PRINTERS_COVER"})
  void theSameEditionGivesTheSameBytes(Prints print) {
    assertThat(print.print()).isEqualTo(print.bytes());
  }

  @Test
  void thePagesOfThePrintersBookHaveThreeMillimetresOfBleed() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.PRINTERS_BOOK.bytes())) {
      for (PDPage page : document.getPages()) {
        // ISO 216: A4 is 210 mm by 297 mm; 3 mm are 8.5 points.
        assertThat(page.getTrimBox().getWidth()).isBetween(595f, 595.6f);
        assertThat(page.getTrimBox().getHeight()).isBetween(841.6f, 842.2f);
        assertThat(page.getTrimBox().getLowerLeftX() - page.getBleedBox().getLowerLeftX())
            .isBetween(8.4f, 8.6f);
        assertThat(page.getMediaBox().getWidth()).isGreaterThan(page.getBleedBox().getWidth());
      }
    }
  }

  @Test
  void theCoverIsAsWideAsTwoPagesAndTheSpine() throws Exception {
    int pages;
    try (PDDocument book = Loader.loadPDF(Prints.PRINTERS_BOOK.bytes())) {
      pages = book.getNumberOfPages();
    }
    try (PDDocument document = Loader.loadPDF(Prints.PRINTERS_COVER.bytes())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      PDRectangle trim = document.getPage(0).getTrimBox();
      // A leaf has two pages; the sample's are 0.12 mm thick. A point is 1/72 in.
      double spineMm = Math.ceil(pages / 2.0) * 0.12;
      assertThat(trim.getWidth() / 72 * 25.4).isCloseTo(420 + spineMm, within(0.1));
      assertThat(trim.getHeight() / 72 * 25.4).isCloseTo(297, within(0.1));
      String words = new PDFTextStripper().getText(document);
      assertThat(words).contains("Building Merrow", "Build book").doesNotContain("mm to a leaf");
    }
  }

  @Test
  void theOnlyDateIsThatOfTheEdition() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.BOOK.bytes())) {
      assertThat(document.getDocumentInformation().getCreationDate().toInstant())
          .hasToString("2026-05-20T12:00:00Z");
      assertThat(document.getDocumentInformation().getModificationDate()).isNull();
      String xmp =
          new String(
              document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
      assertThat(xmp).contains("<xmp:CreateDate>2026-05-20T12:00:00");
    }
  }

  private static List<TextPosition> glyphs(PDDocument document, int page) throws IOException {
    List<TextPosition> glyphs = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition glyph) {
            if (!glyph.getUnicode().isBlank()) {
              glyphs.add(glyph);
            }
          }
        };
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    stripper.getText(document);
    return glyphs;
  }

  private static List<COSStream> pictures(PDDocument document) {
    List<COSStream> pictures = new ArrayList<>();
    for (var key : document.getDocument().getXrefTable().keySet()) {
      COSObject object = document.getDocument().getObjectFromPool(key);
      COSBase held = object.getObject();
      if (held instanceof COSStream stream && COSName.DCT_DECODE.equals(stream.getFilters())) {
        pictures.add(stream);
      }
    }
    return pictures;
  }
}

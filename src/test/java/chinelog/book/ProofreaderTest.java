package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.edition.Edition;
import chinelog.edition.LongEdition;
import chinelog.edition.SampleEdition;
import chinelog.markup.Theme;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProofreaderTest {

  private static final int MARK = 0x6F22;

  @TempDir Path themes;

  @Test
  void theSampleComesOutAsItWasWritten() throws Exception {
    assertThat(ofLetters(SampleEdition.forWorkshop(), theme())).isEmpty();
  }

  @Test
  void whatNoFontHasIsNamedWithItsFirstPlaceAndWhatToDo() throws Exception {
    assertThat(read("The mark of the yard is \u6f22\u5b57, cut into the stem."))
        .singleElement()
        .asString()
        .contains("\u201c\u6f22\u201d (U+6F22), \u201c\u5b57\u201d (U+5B57)")
        .contains("\u201cThe mark of the yard is \u6f22\u5b57, cut into the stem.\u201d")
        .contains("below the heading \u201cWhat was done on day 1\u201d")
        .contains(".ttf")
        .startsWith("themes/fonts: reminder: ");
  }

  @Test
  void onlyEightAreNamedAndTheOthersCounted() throws Exception {
    assertThat(read("\u4e00\u4e01\u4e02\u4e03\u4e04\u4e05\u4e06\u4e07\u4e08\u4e09"))
        .singleElement()
        .asString()
        .contains("(U+4E07) and 2 more, so");
  }

  @Test
  void wordsThatRunFromRightToLeftAreTold() throws Exception {
    assertThat(read("She was called \u05e9\u05dc\u05d5\u05dd first."))
        .singleElement()
        .asString()
        .contains("from left to right")
        .contains("\u201cShe was called \u05e9\u05dc\u05d5\u05dd first.\u201d");
  }

  @Test
  void accentsFractionsPrimesSoftHyphensAndJoinersNeedNoReminder() throws Exception {
    assertThat(read("Cafe\u0301, 3\u204416 in, 11\u2032 6\u2033, m\u00b2, soft\u00adly, a\u200db"))
        .isEmpty();
  }

  @Test
  void aFontOfTheLogsOwnPrintsWhatTheOthersLack() throws Exception {
    Path fonts = Files.createDirectory(themes.resolve("fonts"));
    Files.write(fonts.resolve("Marks.ttf"), fontWith(MARK));
    Edition edition = LongEdition.ofText("The mark \u6f22 of the yard.");
    Theme theme = Theme.load(Theme.USUAL, themes);
    assertThat(ofLetters(edition, theme)).isEmpty();
    Path pdf = themes.resolve("book.pdf");
    Press.printBuildBook(edition, theme, Press.Options.of(edition, false), pdf);
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(new PDFTextStripper().getText(document)).contains("The mark \u6f22 of the yard.");
    }
  }

  @Test
  void aFileThatIsNoFontIsAProblemOfTheMakers() throws Exception {
    Path fonts = Files.createDirectory(themes.resolve("fonts"));
    Files.writeString(fonts.resolve("Marks.ttf"), "not a font");
    Theme theme = Theme.load(Theme.USUAL, themes);
    assertThatThrownBy(() -> Press.proofread(LongEdition.ofText("."), theme))
        .isInstanceOf(ProblemException.class)
        .hasMessageContaining("This is no TrueType font");
  }

  @Test
  void fractionsPrimesAndLigaturesAreReadAsTheyWereWritten() throws Exception {
    try (PDDocument document = Loader.loadPDF(Prints.SIGNS.bytes())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text)
          .contains(
              "Strip of 3\u204416 in and \u215c in, 11\u2032 6\u2033 of 160 g/m\u00b2, x\u00b3")
          .contains(
              "\u00b1 0.5 mm; softhyphen, office, fluff, Caf\u00e9, \u00d8 \u2300 \u2011 \u2013")
          .contains("The mark \uFFFD of the yard");
    }
  }

  private static List<Problem> read(String text) throws IOException {
    return ofLetters(LongEdition.ofText(text), theme());
  }

  /** The cover of the sample is a small picture, which is told as well. */
  private static List<Problem> ofLetters(Edition edition, Theme theme) throws IOException {
    return Press.proofread(edition, theme).stream()
        .filter(p -> p.place().file().equals("themes/fonts"))
        .toList();
  }

  private static Theme theme() throws IOException {
    return Theme.load(Theme.USUAL, null);
  }

  /**
   * The last resort of the book with the last range of its characters moved to one character
   * (OpenType specification, "cmap": format 12 ends with groups of first, last and glyph).
   */
  private static byte[] fontWith(int character) throws IOException {
    byte[] font =
        theme().bookFonts().stream()
            .filter(Theme.Font::isFallback)
            .findFirst()
            .orElseThrow()
            .bytes();
    ByteBuffer bytes = ByteBuffer.wrap(font);
    int tables = bytes.getShort(4);
    for (int i = 0; i < tables; i++) {
      int record = 12 + 16 * i;
      if (new String(font, record, 4, java.nio.charset.StandardCharsets.US_ASCII).equals("cmap")) {
        move(bytes, bytes.getInt(record + 8), character);
      }
    }
    return font;
  }

  private static void move(ByteBuffer bytes, int cmap, int character) {
    for (int i = 0; i < bytes.getShort(cmap + 2); i++) {
      int subtable = cmap + bytes.getInt(cmap + 4 + 8 * i + 4);
      if (bytes.getShort(subtable) == 12) {
        int last = subtable + 16 + 12 * (bytes.getInt(subtable + 12) - 1);
        bytes.putInt(last, character);
        bytes.putInt(last + 4, character);
      }
    }
  }
}

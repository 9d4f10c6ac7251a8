package chinelog.book;

import chinelog.edition.Edition;
import chinelog.edition.LongEdition;
import chinelog.edition.SampleEdition;
import chinelog.markup.Theme;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;

/** Printed matter of the sample edition, each printed once however many tests look at it. */
enum Prints {
  BOOK,
  WORKSHOP_BOOK,
  BOOKLET,
  WORKSHOP_BOOKLET,
  LETTER_BOOK,
  PRINTERS_BOOK,
  PRINTERS_COVER,
  LONG_TABLE,
  SIGNS,
  SHEETS;

  /** Fractions, primes, an accent that stands alone, and characters that no font has. */
  static final String SIGNS_TEXT =
      "Strip of 3\u204416 in and \u215c in, 11\u2032 6\u2033 of 160 g/m\u00b2, x\u00b3 and"
          + " \u00b1 0.5 mm; soft\u00adhyphen, office, fluff, Cafe\u0301, \u00d8 \u2300 \u2011"
          + " \u2013 \u2620\ufe0f. The mark \u6f22 of the yard, and \u05e9\u05dc\u05d5\u05dd.";

  private static final Map<Prints, byte[]> DONE = new EnumMap<>(Prints.class);

  byte[] bytes() {
    synchronized (DONE) {
      return DONE.computeIfAbsent(this, Prints::print);
    }
  }

  /** Prints it anew. */
  byte[] print() {
    try {
      Path pdf = Files.createTempFile("chinelog", ".pdf");
      try {
        print(pdf);
        return Files.readAllBytes(pdf);
      } finally {
        Files.delete(pdf);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void print(Path pdf) throws IOException {
    Edition forPublic = SampleEdition.forPublic();
    Theme theme = Theme.load(Theme.USUAL, null);
    switch (this) {
      case BOOK -> Press.printBuildBook(forPublic, theme, Press.Options.of(forPublic, false), pdf);
      case WORKSHOP_BOOK ->
          Press.printBuildBook(
              SampleEdition.forWorkshop(),
              theme,
              Press.Options.of(SampleEdition.forWorkshop(), false),
              pdf);
      case BOOKLET -> Press.printHandover(forPublic, theme, pdf);
      case WORKSHOP_BOOKLET -> Press.printHandover(SampleEdition.forWorkshop(), theme, pdf);
      case LETTER_BOOK ->
          Press.printBuildBook(
              forPublic,
              Theme.load("chartroom", null),
              new Press.Options(Edition.Paper.LETTER, false),
              pdf);
      case LONG_TABLE ->
          Press.printBuildBook(
              LongEdition.ofRows(150),
              theme,
              Press.Options.of(LongEdition.ofRows(150), false),
              pdf);
      case SIGNS ->
          Press.printBuildBook(
              LongEdition.ofText(SIGNS_TEXT),
              theme,
              Press.Options.of(LongEdition.ofText(SIGNS_TEXT), false),
              pdf);
      case SHEETS ->
          Press.printHandoverSheets(forPublic, theme, Press.Options.of(forPublic, false), pdf);
      case PRINTERS_BOOK ->
          Press.printBuildBook(forPublic, theme, new Press.Options(Edition.Paper.A4, true), pdf);
      case PRINTERS_COVER -> {
        Path book = Files.write(Files.createTempFile("chinelog", ".pdf"), PRINTERS_BOOK.bytes());
        Press.printCover(forPublic, theme, book, pdf);
        Files.delete(book);
      }
    }
  }
}

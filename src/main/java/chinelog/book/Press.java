package chinelog.book;

import chinelog.book.page.Imposition;
import chinelog.book.page.Layout;
import chinelog.book.page.Manuscript;
import chinelog.book.page.PageSearch;
import chinelog.book.page.Printer;
import chinelog.book.page.Trim;
import chinelog.book.setting.Coverage;
import chinelog.book.setting.Surroundings;
import chinelog.book.writing.BookWords;
import chinelog.book.writing.BuildBook;
import chinelog.book.writing.CoverSheet;
import chinelog.book.writing.HandoverBooklet;
import chinelog.book.writing.LetterWriter;
import chinelog.book.writing.PlainPages;
import chinelog.book.writing.Setting;
import chinelog.edition.Edition;
import chinelog.edition.Letter;
import chinelog.edition.Picture;
import chinelog.markup.Theme;
import chinelog.problem.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Prints an edition as PDF: the same edition and theme give the same bytes. Every file meets
 * PDF/UA-1 and PDF/A-2a.
 */
public final class Press {

  private Press() {}

  /**
   * Writes the build book.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printBuildBook(Edition edition, Theme theme, Options options, Path pdf)
      throws IOException {
    printBuildBook(edition, theme, options, List.of(), pdf);
  }

  /**
   * Writes the build book.
   *
   * @param before what the last printing of the book returned, by the same program and theme and on
   *     the same paper: it makes this one quicker and changes nothing in it; empty for nothing
   * @return lines that describe how it was laid out
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static List<String> printBuildBook(
      Edition edition, Theme theme, Options options, List<String> before, Path pdf)
      throws IOException {
    Trim trim = Trim.ofBook(options.paper());
    return print(BuildBook::write, edition, theme, trim, options, before, pdf);
  }

  /**
   * Writes the cover of the build book for a printing house: back, spine and front on one sheet.
   *
   * @param book the build book as printed for the same printing house, which tells its pages
   * @throws IOException if the book or a picture cannot be read or the file not written
   */
  public static void printCover(Edition edition, Theme theme, Path book, Path pdf)
      throws IOException {
    Options options = Options.of(edition, true);
    Trim trim = Trim.ofBook(options.paper());
    String style = Style.of(theme, trim, options.bleedMm());
    Setting setting = new Setting(edition, theme, trim, options.bleedMm(), Layout.UNKNOWN);
    try (Surroundings plain = new Surroundings();
        Printer printer = new Printer(theme.bookFonts(), options.bleedMm())) {
      printer.print(CoverSheet.write(setting, style, Printer.pages(book)), pdf);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /** Writes the handover booklet, on half of the build book's paper. */
  public static void printHandover(Edition edition, Theme theme, Path pdf) throws IOException {
    printHandover(edition, theme, Options.of(edition, false), pdf);
  }

  /**
   * Writes the handover booklet, on half of the paper.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printHandover(Edition edition, Theme theme, Options options, Path pdf)
      throws IOException {
    Trim trim = Trim.ofBooklet(options.paper());
    print(HandoverBooklet::write, edition, theme, trim, options, List.of(), pdf);
  }

  /**
   * All of an edition that the handover booklet is made of: by the same theme, the same gives the
   * same bytes. What stands on which page follows from it.
   */
  public static List<Object> handoverParts(Edition edition, Theme theme) {
    Trim trim = Trim.ofBooklet(edition.contents().paper());
    Setting setting = new Setting(edition, theme, trim, 0, Layout.UNKNOWN);
    return HandoverBooklet.write(setting, "").parts();
  }

  /**
   * Writes the handover booklet laid out two pages on a side, to be printed on both sides of the
   * paper, turned over the short edge, folded and stitched. It is for the printer: of tags it keeps
   * one for each page, and no links.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printHandoverSheets(Edition edition, Theme theme, Options options, Path pdf)
      throws IOException {
    Path booklet = Files.createTempFile("handover", ".pdf");
    try {
      printHandover(edition, theme, new Options(options.paper(), false), booklet);
      BookWords words = BookWords.of(edition.contents().locale());
      Imposition.impose(booklet, words.say("sheets.page"), pdf);
    } finally {
      Files.deleteIfExists(booklet);
    }
  }

  /**
   * Prints pages that another renderer wrote, as they come.
   *
   * @param style its own, besides that of the book
   * @param body well-formed; a picture has the address {@code picture:ID.jpg}
   * @param pictures that the body shows, by id
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printScript(
      Edition edition,
      Theme theme,
      String title,
      String style,
      String body,
      Map<String, Picture> pictures,
      Path pdf)
      throws IOException {
    Edition.Contents contents = edition.contents();
    Trim trim = Trim.ofBook(contents.paper());
    try (Surroundings plain = new Surroundings();
        Printer printer = new Printer(theme.bookFonts(), 0)) {
      printer.print(PlainPages.write(contents, trim, title, style, body, pictures), pdf);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * Writes one of the edition's letters.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printLetter(Edition edition, Theme theme, Letter letter, Path pdf)
      throws IOException {
    Options options = Options.of(edition, false);
    print(
        (setting, style) -> LetterWriter.write(setting, style, letter),
        edition,
        theme,
        Trim.ofBook(options.paper()),
        options,
        List.of(),
        pdf);
  }

  /**
   * What will not come out in print as it was written: reminders of characters that no font has,
   * and of words that run from right to left.
   *
   * @throws IOException if a font cannot be read
   */
  public static List<Problem> proofread(Edition edition, Theme theme) throws IOException {
    List<Manuscript> manuscripts = new ArrayList<>();
    for (Work work : List.<Work>of(BuildBook::write, HandoverBooklet::write)) {
      manuscripts.add(work.write(new Setting(edition, theme, Trim.A4, 0, Layout.UNKNOWN), ""));
    }
    List<Problem> problems =
        new ArrayList<>(Proofreader.read(manuscripts, new Coverage(theme.bookFonts())));
    Edition.Contents contents = edition.contents();
    BuildBook.findCoarseCover(contents, Trim.ofBook(contents.paper())).ifPresent(problems::add);
    return List.copyOf(problems);
  }

  private static List<String> print(
      Work work,
      Edition edition,
      Theme theme,
      Trim trim,
      Options options,
      List<String> before,
      Path pdf)
      throws IOException {
    String style = Style.of(theme, trim, options.bleedMm());
    String endless = Style.endless(style, trim, options.bleedMm());
    try (Surroundings plain = new Surroundings();
        Printer printer = new Printer(theme.bookFonts(), options.bleedMm())) {
      return new PageSearch(
              printer,
              l -> work.write(new Setting(edition, theme, trim, options.bleedMm(), l), style),
              l -> work.write(new Setting(edition, theme, trim, options.bleedMm(), l), endless))
          .print(pdf, before);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * How an edition is printed.
   *
   * @param paper of the build book; the booklet has half of it
   * @param forPrinter whether pages have 3 mm of bleed and crop marks
   */
  public record Options(Edition.Paper paper, boolean forPrinter) {

    /** On the paper that the edition names. */
    public static Options of(Edition edition, boolean forPrinter) {
      return new Options(edition.contents().paper(), forPrinter);
    }

    double bleedMm() {
      return forPrinter ? Trim.BLEED_MM : 0;
    }
  }

  @FunctionalInterface
  private interface Work {
    Manuscript write(Setting setting, String style);
  }
}

package chinelog.book;

import chinelog.edition.Edition;
import chinelog.markup.Theme;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Prints an edition as PDF: the same edition and theme give the same bytes. Every file meets
 * PDF/UA-1 and PDF/A-2a.
 */
public final class Press {

  /** So many pages at most are laid out in search of how plates stand best: a minute's patience. */
  private static final int MOST_LAID = 2000;

  /** Beyond this, the search takes longer than it is worth. */
  private static final int FEW_PAGES = 120;

  /** Numbers may run a line over, and with it a page: then it is printed again with those found. */
  private static final int PRINTINGS = 4;

  private Press() {}

  /** Writes the build book, on A4. */
  public static void printBuildBook(Edition edition, Theme theme, Path pdf) throws IOException {
    printBuildBook(edition, theme, Options.DEFAULT, pdf);
  }

  /**
   * Writes the build book.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printBuildBook(Edition edition, Theme theme, Options options, Path pdf)
      throws IOException {
    print(BuildBook::write, edition, theme, options.paper().book(), options, pdf);
  }

  /** Writes the handover booklet, on A5. */
  public static void printHandover(Edition edition, Theme theme, Path pdf) throws IOException {
    printHandover(edition, theme, Options.DEFAULT, pdf);
  }

  /**
   * Writes the handover booklet, on half of the paper.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printHandover(Edition edition, Theme theme, Options options, Path pdf)
      throws IOException {
    print(HandoverBooklet::write, edition, theme, options.paper().booklet(), options, pdf);
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
      Words words = Words.of(edition.contents().locale());
      Imposition.impose(booklet, words.say("sheets.page"), pdf);
    } finally {
      Files.deleteIfExists(booklet);
    }
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
    return Proofreader.read(manuscripts, new Coverage(theme.bookFonts()));
  }

  private static void print(
      Work work, Edition edition, Theme theme, Trim trim, Options options, Path pdf)
      throws IOException {
    String style = Style.of(theme, trim, options.bleedMm());
    Printer printer = new Printer(theme.bookFonts(), options);
    Layout layout = fitted(work, edition, theme, trim, options, printer, style);
    for (int i = 0; i < PRINTINGS; i++) {
      Setting setting = new Setting(edition, theme, trim, options.bleedMm(), layout);
      Map<String, Integer> pages = printer.print(work.write(setting, style), pdf);
      if (pages.equals(layout.pages())) {
        return;
      }
      layout = layout.with(pages);
    }
    throw new IllegalStateException("the page numbers do not settle");
  }

  /**
   * Lays the pages out again and again, with all that might be done about white space, or if that
   * did not help, with one thing at a time; the layout with the least white is kept.
   */
  private static Layout fitted(
      Work work,
      Edition edition,
      Theme theme,
      Trim trim,
      Options options,
      Printer printer,
      String style)
      throws IOException {
    Layout best = Layout.UNKNOWN;
    double least = Double.MAX_VALUE;
    Deque<List<Layout.Change>> open = new ArrayDeque<>();
    Set<String> refused = new TreeSet<>();
    List<Layout.Change> tried = List.of();
    boolean isSingle = false;
    int laid = 0;
    while (laid < MOST_LAID) {
      Layout layout = best.with(tried);
      Setting setting = new Setting(edition, theme, trim, options.bleedMm(), layout);
      Layout.Look look = printer.lay(work.write(setting, style), layout);
      laid += look.count();
      if (look.count() > FEW_PAGES) {
        return layout.with(look.pages());
      }
      boolean isBetter = look.white() < least;
      if (isBetter) {
        best = layout.with(look.pages());
        least = look.white();
        open.clear();
        look.changes().stream().filter(c -> !refused.contains(c.toString())).forEach(open::add);
        tried = open.stream().flatMap(List::stream).toList();
        layout.undone().stream().filter(c -> !refused.contains(c.toString())).forEach(open::add);
        isSingle = tried.isEmpty();
      } else {
        if (isSingle) {
          refused.add(tried.toString());
        }
        isSingle = true;
      }
      if (open.isEmpty()) {
        break;
      }
      tried = isSingle ? open.removeFirst() : tried;
    }
    return best;
  }

  /**
   * How an edition is printed.
   *
   * @param paper the size of the build book; the booklet has half of it
   * @param forPrinter whether pages have 3 mm of bleed and crop marks
   */
  public record Options(Paper paper, boolean forPrinter) {

    /** A4, cut already: for reading, and for one's own printer. */
    public static final Options DEFAULT = new Options(Paper.A4, false);

    /** Sizes of paper. */
    public enum Paper {
      A4(Trim.A4, Trim.A5),
      LETTER(Trim.LETTER, Trim.HALF_LETTER);

      private final Trim book;
      private final Trim booklet;

      Paper(Trim book, Trim booklet) {
        this.book = book;
        this.booklet = booklet;
      }

      Trim book() {
        return book;
      }

      Trim booklet() {
        return booklet;
      }
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

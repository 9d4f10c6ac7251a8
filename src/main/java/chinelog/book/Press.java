package chinelog.book;

import chinelog.edition.Edition;
import chinelog.markup.Theme;
import chinelog.problem.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * Prints an edition as PDF: the same edition and theme give the same bytes. Every file meets
 * PDF/UA-1 and PDF/A-2a.
 */
public final class Press {

  /** So many pages at most are laid out in one search of how plates stand best. */
  private static final int MOST_LAID = 5000;

  /** Beyond this, the search takes longer than it is worth. */
  private static final int FEW_PAGES = 120;

  private static final int PAGES_APART = 2;

  /** So much more white is not seen: the sum of the squares of the parts of pages. */
  private static final double NEGLIGIBLE = 0.01;

  /** Numbers may run a line over, and with it a page: then it is printed again with those found. */
  private static final int PRINTINGS = 4;

  private Press() {}

  /** Writes the build book, cut already: for reading, and for one's own printer. */
  public static void printBuildBook(Edition edition, Theme theme, Path pdf) throws IOException {
    printBuildBook(edition, theme, Options.of(edition, false), pdf);
  }

  /**
   * Writes the build book.
   *
   * @throws IOException if a picture cannot be read or the file not written
   */
  public static void printBuildBook(Edition edition, Theme theme, Options options, Path pdf)
      throws IOException {
    print(BuildBook::write, edition, theme, Trim.ofBook(options.paper()), options, pdf);
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
    print(HandoverBooklet::write, edition, theme, Trim.ofBooklet(options.paper()), options, pdf);
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
    try (PlainLetters plain = new PlainLetters();
        Printer printer = new Printer(theme.bookFonts(), options)) {
      print(
          l -> work.write(new Setting(edition, theme, trim, options.bleedMm(), l), style),
          printer,
          pdf);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void print(Function<Layout, Manuscript> pages, Printer printer, Path pdf)
      throws IOException {
    Layout layout = fitted(l -> printer.lay(pages.apply(l), l));
    for (int i = 0; i < PRINTINGS; i++) {
      Map<String, Integer> numbers = printer.print(pages.apply(layout), pdf);
      if (numbers.equals(layout.pages())) {
        return;
      }
      layout = layout.with(numbers);
    }
    throw new IllegalStateException("the page numbers do not settle");
  }

  /** The layout with the least white that is found in so many pages laid. */
  private static Layout fitted(Proof proof) {
    Layout.Look first = proof.lay(Layout.UNKNOWN);
    Layout plain = Layout.UNKNOWN.with(first.pages());
    if (first.count() > FEW_PAGES) {
      return plain;
    }
    Fitted start = new Fitted(plain, first, first.count());
    Fitted best =
        Stream.<UnaryOperator<Fitted>>of(
                s -> mended(proof, filled(proof, s)), s -> mended(proof, s))
            .parallel()
            .map(way -> way.apply(start))
            .reduce(Press::better)
            .orElse(start);
    // What was mended as a whole may have pages left that can be filled.
    best = better(best, filled(proof, new Fitted(best.layout, best.look, 0)));
    if (best.look.lifted().isEmpty()) {
      return best.layout;
    }
    Layout lifted = best.layout.lifting(best.look.lifted());
    Layout.Look look = proof.lay(lifted);
    boolean isGood =
        look.pages().equals(best.look.pages()) || look.allWhite() < best.look.allWhite();
    return isGood ? lifted.with(look.pages()) : best.layout;
  }

  private static Fitted better(Fitted one, Fitted other) {
    return other.look.allWhite() < one.look.allWhite() ? other : one;
  }

  /** Fills one page after the other as well as it can be filled, whatever becomes of the later. */
  private static Fitted filled(Proof proof, Fitted start) {
    Fitted now = start;
    int from = 0;
    while (now.laid < MOST_LAID / 4 * 3) {
      int after = from;
      Optional<Layout.Hole> next =
          now.look.holes().stream().filter(h -> h.page() > after).findFirst();
      if (next.isEmpty()) {
        break;
      }
      Fitted best = now;
      int laid = now.laid;
      List<Layout> layouts = next.get().ways().stream().map(now.layout::with).toList();
      List<Layout.Look> looks = layouts.parallelStream().map(proof::lay).toList();
      for (int i = 0; i < looks.size(); i++) {
        Layout.Look look = looks.get(i);
        laid += look.count();
        if (seen(look, next.get()) < seen(best.look, next.get()) - NEGLIGIBLE) {
          best = new Fitted(layouts.get(i).with(look.pages()), look, laid);
        }
      }
      from = best == now ? next.get().page() : next.get().page() - 1;
      now = new Fitted(best.layout, best.look, laid);
    }
    return now;
  }

  /** The white up to the hole, and that of the page after it, which may still be mended. */
  private static double seen(Layout.Look look, Layout.Hole hole) {
    double until = look.whiteUntil(hole.page());
    return until + (look.whiteUntil(hole.page() + 1) - until) / 3;
  }

  /**
   * Tries all that might be done about white space together, or where that does not help, one thing
   * at a time, and what was done undone.
   */
  private static Fitted mended(Proof proof, Fitted start) {
    Fitted best = start;
    int laid = start.laid;
    Set<List<Layout.Change>> refused = new HashSet<>();
    boolean isTogether = true;
    Deque<List<Layout.Change>> open = open(best, refused, isTogether);
    while (laid < MOST_LAID && !open.isEmpty()) {
      List<Layout.Change> tried = open.removeFirst();
      Layout layout = best.layout.with(tried);
      Layout.Look look = proof.lay(layout);
      laid += look.count();
      if (look.allWhite() < best.look.allWhite() - NEGLIGIBLE) {
        best = new Fitted(layout.with(look.pages()), look, laid);
        // What comes before this change is as it was, and what was refused there still is.
        Layout now = best.layout;
        int from = now.pageOf(tried);
        refused.removeIf(way -> now.pageOf(way) >= from);
        open = open(best, refused, isTogether);
      } else {
        isTogether = false;
        refused.add(tried);
      }
    }
    return new Fitted(best.layout, best.look, laid);
  }

  /** What may be tried, in the order of the pages. */
  private static Deque<List<Layout.Change>> open(
      Fitted now, Set<List<Layout.Change>> refused, boolean isTogether) {
    List<List<Layout.Change>> inOrder = new ArrayList<>(now.layout.undone());
    now.look.holes().forEach(hole -> inOrder.addAll(hole.ways()));
    inOrder.sort(Comparator.comparing(now.layout::pageOf));
    Deque<List<Layout.Change>> open = new ArrayDeque<>(inOrder);
    if (isTogether) {
      open.addFirst(together(now.look.holes(), refused));
    }
    open.removeIf(way -> way.isEmpty() || refused.contains(way));
    return open;
  }

  /** The first way of each hole: one change moves all that comes after it, so holes lie apart. */
  private static List<Layout.Change> together(
      List<Layout.Hole> holes, Set<List<Layout.Change>> refused) {
    List<Layout.Change> all = new ArrayList<>();
    int from = 0;
    for (Layout.Hole hole : holes) {
      Optional<List<Layout.Change>> way =
          hole.ways().stream().filter(w -> !refused.contains(w)).findFirst();
      if (hole.page() >= from && way.isPresent()) {
        all.addAll(way.get());
        from = hole.page() + PAGES_APART;
      }
    }
    return all;
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

  /**
   * A layout and how it looks.
   *
   * @param laid how many pages were laid out to find it
   */
  private record Fitted(Layout layout, Layout.Look look, int laid) {}

  @FunctionalInterface
  private interface Proof {
    Layout.Look lay(Layout layout);
  }
}

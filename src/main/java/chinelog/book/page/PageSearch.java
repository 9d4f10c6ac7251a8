package chinelog.book.page;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Finds the layout with the least white, and prints it. */
public final class PageSearch {

  /** So often at most what was reckoned is laid out; with measuring and printing, six times. */
  private static final int TRIALS = 3;

  /** Numbers may run a line over, and with it a page: then it is printed again with those found. */
  private static final int PRINTINGS = 4;

  private final Printer printer;
  private final Function<Layout, Manuscript> pages;
  private final Function<Layout, Manuscript> endless;

  /**
   * Begins a search.
   *
   * @param pages writes the pages by what is known of their layout
   * @param endless writes them for a page without end
   */
  public PageSearch(
      Printer printer, Function<Layout, Manuscript> pages, Function<Layout, Manuscript> endless) {
    this.printer = printer;
    this.pages = pages;
    this.endless = endless;
  }

  /**
   * Prints the pages with the least white.
   *
   * @param before what the last printing of the same pages returned, by the same program in the
   *     same style; empty for nothing
   * @return lines to be given to the next printing, so that less has to be looked for then; nothing
   *     else comes of them
   */
  public List<String> print(Path pdf, List<String> before) throws IOException {
    return !before.isEmpty() && isPrintedAs(Settled.parse(before), pdf)
        ? before
        : search(pdf).lines();
  }

  /** Prints the pages as they were laid out before, if that comes out the same again. */
  private boolean isPrintedAs(Settled before, Path pdf) throws IOException {
    Manuscript written = pages.apply(before.layout());
    return Measures.elements(written).equals(before.elements())
        && printer
            .attempt(
                written,
                look ->
                    look.pages().equals(before.layout().pages())
                        && look.measures().equals(before.measures()),
                pdf)
            .isPrinted();
  }

  private Settled search(Path pdf) throws IOException {
    Found best = best(pdf);
    if (best.isPrinted) {
      return new Settled(best.layout, best.look.measures(), best.elements);
    }
    Layout layout = best.layout;
    for (int i = 0; i < PRINTINGS; i++) {
      Manuscript written = pages.apply(layout);
      Layout.Look look = printer.attempt(written, l -> true, pdf).look();
      if (look.pages().equals(layout.pages())) {
        return new Settled(layout, look.measures(), Measures.elements(written));
      }
      layout = layout.with(look.pages());
    }
    throw new IllegalStateException("the page numbers do not settle");
  }

  private record Found(Layout layout, Layout.Look look, String elements, boolean isPrinted) {}

  /** Finds the best layout; where the first that is laid out is right in all, prints it at once. */
  private Found best(Path pdf) throws IOException {
    Galley galley = printer.measure(endless.apply(Layout.UNKNOWN));
    MakeUp.Made made = MakeUp.best(galley, null);
    Map<String, Integer> found = new TreeMap<>();
    Found best = null;
    for (int i = 0; i < TRIALS; i++) {
      Manuscript written = pages.apply(made.layout());
      Printer.Tried tried = attempt(made, written, galley.pageDots(), best, pdf);
      Layout.Look look = tried.look();
      if (best == null || look.allWhite() < best.look.allWhite()) {
        Layout layout = made.layout().with(look.pages());
        best = new Found(layout, look, Measures.elements(written), tried.isPrinted());
      }
      if (tried.isPrinted()) {
        break;
      }
      MakeUp.Known known = known(made, look, galley, found);
      if (known == null || i == TRIALS - 1) {
        break;
      }
      galley = galley.after(look.before());
      MakeUp.Made next = MakeUp.best(galley, known);
      if (next.layout().equals(made.layout())) {
        break;
      }
      made = next;
    }
    if (best == null) {
      throw new IllegalStateException("nothing was laid out");
    }
    return best;
  }

  /** Lays pages out, and prints them if they came out as reckoned and tell the right numbers. */
  private Printer.Tried attempt(
      MakeUp.Made made, Manuscript written, int pageDots, @Nullable Found best, Path pdf)
      throws IOException {
    Layout layout = made.layout();
    return printer.attempt(
        written,
        look ->
            (best == null || look.allWhite() < best.look.allWhite())
                && misplaced(made, look, pageDots) == null
                && pages.apply(layout.with(look.pages())).html().equals(written.html()),
        pdf);
  }

  /** What a layout has shown; null if all is as reckoned. */
  private static MakeUp.@Nullable Known known(
      MakeUp.Made made, Layout.Look look, Galley galley, Map<String, Integer> found) {
    Map.Entry<String, Integer> first = misplaced(made, look, galley.pageDots());
    if (first == null) {
      return null;
    }
    int page = look.before() + first.getValue() / galley.pageDots();
    double cost = look.whiteUntil(page) - look.whiteUntil(look.before());
    found.put(first.getKey(), first.getValue());
    return new MakeUp.Known(made.layout(), first.getKey(), Map.copyOf(found), cost);
  }

  /** The first that came to stand on another page than was reckoned; null for none. */
  private static Map.@Nullable Entry<String, Integer> misplaced(
      MakeUp.Made made, Layout.Look look, int pageDots) {
    return look.places().entrySet().stream()
        .filter(place -> made.places().containsKey(place.getKey()))
        .filter(
            place ->
                place.getValue() / pageDots
                    != made.places().getOrDefault(place.getKey(), 0) / pageDots)
        .min(Map.Entry.comparingByValue())
        .orElse(null);
  }
}

package chinelog.book.writing;

import chinelog.book.page.Layout;
import chinelog.book.page.Manuscript;
import chinelog.book.page.Trim;
import chinelog.edition.Text;
import chinelog.edition.Text.Block;
import chinelog.edition.Text.Code;
import chinelog.edition.Text.Grid;
import chinelog.edition.Text.Heading;
import chinelog.edition.Text.Items;
import chinelog.edition.Text.Paragraph;
import chinelog.edition.Text.PlateHere;
import chinelog.edition.Text.Quote;
import chinelog.edition.Text.Rule;
import chinelog.edition.Text.Run;
import chinelog.edition.Text.Withheld;
import chinelog.markup.TextMarkup;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Writes blocks of text, plates that follow each other laid in rows. */
final class BlockWriter implements Text.BlockVisitor<Xhtml> {

  private static final int DEEPEST = 6;

  /** A list of up to so many items is kept on one page. */
  private static final int SHORT = 3;

  /** A table of more rows is worth measuring. */
  private static final int LONG = 60;

  /** A broad sign of the small type, and the room between columns. */
  private static final double SIGN_MM = 1.9;

  private static final double GAP_MM = 3;

  /** What lists and quotations are set in by, and what is under an agreement. */
  private static final double LIST_MM = 6;

  private static final double QUOTE_MM = 18;

  private static final double BAR_MM = 3.7;

  /** Characters of about two lines. */
  private static final int LEAD_IN = 150;

  private final Setting setting;
  private final Xhtml out;
  private final RunWriter runs;
  private final PlateWriter plates;

  /** An id for the paragraph that follows a plate; "" for none. */
  private String after = "";

  /** How much less room there is than on a page, for lists, quotations and bars at the side. */
  private double insetMm = BAR_MM;

  /** Whether a list or a table follows. */
  private boolean isLeadIn;

  /** Level of the heading that the text stands under, and of the last heading in it. */
  private int above = 1;

  private int last = 1;

  BlockWriter(Setting setting, RunWriter runs, PlateWriter plates) {
    this.setting = setting;
    this.out = setting.out;
    this.runs = runs;
    this.plates = plates;
  }

  /**
   * Writes blocks.
   *
   * @param under what the blocks are under as a whole, marked already
   */
  void write(List<Block> blocks, int headingAbove, List<String> under) {
    above = headingAbove;
    last = headingAbove;
    write(blocks, under);
  }

  private void write(List<Block> blocks, List<String> around) {
    int start = 0;
    while (start < blocks.size()) {
      int end = start + 1;
      List<String> under = blocks.get(start).under();
      while (end < blocks.size() && blocks.get(end).under().equals(under)) {
        end++;
      }
      group(blocks.subList(start, end), under, around);
      start = end;
    }
  }

  /** Blocks under the same agreements, marked once. */
  private void group(List<Block> blocks, List<String> under, List<String> around) {
    boolean isMarked = !under.isEmpty() && !under.equals(around);
    boolean isPlatesOnly = blocks.stream().allMatch(b -> b instanceof PlateHere);
    if (isMarked && !isPlatesOnly) {
      out.open("div", "class", "under", Manuscript.UNDER_ATTRIBUTE, setting.parties(under));
      setting.tag(under);
    }
    List<String> marked = isPlatesOnly ? around : under;
    Deque<Waiting> waiting = new ArrayDeque<>();
    List<PlateHere> together = new ArrayList<>();
    for (int i = 0; i < blocks.size(); i++) {
      Block block = blocks.get(i);
      if (block instanceof PlateHere here) {
        together.add(here);
        continue;
      }
      if (!together.isEmpty()) {
        waiting.add(new Waiting(List.copyOf(together), plates.later(together)));
        together.clear();
      }
      show(waiting, marked, isProse(block));
      isLeadIn = i + 1 < blocks.size() && leadsTo(blocks.get(i + 1));
      block.accept(this);
      after = "";
    }
    show(waiting, marked, false);
    plates.writeHere(together, marked);
    if (isMarked && !isPlatesOnly) {
      out.close();
    }
  }

  /** Plates with the number of paragraphs that come before them still. */
  private record Waiting(List<PlateHere> plates, int later) {}

  /** Shows the plates whose turn it is before the next block; those that wait keep their order. */
  private void show(Deque<Waiting> waiting, List<String> under, boolean isBeforeProse) {
    while (!waiting.isEmpty() && (waiting.getFirst().later == 0 || !isBeforeProse)) {
      List<PlateHere> next = waiting.removeFirst().plates;
      plates.writeHere(next, under);
      after = "after-" + Anchors.plate(next.get(next.size() - 1).plate());
    }
    for (int i = waiting.size(); i > 0; i--) {
      Waiting next = waiting.removeFirst();
      waiting.add(new Waiting(next.plates, Math.max(0, next.later - 1)));
    }
  }

  private static boolean isProse(Block block) {
    return block instanceof Paragraph || block instanceof Items || block instanceof Quote;
  }

  private static boolean leadsTo(Block block) {
    return block instanceof Items || block instanceof Grid || block instanceof Code;
  }

  @Override
  public Xhtml heading(Heading heading) {
    // Levels may not be skipped, whatever the text does: PDF/UA-1, 7.4.2.
    int level = Math.min(Math.min(above + heading.level(), last + 1), DEEPEST);
    last = level;
    out.open("h" + level, "id", heading.anchor());
    runs.writeBracketing(heading.text());
    return out.close();
  }

  @Override
  public Xhtml paragraph(Paragraph paragraph) {
    // "Notes for next time:" stays with the notes.
    boolean isShort = plain(paragraph.text()).length() <= LEAD_IN;
    out.open(
        "p",
        "class",
        isLeadIn && isShort ? "leadin" : "",
        "id",
        after,
        Layout.LIFT_ATTRIBUTE,
        after,
        "style",
        setting.lift(after));
    after = "";
    runs.write(paragraph.text());
    return out.close();
  }

  @Override
  public Xhtml plate(PlateHere plate) {
    plates.writeHere(List.of(plate), plate.under());
    return out;
  }

  @Override
  public Xhtml items(Items items) {
    boolean isNumbered = items.start() != 0;
    out.open(
        isNumbered ? "ol" : "ul",
        "class",
        items.items().size() <= SHORT ? "short" : "",
        "start",
        isNumbered && items.start() != 1 ? String.valueOf(items.start()) : "");
    insetMm += LIST_MM;
    for (List<Block> item : items.items()) {
      out.open("li");
      write(item, items.under());
      out.close();
    }
    insetMm -= LIST_MM;
    return out.close();
  }

  @Override
  public Xhtml quote(Quote quote) {
    out.open("blockquote");
    insetMm += QUOTE_MM;
    write(quote.children(), quote.under());
    insetMm -= QUOTE_MM;
    return out.close();
  }

  @Override
  public Xhtml code(Code code) {
    return out.open("pre").leaf("code", code.text()).close();
  }

  @Override
  public Xhtml rule(Rule rule) {
    return out.empty("div", "class", "rule");
  }

  @Override
  public Xhtml grid(Grid grid) {
    List<List<String>> cells =
        IntStream.range(0, grid.head().size())
            .mapToObj(
                column ->
                    Stream.concat(Stream.of(grid.head()), grid.rows().stream())
                        .map(row -> plain(row.get(column)))
                        .toList())
            .toList();
    double textMm = setting.trim.textWidthMm() - insetMm;
    List<WideColumns> parts = WideColumns.plan(cells, grid.rightAligned(), textMm);
    boolean isSplit = parts.size() > 1;
    for (WideColumns part : parts) {
      List<String> widths =
          part.widthsMm().isEmpty()
              ? widths(grid)
              : part.widthsMm().stream().map(mm -> "width:" + Trim.mm(mm)).toList();
      grid(grid, part, widths);
      if (isSplit && part != parts.get(parts.size() - 1)) {
        out.empty("div", "class", "gap above");
      }
    }
    return out;
  }

  private void grid(Grid grid, WideColumns part, List<String> widths) {
    String id = setting.nextTable();
    String kind = setting.isWhole(id, grid.rows().size()) ? "data whole" : "data";
    kind += widths.isEmpty() ? "" : " fixed";
    kind += part.kind();
    out.open("table", "id", id, "class", kind);
    out.open("thead").open("tr");
    for (int i = 0; i < part.columns().size(); i++) {
      int column = part.columns().get(i);
      String width = widths.isEmpty() ? "" : widths.get(i);
      cell("th", grid.head().get(column), grid.rightAligned().get(column), "col", width);
    }
    out.close().close().open("tbody");
    int rows = 0;
    for (List<List<Run>> row : grid.rows()) {
      DataTable.nextRow(out, rows++);
      out.open("tr");
      for (int column : part.columns()) {
        boolean isHead = column == 0;
        cell(
            isHead ? "th" : "td",
            row.get(column),
            grid.rightAligned().get(column),
            isHead ? "row" : "",
            "");
      }
      out.close();
    }
    out.close().close();
  }

  /**
   * How wide the columns of a long table are, if all of its text fits into its lines: the layout
   * would set every cell twice to find that out. Nothing for other tables.
   */
  private List<String> widths(Grid grid) {
    int columns = grid.head().size();
    double[] widths = new double[columns];
    double all = 0;
    int widest = 0;
    for (int i = 0; i < columns && grid.rows().size() > LONG; i++) {
      int column = i;
      int signs =
          Stream.concat(Stream.of(grid.head()), grid.rows().stream())
              .mapToInt(row -> plain(row.get(column)).length())
              .max()
              .orElse(0);
      widths[i] = signs * SIGN_MM + GAP_MM;
      all += widths[i];
      widest = widths[i] > widths[widest] ? i : widest;
    }
    if (all == 0 || all > setting.trim.textWidthMm()) {
      return List.of();
    }
    int open = widest;
    return IntStream.range(0, columns)
        .mapToObj(i -> i == open ? "" : "width:" + Trim.mm(widths[i]))
        .toList();
  }

  private String plain(List<Run> text) {
    return TextMarkup.plain(text, setting.words.shared());
  }

  private void cell(String element, List<Run> text, boolean isRight, String scope, String width) {
    out.open(element, "scope", scope, "class", isRight ? "n" : "", "style", width);
    runs.writeBracketing(text);
    out.close();
  }

  @Override
  public Xhtml withheld(Withheld withheld) {
    return out.leaf("p", setting.words.shared().text("withheld.block"), "class", "withheld");
  }
}

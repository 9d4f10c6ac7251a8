package chinelog.book;

import chinelog.edition.Plate;
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
import java.util.ArrayList;
import java.util.List;

/** Writes blocks of text, plates that follow each other laid in rows. */
final class BlockWriter implements Text.BlockVisitor<Xhtml> {

  private static final int DEEPEST = 6;

  /** A list of up to so many items is kept on one page. */
  private static final int SHORT = 3;

  private final Setting setting;
  private final Xhtml out;
  private final RunWriter runs;
  private final PlateWriter plates;

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
      out.open("div", "class", "under", Marks.ATTRIBUTE, setting.parties(under));
      setting.tag(under);
    }
    List<Plate> together = new ArrayList<>();
    int waiting = 0;
    for (Block block : blocks) {
      boolean isPlate = block instanceof PlateHere;
      if (!isPlate && !together.isEmpty()) {
        waiting = waiting == 0 ? plates.later(together) + 1 : waiting;
        waiting--;
        if (waiting == 0 || !isProse(block)) {
          flush(together, isPlatesOnly ? around : under);
          waiting = 0;
        }
      }
      if (block instanceof PlateHere here) {
        if (waiting > 0) {
          flush(together, isPlatesOnly ? around : under);
          waiting = 0;
        }
        together.add(here.plate());
      } else {
        block.accept(this);
      }
    }
    flush(together, isPlatesOnly ? around : under);
    if (isMarked && !isPlatesOnly) {
      out.close();
    }
  }

  private static boolean isProse(Block block) {
    return block instanceof Paragraph || block instanceof Items || block instanceof Quote;
  }

  private void flush(List<Plate> together, List<String> under) {
    plates.write(together, under);
    together.clear();
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
    out.open("p");
    runs.write(paragraph.text());
    return out.close();
  }

  @Override
  public Xhtml plate(PlateHere plate) {
    plates.write(List.of(plate.plate()), plate.under());
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
    for (List<Block> item : items.items()) {
      out.open("li");
      write(item, items.under());
      out.close();
    }
    return out.close();
  }

  @Override
  public Xhtml quote(Quote quote) {
    out.open("blockquote");
    write(quote.blocks(), quote.under());
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
    out.open("table", "class", grid.rows().size() > DataTable.WHOLE ? "data" : "data whole");
    out.open("thead").open("tr");
    for (int i = 0; i < grid.head().size(); i++) {
      cell("th", grid.head().get(i), grid.rightAligned().get(i), "col");
    }
    out.close().close().open("tbody");
    int rows = 0;
    for (List<List<Run>> row : grid.rows()) {
      DataTable.nextRow(out, rows++);
      out.open("tr");
      for (int i = 0; i < row.size(); i++) {
        cell(i == 0 ? "th" : "td", row.get(i), grid.rightAligned().get(i), i == 0 ? "row" : "");
      }
      out.close();
    }
    return out.close().close();
  }

  private void cell(String element, List<Run> text, boolean isRight, String scope) {
    out.open(element, "scope", scope, "class", isRight ? "n" : "");
    runs.writeBracketing(text);
    out.close();
  }

  @Override
  public Xhtml withheld(Withheld withheld) {
    return out.leaf("p", setting.words.shared().text("withheld.block"), "class", "withheld");
  }
}

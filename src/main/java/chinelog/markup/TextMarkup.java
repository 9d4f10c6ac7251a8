package chinelog.markup;

import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.edition.Text.PlateHere.Layout;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Turns the text of an edition into XHTML, such as {@code <p>The hull is <a class="fact"
 * href="…">1.19 m</a> long.</p>}.
 */
public final class TextMarkup
    implements Text.BlockVisitor<HtmlWriter>, Text.RunVisitor<HtmlWriter> {

  /** What site and book do each in their own way. */
  public interface Manner {

    /**
     * Writes a plate at its place in the text; under what it stands has been written already.
     *
     * @param layout never by its shape: what that comes to here has been decided
     */
    void plate(HtmlWriter html, Plate plate, Layout layout);

    /** Where a figure is told; null where it is not, and the figure is then written unlinked. */
    @Nullable String figureAddress(String figure);

    /** Where an entry is told; null where it is not, and the text is then written unlinked. */
    @Nullable String entryAddress(String entry);

    /**
     * Writes a footnote.
     *
     * @param markup its text, written already
     */
    void footnote(HtmlWriter html, String markup);

    /** The number of the element for a heading of level 1, from 2 to 4. */
    int firstHeading();

    Wording wording();

    /** Writes the mark of what is under agreements, within a line. */
    void mark(HtmlWriter html, List<String> agreements);
  }

  /** Letters that fill about the height of an upright plate in a column of half the width. */
  private static final int FILLS_BESIDE = 850;

  private final Manner manner;
  private final HtmlWriter html;
  private int lastHeading;
  private boolean isBeside;
  private List<String> around = List.of();

  private TextMarkup(Manner manner, HtmlWriter html) {
    this.manner = manner;
    this.html = html;
    this.lastHeading = manner.firstHeading() - 1;
  }

  /** Writes blocks, one after the other. */
  public static void write(List<Text.Block> blocks, Manner manner, HtmlWriter html) {
    new TextMarkup(manner, html).blocks(blocks);
  }

  /** Writes runs, such as those of a caption. */
  public static void writeRuns(List<Text.Run> runs, Manner manner, HtmlWriter html) {
    new TextMarkup(manner, html).runs(runs);
  }

  /** The text of runs without any markup, for titles and attributes; footnotes are left out. */
  public static String plain(List<Text.Run> runs, Wording wording) {
    return Text.plainText(runs, wording.text("withheld.phrase"));
  }

  /** A text with fractions as printers set them, and its numbers bound to their units. */
  public static String typeset(String text) {
    return NumbersBound.in(Fractions.set(text));
  }

  /** Neighbours under the same agreements share one mark; within it, it is not said again. */
  private HtmlWriter blocks(List<Text.Block> blocks) {
    int next = 0;
    while (next < blocks.size()) {
      List<String> under = blocks.get(next).under();
      int end = next + 1;
      while (end < blocks.size() && blocks.get(end).under().equals(under)) {
        end++;
      }
      List<Text.Block> part = blocks.subList(next, end);
      if (under.isEmpty() || under.equals(around)) {
        plainly(part);
      } else {
        marked(under, part);
      }
      next = end;
    }
    return html;
  }

  private void marked(List<String> under, List<Text.Block> blocks) {
    List<String> before = around;
    around = under;
    html.open("div", "class", "under");
    html.open("p", "class", "under-mark");
    manner.mark(html, under);
    html.close("p");
    plainly(blocks);
    html.close("div").raw("\n");
    around = before;
  }

  /** Plates that follow each other stand side by side, as far as there is room. */
  private void plainly(List<Text.Block> blocks) {
    int next = 0;
    while (next < blocks.size()) {
      int end = next;
      while (end < blocks.size() && isByShape(blocks.get(end))) {
        end++;
      }
      if (end - next > 1) {
        html.open("div", "class", "side-by-side");
        blocks.subList(next, end).forEach(b -> b.accept(this));
        html.close("div").raw("\n");
        next = end;
      } else {
        isBeside = end > next && isFollowedByEnough(blocks.subList(end, blocks.size()));
        blocks.get(next).accept(this);
        isBeside = false;
        html.raw("\n");
        next++;
      }
    }
  }

  private static boolean isByShape(Text.Block block) {
    return block instanceof Text.PlateHere here && here.layout() == Layout.BY_SHAPE;
  }

  private static boolean isFollowedByEnough(List<Text.Block> after) {
    int letters = 0;
    for (Text.Block block : after) {
      if (!(block instanceof Text.Paragraph paragraph) || letters >= FILLS_BESIDE) {
        break;
      }
      letters += Text.plainText(paragraph.text(), "").length();
    }
    return letters >= FILLS_BESIDE;
  }

  private HtmlWriter runs(List<Text.Run> runs) {
    runs.forEach(r -> r.accept(this));
    return html;
  }

  @Override
  public HtmlWriter heading(Text.Heading heading) {
    // A level that the maker skipped is closed up, so that the page's headings keep their order.
    int number = manner.firstHeading() + heading.level() - 1;
    lastHeading = Math.min(6, Math.min(number, lastHeading + 1));
    String element = "h" + lastHeading;
    html.open(element, "id", heading.anchor());
    return runs(heading.text()).close(element);
  }

  @Override
  public HtmlWriter paragraph(Text.Paragraph paragraph) {
    html.open("p");
    return runs(paragraph.text()).close("p");
  }

  @Override
  public HtmlWriter plate(Text.PlateHere plate) {
    boolean isUpright = plate.plate().picture().isPortrait();
    Layout byShape = isBeside && isUpright ? Layout.BESIDE : Layout.PLAIN;
    manner.plate(html, plate.plate(), plate.layout() == Layout.BY_SHAPE ? byShape : plate.layout());
    return html;
  }

  @Override
  public HtmlWriter items(Text.Items items) {
    String list = items.start() == 0 ? "ul" : "ol";
    html.open(list, "start", items.start() > 1 ? String.valueOf(items.start()) : null);
    for (List<Text.Block> item : items.items()) {
      html.open("li");
      item(item);
      html.close("li");
    }
    return html.close(list);
  }

  /** An item of a single paragraph is written without it, so that lists stand close. */
  private void item(List<Text.Block> item) {
    if (item.size() == 1 && item.get(0) instanceof Text.Paragraph only && only.under().isEmpty()) {
      runs(only.text());
    } else {
      blocks(item);
    }
  }

  @Override
  public HtmlWriter quote(Text.Quote quote) {
    html.open("blockquote");
    return blocks(quote.children()).close("blockquote");
  }

  @Override
  public HtmlWriter code(Text.Code code) {
    return html.open("pre").element("code", code.text()).close("pre");
  }

  @Override
  public HtmlWriter rule(Text.Rule rule) {
    return html.empty("hr");
  }

  @Override
  public HtmlWriter grid(Text.Grid grid) {
    html.open("table", "class", "text");
    if (grid.head().stream().anyMatch(cell -> !cell.isEmpty())) {
      html.open("thead").open("tr");
      cells(grid.head(), grid, "th", "col");
      html.close("tr").close("thead");
    }
    html.open("tbody");
    for (List<List<Text.Run>> row : grid.rows()) {
      html.open("tr");
      cells(row, grid, "td", null);
      html.close("tr");
    }
    return html.close("tbody").close("table");
  }

  private void cells(
      List<List<Text.Run>> cells, Text.Grid grid, String element, @Nullable String scope) {
    for (int i = 0; i < cells.size(); i++) {
      boolean right = i < grid.rightAligned().size() && grid.rightAligned().get(i);
      html.open(element, "scope", scope, "class", right ? "number" : null);
      runs(cells.get(i)).close(element);
    }
  }

  @Override
  public HtmlWriter withheld(Text.Withheld withheld) {
    return html.element("p", manner.wording().text("withheld.block"), "class", "withheld");
  }

  @Override
  public HtmlWriter plain(Text.Plain plain) {
    return html.text(typeset(plain.text()));
  }

  @Override
  public HtmlWriter emphasis(Text.Emphasis emphasis) {
    return within("em", () -> runs(emphasis.children()));
  }

  @Override
  public HtmlWriter strong(Text.Strong strong) {
    return within("strong", () -> runs(strong.children()));
  }

  @Override
  public HtmlWriter code(Text.CodeRun code) {
    return html.element("code", code.text());
  }

  @Override
  public HtmlWriter link(Text.Link link) {
    String target = link.target();
    String address =
        target.startsWith("entry:")
            ? manner.entryAddress(target.substring("entry:".length()))
            : target.matches("(https?|mailto):.*") ? target : null;
    return address == null
        ? runs(link.children())
        : within("a", () -> runs(link.children()), "href", address);
  }

  @Override
  public HtmlWriter figure(Text.FigureLink figure) {
    String address = manner.figureAddress(figure.figure());
    String shown = typeset(figure.shown());
    return address == null
        ? html.element("span", shown, "class", "fact")
        : html.element("a", shown, "class", "fact", "href", address);
  }

  @Override
  public HtmlWriter phrase(Text.Phrase phrase) {
    html.open("span", "class", "under-phrase");
    runs(phrase.children());
    manner.mark(html, phrase.under());
    return html.close("span");
  }

  @Override
  public HtmlWriter footnote(Text.Footnote footnote) {
    HtmlWriter inner = new HtmlWriter();
    new TextMarkup(manner, inner).runs(footnote.children());
    manner.footnote(html, inner.toString());
    return html;
  }

  @Override
  public HtmlWriter lineBreak(Text.Break lineBreak) {
    return lineBreak.hard() ? html.empty("br") : html.text(" ");
  }

  @Override
  public HtmlWriter gap(Text.Gap gap) {
    return html.element("span", manner.wording().text("withheld.phrase"), "class", "gap");
  }

  private HtmlWriter within(String element, Runnable content, @Nullable String... attributes) {
    html.open(element, attributes);
    content.run();
    return html.close(element);
  }

  /** The sentences at the end of every text; nothing for fewer than two texts. */
  public static String commonEnd(List<String> texts) {
    if (texts.size() < 2) {
      return "";
    }
    String end = texts.get(0);
    for (String text : texts) {
      int same = 0;
      int most = Math.min(end.length(), text.length());
      while (same < most
          && end.charAt(end.length() - 1 - same) == text.charAt(text.length() - 1 - same)) {
        same++;
      }
      end = end.substring(end.length() - same);
    }
    int start = end.indexOf(". ");
    return start < 0 ? "" : end.substring(start + 1);
  }
}

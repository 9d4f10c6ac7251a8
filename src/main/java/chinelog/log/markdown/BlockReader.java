package chinelog.log.markdown;

import chinelog.label.Label;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Sentence;
import com.vladsch.flexmark.ast.BlockQuote;
import com.vladsch.flexmark.ast.FencedCodeBlock;
import com.vladsch.flexmark.ast.Heading;
import com.vladsch.flexmark.ast.HtmlBlockBase;
import com.vladsch.flexmark.ast.IndentedCodeBlock;
import com.vladsch.flexmark.ast.ListBlock;
import com.vladsch.flexmark.ast.OrderedList;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ast.Reference;
import com.vladsch.flexmark.ast.ThematicBreak;
import com.vladsch.flexmark.ext.footnotes.FootnoteBlock;
import com.vladsch.flexmark.ext.tables.TableBlock;
import com.vladsch.flexmark.ext.tables.TableCell;
import com.vladsch.flexmark.ext.tables.TableHead;
import com.vladsch.flexmark.ext.tables.TableRow;
import com.vladsch.flexmark.ext.tables.TableSeparator;
import com.vladsch.flexmark.util.ast.Document;
import com.vladsch.flexmark.util.ast.Node;
import java.util.ArrayList;
import java.util.List;

/** Copies the blocks of Markdown's tree that we know into ours, each under its agreements. */
final class BlockReader {

  private final MarkdownReader reader;
  private final FootnoteReader footnotes;
  private int depth;

  BlockReader(MarkdownReader reader) {
    this.reader = reader;
    this.footnotes = new FootnoteReader(reader);
  }

  List<Block> read(Document document, Label outer) {
    footnotes.define(document, outer);
    List<Block> blocks = readChildren(document, outer);
    footnotes.reportUncalled();
    return blocks;
  }

  private List<Block> readChildren(Node parent, Label outer) {
    List<Block> blocks = new ArrayList<>();
    if (depth == MarkdownReader.MOST_DEPTH) {
      reader.reportDepth(reader.at(parent));
      return blocks;
    }
    depth++;
    Sections sections = new Sections(outer);
    for (Node node : parent.getChildren()) {
      if (node instanceof Heading heading) {
        blocks.add(heading(heading, sections));
      } else {
        block(node, sections.label(), blocks);
      }
    }
    depth--;
    return blocks;
  }

  private Block heading(Heading heading, Sections sections) {
    List<Node> nodes = MarkText.children(heading);
    sections.enter(heading.getLevel(), MarkText.takeFromEnd(nodes, reader));
    return new Block.Heading(
        heading.getLevel(), inlines().read(nodes), sections.label(), reader.at(heading));
  }

  private void block(Node node, Label label, List<Block> blocks) {
    if (node instanceof Paragraph paragraph) {
      paragraph(paragraph, label, blocks);
    } else if (node instanceof ListBlock list) {
      blocks.add(items(list, label));
    } else if (node instanceof BlockQuote) {
      blocks.add(new Block.Quote(readChildren(node, label), label, reader.at(node)));
    } else if (node instanceof FencedCodeBlock code) {
      String text = code.getContentChars().toString();
      blocks.add(new Block.Code(text, label, reader.at(node)));
    } else if (node instanceof IndentedCodeBlock code) {
      String text = code.getContentChars().trimTailBlankLines().toString();
      blocks.add(new Block.Code(text, label, reader.at(node)));
    } else if (node instanceof ThematicBreak) {
      blocks.add(new Block.Rule(label, reader.at(node)));
    } else if (node instanceof TableBlock table) {
      blocks.add(grid(table, label));
    } else if (!(node instanceof Reference) && !(node instanceof FootnoteBlock)) {
      refuse(node);
    }
  }

  private void refuse(Node node) {
    if (node instanceof HtmlBlockBase) {
      reader.complain(
          node,
          "HTML stands here; it is not shown.",
          "Write it as text; a remark for yourself belongs into another file.");
    } else {
      reader.complain(
          node, "This is no kind of text that is known here.", "Write it as a paragraph.");
    }
  }

  private void paragraph(Paragraph paragraph, Label outer, List<Block> blocks) {
    List<Node> nodes = MarkText.children(paragraph);
    if (nodes.isEmpty()) {
      return;
    }
    boolean nested = !(paragraph.getParent() instanceof Document);
    if (nested && MarkText.standsAlone(nodes)) {
      reader
          .scope()
          .error(
              reader.at(nodes.get(nodes.size() - 1)),
              "It is not clear whether this mark is for the last item or for all of them.",
              "Write it at the end of each item's text, or after the heading of the section.");
    }
    if (paragraph.getChars().toString().strip().matches("=+")) {
      reader.complain(
          paragraph,
          "This line underlines nothing.",
          "Put it straight below the heading's text, or begin the heading with #.");
    }
    Node first = nodes.get(0);
    Label mark = MarkText.takeFromEnd(nodes, reader);
    if (nodes.isEmpty() && first instanceof MarkNode) {
      reader
          .scope()
          .error(
              reader.at(first),
              "This mark is attached to nothing that could be put under its agreement.",
              MarkText.REMEDY);
      return;
    }
    Label label = outer.join(mark);
    List<Inline> text = inlines().read(nodes);
    if (isPicturesOnly(text)) {
      for (Inline inline : text) {
        if (inline instanceof Inline.Image image) {
          blocks.add(new Block.Picture(image, label.join(image.label()), image.place()));
        }
      }
    } else if (!text.isEmpty()) {
      blocks.add(new Block.Paragraph(text, label, reader.at(paragraph)));
    }
  }

  private static boolean isPicturesOnly(List<Inline> text) {
    return text.stream().anyMatch(Inline.Image.class::isInstance)
        && text.stream()
            .allMatch(
                i ->
                    i instanceof Inline.Image
                        || i instanceof Inline.Break
                        || i instanceof Inline.Text t && t.text().isBlank());
  }

  private Block items(ListBlock list, Label label) {
    List<List<Block>> items = new ArrayList<>();
    for (Node item : list.getChildren()) {
      items.add(List.copyOf(readChildren(item, label)));
    }
    int start = list instanceof OrderedList ordered ? Math.max(1, ordered.getStartNumber()) : 0;
    return new Block.Items(start, List.copyOf(items), label, reader.at(list));
  }

  private Block grid(TableBlock table, Label label) {
    List<List<Inline>> head = new ArrayList<>();
    List<Boolean> rightAligned = new ArrayList<>();
    List<List<List<Inline>>> rows = new ArrayList<>();
    for (Node part : table.getChildren()) {
      for (Node row : part.getChildren()) {
        if (part instanceof TableSeparator || !(row instanceof TableRow)) {
          continue;
        }
        List<List<Inline>> cells = new ArrayList<>();
        for (Node cell : row.getChildren()) {
          if (part instanceof TableHead && cell instanceof TableCell c) {
            rightAligned.add(c.getAlignment() == TableCell.Alignment.RIGHT);
          }
          cells.add(inlines().read(MarkText.children(cell)));
        }
        if (part instanceof TableHead) {
          head.addAll(cells);
        } else {
          rows.add(row(cells, head.size(), row));
        }
      }
    }
    return new Block.Grid(
        List.copyOf(head), List.copyOf(rows), List.copyOf(rightAligned), label, reader.at(table));
  }

  private List<List<Inline>> row(List<List<Inline>> cells, int width, Node row) {
    while (cells.size() < width) {
      cells.add(List.of());
    }
    if (cells.size() > width) {
      reader.complain(
          row,
          Sentence.of("This row has {0} cells, but the table's head has {1}.", cells.size(), width),
          "Take the cells out, or widen the head; write \\| for a | in the text.");
    }
    return List.copyOf(cells.subList(0, width));
  }

  private InlineReader inlines() {
    return new InlineReader(reader, footnotes);
  }
}

package chinelog.log.markdown;

import chinelog.log.records.NotePart;
import com.vladsch.flexmark.ast.Code;
import com.vladsch.flexmark.ast.Emphasis;
import com.vladsch.flexmark.ast.Heading;
import com.vladsch.flexmark.ast.Image;
import com.vladsch.flexmark.ast.ImageRef;
import com.vladsch.flexmark.ast.Link;
import com.vladsch.flexmark.ast.LinkRef;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ast.SoftLineBreak;
import com.vladsch.flexmark.ast.StrongEmphasis;
import com.vladsch.flexmark.ast.Text;
import com.vladsch.flexmark.ext.tables.TableCell;
import com.vladsch.flexmark.util.ast.Node;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds where in a note's text the parts stand that a mark may put under an agreement. */
public final class PartFinder {

  private final String text;
  private final List<NotePart> parts = new ArrayList<>();

  private PartFinder(String text) {
    this.text = text;
  }

  /**
   * All headings, paragraphs and pictures, and those phrases that are marked, by where they begin;
   * what is around others comes before them.
   *
   * @param text below the keys of a note, with {@code \n} for line ends
   */
  public static List<NotePart> find(String text) {
    PartFinder walk = new PartFinder(text);
    walk.blocks(MarkdownReader.PARSER.parse(text));
    walk.parts.sort(
        Comparator.comparingInt(NotePart::from)
            .thenComparing(NotePart::to, Comparator.reverseOrder()));
    return List.copyOf(walk.parts);
  }

  /**
   * How many stretches of emphasis and code and how many links a note's text has: a bracket that
   * cuts through one of them undoes it.
   */
  public static long stretches(String text) {
    return stretches(MarkdownReader.PARSER.parse(text));
  }

  private static long stretches(Node node) {
    long count =
        node instanceof Emphasis
                || node instanceof StrongEmphasis
                || node instanceof Code
                || node instanceof Link
                || node instanceof Image
            ? 1
            : 0;
    for (Node child : node.getChildren()) {
      count += stretches(child);
    }
    return count;
  }

  private void blocks(Node parent) {
    for (Node node : parent.getChildren()) {
      if (node instanceof Heading heading) {
        block(NotePart.Kind.HEADING, heading.getLevel(), node);
      } else if (node instanceof Paragraph) {
        block(NotePart.Kind.PARAGRAPH, 0, node);
      } else if (node instanceof TableCell) {
        inlines(MarkText.children(node));
      } else {
        blocks(node);
      }
    }
  }

  private void block(NotePart.Kind kind, int level, Node node) {
    List<Node> nodes = MarkText.children(node);
    List<NotePart.Mark> marks = new ArrayList<>();
    int last = lastOf(nodes);
    while (last >= 0
        && nodes.get(last) instanceof MarkNode mark
        && !mark.agreements().isEmpty()
        && !MarkText.belongsToPhrase(nodes, last)) {
      marks.add(0, mark(mark));
      nodes = nodes.subList(0, last);
      last = lastOf(nodes);
    }
    if (last >= 0) {
      int to = nodes.get(last).getEndOffset();
      while (Character.isWhitespace(text.charAt(to - 1))) {
        to--;
      }
      parts.add(new NotePart(kind, level, nodes.get(0).getStartOffset(), to, List.copyOf(marks)));
    }
    inlines(nodes);
  }

  private static int lastOf(List<Node> nodes) {
    int last = nodes.size() - 1;
    while (last >= 0
        && (nodes.get(last) instanceof SoftLineBreak
            || nodes.get(last) instanceof Text && nodes.get(last).getChars().isBlank())) {
      last--;
    }
    return last;
  }

  private void inlines(List<Node> nodes) {
    for (int i = 0; i < nodes.size(); i++) {
      Node node = nodes.get(i);
      List<NotePart.Mark> marks = new ArrayList<>();
      for (int k = i + 1;
          k < nodes.size()
              && nodes.get(k) instanceof MarkNode mark
              && !mark.agreements().isEmpty()
              && MarkText.belongsToPhrase(nodes, k);
          k++) {
        marks.add(mark(mark));
      }
      if (node instanceof Image || node instanceof ImageRef) {
        add(NotePart.Kind.PICTURE, node.getStartOffset(), node.getEndOffset(), marks);
      } else if (!marks.isEmpty() && (node instanceof Link || node instanceof LinkRef)) {
        add(NotePart.Kind.PHRASE, node.getStartOffset(), node.getEndOffset(), marks);
      } else if (!marks.isEmpty() && node instanceof Text) {
        int from = bracket(nodes.subList(0, i + 1));
        if (from >= 0) {
          add(NotePart.Kind.PHRASE, from, node.getEndOffset(), marks);
        }
      }
      // Within the words of a link no mark may stand.
      if (!(node instanceof MarkNode) && !(node instanceof Link)) {
        inlines(MarkText.children(node));
      }
    }
  }

  private void add(NotePart.Kind kind, int from, int to, List<NotePart.Mark> marks) {
    parts.add(new NotePart(kind, 0, from, to, List.copyOf(marks)));
  }

  /** Where the bracket was opened that the last of some neighbours closes at its end; else -1. */
  private static int bracket(List<Node> nodes) {
    int open = 0;
    for (int n = nodes.size() - 1; n >= 0; n--) {
      Node node = nodes.get(n);
      if (node instanceof Text) {
        CharSequence chars = node.getChars();
        for (int i = chars.length() - 1; i >= 0; i--) {
          char c = chars.charAt(i);
          if ((c == '[' || c == ']') && !MarkText.isEscaped(chars, i)) {
            open += c == ']' ? 1 : -1;
            if (open == 0) {
              return node.getStartOffset() + i;
            }
          }
        }
      }
    }
    return -1;
  }

  private static NotePart.Mark mark(MarkNode mark) {
    return new NotePart.Mark(mark.getStartOffset(), mark.getEndOffset(), mark.agreements());
  }
}

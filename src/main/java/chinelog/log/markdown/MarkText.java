package chinelog.log.markdown;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import com.vladsch.flexmark.ast.Image;
import com.vladsch.flexmark.ast.ImageRef;
import com.vladsch.flexmark.ast.Link;
import com.vladsch.flexmark.ast.LinkRef;
import com.vladsch.flexmark.ast.SoftLineBreak;
import com.vladsch.flexmark.ast.Text;
import com.vladsch.flexmark.util.ast.Node;
import java.util.ArrayList;
import java.util.List;

/** Where marks attach, and what to say of those that do not. */
final class MarkText {

  static final String REMEDY =
      "Write {under=lines} with the name of your agreement, or {under=lines,client} for two, straight"
          + " after a heading, a picture or a [bracketed phrase], or at the end of a paragraph.";

  static final Sentence BRACE_REMEDY =
      Sentence.of("{0} For a brace that is no mark, write \\{ or \\}.", Sentence.of(REMEDY));

  static final int LONGEST_QUOTE = 60;

  private MarkText() {}

  /** The children of a node that hold anything. */
  static List<Node> children(Node parent) {
    List<Node> nodes = new ArrayList<>();
    for (Node node : parent.getChildren()) {
      if (!(node instanceof Text && node.getChars().isEmpty())) {
        nodes.add(node);
      }
    }
    return nodes;
  }

  /** Takes the marks off the end that belong to the whole of {@code nodes}. */
  static Label takeFromEnd(List<Node> nodes, MarkdownReader reader) {
    Label label = Label.NONE;
    trim(nodes);
    while (!nodes.isEmpty()
        && nodes.get(nodes.size() - 1) instanceof MarkNode mark
        && !mark.agreements().isEmpty()
        && !belongsToPhrase(nodes, nodes.size() - 1)) {
      label = label.join(reader.label(mark));
      nodes.remove(nodes.size() - 1);
      trim(nodes);
    }
    return label;
  }

  /** Whether the last node is a mark on a line of its own. */
  static boolean standsAlone(List<Node> nodes) {
    int last = nodes.size() - 1;
    while (last >= 0 && nodes.get(last) instanceof Text t && t.getChars().isBlank()) {
      last--;
    }
    return last > 0
        && nodes.get(last) instanceof MarkNode
        && nodes.get(last - 1) instanceof SoftLineBreak;
  }

  private static void trim(List<Node> nodes) {
    while (!nodes.isEmpty()) {
      Node last = nodes.get(nodes.size() - 1);
      if (!(last instanceof SoftLineBreak)
          && !(last instanceof Text && last.getChars().isBlank())) {
        return;
      }
      nodes.remove(nodes.size() - 1);
    }
  }

  /** Whether the mark stands straight after a bracket or a picture. */
  static boolean belongsToPhrase(List<Node> nodes, int index) {
    if (index == 0) {
      return false;
    }
    Node before = nodes.get(index - 1);
    if (before.getEndOffset() != nodes.get(index).getStartOffset()) {
      return false;
    }
    if (before instanceof MarkNode) {
      return belongsToPhrase(nodes, index - 1);
    }
    return before instanceof LinkRef
        || before instanceof Link
        || before instanceof Image
        || before instanceof ImageRef
        || before instanceof Text && endsWithBracket(before.getChars());
  }

  private static boolean endsWithBracket(CharSequence text) {
    int end = text.length() - 1;
    return text.charAt(end) == ']' && !isEscaped(text, end);
  }

  static boolean isEscaped(CharSequence text, int index) {
    int backslashes = 0;
    while (index - backslashes > 0 && text.charAt(index - backslashes - 1) == '\\') {
      backslashes++;
    }
    return backslashes % 2 == 1;
  }

  static void reportLoose(MarkNode mark, MarkdownReader reader) {
    reader.label(mark);
    reader
        .scope()
        .error(
            reader.at(mark),
            "This mark is attached to nothing that could be put under its agreement.",
            REMEDY);
  }

  /** A brace that is no part of a mark: quoted up to where it closes, or to the end of its line. */
  static void reportBrace(MarkNode brace, MarkdownReader reader) {
    String text = reader.source().text();
    int from = brace.getStartOffset();
    int end = Math.min(text.length(), from + LONGEST_QUOTE);
    for (int i = from; i < end; i++) {
      if (text.charAt(i) == '\n' || text.charAt(i) == '}') {
        end = text.charAt(i) == '}' ? i + 1 : i;
      }
    }
    String quoted = text.substring(from, end);
    boolean invisible = quoted.codePoints().anyMatch(c -> Character.getType(c) == Character.FORMAT);
    if (reader.isWatched(from, end) && !invisible && text.charAt(from) == '}') {
      // Told by the watch, with the place where the mark begins.
      return;
    }
    if (reader.scope().loose() && !reader.isWatched(from, end)) {
      return;
    }
    Place place = reader.at(brace);
    reader.settle(from, end);
    reader
        .scope()
        .error(
            place,
            invisible
                ? "An invisible character stands in this mark, so that it cannot be read."
                : Sentence.of("\"{0}\" cannot be read as a mark.", quoted),
            InlineReader.LAYOUTS.containsKey(quoted.replaceAll("[{}\\s]", ""))
                ? "Write it in quotes behind the address of the picture: ![Afloat](../photos/a.jpg \".wide\")."
                : BRACE_REMEDY);
  }
}

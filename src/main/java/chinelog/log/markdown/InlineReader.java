package chinelog.log.markdown;

import chinelog.label.Label;
import chinelog.log.reading.MarkWatch;
import chinelog.log.reading.SourceFile;
import chinelog.log.reading.Values;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import com.vladsch.flexmark.ast.AutoLink;
import com.vladsch.flexmark.ast.Code;
import com.vladsch.flexmark.ast.Emphasis;
import com.vladsch.flexmark.ast.HardLineBreak;
import com.vladsch.flexmark.ast.HtmlEntity;
import com.vladsch.flexmark.ast.HtmlInlineBase;
import com.vladsch.flexmark.ast.Image;
import com.vladsch.flexmark.ast.ImageRef;
import com.vladsch.flexmark.ast.Link;
import com.vladsch.flexmark.ast.LinkRef;
import com.vladsch.flexmark.ast.MailLink;
import com.vladsch.flexmark.ast.RefNode;
import com.vladsch.flexmark.ast.Reference;
import com.vladsch.flexmark.ast.SoftLineBreak;
import com.vladsch.flexmark.ast.StrongEmphasis;
import com.vladsch.flexmark.ast.Text;
import com.vladsch.flexmark.ast.TextBase;
import com.vladsch.flexmark.ext.footnotes.Footnote;
import com.vladsch.flexmark.util.ast.Node;
import com.vladsch.flexmark.util.sequence.Escaping;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** Copies the runs of Markdown's tree that we know into ours. */
final class InlineReader {

  /** Classes for the layout of a photograph, such as {@code ![Afloat](a.jpg ".wide")}. */
  static final SortedMap<String, Inline.Image.Layout> LAYOUTS =
      new TreeMap<>(
          Map.of(
              ".beside", Inline.Image.Layout.BESIDE,
              ".plain", Inline.Image.Layout.PLAIN,
              ".wide", Inline.Image.Layout.WIDE));

  private final MarkdownReader reader;
  private final FootnoteReader footnotes;
  private int depth;
  private boolean inLink;

  InlineReader(MarkdownReader reader, FootnoteReader footnotes) {
    this.reader = reader;
    this.footnotes = footnotes;
  }

  List<Inline> read(List<Node> nodes) {
    if (depth == MarkdownReader.MOST_DEPTH) {
      reader.reportDepth(reader.at(nodes.get(0)));
      return List.of();
    }
    depth++;
    List<Inline> runs = new Run(nodes).read();
    depth--;
    return runs;
  }

  private List<Inline> children(Node node) {
    return read(MarkText.children(node));
  }

  private List<Inline> linkText(Node node) {
    boolean before = inLink;
    inLink = true;
    List<Inline> text = children(node);
    inLink = before;
    return text;
  }

  /** Reads neighbours, of which a mark may need those before it. */
  private final class Run {

    private final List<Node> nodes;
    private final List<Inline> out = new ArrayList<>();

    /** Where in {@code out} each bracket that is still open stands. */
    private final Deque<Integer> open = new ArrayDeque<>();

    private int next;
    private boolean braceReported;

    Run(List<Node> nodes) {
      this.nodes = nodes;
    }

    List<Inline> read() {
      while (next < nodes.size()) {
        node(nodes.get(next++));
      }
      return merged(out);
    }

    private void node(Node node) {
      if (node instanceof MarkNode mark) {
        loose(mark);
      } else if (node instanceof Text || node instanceof TextBase) {
        text(node);
      } else if (node instanceof HtmlEntity) {
        entity(node);
      } else if (node instanceof Emphasis) {
        out.add(new Inline.Emphasis(children(node)));
      } else if (node instanceof StrongEmphasis) {
        out.add(new Inline.Strong(children(node)));
      } else if (node instanceof Code code) {
        out.add(new Inline.Code(codeText(code.getText().toString())));
      } else if (node instanceof SoftLineBreak || node instanceof HardLineBreak) {
        out.add(new Inline.Break(node instanceof HardLineBreak));
      } else if (node instanceof Footnote call) {
        footnote(call);
      } else if (node instanceof Image image) {
        image(image, image.getUrl().toString(), image.getTitle().toString());
      } else if (node instanceof Link link) {
        maybePhrase(node, link(node, link.getUrl().toString()));
      } else if (node instanceof RefNode ref) {
        reference(ref);
      } else if (node instanceof AutoLink link) {
        plainLink(node, link.getText().toString(), link.getText().toString());
      } else if (node instanceof MailLink link) {
        plainLink(node, "mailto:" + link.getText(), link.getText().toString());
      } else if (node instanceof HtmlInlineBase) {
        reader.complain(
            node,
            "HTML stands here; it is not shown.",
            "Write it as text; write \\< for a < that is meant.");
      } else {
        reader.complain(
            node, "This is no kind of text that is known here.", "Write it as plain text.");
      }
    }

    private void loose(MarkNode mark) {
      if (!mark.agreements().isEmpty()) {
        MarkText.reportLoose(mark, reader);
        return;
      }
      boolean closes = mark.getChars().charAt(0) == '}';
      if (!closes || !braceReported) {
        MarkText.reportBrace(mark, reader);
      }
      braceReported = !closes;
      out.add(new Inline.Text(mark.getChars().toString()));
    }

    private void text(Node node) {
      String raw = node.getChars().toString();
      int from = 0;
      for (int i = 0; i < raw.length(); i++) {
        char c = raw.charAt(i);
        if (MarkWatch.isBrace(c) && c != '{' && c != '}' && MarkWatch.suspects(raw).isEmpty()) {
          reader
              .scope()
              .complain(
                  reader.source().at(node.getStartOffset() + i),
                  Sentence.of("\"{0}\" looks like a brace, but is none.", c),
                  MarkText.BRACE_REMEDY);
        }
        if (c != '[' && c != ']' || MarkText.isEscaped(raw, i)) {
          continue;
        }
        plain(raw.substring(from, i));
        from = i + 1;
        if (c == '[') {
          open.push(out.size());
          out.add(new Inline.Text("["));
        } else {
          closeBracket(node, i == raw.length() - 1, raw.startsWith("(", i + 1));
        }
      }
      plain(raw.substring(from));
    }

    private void closeBracket(Node node, boolean atEnd, boolean beforeParenthesis) {
      int start = open.isEmpty() ? -1 : open.pop();
      if (atEnd && start >= 0 && marksFollow(node)) {
        List<Inline> content = merged(out.subList(start + 1, out.size()));
        out.subList(start, out.size()).clear();
        phrase(node, content);
      } else {
        out.add(new Inline.Text("]"));
        if (beforeParenthesis) {
          reportBrokenLink(node);
        }
      }
    }

    private void plain(String raw) {
      if (!raw.isEmpty()) {
        out.add(new Inline.Text(Escaping.unescapeString(raw)));
      }
    }

    private void entity(Node node) {
      String text = Escaping.unescapeHtml(node.getChars());
      if (text.codePoints().anyMatch(MarkWatch::isBrace)) {
        reader.complain(
            node, "A brace is written as a character code here.", MarkText.BRACE_REMEDY);
      } else if (text.codePoints().anyMatch(SourceFile::isControl)) {
        reader.complain(
            node, "A control character is written as a character code here.", "Delete it.");
      }
      out.add(new Inline.Text(text));
    }

    private void footnote(Footnote call) {
      Inline.Footnote footnote = footnotes.call(call.getFootnoteBlock(), reader.at(call));
      if (footnote != null) {
        out.add(footnote);
      }
    }

    private void image(Node node, String url, String title) {
      Place place = reader.at(node);
      Inline.Image.Layout layout = layout(title, place);
      List<Inline> caption = children(node);
      Label label = takeMarks(node);
      String path = reader.targets().photo(url, place);
      if (path != null) {
        out.add(new Inline.Image(path, caption, label, layout, place));
      }
    }

    /** The class in quotes after the path of a photograph. */
    private Inline.Image.Layout layout(String title, Place place) {
      if (title.isEmpty()) {
        return Inline.Image.Layout.BY_SHAPE;
      }
      Inline.Image.Layout layout = LAYOUTS.get(title.strip());
      if (layout != null) {
        return layout;
      }
      if (title.strip().startsWith(".")) {
        reader
            .scope()
            .error(
                place,
                Sentence.of("\"{0}\" is no class of a photograph.", title.strip()),
                Sentence.of("Write one of: {0}.", String.join(", ", LAYOUTS.keySet())));
      } else {
        reader
            .scope()
            .reminder(
                place,
                "The words in quotes after the path are not shown.",
                "Write the caption between [ and ]; in quotes stands a class, such as \".wide\".");
      }
      return Inline.Image.Layout.BY_SHAPE;
    }

    private List<Inline> link(Node node, String url) {
      Place place = reader.at(node);
      List<Inline> text = linkText(node);
      if (url.startsWith("fact:")) {
        String fact = url.substring("fact:".length());
        if (!Values.FACT.matcher(fact).matches()) {
          reader
              .scope()
              .error(
                  place,
                  Sentence.of("\"{0}\" cannot be the name of a fact.", fact),
                  "Write such as [](fact:hull.loa).");
          return text;
        }
        return List.of(new Inline.FactLink(fact, Inline.plainText(text).strip(), place));
      }
      if (text.isEmpty()) {
        reader
            .scope()
            .complain(place, "This link has no words.", "Write the words between [ and ].");
      }
      return reader.targets().mayLink(url, place)
          ? List.of(new Inline.Link(Escaping.unescapeString(url), text, place))
          : text;
    }

    private void plainLink(Node node, String url, String text) {
      if (reader.targets().mayLink(url, reader.at(node))) {
        out.add(new Inline.Link(url, List.of(new Inline.Text(text)), reader.at(node)));
      } else {
        out.add(new Inline.Text(text));
      }
    }

    private void reference(RefNode ref) {
      Reference definition = ref.isDefined() ? ref.getReferenceNode(ref.getDocument()) : null;
      if (definition != null && ref instanceof ImageRef) {
        image(ref, definition.getUrl().toString(), definition.getTitle().toString());
      } else if (definition != null) {
        maybePhrase(ref, link(ref, definition.getUrl().toString()));
      } else if (ref instanceof LinkRef && ref.getText().isNull() && marksFollow(ref)) {
        phrase(ref, children(ref));
      } else {
        undefined(ref);
      }
    }

    private void undefined(RefNode ref) {
      boolean linkBroken =
          next < nodes.size()
              && nodes.get(next).getStartOffset() == ref.getEndOffset()
              && nodes.get(next).getChars().startsWith("(");
      if (linkBroken) {
        reportBrokenLink(ref);
      } else if (ref instanceof ImageRef
          || ref.getText().isNotNull() && !ref.getReference().isEmpty()) {
        reader.complain(
            ref,
            Sentence.of("\"{0}\" is defined nowhere in this text.", ref.getReference()),
            "Write the target in parentheses after the brackets.");
      } else if (ref.getReference().startsWith("^")) {
        footnotes.call(null, reader.at(ref));
      }
      out.add(new Inline.Text(ref instanceof ImageRef ? "![" : "["));
      out.addAll(children(ref));
      out.add(new Inline.Text("]"));
    }

    private void reportBrokenLink(Node node) {
      reader.complain(
          node,
          "This was probably meant as a link or a picture, but cannot be read as one.",
          "If its path holds spaces or parentheses, write it between < and >, such as"
              + " [words](<a b.md>).");
    }

    private boolean marksFollow(Node node) {
      return next < nodes.size()
          && nodes.get(next) instanceof MarkNode mark
          && !mark.agreements().isEmpty()
          && mark.getStartOffset() == node.getEndOffset();
    }

    /** The agreements of all marks straight after a node. */
    private Label takeMarks(Node node) {
      Label label = Label.NONE;
      Node before = node;
      while (marksFollow(before)) {
        MarkNode mark = (MarkNode) nodes.get(next++);
        if (inLink) {
          reader
              .scope()
              .error(
                  reader.at(mark),
                  "A mark cannot stand inside the words of a link.",
                  "Write it straight after the link.");
        }
        label = label.join(reader.label(mark));
        before = mark;
      }
      return label;
    }

    private void maybePhrase(Node node, List<Inline> content) {
      if (marksFollow(node)) {
        phrase(node, content);
      } else {
        out.addAll(content);
      }
    }

    private void phrase(Node node, List<Inline> content) {
      Place place = reader.at(node);
      MarkNode mark = (MarkNode) nodes.get(next);
      Label label = takeMarks(node);
      if (content.isEmpty()) {
        reader
            .scope()
            .error(reader.at(mark), "The brackets before this mark are empty.", MarkText.REMEDY);
      } else {
        out.add(new Inline.Phrase(content, label, place));
      }
    }
  }

  /** CommonMark 0.31.2, section 6.1: line ends become spaces; one space at both ends goes. */
  private static String codeText(String raw) {
    String text = raw.replace('\n', ' ');
    boolean padded =
        text.length() > 2 && text.startsWith(" ") && text.endsWith(" ") && !text.isBlank();
    return padded ? text.substring(1, text.length() - 1) : text;
  }

  private static List<Inline> merged(List<Inline> runs) {
    List<Inline> merged = new ArrayList<>();
    for (Inline run : runs) {
      int last = merged.size() - 1;
      if (run instanceof Inline.Text now
          && last >= 0
          && merged.get(last) instanceof Inline.Text before) {
        merged.set(last, new Inline.Text(before.text() + now.text()));
      } else {
        merged.add(run);
      }
    }
    return List.copyOf(merged);
  }
}

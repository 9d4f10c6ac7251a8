package chinelog.log.markdown;

import chinelog.label.Label;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import com.vladsch.flexmark.ast.Heading;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ext.footnotes.FootnoteBlock;
import com.vladsch.flexmark.util.ast.Document;
import com.vladsch.flexmark.util.ast.Node;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The footnotes of one text, by their definitions. */
final class FootnoteReader {

  private record Definition(List<Inline> text, Label label, Place place) {}

  private final MarkdownReader reader;
  private final Map<Node, Definition> definitions = new LinkedHashMap<>();
  private final Set<Node> called = Collections.newSetFromMap(new IdentityHashMap<>());
  private boolean inside;

  FootnoteReader(MarkdownReader reader) {
    this.reader = reader;
  }

  /** Reads all definitions; each is also under the agreements of the section it stands in. */
  void define(Document document, Label outer) {
    inside = true;
    defineIn(document, outer, 0);
    inside = false;
  }

  private void defineIn(Node parent, Label outer, int depth) {
    Sections sections = new Sections(outer);
    for (Node node : parent.getChildren()) {
      if (node instanceof Heading heading) {
        sections.enter(
            heading.getLevel(), MarkText.takeFromEnd(MarkText.children(heading), reader));
      } else if (node instanceof FootnoteBlock block) {
        definitions.put(block, definition(block, sections.label()));
      } else if (node instanceof com.vladsch.flexmark.util.ast.Block
          && depth < MarkdownReader.MOST_DEPTH) {
        defineIn(node, sections.label(), depth + 1);
      }
    }
  }

  private Definition definition(FootnoteBlock block, Label section) {
    List<Inline> text = new ArrayList<>();
    Label label = section;
    for (Node part : block.getChildren()) {
      if (!(part instanceof Paragraph)) {
        reader.complain(
            part,
            "A footnote may hold plain paragraphs only.",
            "Move this into the text of the entry.");
        continue;
      }
      List<Node> nodes = MarkText.children(part);
      label = label.join(MarkText.takeFromEnd(nodes, reader));
      if (!text.isEmpty()) {
        text.add(new Inline.Break(true));
      }
      text.addAll(new InlineReader(reader, this).read(nodes));
    }
    return new Definition(List.copyOf(text), label, reader.at(block));
  }

  /** The footnote called, or null after a problem was noted. */
  Inline.@Nullable Footnote call(@Nullable FootnoteBlock block, Place place) {
    Definition definition = block == null ? null : definitions.get(block);
    if (inside || block == null || definition == null) {
      reader
          .scope()
          .complain(
              place,
              inside ? "A footnote calls a footnote here." : "There is no such footnote.",
              inside
                  ? "Write it into the one footnote."
                  : "Write its text on a line such as \"[^1]: The text.\"");
      return null;
    }
    called.add(block);
    return new Inline.Footnote(definition.text, definition.label, place);
  }

  void reportUncalled() {
    definitions.forEach(
        (block, definition) -> {
          if (!called.contains(block)) {
            reader
                .scope()
                .reminder(
                    definition.place,
                    "Nothing calls this footnote, so that it is not shown.",
                    "Call it in the text, such as [^1], or remove it.");
          }
        });
  }
}

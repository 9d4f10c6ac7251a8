package chinelog.log.markdown;

import chinelog.label.Label;
import chinelog.log.reading.MarkWatch;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import com.vladsch.flexmark.ext.footnotes.FootnoteExtension;
import com.vladsch.flexmark.ext.tables.TablesExtension;
import com.vladsch.flexmark.parser.Parser;
import com.vladsch.flexmark.util.ast.Node;
import com.vladsch.flexmark.util.data.MutableDataSet;
import com.vladsch.flexmark.util.sequence.Escaping;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads CommonMark with tables and footnotes into our own tree, in which nothing stands that we do
 * not know.
 */
public final class MarkdownReader {

  private static final Pattern PARTED_LINK = Pattern.compile("(?<=\\])[ \\t]+\\(fact:");

  static final int MOST_DEPTH = 40;

  static final Parser PARSER =
      Parser.builder(
              new MutableDataSet()
                  .set(
                      Parser.EXTENSIONS,
                      List.of(TablesExtension.create(), FootnoteExtension.create()))
                  // CommonMark 0.31.2, section 6.3: a destination between < and > may hold spaces.
                  .set(Parser.SPACE_IN_LINK_URLS, true)
                  .set(TablesExtension.COLUMN_SPANS, false)
                  .set(TablesExtension.WITH_CAPTION, false)
                  .set(TablesExtension.HEADER_SEPARATOR_COLUMN_MATCH, true)
                  .set(TablesExtension.APPEND_MISSING_COLUMNS, false))
          .customInlineParserExtensionFactory(new MarkNode.Factory())
          .build();

  private final Source source;
  private final Scope scope;
  private final Targets targets;

  /** The source with every mark that was read, and every one already complained of, blanked out. */
  private final StringBuilder rest;

  public MarkdownReader(Source source, String base, Scope scope) {
    this.source = source;
    this.scope = scope;
    this.targets = new Targets(scope, base);
    this.rest = new StringBuilder(source.text());
  }

  /**
   * @param outer agreements that the whole text is under
   */
  public List<Block> blocks(Label outer) {
    List<Block> blocks = new ArrayList<>();
    guarded(() -> blocks.addAll(new BlockReader(this).read(PARSER.parse(source.text()), outer)));
    return List.copyOf(blocks);
  }

  /**
   * A text that must be one paragraph, such as a caption; its own mark would cover nothing else.
   */
  public List<Inline> line() {
    List<Block> blocks = blocks(Label.NONE);
    if (blocks.isEmpty()) {
      return List.of();
    }
    if (blocks.size() == 1 && blocks.get(0) instanceof Block.Paragraph p) {
      return p.label().isNone()
          ? p.text()
          : List.of(new Inline.Phrase(p.text(), p.label(), p.place()));
    }
    scope.error(
        source.at(0),
        "This is more than one paragraph.",
        "Write it as plain sentences, without lists or headings.");
    return List.of();
  }

  private void guarded(Runnable reading) {
    try {
      reading.run();
    } catch (StackOverflowError e) {
      // The Markdown library recurses; only a text made to break it goes so deep.
      reportDepth(source.at(0));
    }
    watch();
  }

  void reportDepth(Place place) {
    scope.error(
        place, "Quotes, lists or brackets are nested too deeply here.", "Write it flatter.");
  }

  /** Nothing that looks like a mark may remain, wherever it stands. */
  private void watch() {
    String text = rest.toString();
    Matcher parted = PARTED_LINK.matcher(text);
    while (parted.find()) {
      scope.complain(
          source.at(parted.start()),
          "A space stands between the brackets and the fact, so that this is no figure.",
          "Write them together, such as [1.19 m](fact:hull.loa).");
    }
    List<Integer> suspects = MarkWatch.suspects(text);
    for (int offset : suspects) {
      scope.error(
          source.at(offset),
          "This looks like a mark, but it cannot be read as one where it stands.",
          MarkText.REMEDY);
    }
    if (suspects.isEmpty() && text.indexOf('&') >= 0) {
      int start = 0;
      for (String line : text.split("\n", -1)) {
        if (!MarkWatch.suspects(Escaping.unescapeString(line)).isEmpty()) {
          scope.error(
              source.at(start),
              "On this line something looks like a mark written with character codes.",
              MarkText.REMEDY);
        }
        start += line.length() + 1;
      }
    }
  }

  /** The agreements of a mark; the mark is then accounted for. */
  Label label(MarkNode mark) {
    settle(mark.getStartOffset(), mark.getEndOffset());
    List<String> ids = new ArrayList<>();
    for (String id : mark.agreements()) {
      if (scope.agreements() == null || scope.agreementsOrNone().contains(id)) {
        ids.add(id);
      } else {
        scope.error(
            at(mark),
            Sentence.of("\"{0}\" is not an agreement of this log.", id),
            scope.agreementsOrNone().isEmpty()
                ? "Name it among the \"agreements\" of log.yaml, or remove the mark."
                : Suggestion.remedy(id, scope.agreementsOrNone()));
      }
    }
    return Label.of(ids);
  }

  void settle(int from, int to) {
    for (int i = from; i < Math.min(to, rest.length()); i++) {
      if (rest.charAt(i) != '\n') {
        rest.setCharAt(i, ' ');
      }
    }
  }

  /**
   * Whether something that looks like a mark stands on the line between its start and {@code to}.
   */
  boolean isWatched(int from, int to) {
    int start = rest.lastIndexOf("\n", Math.max(0, from - 1)) + 1;
    return !MarkWatch.suspects(rest.substring(Math.min(start, from), to)).isEmpty();
  }

  void complain(Node node, CharSequence what, CharSequence remedy) {
    scope.complain(at(node), what, remedy);
  }

  Place at(Node node) {
    return source.at(node.getStartOffset());
  }

  Source source() {
    return source;
  }

  Scope scope() {
    return scope;
  }

  Targets targets() {
    return targets;
  }
}

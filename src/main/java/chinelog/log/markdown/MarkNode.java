package chinelog.log.markdown;

import com.vladsch.flexmark.parser.InlineParser;
import com.vladsch.flexmark.parser.InlineParserExtension;
import com.vladsch.flexmark.parser.InlineParserExtensionFactory;
import com.vladsch.flexmark.parser.LightInlineParser;
import com.vladsch.flexmark.util.ast.Node;
import com.vladsch.flexmark.util.sequence.BasedSequence;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A mark in Markdown's tree, or a lone brace.
 *
 * <p>Braces are taken out of the text while it is parsed, after code and escapes, so that a mark is
 * either read to the letter or seen to be none: it is never text.
 */
final class MarkNode extends Node {

  private static final Pattern MARK = Pattern.compile("\\{under=([A-Za-z0-9_,-]+)}");

  MarkNode(BasedSequence chars) {
    super(chars);
  }

  @Override
  public BasedSequence[] getSegments() {
    return EMPTY_SEGMENTS;
  }

  /** The agreements named; empty for a brace that begins or ends no mark. */
  List<String> agreements() {
    Matcher m = MARK.matcher(getChars());
    return m.matches() ? List.of(m.group(1).split(",", -1)) : List.of();
  }

  /**
   * Where a mark of the same letters as in the source ends, or the offset itself if none begins.
   */
  private static int end(BasedSequence input, int from) {
    Matcher m = MARK.matcher(input).region(from, input.length());
    return m.lookingAt() ? m.end() : from;
  }

  /** Has Markdown's parser take out marks and braces. */
  static final class Factory implements InlineParserExtensionFactory {

    @Override
    public CharSequence getCharacters() {
      return "{}";
    }

    @Override
    public InlineParserExtension apply(LightInlineParser parser) {
      return new Extension();
    }

    @Override
    public @Nullable Set<Class<?>> getAfterDependents() {
      return null;
    }

    @Override
    public @Nullable Set<Class<?>> getBeforeDependents() {
      return null;
    }

    @Override
    public boolean affectsGlobalScope() {
      return false;
    }
  }

  private static final class Extension implements InlineParserExtension {

    @Override
    public void finalizeDocument(InlineParser parser) {}

    @Override
    public void finalizeBlock(InlineParser parser) {}

    @Override
    public boolean parse(LightInlineParser parser) {
      BasedSequence input = parser.getInput();
      int from = parser.getIndex();
      int end = Math.max(end(input, from), from + 1);
      parser.flushTextNode();
      parser.getBlock().appendChild(new MarkNode(input.subSequence(from, end)));
      parser.setIndex(end);
      return true;
    }
  }
}

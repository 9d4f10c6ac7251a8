package chinelog.book.writing;

import chinelog.markup.HtmlWriter;
import chinelog.markup.NumbersBound;
import java.text.Normalizer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Writes nested elements without naming their ends: {@code open("p", "class", "lead").text("a <
 * b").close()} gives {@code <p class="lead">a &lt; b</p>}.
 */
final class Xhtml {

  private static final Pattern SELECTORS = Pattern.compile("[\uFE00-\uFE0F]");

  private final HtmlWriter out = new HtmlWriter();
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Opens an element.
   *
   * @param attributes names and values in turn; an attribute whose value is empty is left out
   */
  Xhtml open(String element, String... attributes) {
    out.open(element, withoutEmpty(attributes));
    open.push(element);
    return this;
  }

  /** An element without content. */
  Xhtml empty(String element, String... attributes) {
    out.empty(element, withoutEmpty(attributes));
    return this;
  }

  /** An element with nothing but text. */
  Xhtml leaf(String element, String text, String... attributes) {
    out.element(element, composed(text), withoutEmpty(attributes));
    return this;
  }

  Xhtml text(String text) {
    out.text(composed(text));
    return this;
  }

  Xhtml close() {
    out.close(open.pop());
    return this;
  }

  /**
   * A line to write on.
   *
   * @param label what belongs there; may be empty
   * @param filled what stands there already; may be empty
   */
  Xhtml lineToWriteOn(String label, String filled) {
    open("div", "class", "line");
    leaf("p", label.isEmpty() ? "\u00A0" : label, "class", "label");
    leaf("p", filled.isEmpty() ? "\u00A0" : filled, "class", "filled");
    return close();
  }

  /** Takes over a drawing; it must be well-formed. */
  Xhtml drawing(String svg) {
    out.raw(svg);
    return this;
  }

  /** What was written, once all is closed. */
  String done() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("still open: " + open);
    }
    return out.toString();
  }

  /**
   * A letter and its accent as one character, which fonts have whole; numbers bound to their units;
   * and without the selectors that ask for a coloured picture of a character, which no page has.
   */
  private static String composed(String text) {
    String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
    return NumbersBound.in(SELECTORS.matcher(composed).replaceAll(""));
  }

  private static String[] withoutEmpty(String... attributes) {
    List<String> kept = new ArrayList<>();
    for (int i = 0; i < attributes.length; i += 2) {
      if (!attributes[i + 1].isEmpty()) {
        kept.add(attributes[i]);
        kept.add(attributes[i + 1]);
      }
    }
    return kept.toArray(String[]::new);
  }
}

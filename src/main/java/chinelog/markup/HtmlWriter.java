package chinelog.markup;

import org.jspecify.annotations.Nullable;

/**
 * Writes elements and text that are well-formed both as HTML and as XML, such as {@code <p>5 &lt;
 * 6</p>}.
 *
 * <p>Text and attributes are escaped always; only {@link #raw} writes markup as it stands.
 */
public final class HtmlWriter {

  private final StringBuilder out = new StringBuilder();

  /**
   * Opens an element.
   *
   * @param attributes names and values in turn; an attribute whose value is null is left out
   */
  public HtmlWriter open(String element, @Nullable String... attributes) {
    return tag(element, ">", attributes);
  }

  public HtmlWriter close(String element) {
    out.append("</").append(element).append('>');
    return this;
  }

  /** Writes an element without content, such as {@code <br />}. */
  public HtmlWriter empty(String element, @Nullable String... attributes) {
    return tag(element, " />", attributes);
  }

  /** Writes an element that holds nothing but text. */
  public HtmlWriter element(String element, String text, @Nullable String... attributes) {
    return open(element, attributes).text(text).close(element);
  }

  private HtmlWriter tag(String element, String end, @Nullable String... attributes) {
    if (attributes.length % 2 != 0) {
      throw new IllegalArgumentException("an attribute of " + element + " has no value");
    }
    out.append('<').append(element);
    for (int i = 0; i < attributes.length; i += 2) {
      String value = attributes[i + 1];
      if (value != null) {
        out.append(' ').append(attributes[i]).append("=\"").append(escaped(value)).append('"');
      }
    }
    out.append(end);
    return this;
  }

  public HtmlWriter text(String text) {
    out.append(escaped(text));
    return this;
  }

  /** Writes markup that is known to be well-formed. */
  public HtmlWriter raw(String markup) {
    out.append(markup);
    return this;
  }

  @Override
  public String toString() {
    return out.toString();
  }

  /**
   * The text with what means something in markup escaped, and without the control characters that
   * XML 1.0 (production 2, Char) does not allow.
   */
  public static String escaped(String text) {
    StringBuilder s = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> s.append("&amp;");
                case '<' -> s.append("&lt;");
                case '>' -> s.append("&gt;");
                case '"' -> s.append("&quot;");
                default -> {
                  if (isXml(c)) {
                    s.appendCodePoint(c);
                  }
                }
              }
            });
    return s.toString();
  }

  private static boolean isXml(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || (c >= 0x20 && c <= 0xd7ff)
        || (c >= 0xe000 && c <= 0xfffd)
        || c >= 0x10000;
  }
}

package chinelog.pattern;

/** Text as it stands in XML. */
final class Markup {

  private Markup() {}

  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}

package chinelog.talk;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Opens what is written short, such as "e.g." into "for example". */
final class Abbreviations {

  private static final String BEFORE_NUMBER = "#";
  private static final String ENDS = "!";

  private final List<Opened> opened = new ArrayList<>();
  private final Pattern atEnd;

  private record Opened(Pattern brief, String full, boolean mayEnd) {}

  /**
   * @param table such as {@code e.g.=for example|no.#=number|etc.!=and so on}; with {@code #} only
   *     before a number; with {@code !} such as end a sentence
   */
  Abbreviations(String table) {
    StringBuilder dotted = new StringBuilder("$^");
    for (String pair : table.split("\\|")) {
      int cut = pair.indexOf('=');
      String brief = pair.substring(0, cut);
      boolean beforeNumber = brief.endsWith(BEFORE_NUMBER);
      if (beforeNumber) {
        brief = brief.substring(0, brief.length() - 1);
      }
      boolean mayEnd = brief.endsWith(ENDS);
      if (mayEnd) {
        brief = brief.substring(0, brief.length() - 1);
      }
      String letters = Pattern.quote(brief).replace(" ", "\\E\\s?\\Q");
      String after = beforeNumber ? "(?=\\s?\\d)" : "(?![\\p{L}])";
      opened.add(
          new Opened(
              Pattern.compile("(?<![\\p{L}\\d.])(?<!\\d\\s)" + letters + after),
              pair.substring(cut + 1) + (brief.endsWith("Ø") ? " " : ""),
              mayEnd));
      if (brief.endsWith(".")) {
        dotted.append('|').append(letters);
      }
    }
    this.atEnd = Pattern.compile("(?:^|.*[^\\p{L}])(?:" + dotted + ")\\s*", Pattern.DOTALL);
  }

  String open(String text) {
    String plain = text;
    for (Opened one : opened) {
      Matcher m = one.brief.matcher(plain);
      StringBuilder out = new StringBuilder();
      while (m.find()) {
        String rest = plain.substring(m.end());
        boolean endsSentence =
            m.group().endsWith(".")
                && (rest.isBlank() || one.mayEnd && rest.matches("(?s)\\s+\\p{Lu}.*"));
        m.appendReplacement(out, Matcher.quoteReplacement(one.full + (endsSentence ? "." : "")));
      }
      plain = m.appendTail(out).toString();
    }
    return plain;
  }

  /** Whether a text ends in one, so that its full stop ends no sentence for certain. */
  boolean endsIn(String text) {
    return atEnd.matcher(text).matches();
  }
}

package chinelog.book;

import chinelog.book.page.Trim;
import chinelog.markup.Theme;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The style sheet of the book, the measures of the page filled in. */
final class Style {

  private static final Pattern VALUE = Pattern.compile("\\$\\{([a-z-]+)}");

  private static final Pattern FAMILIES = Pattern.compile("\\bfont(-family)?\\s*:[^;}]*");

  /** Long enough for some hundred pages; more would not fit into the renderer's count of dots. */
  private static final double ENDLESS_MM = 200_000;

  private static final String BLACK = "#000000";

  private Style() {}

  static String of(Theme theme, Trim trim, double bleedMm) throws ProblemException {
    Map<String, String> values = trim.values(bleedMm);
    String sheet = withFallbacks(fill(theme, values), theme.bookFonts());
    // A printing house prints what is quite black with black ink alone.
    return bleedMm > 0 ? sheet.replace(theme.value("ink"), BLACK) : sheet;
  }

  /** The same for a page without end. */
  static String endless(String style, Trim trim, double bleedMm) {
    return style
        + "\n@page { size: %s %s; }"
            .formatted(Trim.mm(trim.widthMm + 2 * bleedMm), Trim.mm(ENDLESS_MM));
  }

  /** The log's own fonts stand in wherever the typefaces of the theme lack a character. */
  private static String withFallbacks(String sheet, List<Theme.Font> fonts) {
    String own =
        fonts.stream()
            .filter(font -> font.own() != null)
            .map(font -> ", \"" + font.family() + "\"")
            .collect(Collectors.joining());
    return FAMILIES.matcher(sheet).replaceAll(m -> Matcher.quoteReplacement(m.group() + own));
  }

  private static String fill(Theme theme, Map<String, String> values) throws ProblemException {
    String sheet = theme.bookCss();
    Matcher named = VALUE.matcher(sheet);
    StringBuilder filled = new StringBuilder();
    while (named.find()) {
      String value = values.get(named.group(1));
      if (value == null) {
        throw new ProblemException(
            Place.of("themes/" + theme.name() + "/book.css"),
            Sentence.of("It names {0}, which is no measure of the page.", named.group()),
            Sentence.of("Write one of: {0}.", String.join(", ", values.keySet())));
      }
      named.appendReplacement(filled, Matcher.quoteReplacement(value));
    }
    return named.appendTail(filled).toString();
  }
}

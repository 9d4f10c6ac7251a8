package chinelog.markup;

import chinelog.markup.Theme.Font;
import java.util.ArrayList;
import java.util.List;

/** The site's fonts, cut into scripts so that a reader fetches only those that a page needs. */
final class SiteFonts {

  /**
   * A part of the fonts.
   *
   * @param range the characters it holds, as CSS writes them
   */
  private record Script(String name, String range) {}

  private static final List<Script> SCRIPTS =
      List.of(
          new Script("cyrillic", "U+0301, U+0400-045F, U+0490-0491, U+04B0-04B1, U+2116"),
          new Script(
              "greek", "U+0370-0377, U+037A-037F, U+0384-038A, U+038C, U+038E-03A1, U+03A3-03FF"),
          new Script("vietnamese", "U+0102-0103, U+01A0-01A1, U+01AF-01B0, U+1EA0-1EF9, U+20AB"),
          new Script(
              "latin-ext",
              "U+0100-02BA, U+02BD-02C5, U+02C7-02CC, U+02CE-02D7, U+02DD-02FF, U+1E00-1E9F,"
                  + " U+20A0-20AB, U+20AD-20C4, U+2113"),
          new Script(
              "latin",
              "U+0000-00FF, U+0131, U+0152-0153, U+02BB-02BC, U+02C6, U+02DA, U+02DC,"
                  + " U+2000-206F, U+20AC, U+2122, U+2191, U+2193, U+2212, U+2215"));

  /**
   * Fonts of the reader's own, made as wide and as high as ours, that stand in until ours have
   * come, so that nothing moves then. The ratios were measured on English text.
   */
  private static final String STAND_INS =
      """
      @font-face { font-family: "Serif to begin with"; font-style: normal; size-adjust: 117%; \
      ascent-override: 89%; descent-override: 29%; line-gap-override: 0%; \
      src: local("Times New Roman"), local("Liberation Serif"), local("LiberationSerif"); }
      @font-face { font-family: "Serif to begin with"; font-style: italic; size-adjust: 108%; \
      ascent-override: 96%; descent-override: 31%; line-gap-override: 0%; \
      src: local("Times New Roman Italic"), local("Liberation Serif Italic"); }
      @font-face { font-family: "Sans to begin with"; font-weight: 400; size-adjust: 93%; \
      ascent-override: 110%; descent-override: 43%; line-gap-override: 0%; \
      src: local("Arial"), local("Liberation Sans"), local("LiberationSans"); }
      @font-face { font-family: "Sans to begin with"; font-weight: 600; size-adjust: 89.5%; \
      ascent-override: 114%; descent-override: 45%; line-gap-override: 0%; \
      src: local("Arial Bold"), local("Liberation Sans Bold"); }
      @font-face { font-family: "Serif to begin with, wide"; font-style: normal; \
      size-adjust: 93%; ascent-override: 112%; descent-override: 36%; line-gap-override: 0%; \
      src: local("DejaVu Serif"), local("DejaVuSerif"); }
      @font-face { font-family: "Serif to begin with, wide"; font-style: italic; \
      size-adjust: 85%; ascent-override: 122%; descent-override: 39%; line-gap-override: 0%; \
      src: local("DejaVu Serif Italic"), local("DejaVuSerif-Italic"); }
      @font-face { font-family: "Sans to begin with, wide"; font-weight: 400; \
      size-adjust: 82%; ascent-override: 125%; descent-override: 49%; line-gap-override: 0%; \
      src: local("DejaVu Sans"), local("DejaVuSans"); }
      @font-face { font-family: "Sans to begin with, wide"; font-weight: 600; \
      size-adjust: 74.5%; ascent-override: 137%; descent-override: 54%; line-gap-override: 0%; \
      src: local("DejaVu Sans Bold"), local("DejaVuSans-Bold"); }
      """;

  private SiteFonts() {}

  /** A list of typefaces with what stands in for ours. */
  static String withStandIns(String value) {
    return value
        .replace(
            "\"Source Serif 4\"",
            "\"Source Serif 4\", \"Serif to begin with\", \"Serif to begin with, wide\"")
        .replace(
            "\"Source Sans 3\"",
            "\"Source Sans 3\", \"Sans to begin with\", \"Sans to begin with, wide\"");
  }

  static List<Font> all() {
    List<Font> fonts = new ArrayList<>();
    SCRIPTS.forEach(script -> fonts.addAll(of(script)));
    return List.copyOf(fonts);
  }

  private static List<Font> of(Script script) {
    List<Font> fonts = new ArrayList<>();
    for (String stem : List.of("source-serif-4", "source-sans-3")) {
      for (int weight : new int[] {400, 600}) {
        for (String style : List.of("normal", "italic")) {
          fonts.add(
              new Font(
                  stem.equals("source-serif-4") ? "Source Serif 4" : "Source Sans 3",
                  weight,
                  style.equals("italic"),
                  stem + "-" + script.name() + "-" + weight + "-" + style + ".woff2"));
        }
      }
    }
    return fonts;
  }

  /** The rules that name the fonts, beside a style sheet that has them in {@code fonts/}. */
  static String css() {
    StringBuilder css = new StringBuilder(STAND_INS);
    for (Script script : SCRIPTS) {
      for (Font font : of(script)) {
        css.append("@font-face { font-family: \"").append(font.family());
        css.append("\"; font-style: ").append(font.italic() ? "italic" : "normal");
        css.append("; font-weight: ").append(font.weight());
        css.append("; font-display: swap; src: url(fonts/").append(font.file());
        css.append(") format(\"woff2\"); unicode-range: ").append(script.range());
        css.append("; }\n");
      }
    }
    return css.toString();
  }
}

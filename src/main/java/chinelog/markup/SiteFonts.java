package chinelog.markup;

import chinelog.markup.Theme.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

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
   * A font of the reader's own, made as wide and as high as ours, that stands in until ours has
   * come, so that hardly anything moves then.
   *
   * @param percent of its size, at which English text is as wide as in ours
   * @param names it goes by
   */
  private record StandIn(
      boolean hasSerifs, boolean isWide, int weight, String style, double percent, String names) {

    String css() {
      double ascent = hasSerifs ? 1.036 : 1.024;
      double descent = hasSerifs ? 0.335 : 0.4;
      return String.format(
          Locale.ROOT,
          "@font-face { font-family: \"%s to begin with%s\"; font-style: %s; font-weight: %d;"
              + " size-adjust: %s%%; ascent-override: %.1f%%; descent-override: %.1f%%;"
              + " line-gap-override: 0%%; src: local(\"%s\"); }\n",
          hasSerifs ? "Serif" : "Sans",
          isWide ? ", wide" : "",
          style,
          weight,
          percent,
          1e4 * ascent / percent,
          1e4 * descent / percent,
          names.replace(", ", "\"), local(\""));
    }
  }

  private static final List<StandIn> STAND_INS =
      List.of(
          new StandIn(
              true,
              false,
              400,
              "normal",
              117.5,
              "Times New Roman, Liberation Serif, LiberationSerif"),
          new StandIn(
              true, false, 400, "italic", 108, "Times New Roman Italic, Liberation Serif Italic"),
          new StandIn(
              true, false, 600, "normal", 112.5, "Times New Roman Bold, Liberation Serif Bold"),
          new StandIn(
              true,
              false,
              600,
              "italic",
              110,
              "Times New Roman Bold Italic, Liberation Serif Bold Italic"),
          new StandIn(false, false, 400, "normal", 93.5, "Arial, Liberation Sans, LiberationSans"),
          new StandIn(false, false, 400, "italic", 91.5, "Arial Italic, Liberation Sans Italic"),
          new StandIn(false, false, 600, "normal", 89.5, "Arial Bold, Liberation Sans Bold"),
          new StandIn(
              false, false, 600, "italic", 87.5, "Arial Bold Italic, Liberation Sans Bold Italic"),
          new StandIn(true, true, 400, "normal", 93, "DejaVu Serif, DejaVuSerif"),
          new StandIn(true, true, 400, "italic", 84.6, "DejaVu Serif Italic, DejaVuSerif-Italic"),
          new StandIn(true, true, 600, "normal", 84.5, "DejaVu Serif Bold, DejaVuSerif-Bold"),
          new StandIn(
              true, true, 600, "italic", 79.7, "DejaVu Serif Bold Italic, DejaVuSerif-BoldItalic"),
          new StandIn(false, true, 400, "normal", 81.6, "DejaVu Sans, DejaVuSans"),
          new StandIn(false, true, 400, "italic", 79.7, "DejaVu Sans Oblique, DejaVuSans-Oblique"),
          new StandIn(false, true, 600, "normal", 74.3, "DejaVu Sans Bold, DejaVuSans-Bold"),
          new StandIn(
              false,
              true,
              600,
              "italic",
              72.4,
              "DejaVu Sans Bold Oblique, DejaVuSans-BoldOblique"));

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
    StringBuilder css = new StringBuilder();
    STAND_INS.forEach(font -> css.append(font.css()));
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

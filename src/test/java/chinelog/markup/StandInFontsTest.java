package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.File;
import java.io.IOException;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;
import org.junit.jupiter.api.Test;

/**
 * Stand-ins against the fonts' own measures, and against Adobe's Font Metrics for the Core 14
 * fonts, as wide as which the usual fonts of a computer are.
 */
class StandInFontsTest {

  private static final String TEXT =
      "The uprights are cut to the moulds: I still had the patterns, so the boat sits in the ghost"
          + " of numbers three and eight. A strip of felt on each, and she drops into place with a"
          + " sound like a good drawer. I went over her with a lens and a list and found nine"
          + " things. Seven are put right.";

  private static final Pattern FACE =
      Pattern.compile(
          "font-family: \"(Serif|Sans) to begin with\"; font-style: (\\w+); font-weight: (\\d+);"
              + " size-adjust: ([\\d.]+)%; ascent-override: ([\\d.]+)%;"
              + " descent-override: ([\\d.]+)%;");

  private static final Map<String, FontName> USUAL =
      Map.of(
          "Serif normal 400", FontName.TIMES_ROMAN,
          "Serif italic 400", FontName.TIMES_ITALIC,
          "Serif normal 600", FontName.TIMES_BOLD,
          "Serif italic 600", FontName.TIMES_BOLD_ITALIC,
          "Sans normal 400", FontName.HELVETICA,
          "Sans italic 400", FontName.HELVETICA_OBLIQUE,
          "Sans normal 600", FontName.HELVETICA_BOLD,
          "Sans italic 600", FontName.HELVETICA_BOLD_OBLIQUE);

  private static TrueTypeFont own(String family, String style, String weight) throws IOException {
    String name =
        "Source%s-%s%s.ttf"
            .formatted(
                family.equals("Serif") ? "Serif4" : "Sans3",
                weight.equals("600") ? "SemiBold" : "Regular",
                style.equals("italic") ? "_Italic" : "");
    return new TTFParser().parse(new RandomAccessReadBufferedFile(new File("themes/fonts", name)));
  }

  private static double width(TrueTypeFont font) throws IOException {
    double width = 0;
    for (int c : TEXT.chars().toArray()) {
      width += font.getAdvanceWidth(font.getUnicodeCmapLookup().getGlyphId(c));
    }
    return width / font.getUnitsPerEm();
  }

  @Test
  void areAsWideAndAsHighAsTheFontsTheyStandInFor() throws IOException {
    Matcher face = FACE.matcher(SiteFonts.css());
    int seen = 0;
    for (; face.find(); seen++) {
      String kind = String.join(" ", face.group(1), face.group(2), face.group(3));
      double size = Double.parseDouble(face.group(4)) / 100;
      try (TrueTypeFont own = own(face.group(1), face.group(2), face.group(3))) {
        double usual = new PDType1Font(USUAL.get(kind)).getStringWidth(TEXT) / 1000;
        assertThat(usual * size / width(own)).as(kind).isCloseTo(1, within(0.012));
        double em = own.getUnitsPerEm();
        double ascent = Double.parseDouble(face.group(5)) / 100;
        double descent = Double.parseDouble(face.group(6)) / 100;
        assertThat(ascent * size)
            .as(kind)
            .isCloseTo(own.getHorizontalHeader().getAscender() / em, within(0.002));
        assertThat(descent * size)
            .as(kind)
            .isCloseTo(-own.getHorizontalHeader().getDescender() / em, within(0.002));
      }
    }
    assertThat(seen).isEqualTo(USUAL.size());
  }
}

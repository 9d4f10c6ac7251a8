package chinelog.book.setting;

import chinelog.markup.Theme;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;

/** Which characters can be printed, whatever typeface they happen to be set in. */
public final class Coverage {

  private final List<CmapLookup> setIn = new ArrayList<>();
  private final List<CmapLookup> fallbacks = new ArrayList<>();

  /**
   * Reads the fonts.
   *
   * @throws IOException if one cannot be read
   */
  public Coverage(List<Theme.Font> fonts) throws IOException {
    for (Theme.Font face : fonts) {
      try (TrueTypeFont font = Faces.parse(face)) {
        (face.isFallback() ? fallbacks : setIn).add(font.getUnicodeCmapLookup());
      }
    }
  }

  public boolean has(int character) {
    return fallbacks.stream().anyMatch(f -> f.getGlyphId(character) != 0)
        || setIn.stream().allMatch(f -> f.getGlyphId(character) != 0);
  }
}

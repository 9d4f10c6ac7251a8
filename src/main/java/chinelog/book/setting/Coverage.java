package chinelog.book.setting;

import chinelog.markup.Theme;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;

/** Which characters can be printed, whatever typeface they happen to be set in. */
public final class Coverage {

  /** Of the faces that come with chinelog, by file: they take longer to read than a booklet. */
  private static final Map<String, CmapLookup> BUILT_IN = new ConcurrentHashMap<>();

  private final List<CmapLookup> setIn = new ArrayList<>();
  private final List<CmapLookup> fallbacks = new ArrayList<>();
  private final Map<Integer, Boolean> known = new ConcurrentHashMap<>();

  /**
   * Reads the fonts.
   *
   * @throws IOException if one cannot be read
   */
  public Coverage(List<Theme.Font> fonts) throws IOException {
    for (Theme.Font face : fonts) {
      CmapLookup known = face.own() == null ? BUILT_IN.get(face.file()) : null;
      CmapLookup letters = known == null ? read(face) : known;
      (face.isFallback() ? fallbacks : setIn).add(letters);
      if (face.own() == null) {
        BUILT_IN.put(face.file(), letters);
      }
    }
  }

  private static CmapLookup read(Theme.Font face) throws IOException {
    try (TrueTypeFont font = Faces.parse(face)) {
      return font.getUnicodeCmapLookup();
    }
  }

  public boolean has(int character) {
    return known.computeIfAbsent(
        character,
        c ->
            fallbacks.stream().anyMatch(f -> f.getGlyphId(c) != 0)
                || setIn.stream().allMatch(f -> f.getGlyphId(c) != 0));
  }
}

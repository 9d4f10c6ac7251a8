package chinelog.audit;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import org.apache.fontbox.cmap.CMap;
import org.apache.fontbox.cmap.CMapParser;
import org.apache.fontbox.ttf.GlyfCompositeComp;
import org.apache.fontbox.ttf.GlyfCompositeDescript;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.PDCIDFontType2;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * Finds letters that an embedded font can show but that no page uses: a sign that the font was cut
 * for another text.
 */
final class FontLetters {

  private FontLetters() {}

  /**
   * Letters of {@code font} that are neither shown nor a part of one that is, as the acute is of é.
   *
   * @param shown codes that the pages show in this font
   */
  static Set<String> leftOver(PDFont font, Set<Integer> shown) throws IOException {
    Set<String> left = new TreeSet<>();
    if (!(font.getCOSObject().getDictionaryObject(COSName.TO_UNICODE) instanceof COSStream map)) {
      return left;
    }
    CMap letters;
    try (InputStream in = map.createInputStream()) {
      letters = new CMapParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
    }
    int bytes = font instanceof PDType0Font ? 2 : 1;
    Set<Integer> used = new HashSet<>();
    for (int code : shown) {
      used.add(glyph(font, code));
    }
    addParts(font, used);
    for (int code = 0; code < 1 << 8 * bytes; code++) {
      String letter = letters.toUnicode(code, bytes);
      if (letter != null && !letter.isBlank() && !used.contains(glyph(font, code))) {
        left.add(letter);
      }
    }
    return left;
  }

  private static int glyph(PDFont font, int code) throws IOException {
    return font instanceof PDType0Font composite ? composite.codeToGID(code) : code;
  }

  private static void addParts(PDFont font, Set<Integer> used) throws IOException {
    if (!(font instanceof PDType0Font composite)
        || !(composite.getDescendantFont() instanceof PDCIDFontType2 cid)) {
      return;
    }
    TrueTypeFont outlines = cid.getTrueTypeFont();
    Deque<Integer> open = new ArrayDeque<>(used);
    while (!open.isEmpty()) {
      GlyphData data = outlines.getGlyph().getGlyph(open.pop());
      if (data != null && data.getDescription() instanceof GlyfCompositeDescript whole) {
        for (GlyfCompositeComp part : whole.getComponents()) {
          if (used.add(part.getGlyphIndex())) {
            open.add(part.getGlyphIndex());
          }
        }
      }
    }
  }
}

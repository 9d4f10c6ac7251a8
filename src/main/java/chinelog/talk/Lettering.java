package chinelog.talk;

import chinelog.markup.Theme;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * Draws lettering by the outlines of a theme's fonts: the machine's own fonts have no say, so that
 * every machine draws the same.
 */
final class Lettering {

  private final List<Face> faces = new ArrayList<>();
  private final Map<Integer, Face> byLetter = new LinkedHashMap<>();

  private record Face(TrueTypeFont font, CmapLookup letters, double perEm) {}

  /**
   * @param family begins the name of the typeface, such as {@code Source Serif 4}
   */
  Lettering(Theme theme, String family, int weight) throws IOException {
    List<Theme.Font> fonts = new ArrayList<>();
    theme.bookFonts().stream()
        .filter(f -> f.family().equals(family) && f.weight() == weight && !f.italic())
        .forEach(fonts::add);
    theme.bookFonts().stream().filter(Theme.Font::isFallback).forEach(fonts::add);
    for (Theme.Font font : fonts) {
      TrueTypeFont parsed = new TTFParser().parse(new RandomAccessReadBuffer(font.bytes()));
      faces.add(new Face(parsed, parsed.getUnicodeCmapLookup(), parsed.getUnitsPerEm()));
    }
  }

  /** Draws a line from {@code x} on, its letters on {@code baseline}. */
  void draw(Graphics2D g, String text, double x, double baseline, double size) throws IOException {
    double at = x;
    for (int letter : text.codePoints().toArray()) {
      Face face = face(letter);
      int glyph = face.letters.getGlyphId(letter);
      double scale = size / face.perEm;
      GlyphData data = face.font.getGlyph().getGlyph(glyph);
      if (data != null) {
        GeneralPath path = data.getPath();
        g.fill(
            AffineTransform.getTranslateInstance(at, baseline)
                .createTransformedShape(
                    AffineTransform.getScaleInstance(scale, -scale).createTransformedShape(path)));
      }
      at += face.font.getAdvanceWidth(glyph) * scale;
    }
  }

  double width(String text, double size) throws IOException {
    double width = 0;
    for (int letter : text.codePoints().toArray()) {
      Face face = face(letter);
      width += face.font.getAdvanceWidth(face.letters.getGlyphId(letter)) * size / face.perEm;
    }
    return width;
  }

  /** Lines of a text that are at most so wide; a word that is wider stands alone and is cut. */
  List<String> lines(String text, double size, double most) throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("[\\s&&[^\u00a0\u202f]]+")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && width(longer, size) > most) {
        lines.add(line.toString());
        line.setLength(0);
        longer = word;
      }
      line.setLength(0);
      line.append(fitted(longer, size, most));
    }
    lines.add(line.toString());
    return lines;
  }

  /** The text, or as much of its beginning as fits, with an ellipsis. */
  String fitted(String text, double size, double most) throws IOException {
    if (width(text, size) <= most) {
      return text;
    }
    String cut = text;
    while (!cut.isEmpty() && width(cut + "…", size) > most) {
      cut = cut.substring(0, cut.offsetByCodePoints(cut.length(), -1));
    }
    return cut.stripTrailing() + "…";
  }

  private Face face(int letter) {
    return byLetter.computeIfAbsent(
        letter,
        l ->
            faces.stream()
                .filter(f -> f.letters.getGlyphId(l) != 0)
                .findFirst()
                .orElse(faces.get(faces.size() - 1)));
  }
}

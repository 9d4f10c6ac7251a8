package chinelog.pattern;

import chinelog.markup.Theme;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The upright sans of a theme, laid into one document, with what it falls back on. */
final class Face implements Closeable {

  private static final String MISSING = "\uFFFD";

  private final PDDocument document;
  private final List<Theme.Font> fonts;
  private final List<TrueTypeFont> parsed = new ArrayList<>();
  private final List<PDFont> laid = new ArrayList<>();
  private final Map<Integer, PDFont> byLetter = new LinkedHashMap<>();

  Face(PDDocument document, Theme theme) {
    this.document = document;
    List<Theme.Font> usable = new ArrayList<>();
    theme.bookFonts().stream()
        .filter(f -> f.family().contains("Sans") && !f.italic() && !f.isFallback())
        .findFirst()
        .ifPresent(usable::add);
    theme.bookFonts().stream().filter(Theme.Font::isFallback).forEach(usable::add);
    this.fonts = usable;
  }

  /** Text in one font. */
  record Run(PDFont font, String text) {}

  /** A text, cut where the font changes. */
  List<Run> runs(String text) throws IOException {
    List<Run> runs = new ArrayList<>();
    for (int letter : text.codePoints().toArray()) {
      PDFont font = byLetter.get(letter);
      if (font == null) {
        font = fontOf(letter);
        byLetter.put(letter, font);
      }
      String written = canWrite(font, letter) ? Character.toString(letter) : MISSING;
      int last = runs.size() - 1;
      if (last >= 0 && runs.get(last).font.equals(font)) {
        runs.set(last, new Run(font, runs.get(last).text + written));
      } else {
        runs.add(new Run(font, written));
      }
    }
    return runs;
  }

  /** Width of a text whose capitals are 1 high. */
  double width(String text) throws IOException {
    double width = 0;
    for (Run run : runs(text)) {
      width += run.font.getStringWidth(run.text) / 1000;
    }
    return width * em();
  }

  /** Size of type for capitals 1 high. */
  double em() throws IOException {
    return 1000 / (double) font(0).getFontDescriptor().getCapHeight();
  }

  private PDFont fontOf(int letter) throws IOException {
    for (int i = 0; i < fonts.size(); i++) {
      if (canWrite(font(i), letter)) {
        return font(i);
      }
    }
    return font(fonts.size() - 1);
  }

  private static boolean canWrite(PDFont font, int letter) throws IOException {
    try {
      font.encode(Character.toString(letter));
      return true;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private PDFont font(int i) throws IOException {
    while (laid.size() <= i) {
      TrueTypeFont font =
          new TTFParser().parse(new RandomAccessReadBuffer(fonts.get(laid.size()).bytes()));
      // Ligature glyphs have no Unicode of their own.
      font.setEnableGsub(false);
      parsed.add(font);
      laid.add(PDType0Font.load(document, font, true));
    }
    return laid.get(i);
  }

  @Override
  public void close() throws IOException {
    for (TrueTypeFont font : parsed) {
      font.close();
    }
  }
}

package chinelog.book.setting;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.util.Arrays;

/** How much nearer two letters of a face stand than their widths say; asked of the JDK's shaper. */
final class Kerning {

  private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

  /** End of Latin Extended-B: beyond it the fallback face may be in use. */
  private static final char LAST = '\u024F';

  /** Less than 3/1000 em is not seen and only makes the file longer. */
  private static final float UNSEEN = 3;

  /** The slash of a fraction lies over the figures beside it, unless they are raised and small. */
  private static final char FRACTION_SLASH = '\u2044';

  /** As far as the figures need, and less than what would read as a space. */
  private static final float BESIDE_SLASH = 75;

  private final Font font;

  /** By left and right letter; a row is made, and a pair measured, when it is first asked for. */
  private final float[][] pairs = new float[LAST + 1][];

  Kerning(Font font) {
    this.font = font;
  }

  /** For two letters, in thousandths of an em; mostly 0 or negative. */
  float between(char left, char right) {
    if (left == FRACTION_SLASH || right == FRACTION_SLASH) {
      return BESIDE_SLASH;
    }
    if (!isKerned(left) || !isKerned(right)) {
      return 0;
    }
    float[] row = pairs[left];
    if (row == null) {
      row = new float[LAST + 1];
      Arrays.fill(row, Float.NaN);
      pairs[left] = row;
    }
    if (Float.isNaN(row[right])) {
      row[right] = measure(left, right);
    }
    return row[right];
  }

  /** For a whole line, in thousandths of an em. */
  float within(String text) {
    float sum = 0;
    for (int i = 1; i < text.length(); i++) {
      sum += between(text.charAt(i - 1), text.charAt(i));
    }
    return sum;
  }

  /** Figures stay on their common width, so that columns of them stand in line. */
  private static boolean isKerned(char c) {
    return c <= LAST && c > ' ' && !Character.isDigit(c);
  }

  private float measure(char left, char right) {
    GlyphVector pair =
        font.layoutGlyphVector(EXACT, new char[] {left, right}, 0, 2, Font.LAYOUT_LEFT_TO_RIGHT);
    if (pair.getNumGlyphs() != 2) {
      return 0;
    }
    float alone = font.createGlyphVector(EXACT, new char[] {left}).getGlyphMetrics(0).getAdvanceX();
    float kern = (float) pair.getGlyphPosition(1).getX() - alone;
    return Math.abs(kern) < UNSEEN ? 0 : kern;
  }
}

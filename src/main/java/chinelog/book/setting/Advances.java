package chinelog.book.setting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** How far the letters of a face advance, each asked of the library but once. */
final class Advances {

  /** Stands for a letter that the face does not have; none has a width below nought. */
  private static final float NONE = -1;

  private static final int COMMON = 0x250;

  private final PDFont font;
  private final float[] common = new float[COMMON];
  private final Map<Integer, Float> others = new HashMap<>();

  Advances(PDFont font) {
    this.font = font;
    Arrays.fill(common, Float.NaN);
  }

  /** Whether the face has every letter of a text. */
  boolean coverAllOf(String text) {
    return of(text) >= 0;
  }

  /** Of a text without kerning, in thousandths of an em; below nought if a letter is lacking. */
  float of(String text) {
    float sum = 0;
    for (int i = 0; i < text.length(); ) {
      int letter = text.codePointAt(i);
      float advance = of(letter);
      if (advance < 0) {
        return NONE;
      }
      sum += advance;
      i += Character.charCount(letter);
    }
    return sum;
  }

  private float of(int letter) {
    if (letter >= COMMON) {
      return others.computeIfAbsent(letter, this::measure);
    }
    if (Float.isNaN(common[letter])) {
      common[letter] = measure(letter);
    }
    return common[letter];
  }

  private float measure(int letter) {
    try {
      return font.getStringWidth(Character.toString(letter));
    } catch (IllegalArgumentException e) {
      return NONE;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package chinelog.audit;

import java.text.Normalizer;
import java.util.BitSet;
import java.util.Map;

/**
 * Text reduced to what no disguise changes: letters and digits in lower case, such as {@code
 * skerrickyard} for "Sker-rick&nbsp;YÀRD" with a soft hyphen in it.
 *
 * @param letters what is left, without anything between
 * @param wordStarts positions in {@code letters} that something other than a letter stood before
 * @param breaks positions before which a form feed, the sign of a new cell or paragraph, stood
 */
record Folded(String letters, BitSet wordStarts, BitSet breaks) {

  /**
   * Letters of other scripts that look like Latin ones (Unicode TR 39, confusables; the common).
   */
  private static final Map<Integer, Character> LOOKALIKES =
      Map.ofEntries(
          Map.entry((int) 'а', 'a'),
          Map.entry((int) 'е', 'e'),
          Map.entry((int) 'о', 'o'),
          Map.entry((int) 'р', 'p'),
          Map.entry((int) 'с', 'c'),
          Map.entry((int) 'у', 'y'),
          Map.entry((int) 'х', 'x'),
          Map.entry((int) 'к', 'k'),
          Map.entry((int) 'м', 'm'),
          Map.entry((int) 'т', 't'),
          Map.entry((int) 'і', 'i'),
          Map.entry((int) 'ѕ', 's'),
          Map.entry((int) 'ј', 'j'),
          Map.entry((int) 'ԁ', 'd'),
          Map.entry((int) 'һ', 'h'),
          Map.entry((int) 'ӏ', 'l'),
          Map.entry((int) 'ο', 'o'),
          Map.entry((int) 'α', 'a'),
          Map.entry((int) 'ι', 'i'),
          Map.entry((int) 'κ', 'k'),
          Map.entry((int) 'ρ', 'p'),
          Map.entry((int) 'ν', 'v'),
          Map.entry((int) 'ı', 'i'));

  private static final int ASCII = 128;
  private static final int NONE = -1;

  /** What the letters and digits of ASCII are reduced to. */
  private static final int[] SMALL = small();

  static Folded of(String text) {
    char[] plain = decomposed(text);
    StringBuilder letters = new StringBuilder(plain.length);
    BitSet starts = new BitSet();
    BitSet breaks = new BitSet();
    boolean between = true;
    boolean broken = true;
    for (int i = 0; i < plain.length; ) {
      int c = plain[i] < ASCII ? plain[i] : Character.codePointAt(plain, i);
      i += c < ASCII ? 1 : Character.charCount(c);
      int letter = c < ASCII ? SMALL[c] : Character.isLetterOrDigit(c) ? folded(c) : NONE;
      if (letter != NONE) {
        if (between) {
          starts.set(letters.length());
        }
        if (broken) {
          breaks.set(letters.length());
        }
        between = false;
        broken = false;
        if (letter < ASCII) {
          letters.append((char) letter);
        } else {
          letters.appendCodePoint(letter);
        }
      } else if (!isUnseen(c)) {
        between = true;
        broken |= c == '\f';
      }
    }
    starts.set(letters.length());
    breaks.set(letters.length());
    return new Folded(letters.toString(), starts, breaks);
  }

  /** Accents and ligatures taken apart; in most texts there are none. */
  private static char[] decomposed(String text) {
    char[] letters = text.toCharArray();
    for (char letter : letters) {
      if (letter >= ASCII) {
        return Normalizer.normalize(text, Normalizer.Form.NFKD).toCharArray();
      }
    }
    return letters;
  }

  private static int[] small() {
    int[] small = new int[ASCII];
    for (int c = 0; c < ASCII; c++) {
      small[c] = Character.isLetterOrDigit(c) ? folded(c) : NONE;
    }
    return small;
  }

  private static int folded(int c) {
    if (c < ASCII) {
      return c >= 'A' && c <= 'Z' ? c + 32 : c;
    }
    int digit = Character.digit(c, 10);
    if (digit >= 0) {
      return '0' + digit;
    }
    int lower = Character.toLowerCase(c);
    Character latin = LOOKALIKES.get(lower);
    return latin == null ? lower : latin;
  }

  /** Marks and format characters: soft hyphens, zero-width spaces, direction marks. */
  private static boolean isUnseen(int c) {
    if (c < ASCII) {
      return false;
    }
    return switch (Character.getType(c)) {
      case Character.NON_SPACING_MARK,
          Character.COMBINING_SPACING_MARK,
          Character.ENCLOSING_MARK,
          Character.FORMAT ->
          true;
      default -> false;
    };
  }

  /** Whether {@code from} to {@code to} begins and ends where words do. */
  boolean isWhole(int from, int to) {
    return wordStarts.get(from) && wordStarts.get(to);
  }

  /** Whether no cell or paragraph ends between {@code from} and {@code to}. */
  boolean isUnbroken(int from, int to) {
    int next = breaks.nextSetBit(from + 1);
    return next < 0 || next >= to;
  }

  int length() {
    return letters.length();
  }
}

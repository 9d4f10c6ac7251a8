package chinelog.log.reading;

import chinelog.problem.Problems;
import chinelog.wording.Accents;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Looks for what was most likely meant as a mark, {@code {under=AGREEMENT}}, where none was read.
 *
 * <p>It looks at text as written, apart from any syntax, so that nothing that the syntax hides can
 * slip past: everything within one edit (insert, delete, replace, or swap neighbours) of the mark's
 * beginning, in letters of any width or case, with or without invisible characters.
 */
public final class MarkWatch {

  private static final String BEGINNING = "{under=";

  private MarkWatch() {}

  /** Notes an error if the text, in which no mark can stand, holds what looks like one. */
  public static void refuse(Source source, Problems problems) {
    for (int offset : suspects(source.text())) {
      problems.error(
          source.at(offset),
          "This looks like a mark, but no mark can stand here.",
          "Put the whole under its agreement with a key \"under\", or remove the mark.");
    }
  }

  /** Where in the text something looks like the beginning of a mark, in order. */
  public static List<Integer> suspects(String text) {
    if (isPlainlyFree(text)) {
      return List.of();
    }
    StringBuilder folded = new StringBuilder();
    List<Integer> origin = new ArrayList<>();
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      String plain = fold(c);
      for (int k = 0; k < plain.length(); k++) {
        origin.add(i);
      }
      folded.append(plain);
      i += Character.charCount(c);
    }
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < folded.length(); i++) {
      if (isNearly(folded, i)) {
        found.add(origin.get(i));
        i += BEGINNING.length() - 1;
      }
    }
    return found;
  }

  /** Whether the text at {@code at} is the mark's beginning, but for at most one edit. */
  private static boolean isNearly(CharSequence text, int at) {
    int same = 0;
    while (same < BEGINNING.length() && is(text, at + same, BEGINNING.charAt(same))) {
      same++;
    }
    int there = at + same;
    if (same == BEGINNING.length()) {
      return true;
    }
    boolean swapped =
        same + 1 < BEGINNING.length()
            && is(text, there, BEGINNING.charAt(same + 1))
            && is(text, there + 1, BEGINNING.charAt(same))
            && goesOn(text, there + 2, same + 2);
    return swapped
        || goesOn(text, there, same + 1)
        || goesOn(text, there + 1, same + 1)
        || same > 0 && goesOn(text, there + 1, same);
  }

  /** Whether the rest of the mark's beginning, from {@code from} on, stands at {@code at}. */
  private static boolean goesOn(CharSequence text, int at, int from) {
    for (int i = from; i < BEGINNING.length(); i++) {
      if (!is(text, at + i - from, BEGINNING.charAt(i))) {
        return false;
      }
    }
    // A letter was replaced or inserted before, so there must have been one.
    return at <= text.length();
  }

  private static boolean is(CharSequence text, int at, char c) {
    return at < text.length() && text.charAt(at) == c;
  }

  /** Whether a character is a brace, or looks like one. */
  public static boolean isBrace(int c) {
    return "{}｛｝﹛﹜❴❵︷︸⦃⦄".indexOf(c) >= 0;
  }

  /** Every near-mark keeps one of these characters, or one that folds to it. */
  private static boolean isPlainlyFree(String text) {
    return text.chars().allMatch(c -> c < 128 && c != '{' && c != '=');
  }

  private static String fold(int c) {
    if (c < 128) {
      return Character.toString(Character.toLowerCase(c));
    }
    int type = Character.getType(c);
    if (type == Character.FORMAT || type == Character.NON_SPACING_MARK || c == 0xad) {
      return "";
    }
    if (c != '{' && c != '}' && isBrace(c)) {
      return "❴｛﹛︷⦃".indexOf(c) >= 0 ? "{" : "}";
    }
    return Accents.off(Character.toString(c)).toLowerCase(Locale.ROOT);
  }
}

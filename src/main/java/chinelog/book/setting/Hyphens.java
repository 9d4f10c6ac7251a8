package chinelog.book.setting;

import com.openhtmltopdf.extend.Hyphenator;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectInputStream;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.fop.hyphenation.Hyphenation;
import org.apache.fop.hyphenation.HyphenationTree;
import org.jspecify.annotations.Nullable;

/**
 * Shows by soft hyphens where the words of a language may be divided: {@code planking} becomes
 * {@code plank-ing}. A language without patterns is left undivided.
 */
public final class Hyphens implements Hyphenator {

  private static final char SOFT_HYPHEN = '\u00AD';

  /** At least two letters stay before the break and three come after it: common practice. */
  private static final int BEFORE = 2;

  private static final int AFTER = 3;

  /** Shorter words are not worth dividing; words with digits or capitals inside are names. */
  private static final Pattern WORD =
      Pattern.compile("(?<![\\p{L}\\p{N}])\\p{L}\\p{Ll}{5,}(?![\\p{L}\\p{N}])");

  /**
   * The patterns that may be passed on by anyone, each with its licence. The library's archive
   * holds many more, compiled and without a word of their licences; these are the ones whose
   * sources, which it appears to be made from, say so at their head (hyph-utf8, the pattern files
   * of TeX). Others are to be looked up there before they are added.
   */
  static final Map<String, String> LICENCES =
      Map.ofEntries(
          Map.entry("da", "LPPL 1.3 or MIT"),
          Map.entry("de", "LPPL"),
          Map.entry("de_CH", "LPPL"),
          Map.entry("en", "free to copy with its notice"),
          Map.entry("en_GB", "MIT"),
          Map.entry("es", "MIT"),
          Map.entry("fr", "MIT"),
          Map.entry("it", "LPPL 1.3"),
          Map.entry("nl", "LPPL 1"),
          Map.entry("pt", "BSD 3-clause"),
          Map.entry("sv", "LPPL 1.2"));

  private final @Nullable HyphenationTree patterns;
  private final Map<String, String> divided = new ConcurrentHashMap<>();

  private Hyphens(@Nullable HyphenationTree patterns) {
    this.patterns = patterns;
  }

  /** For a locale such as {@code en-GB}: its own patterns, else those of its language. */
  public static Hyphens of(Locale locale) throws IOException {
    String language = locale.getLanguage();
    for (String name : new String[] {language + "_" + locale.getCountry(), language}) {
      if (!LICENCES.containsKey(name)) {
        continue;
      }
      try (InputStream in = HyphenationTree.class.getResourceAsStream("/hyph/" + name + ".hyp")) {
        if (in != null) {
          return new Hyphens(read(in));
        }
      }
    }
    return new Hyphens(null);
  }

  private static HyphenationTree read(InputStream in) throws IOException {
    try (ObjectInputStream objects = new ObjectInputStream(in)) {
      return (HyphenationTree) objects.readObject();
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException("the hyphenation patterns do not match their reader", e);
    }
  }

  @Override
  public String hyphenateText(String text) {
    if (patterns == null) {
      return text;
    }
    return WORD.matcher(text).replaceAll(this::divide);
  }

  private String divide(MatchResult word) {
    return divided.computeIfAbsent(word.group(), w -> Matcher.quoteReplacement(divide(w)));
  }

  private String divide(String word) {
    HyphenationTree tree = patterns;
    Hyphenation breaks = tree == null ? null : tree.hyphenate(word, BEFORE, AFTER);
    if (breaks == null) {
      return word;
    }
    StringBuilder result = new StringBuilder(word);
    int[] points = breaks.getHyphenationPoints();
    for (int i = points.length - 1; i >= 0; i--) {
      result.insert(points[i], SOFT_HYPHEN);
    }
    return result.toString();
  }
}

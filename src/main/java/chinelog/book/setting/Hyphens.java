package chinelog.book.setting;

import static java.util.Objects.requireNonNull;
import static java.util.stream.Collectors.toUnmodifiableMap;

import com.openhtmltopdf.extend.Hyphenator;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectInputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
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

  /** The patterns that anybody may pass on, such as {@code en_GB}, each with its licence. */
  static final Map<String, String> LICENCES = licences();

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

  private static Map<String, String> licences() {
    Properties licences = new Properties();
    try (InputStream in =
        Hyphens.class.getResourceAsStream("/chinelog/book/hyphenation.properties")) {
      licences.load(requireNonNull(in));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return licences.entrySet().stream()
        .collect(toUnmodifiableMap(e -> (String) e.getKey(), e -> (String) e.getValue()));
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

package chinelog.reckon;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How long a text takes to read or to say.
 *
 * <p>Rates: M. Brysbaert, "How many words do we read per minute?", Journal of Memory and Language
 * 109 (2019) 104047: 238 words a minute in silence for non-fiction (most adults 175 to 300), 183
 * aloud. Speaking freely at about 150 is common practice; the attribution is weak, so it may be
 * changed.
 *
 * @param wordsPerMinute above 0
 */
public record Pace(int wordsPerMinute) {

  public static final Pace SILENT = new Pace(238);
  public static final Pace SLOW = new Pace(175);
  public static final Pace QUICK = new Pace(300);
  public static final Pace ALOUD = new Pace(183);
  public static final Pace SPEAKING = new Pace(150);

  /** A run of letters and digits with what joins them: {@code two-part}, {@code don't}, 3.5. */
  private static final Pattern WORD =
      Pattern.compile("[\\p{L}\\p{N}]+(?:['’.,\\-/][\\p{L}\\p{N}]+)*");

  public Pace {
    if (wordsPerMinute <= 0) {
      throw new IllegalArgumentException("words per minute must be above 0: " + wordsPerMinute);
    }
  }

  /** Words as a reader counts them. */
  public static int words(String text) {
    Matcher m = WORD.matcher(text);
    int count = 0;
    while (m.find()) {
      count++;
    }
    return count;
  }

  /** Minutes for that many words, unrounded. */
  public BigDecimal minutes(int words) {
    return BigDecimal.valueOf(words)
        .divide(BigDecimal.valueOf(wordsPerMinute), MathContext.DECIMAL128);
  }

  /** Whole minutes as a reader is told, rounded half up and at least 1. */
  public int wholeMinutes(int words) {
    return Math.max(1, minutes(words).setScale(0, RoundingMode.HALF_UP).intValueExact());
  }
}

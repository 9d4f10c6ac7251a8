package chinelog.log;

import java.time.DateTimeException;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Lengths of time as a maker writes them: {@code 2 h 30 min}, {@code 2.5 h}, {@code PT2H30M}. */
final class Durations {

  private static final Pattern SPOKEN =
      Pattern.compile(
          "(-?)\\s*(?:([0-9]+(?:\\.[0-9]+)?)\\s*h)?\\s*(?:([0-9]+(?:\\.[0-9]+)?)\\s*min)?"
              + "\\s*(?:([0-9]+)\\s*s)?");
  private static final Pattern ISO = Pattern.compile("-?PT(?=[0-9])[0-9HMS.]+");

  private Durations() {}

  static @Nullable Duration parse(String written) {
    String text = written.strip();
    if (ISO.matcher(text).matches()) {
      try {
        return Duration.parse(text);
      } catch (DateTimeException e) {
        return null;
      }
    }
    Matcher m = SPOKEN.matcher(text);
    if (text.length() > 30 || !m.matches() || text.chars().noneMatch(Character::isDigit)) {
      return null;
    }
    double seconds = number(m.group(2)) * 3600 + number(m.group(3)) * 60 + number(m.group(4));
    Duration length = Duration.ofSeconds(Math.round(seconds));
    return m.group(1).isEmpty() ? length : length.negated();
  }

  private static double number(@Nullable String digits) {
    return digits == null ? 0 : Double.parseDouble(digits);
  }
}

package chinelog.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Time at work as people speak of it, such as {@code 2 hours} or {@code 9am to 12.30}. */
final class SpokenTime {

  private static final String CLOCK = "([0-9]{1,2})(?:[.:h]([0-9]{2}))?\\s*(am|pm)?(?:\\s*uhr)?";
  private static final Pattern RANGE =
      Pattern.compile(
          "(?:from |von |van )?" + CLOCK + "\\s*(?:-|–|—|to|till|until|bis|tot)\\s*" + CLOCK);
  private static final Pattern LENGTH =
      Pattern.compile(
          "([0-9]+(?:[.,][0-9]+)?)\\s*"
              + "(?:h|hrs?|hours?|std|stunden?|uur|uren|heures?|horas?)[.]?"
              + "(?:\\s*(?:and|und|en|et|y)?\\s*([0-9]{1,2})\\s*(?:m|mins?|minut\\p{L}*)?[.]?)?");
  private static final Pattern MINUTES =
      Pattern.compile("([0-9]+)\\s*(?:m|mins?|minut\\p{L}*)[.]?");
  private static final Pattern BARE = Pattern.compile("([0-9]{1,2}(?:[.,][0-9]{1,2})?)");
  private static final Pattern BY_COLON = Pattern.compile("([0-9]{1,2}):([0-5][0-9])");

  private SpokenTime() {}

  /** What the text would be as it can be read; empty if it cannot be told. */
  static Optional<String> findMeaning(String text) {
    List<String> parts = new ArrayList<>();
    for (String part : text.toLowerCase(Locale.ROOT).split("\\s+(?:and|und|en|et|&)\\s+|;")) {
      String meaning = meaning(part.strip());
      if (meaning.isEmpty()) {
        return Optional.empty();
      }
      parts.add(meaning);
    }
    return Optional.of(String.join(", ", parts));
  }

  private static String meaning(String part) {
    Matcher m = RANGE.matcher(part);
    if (m.matches()) {
      String from = clock(m.group(1), m.group(2), m.group(3));
      String to = clock(m.group(4), m.group(5), m.group(6));
      return from.isEmpty() || to.isEmpty() ? "" : from + "-" + to;
    }
    m = LENGTH.matcher(part);
    if (m.matches()) {
      String hours = m.group(1).replace(',', '.') + " h";
      return m.group(2) == null ? hours : hours + " " + m.group(2) + " min";
    }
    m = MINUTES.matcher(part);
    if (m.matches()) {
      return m.group(1) + " min";
    }
    m = BY_COLON.matcher(part);
    if (m.matches()) {
      return m.group(1) + " h " + m.group(2) + " min";
    }
    m = BARE.matcher(part);
    return m.matches() ? m.group(1).replace(',', '.') + " h" : "";
  }

  private static String clock(String hour, @Nullable String minute, @Nullable String half) {
    int h = Integer.parseInt(hour);
    if (half != null) {
      h = h % 12 + (half.equals("pm") ? 12 : 0);
    }
    return h > 23 ? "" : String.format(Locale.ROOT, "%02d:%s", h, minute == null ? "00" : minute);
  }
}

package chinelog.withhold.question;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Tells by what stands beside an everyday word with a capital whether it names somebody there: by
 * itself between signs, as in "sent off, Museum."; after a title, such as "Firma"; in German after
 * a preposition without an article, as in "bei Museum"; and where it does what people do, as in
 * "Museum rang".
 */
final class NamePlaces {

  private static final Map<String, Map<String, Set<String>>> WORDS = load();

  /** So many words lie at most between "hat" and "angerufen". */
  private static final int BETWEEN = 5;

  private static final Pattern BEFORE = Pattern.compile("([\\p{L}\\p{M}]+)\\.?[ \u00a0]+$");
  private static final Pattern OPENS =
      Pattern.compile("(?:^|[^\\p{L}\\p{N} \u00a0\f-]|[ \u00a0]-)[ \u00a0]*$");
  private static final Pattern WITHIN = Pattern.compile("[,;(\u2013\u2014][ \u00a0]*$");
  private static final Pattern CLOSES =
      Pattern.compile("^[ \u00a0]*(?:$|[^\\p{L}\\p{N} \u00a0\f-]|-[ \u00a0])");
  private static final Pattern OWNER = Pattern.compile("^[\u2019'](?:s\\b)?");
  private static final Pattern AFTER =
      Pattern.compile("[\\p{L}\\p{M}]+|[^\\p{L}\\p{M} \u00a0\u2019'-]");

  private final Map<String, Set<String>> words;

  NamePlaces(Locale locale) {
    this.words = WORDS.getOrDefault(locale.getLanguage(), Map.of());
  }

  /**
   * Whether an everyday word is a name where it stands; what German uses without an article anyway
   * is none after a preposition, and a thing is none where it is a title or fills a cell.
   */
  boolean isName(String text, Letters.Word word) {
    String before = before(text, word);
    String after = after(text, word);
    Pattern opens = CommonWords.isThing(word.letters()) ? WITHIN : OPENS;
    return opens.matcher(before).find() && CLOSES.matcher(after).find()
        || OWNER.matcher(after).find()
        || !CommonWords.standsBare(word.letters()) && is("preposition", previous(before))
        || isSomebody(text, word);
  }

  /** Whether a word has a title or does what people do. */
  boolean isSomebody(String text, Letters.Word word) {
    String before = before(text, word);
    String previous = previous(before);
    return is("title", previous)
        || is("speaks", previous)
        || (OPENS.matcher(before).find() || is("link", previous)) && speaks(after(text, word));
  }

  private static String before(String text, Letters.Word word) {
    return text.substring(Math.max(0, word.start() - 40), word.start());
  }

  private static String after(String text, Letters.Word word) {
    return text.substring(word.end(), Math.min(text.length(), word.end() + 80));
  }

  private static String previous(String before) {
    Matcher m = BEFORE.matcher(before);
    return m.find() ? Letters.fold(m.group(1)) : "";
  }

  private boolean speaks(String after) {
    Matcher m = AFTER.matcher(after);
    if (!m.find()) {
      return false;
    }
    String first = Letters.fold(m.group());
    if (is("speaks", first) || is("done", first)) {
      return true;
    }
    if (!is("has", first)) {
      return false;
    }
    for (int i = 0; i < BETWEEN && m.find(); i++) {
      String next = Letters.fold(m.group());
      if (next.isEmpty()) {
        return false;
      }
      if (is("done", next)) {
        return true;
      }
    }
    return false;
  }

  private boolean is(String place, String word) {
    return words.getOrDefault(place, Set.of()).contains(word);
  }

  private static Map<String, Map<String, Set<String>>> load() {
    Map<String, Map<String, Set<String>>> words = new HashMap<>();
    for (String line : CommonWords.Resource.lines("name-places.txt")) {
      List<String> parts = List.of(line.split(" "));
      words
          .computeIfAbsent(parts.get(0), l -> new HashMap<>())
          .put(parts.get(1), Set.copyOf(parts.subList(2, parts.size())));
    }
    return words;
  }
}

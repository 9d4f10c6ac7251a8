package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Looks for names that are withheld: whole, in runs of two words or more, by single words, run
 * together as in an address of the web, by their first letters, and with a slip of the pen.
 *
 * <p>A word of everyday speech, such as the "White" of a firm, counts only where a capital within a
 * sentence shows that it is a name, or what stands beside it ({@link NamePlaces}); in German, where
 * every noun has one, a capital tells so of no noun.
 */
final class NameWatch {

  private static final int LEAST = 4;
  private static final int LEAST_RUN_TOGETHER = 8;
  private static final int LEAST_WITH_A_SLIP = 6;

  /** First letters with their stops: "M. E.", "M.E.". */
  private static final Pattern DOTTED =
      Pattern.compile("(?<![\\p{L}\\d.])\\p{Lu}\\.(?:[ \u00a0\u202f-]?\\p{Lu}\\.)+(?!\\p{L})");

  /** Two capitals that stand for something else in a log. */
  private static final Set<String> OTHER_INITIALS =
      Set.of(
          "AC", "AM", "BM", "CA", "CB", "CE", "CG", "CO", "CV", "DC", "DK", "EU", "FR", "GB", "GM",
          "GZ", "HP", "ID", "IV", "KB", "KG", "KM", "LB", "LP", "MB", "MM", "MS", "NE", "NW", "OK",
          "PC", "PE", "PM", "PU", "PS", "RC", "SA", "SE", "SS", "SW", "TV", "UK", "US", "UV", "VI",
          "WC", "WL", "XL");

  private static final Set<String> ENDINGS = Set.of("", "s", "es", "n", "en", "er", "sche", "se");

  /** English writes these with a capital though they name nobody. */
  private static final Set<String> CALENDAR =
      Set.of(
          "january",
          "february",
          "march",
          "april",
          "may",
          "june",
          "july",
          "august",
          "september",
          "october",
          "november",
          "december",
          "monday",
          "tuesday",
          "wednesday",
          "thursday",
          "friday",
          "saturday",
          "sunday",
          "english",
          "scottish",
          "welsh",
          "irish",
          "british",
          "french",
          "german",
          "dutch",
          "spanish",
          "european",
          "american");

  private final CommonWords common;
  private final boolean nounsHaveCapitals;
  private final NamePlaces places;
  private final Set<String> byRight = new HashSet<>();
  private final List<String> runsByRight = new ArrayList<>();
  private int longestByRight;
  private final Map<String, Name> single = new LinkedHashMap<>();

  /** Words that anybody may use. */
  private final Map<String, Name> everyday = new LinkedHashMap<>();

  private final Map<String, Name> proper = new HashMap<>();
  private final Map<String, Name> initials = new HashMap<>();
  private final Map<String, List<Name>> byFirst = new HashMap<>();
  private final List<Name> wholes = new ArrayList<>();
  private final List<Name> together = new ArrayList<>();
  private final Set<CharSequence> unguarded = new TreeSet<>(CharSequence::compare);

  /**
   * A name or a part of it.
   *
   * @param words folded, without joints
   * @param whole whether nothing of the name is left out
   */
  private record Name(List<String> words, boolean whole, CharSequence secret, Label label) {}

  NameWatch(Locale locale, CommonWords common) {
    this.common = common;
    this.nounsHaveCapitals = Set.of("de", "lb").contains(locale.getLanguage());
    this.places = new NamePlaces(locale);
  }

  /** Notes a name that these readers see by right. */
  void show(String name) {
    List<String> words = letters(name);
    byRight.addAll(words);
    String run = " " + String.join(" ", words) + " ";
    runsByRight.add(run);
    longestByRight = Math.max(longestByRight, run.length());
  }

  /** Notes a name that is withheld from them. */
  void withhold(String name, CharSequence what, Label label) {
    List<String> words = letters(name);
    Sentence secret = Sentence.of("{0}, \u201c{1}\u201d", Sentence.of(what), name.strip());
    boolean any = false;
    if (!common.contains(String.join("", words))) {
      wholes.add(new Name(words, true, secret, label));
    }
    for (int from = 0; from < words.size(); from++) {
      for (int to = from + 2; to <= words.size(); to++) {
        any |= run(words.subList(from, to), to - from == words.size(), secret, label);
      }
      any |= word(words.get(from), words.size() == 1, secret, label);
    }
    String joined = String.join("", words);
    if (words.size() > 1 && joined.length() >= LEAST_RUN_TOGETHER) {
      together.add(new Name(List.of(joined), true, secret, label));
    }
    if (words.size() > 1) {
      String first = words.stream().map(w -> w.substring(0, 1)).collect(Collectors.joining());
      initials.putIfAbsent(first, new Name(List.of(first), true, secret, label));
    }
    if (!any) {
      unguarded.add(secret);
    }
  }

  private boolean run(List<String> words, boolean whole, CharSequence secret, Label label) {
    boolean digits = words.stream().allMatch(w -> w.chars().allMatch(Character::isDigit));
    if (digits || isByRight(words)) {
      return false;
    }
    byFirst
        .computeIfAbsent(words.get(0), w -> new ArrayList<>())
        .add(new Name(words, whole, secret, label));
    return true;
  }

  /** Of a long text, which has very many runs, hardly one is looked at whole. */
  private boolean isByRight(List<String> words) {
    int length = 1;
    for (String word : words) {
      length += word.length() + 1;
      if (length > longestByRight) {
        return false;
      }
    }
    String run = " " + String.join(" ", words) + " ";
    return runsByRight.stream().anyMatch(r -> r.contains(run));
  }

  private boolean word(String word, boolean whole, CharSequence secret, Label label) {
    if (word.length() < LEAST
        || byRight.contains(word)
        || word.chars().allMatch(Character::isDigit)) {
      return false;
    }
    if (common.contains(word)) {
      if (CALENDAR.contains(word)) {
        return false;
      }
      everyday.putIfAbsent(word, new Name(List.of(word), whole, secret, label));
      return capitalTells(word);
    }
    single.putIfAbsent(word, new Name(List.of(word), whole, secret, label));
    return true;
  }

  /** Whether a capital within a sentence makes a name of an everyday word. */
  private boolean capitalTells(String word) {
    return !nounsHaveCapitals || !CommonWords.isGermanNoun(word);
  }

  /**
   * Notes words that a withheld text writes as names: with a capital within a sentence where that
   * tells, or doing what people do, and never small in any text of the log.
   */
  void withholdNamesIn(String text, CharSequence what, Label label, Set<String> writtenSmall) {
    for (Letters.Word word : Letters.words(text)) {
      String letters = word.letters();
      if (word.hasCapital()
          && (!nounsHaveCapitals && !word.first() || places.isSomebody(text, word))
          && letters.length() >= LEAST
          && letters.chars().allMatch(Character::isLetter)
          && !common.contains(letters)
          && !writtenSmall.contains(letters)
          && !byRight.contains(letters)) {
        proper.putIfAbsent(
            letters,
            new Name(
                List.of(letters),
                true,
                Sentence.of("the name \u201c{0}\u201d of {1}", word.written(), Sentence.of(what)),
                label));
      }
    }
  }

  /** Looks in a name that is shown for a withheld one, whole. */
  List<Hit> findInName(SeenText text) {
    List<Hit> hits = new ArrayList<>();
    List<String> letters = text.words().stream().map(Letters.Word::letters).toList();
    for (Name name : wholes) {
      int at = Collections.indexOfSubList(letters, name.words);
      if (at >= 0 && !name.words.isEmpty()) {
        int end = text.words().get(at + name.words.size() - 1).end();
        hits.add(hit(text.words().get(at).start(), end, name));
      }
    }
    return hits;
  }

  List<Hit> find(SeenText text) {
    List<Hit> hits = new ArrayList<>();
    List<Letters.Word> words = text.words();
    Matcher dotted = DOTTED.matcher(text.text());
    while (!initials.isEmpty() && dotted.find()) {
      Name name = initials.get(Letters.fold(dotted.group().replaceAll("[^\\p{L}]", "")));
      if (name != null) {
        hits.add(hit(dotted.start(), dotted.end(), name));
      }
    }
    int taken = 0;
    for (int i = 0; i < words.size(); i++) {
      int length = Math.max(longest(words, i, text.text(), hits), i < taken ? 1 : 0);
      if (length == 0) {
        length = one(words.get(i), text, hits) ? 1 : 0;
      }
      taken = Math.max(taken, i + length);
    }
    return hits;
  }

  /** How many words from {@code at} on are a run of a name, which is then added. */
  private int longest(List<Letters.Word> words, int at, String text, List<Hit> hits) {
    Name best = null;
    for (Name name : byFirst.getOrDefault(words.get(at).letters(), List.of())) {
      int n = name.words.size();
      if ((best == null || n > best.words.size())
          && at + n <= words.size()
          && isRun(words.subList(at, at + n), name, text)) {
        best = name;
      }
    }
    if (best == null) {
      return 0;
    }
    int n = best.words.size();
    hits.add(hit(words.get(at).start(), words.get(at + n - 1).end(), best));
    return n;
  }

  private boolean isRun(List<Letters.Word> words, Name name, String text) {
    boolean rare = false;
    boolean capitals = true;
    boolean within = false;
    for (int i = 0; i < words.size(); i++) {
      Letters.Word word = words.get(i);
      boolean last = i == words.size() - 1;
      if (!word.letters().equals(name.words.get(i))
          && !(last && isInflected(word.letters(), name.words.get(i)))) {
        return false;
      }
      rare |= !common.contains(name.words.get(i)) && name.words.get(i).length() >= LEAST;
      capitals &= word.hasCapital();
      within |= !word.first();
    }
    int from = words.get(0).start();
    boolean broken =
        text.substring(from, words.get(words.size() - 1).end()).indexOf(Passage.CUT) >= 0;
    return !broken && (rare || capitals && within && (name.whole || !nounsHaveCapitals));
  }

  private boolean one(Letters.Word word, SeenText seen, List<Hit> hits) {
    String text = seen.text();
    String letters = word.letters();
    Name acronym = initials.get(letters);
    if (acronym != null
        && (letters.length() > 2
            || letters.length() == 2 && !OTHER_INITIALS.contains(word.written()))
        && word.written().equals(word.written().toUpperCase(Locale.ROOT))
        && !letters.chars().allMatch(Character::isDigit)) {
      hits.add(hit(word.start(), word.end(), acronym));
      return true;
    }
    if (letters.length() < LEAST) {
      return false;
    }
    for (Name name : together) {
      if (letters.contains(name.words.get(0))) {
        hits.add(hit(word.start(), word.end(), name));
        return true;
      }
    }
    Name named = proper.get(letters);
    if (named != null && word.hasCapital()) {
      hits.add(hit(word.start(), word.end(), named));
      return true;
    }
    for (Name name : single.values()) {
      String known = name.words.get(0);
      if (isInflected(letters, known) || word.hasCapital() && isSlip(letters, known)) {
        hits.add(hit(word.start(), word.end(), name));
        return true;
      }
    }
    if (!word.hasCapital()) {
      return false;
    }
    for (Name name : everyday.values()) {
      String known = name.words.get(0);
      boolean spoken =
          isInflected(letters, known) && (!word.first() && capitalTells(known))
              || (letters.equals(known) || nounsHaveCapitals && letters.equals(known + "s"))
                  && places.isName(text, word);
      if (spoken || isSlip(letters, known)) {
        hits.add(hit(word.start(), word.end(), name));
        return true;
      }
    }
    return false;
  }

  private boolean isSlip(String written, String known) {
    return known.length() >= LEAST_WITH_A_SLIP
        && Math.abs(written.length() - known.length()) <= 1
        && written.charAt(0) == known.charAt(0)
        && !common.contains(written)
        && !byRight.contains(written)
        && Suggestion.distance(written, known) <= 1;
  }

  private static boolean isInflected(String written, String known) {
    return written.startsWith(known) && ENDINGS.contains(written.substring(known.length()));
  }

  private static Hit hit(int start, int end, Name name) {
    return new Hit(Question.Kind.NAME, start, end, name.secret, name.label);
  }

  private static List<String> letters(String text) {
    return Letters.words(text).stream().map(Letters.Word::letters).toList();
  }

  /** Names too short or too common to be looked for. */
  Set<CharSequence> unguarded() {
    return unguarded;
  }
}

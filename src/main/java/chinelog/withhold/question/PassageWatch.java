package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks for words of withheld passages: every run of five words and at least 20 letters, three
 * words of them of four letters or more, or two and one of these long and rare; short phrases
 * whole, and numbers of drawings and files, such as {@code SY-1142/3}.
 */
final class PassageWatch {

  private static final int RUN_WORDS = 5;
  private static final int MORE_WORDS = 7;
  private static final int RUN_LETTERS = 20;

  /** Of a run so many words must be longer than those that join others. */
  private static final int LONG_WORDS = 3;

  private static final int LONG_WORD = 4;

  /** Beside a word of so many letters that is not of everyday speech, one less is enough. */
  private static final int RARE_WORD = 8;

  private static final int PHRASE_LETTERS = 10;
  private static final int NUMBER_LETTERS = 4;
  private static final Pattern NUMBERED =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}])(?=[\\p{L}\\p{N}._/-]*\\p{L})(?=[\\p{L}\\p{N}._/-]*\\d[._/-]?\\d)"
              + "[\\p{L}\\p{N}]+(?:[._/ -]?\\d[\\p{L}\\p{N}]*|[._/-][\\p{L}\\p{N}]+)*");
  private static final Pattern FIGURE =
      Pattern.compile("\\d+[\\p{L}²³]{0,4}\\d?|\\d+(st|nd|rd|th|er|e|te|x\\d+)");
  private static final Pattern DAY = Pattern.compile("\\d{4}-?\\d\\d-?\\d\\d.*");

  private final CommonWords common;
  private final Map<String, Secret> runs = new HashMap<>();
  private final Map<String, List<Phrase>> phrases = new HashMap<>();
  private final Map<String, Number> numbers = new TreeMap<>();
  private final Map<String, Secret> serials = new HashMap<>();
  private final Set<String> numbersByRight = new HashSet<>();

  private record Secret(CharSequence what, Label label) {}

  /** A number, with whatever signs between its letters and digits. */
  private record Number(Pattern spelling, Secret secret) {
    static Number of(String written, Secret secret) {
      String parts =
          written
              .replaceAll("(?<=\\p{L})(?=\\d)|(?<=\\d)(?=\\p{L})", "-")
              .replaceAll("[^\\p{L}\\d]+", "[\\\\s._/\\u2013-]{0,3}");
      return new Number(
          Pattern.compile(
              "(?<![\\p{L}\\d])" + parts + "(?![\\p{L}\\d])",
              Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE),
          secret);
    }
  }

  private record Phrase(List<String> words, Secret secret) {}

  PassageWatch(CommonWords common) {
    this.common = common;
  }

  void show(String text) {
    numbers(text).forEach(n -> numbersByRight.add(Letters.fold(n.group())));
    SerialNumber.in(text).forEach(n -> numbersByRight.add(n.digits()));
  }

  /** Notes a passage that is withheld; whether anything of it can be looked for. */
  boolean withhold(String text, CharSequence what, Label label) {
    Secret secret = new Secret(what, label);
    List<String> words = Letters.all(text).stream().map(Letters.Word::letters).toList();
    boolean any = false;
    for (int i = 0; i + RUN_WORDS <= words.size(); i++) {
      String run = run(words, i);
      if (isLong(words.subList(i, i + RUN_WORDS)) && run.length() >= RUN_LETTERS) {
        runs.putIfAbsent(run, secret);
        any = true;
      } else if (i + MORE_WORDS <= words.size() && isLong(words.subList(i, i + MORE_WORDS))) {
        // Where short words join long ones, it takes more of them to tell anything.
        phrases
            .computeIfAbsent(words.get(i), w -> new ArrayList<>())
            .add(new Phrase(List.copyOf(words.subList(i, i + MORE_WORDS)), secret));
        any = true;
      }
    }
    if (words.size() > 1 && words.size() < RUN_WORDS && isTelling(words)) {
      phrases
          .computeIfAbsent(words.get(0), w -> new ArrayList<>())
          .add(new Phrase(List.copyOf(words), secret));
      any = true;
    }
    return withholdNumbers(text, what, label) || any || words.isEmpty();
  }

  /** Notes the numbers of drawings and files in a text; whether there are any. */
  boolean withholdNumbers(String text, CharSequence what, Label label) {
    List<String> found = numbers(text).stream().map(m -> m.group()).toList();
    for (String number : found) {
      String letters = Letters.fold(number);
      if (!numbersByRight.contains(letters)) {
        Secret secret =
            new Secret(
                Sentence.of("the number \u201c{0}\u201d of {1}", number, Sentence.of(what)), label);
        numbers.putIfAbsent(letters, Number.of(number, secret));
      }
    }
    for (SerialNumber serial : SerialNumber.in(text)) {
      if (serial.isTold() && !numbersByRight.contains(serial.digits())) {
        serials.putIfAbsent(
            serial.digits(),
            new Secret(
                Sentence.of(
                    "the number \u201c{0}\u201d of {1}", serial.digits(), Sentence.of(what)),
                label));
      }
    }
    return !found.isEmpty();
  }

  private boolean isLong(List<String> words) {
    long rare = words.stream().filter(w -> w.length() >= LONG_WORD && !common.contains(w)).count();
    return words.stream().filter(w -> w.length() >= LONG_WORD).count() >= LONG_WORDS
        || rare == LONG_WORDS - 1
            && words.stream().anyMatch(w -> w.length() >= RARE_WORD && !common.contains(w));
  }

  private boolean isTelling(List<String> words) {
    return words.stream().mapToInt(String::length).sum() >= PHRASE_LETTERS
        && words.stream()
            .anyMatch(
                w ->
                    w.length() > 3
                        && !common.contains(w)
                        && !w.chars().allMatch(Character::isDigit));
  }

  private static String run(List<String> words, int from) {
    return String.join(" ", words.subList(from, from + RUN_WORDS));
  }

  private static List<Matcher> numbers(String text) {
    List<Matcher> found = new ArrayList<>();
    Matcher m = NUMBERED.matcher(text);
    int from = 0;
    while (m.find(from)) {
      String letters = Letters.fold(m.group());
      if (letters.length() >= NUMBER_LETTERS
          && letters.chars().anyMatch(Character::isLetter)
          && !FIGURE.matcher(letters).matches()
          && !DAY.matcher(m.group()).matches()) {
        Matcher one = NUMBERED.matcher(text);
        if (one.find(m.start())) {
          found.add(one);
        }
      }
      from = Math.max(m.end(), from + 1);
      if (from > text.length()) {
        break;
      }
    }
    return found;
  }

  List<Hit> find(SeenText text) {
    List<Hit> hits = new ArrayList<>();
    List<Letters.Word> all = text.reading().all();
    List<String> words = all.stream().map(Letters.Word::letters).toList();
    for (int i = 0; i < words.size(); i++) {
      int length = passage(text.text(), all, words, i, hits);
      if (length == 0) {
        length = phrase(text.text(), all, words, i, hits);
      }
      i += Math.max(0, length - 1);
    }
    for (Number number : numbers.values()) {
      Matcher m = number.spelling.matcher(text.text());
      while (m.find()) {
        Secret secret = number.secret;
        hits.add(new Hit(Question.Kind.NUMBER, m.start(), m.end(), secret.what, secret.label));
      }
    }
    for (SerialNumber serial :
        serials.isEmpty() ? List.<SerialNumber>of() : SerialNumber.in(text.text())) {
      Secret secret = serials.get(serial.digits());
      boolean known =
          hits.stream().anyMatch(h -> h.start() < serial.end() && serial.start() < h.end());
      if (secret != null && !known && serial.isTelling()) {
        hits.add(
            new Hit(Question.Kind.NUMBER, serial.start(), serial.end(), secret.what, secret.label));
      }
    }
    return hits;
  }

  private int passage(
      String text, List<Letters.Word> all, List<String> words, int at, List<Hit> hits) {
    int to = at;
    Secret found = null;
    while (to + RUN_WORDS <= words.size()) {
      Secret secret = runs.get(run(words, to));
      if (secret == null || found != null && !secret.equals(found)) {
        break;
      }
      found = secret;
      to++;
    }
    if (found == null) {
      return 0;
    }
    int length = to - at + RUN_WORDS - 1;
    return add(text, all.subList(at, at + length), found, hits) ? length : 0;
  }

  private int phrase(
      String text, List<Letters.Word> all, List<String> words, int at, List<Hit> hits) {
    for (Phrase phrase : phrases.getOrDefault(words.get(at), List.of())) {
      int to = at + phrase.words.size();
      if (to <= words.size()
          && words.subList(at, to).equals(phrase.words)
          && add(text, all.subList(at, to), phrase.secret, hits)) {
        return phrase.words.size();
      }
    }
    return 0;
  }

  private static boolean add(String text, List<Letters.Word> words, Secret secret, List<Hit> hits) {
    int start = words.get(0).start();
    int end = words.get(words.size() - 1).end();
    if (text.substring(start, end).indexOf(Passage.CUT) >= 0) {
      return false;
    }
    hits.add(new Hit(Question.Kind.PASSAGE, start, end, secret.what, secret.label));
    return true;
  }
}

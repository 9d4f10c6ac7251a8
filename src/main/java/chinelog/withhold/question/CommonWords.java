package chinelog.withhold.question;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Words that name nobody by themselves: those of a list, and those that this log itself writes
 * small in three texts or more and never with a capital within a sentence.
 */
final class CommonWords {

  private static final Map<String, Set<String>> SECTIONS = load();
  private static final Set<String> LISTED =
      SECTIONS.values().stream().flatMap(Set::stream).collect(Collectors.toUnmodifiableSet());
  private static final int OFTEN = 3;

  private final Set<String> ofLog = new HashSet<>();

  CommonWords(List<SeenText> texts) {
    Map<String, Integer> small = new HashMap<>();
    Set<String> capital = new HashSet<>();
    for (SeenText text : texts) {
      Set<String> here = new HashSet<>();
      for (Letters.Word word : text.words()) {
        if (!word.hasCapital()) {
          here.add(word.letters());
        } else if (!word.first()) {
          capital.add(word.letters());
        }
      }
      here.forEach(w -> small.merge(w, 1, Integer::sum));
    }
    small.forEach(
        (word, count) -> {
          if (count >= OFTEN && !capital.contains(word)) {
            ofLog.add(word);
          }
        });
  }

  boolean contains(String letters) {
    return LISTED.contains(letters) || ofLog.contains(letters);
  }

  /** Those of the list. */
  static Set<String> listed() {
    return LISTED;
  }

  /** Whether it is a noun that German writes with a capital wherever it stands. */
  static boolean isGermanNoun(String letters) {
    return of("de", letters) || standsBare(letters);
  }

  /** Whether German uses it without an article, as it does names. */
  static boolean standsBare(String letters) {
    return of("de without an article", letters);
  }

  /** Whether it is the name of a thing that may well be a title by itself. */
  static boolean isThing(String letters) {
    return of("things, which make a title or fill a cell by themselves", letters);
  }

  private static boolean of(String section, String letters) {
    return SECTIONS.getOrDefault(section, Set.of()).contains(letters);
  }

  private static Map<String, Set<String>> load() {
    Map<String, Set<String>> sections = new HashMap<>();
    String section = "";
    for (String line : Resource.all("common-words.txt")) {
      if (line.startsWith("#")) {
        section = line.substring(1).strip();
      } else {
        sections.computeIfAbsent(section, s -> new HashSet<>()).addAll(List.of(line.split(" ")));
      }
    }
    return sections;
  }

  /** Word lists that come with the program. */
  static final class Resource {

    private Resource() {}

    /** The lines of a list, without its remarks. */
    static List<String> lines(String name) {
      return all(name).stream().filter(l -> !l.startsWith("#")).toList();
    }

    /** All lines of a list. */
    static List<String> all(String name) {
      try (InputStream in = CommonWords.class.getResourceAsStream(name);
          BufferedReader reader =
              new BufferedReader(
                  new InputStreamReader(Objects.requireNonNull(in), StandardCharsets.UTF_8))) {
        return reader.lines().filter(l -> !l.isBlank()).toList();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}

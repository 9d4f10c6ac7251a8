package chinelog.withhold.question;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * Words that name nobody by themselves: those of a list, and those that this log itself writes
 * small in three texts or more and never with a capital within a sentence.
 */
final class CommonWords {

  private static final Set<String> LISTED = load();
  private static final int OFTEN = 3;

  private final Set<String> ofLog = new HashSet<>();

  CommonWords(List<Seen> texts) {
    Map<String, Integer> small = new HashMap<>();
    Set<String> capital = new HashSet<>();
    for (Seen text : texts) {
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
    return Collections.unmodifiableSet(LISTED);
  }

  private static Set<String> load() {
    Set<String> words = new HashSet<>();
    for (String line : Resource.lines("common-words.txt")) {
      words.addAll(List.of(line.split(" ")));
    }
    return words;
  }

  /** Word lists that come with the program. */
  static final class Resource {

    private Resource() {}

    /** The lines of a list, without its remarks. */
    static List<String> lines(String name) {
      try (InputStream in = CommonWords.class.getResourceAsStream(name);
          BufferedReader reader =
              new BufferedReader(
                  new InputStreamReader(Objects.requireNonNull(in), StandardCharsets.UTF_8))) {
        return reader.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).toList();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}

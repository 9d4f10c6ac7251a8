package chinelog.log.reading;

import chinelog.problem.Place;
import chinelog.problem.Sentence;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A value that a comma has cut short between braces, where it parts one key from the next: of
 * {@code {with: Skerrick Yard, Orkney}} only {@code Skerrick Yard} is read.
 *
 * @param place of the value
 */
record CutShort(Place place, CharSequence what, CharSequence remedy) {

  /**
   * What was cut short before a word that stands where a key belongs; null if nothing was.
   *
   * @param rest the word, one of the mapping's keys
   */
  static @Nullable CutShort findBefore(Yaml.Mapping mapping, Yaml.Scalar rest) {
    List<Yaml.Pair> pairs = mapping.pairs();
    int first = 0;
    while (first < pairs.size() && pairs.get(first).key() != rest) {
      first++;
    }
    if (first == 0 || first == pairs.size() || !isAlone(pairs.get(first))) {
      return null;
    }
    Yaml.Pair before = pairs.get(first - 1);
    if (!(before.value() instanceof Yaml.Scalar cut) || cut.isEmpty() || !cut.plain()) {
      return null;
    }
    StringBuilder whole = new StringBuilder(cut.text());
    for (int i = first; i < pairs.size() && isAlone(pairs.get(i)); i++) {
      whole.append(", ").append(pairs.get(i).key().text());
    }
    boolean number = cut.text().matches(".*[0-9]") && rest.text().matches("[0-9].*");
    return new CutShort(
        cut.place(),
        Sentence.of(
            "Between braces a comma ends a value: \"{0}\" is only \"{1}\" here.",
            before.key().text(), cut.text()),
        number
            ? Sentence.of("Write a decimal point: {0}.", cut.text() + "." + rest.text())
            : Sentence.of("Put it in quotes: {0}.", before.key().text() + ": \"" + whole + "\""));
  }

  /** Whether the rest before this was told already. */
  static boolean isTold(Yaml.Mapping mapping, Yaml.Scalar rest) {
    Yaml.Pair before = null;
    for (Yaml.Pair pair : mapping.pairs()) {
      if (pair.key() == rest) {
        return isAlone(pair) && before != null && isAlone(before) && !before.key().text().isEmpty();
      }
      before = pair;
    }
    return false;
  }

  private static boolean isAlone(Yaml.Pair pair) {
    return pair.value() instanceof Yaml.Scalar value && value.isEmpty() && value.plain();
  }
}

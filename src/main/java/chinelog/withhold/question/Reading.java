package chinelog.withhold.question;

import chinelog.quantity.NumberWords;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A text taken apart once for all who look into it. */
final class Reading {

  private final String text;
  private final List<Letters.Word> all;
  private final List<Letters.Word> words;
  private @Nullable List<Mention> mentions;

  Reading(String text) {
    this.text = text;
    this.all = Letters.all(text);
    this.words = Letters.withoutJoints(all);
  }

  String text() {
    return text;
  }

  List<Letters.Word> all() {
    return all;
  }

  /** The words but for those that only join others. */
  List<Letters.Word> words() {
    return words;
  }

  /**
   * The figures of the text.
   *
   * @param languages the same each time
   */
  List<Mention> mentions(List<NumberWords> languages) {
    List<Mention> found = mentions;
    if (found == null) {
      found = Mentions.in(text, all, languages);
      mentions = found;
    }
    return found;
  }
}

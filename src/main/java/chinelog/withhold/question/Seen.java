package chinelog.withhold.question;

import java.util.List;

/**
 * A text as some readers get it.
 *
 * @param words of the text, but for those that only join others
 */
record Seen(Passage passage, String text, List<Letters.Word> words) {

  static Seen of(Passage passage, String text) {
    return new Seen(passage, text, Letters.words(text));
  }
}

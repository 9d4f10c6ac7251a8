package chinelog.wording;

import chinelog.quantity.Quantity;
import java.util.List;

/**
 * A fragment of text that is put into words only when it is shown: {@link Catalogue#text(Phrase)}.
 */
public sealed interface Phrase
    permits Message, Phrase.Own, Phrase.Count, Phrase.Amount, Phrase.Joined {

  /** Somebody's own words, such as an author's title, a name or a date: never translated. */
  record Own(String text) implements Phrase {}

  /** A number or a day that tells one of many from the others, such as the 3 of a third. */
  record Count(String text) implements Phrase {}

  /** A quantity, shown as the language writes numbers. */
  record Amount(Quantity value) implements Phrase {}

  /** One after the other, such as the figures and signs of a sum put in: 2,377 cm³ × 1 g/cm³. */
  record Joined(List<Phrase> parts) implements Phrase {
    public Joined {
      parts = List.copyOf(parts);
    }
  }

  static Phrase own(String text) {
    return new Own(text);
  }
}

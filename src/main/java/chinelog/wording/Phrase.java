package chinelog.wording;

import chinelog.quantity.Quantity;

/** A piece of text that is put into words only when it is shown: {@link Catalogue#text(Phrase)}. */
public sealed interface Phrase permits Message, Phrase.Own, Phrase.Amount {

  /** Somebody's own words, such as an author's title, a name or a date: never translated. */
  record Own(String text) implements Phrase {}

  /** A quantity, shown as the language writes numbers. */
  record Amount(Quantity value) implements Phrase {}

  static Phrase own(String text) {
    return new Own(text);
  }
}

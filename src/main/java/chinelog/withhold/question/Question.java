package chinelog.withhold.question;

import chinelog.digest.Sha256;
import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.problem.Place;

/**
 * Something found that may need a mark.
 *
 * @param id stable, such as {@code q3f09b2c81a}: another as soon as the text or picture it is about
 *     changes, or the agreement
 * @param found what stands there, such as "187 mm"
 * @param about the sentence in which it stands, or the hash of the picture
 * @param secret what of the withheld it may give away, such as "the figure full.beam, 2.99 m"
 * @param label what that is under
 */
record Question(
    Kind kind,
    String id,
    Place place,
    CharSequence found,
    String about,
    CharSequence secret,
    Label label) {

  private static final int ID_DIGITS = 10;

  /** What was found, worst first. */
  enum Kind {
    /** Something that was kept back before and that no mark covers any more. */
    LOST,
    /** An open paragraph beside a marked one that says nothing: the mark may stand a line off. */
    PLACE,
    /** A photograph that may belong to a withheld note. */
    PICTURE,
    /** A name, or a part of one. */
    NAME,
    /** Words of a withheld passage. */
    PASSAGE,
    /** The number of a sheet, or another name with digits. */
    NUMBER,
    /** Figures that follow each other as in a table, or another table with such. */
    TABLE,
    /** A figure. */
    FIGURE,
    /** A fact that equals a withheld one under another name. */
    ALIAS,
    /** The day of something withheld. */
    DAY,
    /** An agreement that has ended, which frees what it covered. */
    ENDED
  }

  /**
   * A question.
   *
   * @param about the text or the hash of the picture in which it was found
   */
  static Question of(
      Kind kind,
      Log log,
      Place place,
      CharSequence found,
      String about,
      CharSequence secret,
      Label label) {
    StringBuilder terms = new StringBuilder();
    for (String id : label.agreements()) {
      Agreement a = log.agreements().get(id);
      terms.append(id).append('\0').append(a == null ? "" : a.toString()).append('\0');
    }
    String all =
        String.join("\0", kind.name(), place.file(), found, about, secret, terms.toString());
    return new Question(kind, "q" + hash(all), place, found, about, secret, label);
  }

  static String hash(String text) {
    return Sha256.of(text).substring(0, ID_DIGITS);
  }
}

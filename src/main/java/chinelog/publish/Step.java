package chinelog.publish;

import chinelog.wording.Catalogue;
import java.util.Locale;

/**
 * What is being done at the moment, such as printing the build book for public; put into words only
 * when it is told.
 *
 * @param readers for whom; empty if it is for all
 * @param done how many of the things it goes through, from 1; 0 where it does not go through many
 * @param of how many there are
 * @param percent how much of the whole work is done; −1 where that is not known
 * @param secondsLeft how long the rest may take
 * @param secondsGone how long this step has taken so far
 */
public record Step(
    Kind kind,
    String readers,
    int done,
    int of,
    int percent,
    double secondsLeft,
    double secondsGone) {

  private static final int SECONDS_TO_TELL = 90;

  /** What is over sooner is not told by the second. */
  private static final double LONG_SECONDS = 2;

  /** What sort of work it is. */
  public enum Kind {
    LOOKING_AT_CHANGES,
    READING,
    LOOKING_AT_PHOTOGRAPHS,
    RECKONING,
    WITHHOLDING,
    MAKING_PHOTOGRAPHS,
    COMPARING_PHOTOGRAPHS,
    SEARCHING_PHOTOGRAPHS,
    ASKING,
    WRITING_SITE,
    PRINTING_BOOK,
    PRINTING_HANDOVER,
    PRINTING_HANDOVER_SHEETS,
    PRINTING_PRINT_READY,
    PRINTING_LETTER,
    PRINTING_PHOTO_SHEET,
    PRINTING_QUOTATION,
    DRAWING_PATTERNS,
    PREPARING_TALK,
    AUDITING,
    WITHHOLDING_FORM,
    PRINTING_FORM,
    AUDITING_FORM
  }

  public static Step of(Kind kind) {
    return of(kind, "");
  }

  static Step of(Kind kind, String readers) {
    return new Step(kind, readers, 0, 0, -1, 0, 0);
  }

  Step at(int doneNow, int ofAll) {
    return new Step(kind, readers, doneNow, ofAll, percent, secondsLeft, secondsGone);
  }

  Step with(int percentNow, double left) {
    return new Step(kind, readers, done, of, percentNow, left, secondsGone);
  }

  Step since(double seconds) {
    return new Step(kind, readers, done, of, percent, secondsLeft, seconds);
  }

  /** Names the step from one run to the next, whatever it has come to. */
  String name() {
    return readers.isEmpty() ? kind.name() : kind.name() + " " + readers;
  }

  /** Such as "printing the build book for public, 40 %, about 25 s more". */
  public String words(Locale locale) {
    Catalogue words = Catalogue.of("chinelog.publish.steps", locale);
    String told = words.text("step." + kind.name(), readers);
    if (of > 0) {
      told = words.text("step.of", told, String.valueOf(done), String.valueOf(of));
    }
    if (percent >= 0) {
      long left = Math.round(secondsLeft);
      boolean inSeconds = left < SECONDS_TO_TELL;
      told =
          words.text(
              inSeconds ? "step.seconds" : "step.minutes",
              told,
              String.valueOf(percent),
              String.valueOf(inSeconds ? left : (left + 30) / 60));
    } else if (secondsGone >= LONG_SECONDS) {
      told = words.text("step.so-far", told, String.valueOf(Math.round(secondsGone)));
    }
    return told;
  }
}

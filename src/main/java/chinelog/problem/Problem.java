package chinelog.problem;

import java.util.Comparator;
import java.util.Locale;

/**
 * Something wrong in a log, such as {@code log.yaml:4:3: error: "scael" is not a key here. Write
 * "scale".}
 *
 * @param what what was found, a full sentence with its stop
 * @param remedy what to write or do instead, a full sentence with its stop
 */
public record Problem(Severity severity, Place place, Sentence what, Sentence remedy)
    implements Comparable<Problem> {

  private static final Comparator<Problem> WORST_FIRST =
      Comparator.comparing(Problem::severity)
          .thenComparing(Problem::place)
          .thenComparing(p -> p.what().toString());

  public static Problem error(Place place, CharSequence what, CharSequence remedy) {
    return new Problem(Severity.ERROR, place, Sentence.of(what), Sentence.of(remedy));
  }

  public static Problem question(Place place, CharSequence what, CharSequence remedy) {
    return new Problem(Severity.QUESTION, place, Sentence.of(what), Sentence.of(remedy));
  }

  public static Problem reminder(Place place, CharSequence what, CharSequence remedy) {
    return new Problem(Severity.REMINDER, place, Sentence.of(what), Sentence.of(remedy));
  }

  /** How bad a problem is, worst first. */
  public enum Severity {
    /** Nothing may be published until this is put right. */
    ERROR(Sentence.of("error")),
    /** Nothing may be published until the maker has marked it, left it out, or let it stand. */
    QUESTION(Sentence.of("question")),
    /** Worth a look; publishing goes on. */
    REMINDER(Sentence.of("reminder"));

    private final Sentence word;

    Severity(Sentence word) {
      this.word = word;
    }
  }

  /** Whether it keeps the log from being published: an error or a question that is open. */
  public boolean isError() {
    return severity != Severity.REMINDER;
  }

  @Override
  public int compareTo(Problem other) {
    return WORST_FIRST.compare(this, other);
  }

  /** What is wrong and what to do, in a language. */
  public String words(Locale locale) {
    return what.in(locale) + " " + remedy.in(locale);
  }

  /** As the command line tells it, in a language. */
  public String line(Locale locale) {
    return place + ": " + severity.word.in(locale) + ": " + words(locale);
  }

  @Override
  public String toString() {
    return line(Locale.ENGLISH);
  }
}

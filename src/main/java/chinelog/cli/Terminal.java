package chinelog.cli;

import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.publish.Outcome;
import chinelog.publish.Progress;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Where a command prints.
 *
 * @param terminal whether somebody watches: progress is told only then
 * @param quiet whether only what is wrong is told
 * @param language of what is wrong, where that has been translated
 * @param answers what is answered to a question; nothing where nobody watches
 */
record Terminal(
    PrintWriter out,
    PrintWriter err,
    boolean terminal,
    boolean quiet,
    Locale language,
    UnaryOperator<String> answers) {

  private static final String CLEAR_LINE = "\r\u001b[K";

  Terminal(PrintWriter out, PrintWriter err, boolean terminal) {
    this(out, err, terminal, false, Locale.ENGLISH, question -> "");
  }

  /** For somebody who watches and can be asked. */
  Terminal(PrintWriter out, PrintWriter err, UnaryOperator<String> answers) {
    this(out, err, true, false, Locale.ENGLISH, answers);
  }

  /** The answer to a question, without blanks around it; empty where nobody can be asked. */
  String ask(String question) {
    return answers.apply(worded(question)).strip();
  }

  /** A sentence of the program's own, in the language. */
  String worded(String english, @Nullable Object... parts) {
    return Sentence.of(english, parts).in(language);
  }

  /** Prints what was done. */
  void say(String english, @Nullable Object... parts) {
    out.println(worded(english, parts));
  }

  /** Prints what the maker should know besides. */
  void warn(CharSequence english, @Nullable Object... parts) {
    err.println(
        english instanceof Sentence sentence
            ? sentence.in(language)
            : worded(english.toString(), parts));
  }

  /** So many things, such as {@code 3 photographs}. */
  static Sentence counted(long n, String one, String several) {
    return Sentence.of(n == 1 ? one : several, n);
  }

  /** Parts joined by commas, in the language. */
  String list(List<? extends CharSequence> parts) {
    return parts.stream()
        .map(p -> p instanceof Sentence sentence ? sentence.in(language) : p.toString())
        .collect(Collectors.joining(", "));
  }

  /** The same, but in the language of a log. */
  Terminal in(Locale other) {
    return new Terminal(out, err, terminal, quiet, other, answers);
  }

  /** The same, but for those who want to be told only what is wrong. */
  Terminal hushed() {
    return new Terminal(new PrintWriter(Writer.nullWriter()), err, false, true, language, q -> "");
  }

  /** Tells each step on one line that the next overwrites. */
  Progress progress() {
    return terminal ? step -> doing(step.words(language)) : Progress.SILENT;
  }

  /** Tells what is being done, on the line of the steps. */
  void doing(String words) {
    if (terminal) {
      synchronized (err) {
        err.print(CLEAR_LINE + words + " \u2026");
        err.flush();
      }
    }
  }

  void endProgress() {
    if (terminal) {
      err.print(CLEAR_LINE);
      err.flush();
    }
  }

  /** Prints all problems, worst first, and how many there are. */
  void problems(List<Problem> all) {
    List<Problem> problems = all.stream().filter(p -> p.isError() || !quiet).toList();
    problems.forEach(p -> err.println(p.line(language)));
    long errors = problems.stream().filter(Problem::isError).count();
    long questions =
        problems.stream().filter(p -> p.severity() == Problem.Severity.QUESTION).count();
    long reminders = problems.size() - errors;
    if (!problems.isEmpty()) {
      err.println(
          list(
              Stream.of(
                      counted(errors - questions, "{0} error", "{0} errors"),
                      questions == 0 ? null : counted(questions, "{0} question", "{0} questions"),
                      reminders == 0 ? null : counted(reminders, "{0} reminder", "{0} reminders"))
                  .filter(Objects::nonNull)
                  .toList()));
    }
  }

  /**
   * Prints what is asked, worst first.
   *
   * @param found how many things were found, of which one answer may settle several
   */
  void questions(List<Problem> questions, int found) {
    questions.forEach(q -> err.println(q.line(language)));
    if (!questions.isEmpty()) {
      Sentence asked = counted(found, "{0} question", "{0} questions");
      warn(
          questions.size() == 1
              ? Sentence.of(
                  "{0}; one answer settles it all. Nothing is published for these readers until"
                      + " then.",
                  asked)
              : Sentence.of(
                  "{0}; {1} answers settle them all. Nothing is published for these readers until"
                      + " then.",
                  asked, questions.size()));
    }
  }

  /**
   * Prints what an audit found.
   *
   * @param after what has become of the editions
   */
  void findings(Outcome outcome, Sentence after) {
    for (Outcome.Made edition : outcome.editions()) {
      edition.findings().forEach(f -> err.println(edition.readers() + "/" + f.in(language)));
    }
    warn(Sentence.of("The audit found what must not be there. {0}", after));
  }

  /** A command as it is to be typed where the program was started. */
  static String command(String command, Path log) {
    String quoted = log.toString().contains(" ") ? "\"" + log + "\"" : log.toString();
    return System.getProperty("chinelog.command", "chinelog") + " " + command + " " + quoted;
  }
}

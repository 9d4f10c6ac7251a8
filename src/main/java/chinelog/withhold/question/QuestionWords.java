package chinelog.withhold.question;

import chinelog.label.Agreement;
import chinelog.problem.Sentence;
import java.util.stream.Collectors;

/** Questions in words, for the maker alone. */
final class QuestionWords {

  private QuestionWords() {}

  /** What was found. */
  static Sentence what(Question q) {
    CharSequence found =
        switch (q.kind()) {
          case PICTURE, ALIAS, ENDED -> Sentence.of(q.found());
          default -> Sentence.of("\u201c{0}\u201d", q.found());
        };
    return Sentence.of(what(q.kind()), found, Sentence.of(q.secret()), under(q));
  }

  private static String what(Question.Kind kind) {
    return switch (kind) {
      case LOST ->
          "{0}, of {1}, was kept back{2}, when this was last published, and no mark covers it now.";
      case PLACE ->
          "{0} is open, and the mark beside it covers only {1}{2}. Does it stand a line off?";
      case PICTURE -> "Does {0} show anything of {1}{2}?";
      case NAME -> "{0} may name {1}{2}.";
      case PASSAGE -> "{0} also stands in {1}{2}.";
      case NUMBER, DAY -> "{0} may be {1}{2}.";
      case TABLE -> "{0} may hold figures of {1}{2}.";
      case FIGURE -> "{0} may give away {1}{2}.";
      case ALIAS -> "Is {0} the same thing as {1}{2}?";
      case ENDED -> "Is {0} right, and the clock of this computer too? It lets everybody see {1}.";
    };
  }

  private static Sentence under(Question q) {
    return isOwn(q)
        ? Sentence.of(", which is the workshop's own")
        : Sentence.of(", under {0}", q.label().inWords());
  }

  private static boolean isOwn(Question q) {
    return q.label().agreements().stream().allMatch(Agreement::isOwn);
  }

  /** The key that says which readers are told what the workshop else keeps to itself. */
  private static String tell(Question q) {
    boolean money = q.label().agreements().contains(Agreement.OWN_MONEY);
    return "\u201ctell: {" + (money ? "money" : "client") + ": [public]}\u201d";
  }

  /** What to do if the answer is that it must not be seen. */
  static Sentence remedy(Question q) {
    if (isOwn(q) && q.kind() != Question.Kind.ALIAS) {
      return Sentence.of(
          "Take it out, or say in log.yaml who may see such things, as in {0}.", tell(q));
    }
    String mark =
        q.label().agreements().stream()
            .filter(id -> !Agreement.isOwn(id))
            .collect(Collectors.joining(","));
    return switch (q.kind()) {
      case PICTURE ->
          Sentence.of(
              "If so, write \u201cunder: {0}\u201d or \u201cleave-out: true\u201d for it in photos.yaml.",
              mark);
      case LOST -> Sentence.of("Put the mark back where it was.");
      case PLACE -> Sentence.of("If so, put it at the end of what it is to cover.");
      case ALIAS -> Sentence.of("If so, put it under the agreement too.");
      case TABLE -> Sentence.of("Put it under the agreement too, or take it out.");
      case ENDED -> Sentence.of("If not, correct \u201cuntil\u201d or the clock.");
      case NAME, PASSAGE, NUMBER, FIGURE, DAY ->
          Sentence.of(
              "Put it under the agreement, such as [{0}]{under={1}}, or take it out.",
              q.found().length() > 40 ? "\u2026" : q.found(), mark);
    };
  }
}

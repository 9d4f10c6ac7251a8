package chinelog.withhold.question;

import chinelog.label.Agreement;
import java.util.stream.Collectors;

/** Questions in words, for the maker alone. */
final class Wording {

  private Wording() {}

  /** What was found. */
  static String what(Question q) {
    String found = "\u201c" + q.found() + "\u201d";
    return switch (q.kind()) {
      case LOST ->
          found
              + ", of "
              + q.secret()
              + ", was kept back"
              + under(q)
              + ", when this was last published, and no mark covers it now.";
      case PLACE ->
          found
              + " is open, and the mark beside it covers only "
              + q.secret()
              + under(q)
              + ". Does it stand a line off?";
      case PICTURE -> "Does " + q.found() + " show anything of " + q.secret() + under(q) + "?";
      case NAME -> found + " may name " + q.secret() + under(q) + ".";
      case PASSAGE -> found + " also stands in " + q.secret() + under(q) + ".";
      case NUMBER -> found + " may be " + q.secret() + under(q) + ".";
      case TABLE -> found + " may hold figures of " + q.secret() + under(q) + ".";
      case FIGURE -> found + " may give away " + q.secret() + under(q) + ".";
      case ALIAS -> "Is " + q.found() + " the same thing as " + q.secret() + under(q) + "?";
      case DAY -> found + " may be " + q.secret() + under(q) + ".";
      case ENDED ->
          "Is "
              + q.found()
              + " right, and the clock of this computer too? It lets everybody see "
              + q.secret()
              + ".";
    };
  }

  private static String under(Question q) {
    return isOwn(q) ? ", which is the workshop's own" : ", under " + q.label().inWords();
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
  static String remedy(Question q) {
    if (isOwn(q) && q.kind() != Question.Kind.ALIAS) {
      return "Take it out, or say in log.yaml who may see such things, as in " + tell(q) + ".";
    }
    String mark =
        q.label().agreements().stream()
            .filter(id -> !Agreement.isOwn(id))
            .collect(Collectors.joining(","));
    return switch (q.kind()) {
      case PICTURE ->
          "If so, write \u201cunder: "
              + mark
              + "\u201d or \u201cleave-out: true\u201d for it in photos.yaml.";
      case LOST -> "Put the mark back where it was.";
      case PLACE -> "If so, put it at the end of what it is to cover.";
      case ALIAS -> "If so, put it under the agreement too.";
      case TABLE -> "Put it under the agreement too, or take it out.";
      case ENDED -> "If not, correct \u201cuntil\u201d or the clock.";
      case NAME, PASSAGE, NUMBER, FIGURE, DAY ->
          "Put it under the agreement, such as ["
              + (q.found().length() > 40 ? "\u2026" : q.found())
              + "]{under="
              + mark
              + "}, or take it out.";
    };
  }
}

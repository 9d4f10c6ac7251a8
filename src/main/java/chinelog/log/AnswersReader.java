package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Answer;
import chinelog.problem.Sentence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Reads answers.yaml: what the maker said to questions. Whoever marks a thing or leaves it out does
 * so where it stands, and the question is gone; so the only answer here is {@code may-stand}.
 */
final class AnswersReader {

  private static final String ID = "[apq][0-9a-f]{10}";

  private final Scope scope;

  AnswersReader(Scope scope) {
    this.scope = scope;
  }

  List<Answer> read(Yaml root) {
    if (!(root instanceof Yaml.Sequence list)) {
      scope.error(
          root.place(),
          Sentence.of(
              "Here stands {0}, where a list of answers belongs.", Sentence.of(root.kind())),
          "Write each answer as check prints it, beginning with \"- questions:\".");
      return List.of();
    }
    List<Answer> answers = new ArrayList<>();
    for (Yaml item : list.items()) {
      Fields fields =
          Fields.of(item, scope, Label.NONE, "questions", "about", "answer", "reason", "on");
      fields.require("questions", "[q3f09b2c81a]");
      fields.require("answer", "may-stand");
      fields.knownWords("answer", List.of("may-stand"), "an answer");
      Yaml reason = fields.require("reason", "the word is a colour here");
      Yaml on = fields.require("on", "2026-05-20");
      LocalDate day = fields.pastDate("on");
      String why = fields.text("reason", "");
      // The dots of the question, taken over as they stand, are no reason.
      boolean given = why.codePoints().anyMatch(Character::isLetterOrDigit);
      if (reason != null && !given) {
        scope.error(
            reason.place(), "No reason is given.", "Write in a few words why it may stand.");
      }
      Set<String> ids = ids(fields);
      if (on != null && day != null && given) {
        answers.add(new Answer(ids, why, day, fields.place()));
      }
    }
    return List.copyOf(answers);
  }

  private Set<String> ids(Fields fields) {
    Set<String> ids = new LinkedHashSet<>();
    for (Yaml.Scalar word : fields.words("questions")) {
      if (word.text().matches(ID)) {
        ids.add(word.text());
      } else {
        scope.error(
            word.place(),
            Sentence.of("\"{0}\" is not the name of a question.", word.text()),
            "Copy it from what check prints: a q or p with ten letters and digits after it.");
      }
    }
    return ids;
  }
}

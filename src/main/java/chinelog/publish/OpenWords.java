package chinelog.publish;

import chinelog.audit.Audit;
import chinelog.digest.Sha256;
import chinelog.label.Agreement;
import chinelog.log.records.Readers;
import chinelog.markup.Wording;
import chinelog.problem.Problem;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.OpenTexts;
import chinelog.withhold.question.Questions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What the audit would find in the maker's own open words once they are published: a question for
 * each passage, before anything is written, so that no edition is refused for words that nobody
 * could answer for.
 *
 * @param mayStand texts that the readers may get: what the program words itself, words of everyday
 *     speech, figures that are shown, and what the maker said may stand
 * @param questions what nobody has answered yet
 */
record OpenWords(Set<String> mayStand, List<Problem> questions) {

  private static final int ID_DIGITS = 10;
  private static final int MOST_SHOWN = 60;

  static OpenWords of(
      Workshop.Opened opened,
      Readers group,
      Withholder.Withheld withheld,
      Questions.Asked asked,
      LocalDate asOf) {
    Set<String> mayStand = new TreeSet<>(asked.standing());
    mayStand.addAll(Questions.everydayWords());
    mayStand.addAll(Wording.of(opened.log().head().locale()).all());
    mayStand.addAll(Canaries.shown(opened, withheld));
    List<OpenTexts.Open> texts = OpenTexts.of(opened.log(), opened.album(), group, asOf);
    texts.forEach(t -> mayStand.add(OpenTexts.kept(t, asked.settled())));
    // Where something is asked already, nothing is asked twice.
    Set<String> open = new TreeSet<>(mayStand);
    texts.forEach(t -> open.add(OpenTexts.kept(t, asked.sentences())));
    List<SortedSet<String>> found =
        Audit.openly(
            texts.stream().map(OpenTexts.Open::text).toList(),
            opened.log(),
            group.id(),
            withheld.clearance(),
            Canaries.of(opened, withheld),
            open);
    List<Problem> questions = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      if (!found.get(i).isEmpty()) {
        String id = id(texts.get(i), found.get(i), opened, withheld);
        if (opened.answers().stream().anyMatch(a -> a.questions().contains(id))) {
          mayStand.add(texts.get(i).text());
        } else {
          questions.add(question(texts.get(i), found.get(i), id, group, asOf));
        }
      }
    }
    return new OpenWords(mayStand, questions);
  }

  /** Another as soon as the text changes, what is found in it, or an agreement. */
  private static String id(
      OpenTexts.Open text,
      SortedSet<String> found,
      Workshop.Opened opened,
      Withholder.Withheld withheld) {
    String terms =
        opened.log().agreements().values().stream()
            .filter(a -> !withheld.clearance().agreements().contains(a.id()))
            .map(Agreement::toString)
            .collect(Collectors.joining("\0"));
    String all = String.join("\0", text.place().file(), text.text(), found.toString(), terms);
    return "a" + Sha256.of(all).substring(0, ID_DIGITS);
  }

  private static Problem question(
      OpenTexts.Open text, SortedSet<String> found, String id, Readers group, LocalDate asOf) {
    String words = text.text().strip().replaceAll("\\s+", " ");
    String shown =
        words.length() > MOST_SHOWN ? words.substring(0, MOST_SHOWN) + "\u2026" : words;
    return Problem.question(
        text.place(),
        "In \u201c"
            + shown
            + "\u201d, "
            + text.what()
            + ", stands what is withheld elsewhere. "
            + String.join(" ", found)
            + " Seen by "
            + group.id()
            + ".",
        "Put it under the agreement, or take it out. If it may stand, write into answers.yaml:"
            + " - {questions: ["
            + id
            + "], answer: may-stand, reason: \u2026, on: "
            + asOf
            + "}");
  }
}

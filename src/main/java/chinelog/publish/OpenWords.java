package chinelog.publish;

import chinelog.audit.Audit;
import chinelog.digest.Sha256;
import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Readers;
import chinelog.markup.Wording;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.OpenTexts;
import chinelog.withhold.question.Questions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What the audit would find in the maker's own open words once they are published: a question for
 * each passage, before anything is written, so that no edition is refused for words that nobody
 * could answer for.
 *
 * @param mayStand texts that the readers may get: what the program words itself, words of everyday
 *     speech, figures that are shown, and what the maker said may stand
 * @param asked what nobody has answered yet
 */
record OpenWords(Set<String> mayStand, List<Asking> asked) {

  private static final int ID_DIGITS = 10;
  private static final int MOST_SHOWN = 60;

  /**
   * A question.
   *
   * @param id to be named in the answer
   * @param found what the audit would say
   */
  record Asking(String id, OpenTexts.Open text, SortedSet<Sentence> found) {}

  static OpenWords of(
      Workshop.Opened opened,
      Readers group,
      Withholder.Withheld withheld,
      Questions.Asked before,
      LocalDate asOf) {
    Set<String> mayStand = new TreeSet<>(before.standing());
    mayStand.addAll(Questions.everydayWords());
    mayStand.addAll(Wording.of(opened.log().head().locale()).all());
    mayStand.addAll(Canaries.shown(opened, withheld));
    List<OpenTexts.Open> texts = OpenTexts.of(opened.log(), opened.album(), group, asOf);
    texts.forEach(t -> mayStand.add(OpenTexts.kept(t, before.settled())));
    // Where something is asked already, nothing is asked twice.
    Set<String> open = new TreeSet<>(mayStand);
    texts.forEach(t -> open.add(OpenTexts.kept(t, before.sentences())));
    List<SortedSet<Sentence>> found =
        Audit.openly(
            texts.stream().map(OpenTexts.Open::text).toList(),
            opened.log(),
            group.id(),
            withheld.clearance(),
            Canaries.of(opened, withheld),
            open);
    List<Asking> questions = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      if (!found.get(i).isEmpty()) {
        String id = id(texts.get(i), found.get(i), opened);
        if (opened.answers().stream().anyMatch(a -> a.questions().contains(id))) {
          mayStand.add(texts.get(i).text());
        } else {
          questions.add(new Asking(id, texts.get(i), found.get(i)));
        }
      }
    }
    return new OpenWords(mayStand, questions);
  }

  /** Another as soon as the text changes, what is found in it, or an agreement. */
  private static String id(OpenTexts.Open text, SortedSet<Sentence> found, Workshop.Opened opened) {
    String terms =
        opened.log().agreements().values().stream()
            .map(Agreement::toString)
            .collect(Collectors.joining("\0"));
    String all = String.join("\0", text.place().file(), text.text(), found.toString(), terms);
    return "a" + Sha256.of(all).substring(0, ID_DIGITS);
  }

  /**
   * The questions in words, each once.
   *
   * @param byReaders what is asked for each group of readers
   */
  static List<Problem> questions(SortedMap<String, OpenWords> byReaders, LocalDate asOf) {
    return asked(byReaders, asOf).stream().map(Questions.Asking::problem).toList();
  }

  /** The same, each with its name. */
  static List<Questions.Asking> asked(SortedMap<String, OpenWords> byReaders, LocalDate asOf) {
    Map<String, Asking> first = new LinkedHashMap<>();
    Map<String, SortedSet<String>> seenBy = new TreeMap<>();
    byReaders.forEach(
        (readers, words) ->
            words.asked.forEach(
                asking -> {
                  first.putIfAbsent(asking.id, asking);
                  seenBy.computeIfAbsent(asking.id, id -> new TreeSet<>()).add(readers);
                }));
    return first.values().stream()
        .map(
            a ->
                new Questions.Asking(
                    List.of(a.id),
                    a.text.text(),
                    Label.NONE,
                    question(a, seenBy.getOrDefault(a.id, new TreeSet<>()), asOf)))
        .toList();
  }

  private static Problem question(Asking asking, SortedSet<String> seenBy, LocalDate asOf) {
    OpenTexts.Open text = asking.text;
    String words = text.text().strip().replaceAll("\\s+", " ");
    String shown = words.length() > MOST_SHOWN ? words.substring(0, MOST_SHOWN) + "\u2026" : words;
    return Problem.question(
        text.place(),
        Sentence.of(
            "In \u201c{0}\u201d, {1}, stands what is withheld elsewhere. {2} Seen by" + " {3}.",
            shown,
            Sentence.of(text.what()),
            asking.found.stream().reduce((a, b) -> Sentence.of("{0} {1}", a, b)).orElseThrow(),
            String.join(", ", seenBy)),
        Sentence.of(
            "{0} If it may stand, write into answers.yaml: {1}",
            Sentence.of("Put it under the agreement, or take it out."),
            "- {questions: ["
                + asking.id
                + "], answer: may-stand, reason: \u2026, on: "
                + asOf
                + "}"));
  }
}

package chinelog.publish;

import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What stands against publishing before anything is written.
 *
 * @param editions by ids of readers
 * @param problems questions, and figures that could be worked out
 */
record Foresight(Map<String, Withholder.Withheld> editions, List<Problem> problems) {

  /**
   * @param before all that was ever printed
   */
  static Foresight of(
      Workshop.Opened opened,
      FigureLedger.Reading before,
      List<Readers> readers,
      Questions.Asked asked,
      LocalDate asOf,
      Progress progress)
      throws IOException {
    Problems problems = new Problems();
    problems.addAll(before.problems());
    Map<String, Withholder.Withheld> editions = new TreeMap<>();
    for (Proof proof :
        Proof.of(opened, readers, asked, before.figures(), asOf, progress, problems)) {
      editions.put(proof.group().id(), proof.withheld());
      problems.addAll(TalkReminders.of(opened.log(), proof.withheld().edition()));
    }
    return new Foresight(editions, problems.list());
  }

  /** The posts that the site of some readers would tell; none if they get no site. */
  List<Foreseen.PostTold> posts(Readers group) {
    Withholder.Withheld edition = editions.get(group.id());
    return edition == null || !group.outputs().contains(Readers.Output.SITE)
        ? List.of()
        : edition.edition().contents().posts().stream()
            .map(
                p ->
                    new Foreseen.PostTold(
                        group.id(),
                        p.number(),
                        p.title(),
                        p.entries().size(),
                        p.words(),
                        p.readingMinutes()))
            .toList();
  }
}

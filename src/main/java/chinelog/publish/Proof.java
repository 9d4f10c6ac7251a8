package chinelog.publish;

import chinelog.log.records.Readers;
import chinelog.problem.ProblemException;
import chinelog.problem.Problems;
import chinelog.withhold.PrintedFigure;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** An edition before it is written, held against all that its readers will have been given then. */
record Proof(Readers group, Withholder.Withheld withheld, OpenWords words) {

  /**
   * The proofs of some readers; none for those whose edition cannot be made.
   *
   * @param before all that was ever printed, for any readers
   * @param problems takes why one cannot be made, and what stands against those that can
   */
  static List<Proof> of(
      Workshop.Opened opened,
      List<Readers> groups,
      Questions.Asked asked,
      List<PrintedFigure> before,
      LocalDate asOf,
      Progress progress,
      Problems problems)
      throws IOException {
    SortedMap<String, Withholder.Prepared> prepared = new TreeMap<>();
    for (Readers group : groups) {
      progress.begin(Step.of(Step.Kind.WITHHOLDING, group.id()));
      try {
        prepared.put(group.id(), opened.prepare(group, asOf, asked.photographs(), progress));
      } catch (ProblemException e) {
        problems.add(e.problem());
      }
    }
    List<PrintedFigure> known = new ArrayList<>(before);
    if (groups.size() > 1) {
      groups.stream()
          .flatMap(g -> Optional.ofNullable(prepared.get(g.id())).stream())
          .forEach(edition -> known.addAll(edition.printed()));
    }
    List<Proof> proofs = new ArrayList<>();
    for (Readers group : groups) {
      Withholder.Prepared edition = prepared.get(group.id());
      if (edition != null) {
        Withholder.Withheld withheld = edition.against(List.copyOf(known));
        problems.addAll(withheld.problems());
        OpenWords words = OpenWords.of(opened, group, withheld, asked, asOf);
        proofs.add(new Proof(group, withheld, words));
      }
    }
    SortedMap<String, OpenWords> words = new TreeMap<>();
    proofs.forEach(p -> words.put(p.group.id(), p.words));
    problems.addAll(OpenWords.questions(words, asOf));
    return proofs;
  }
}

package chinelog.publish;

import chinelog.audit.AuditReport;
import chinelog.audit.Finding;
import chinelog.log.records.Readers;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.withhold.PrintedFigure;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The audit of what stands published: against its manifest, and searched afresh. */
record LaterAudit(Occasion occasion, Shelf claimed, Progress progress) {

  Outcome run(List<String> wanted) throws IOException {
    Workshop.Opened opened = occasion.open(progress);
    Shelf shelf = claimed.of(opened.log());
    LocalDate asOf = occasion.asOf();
    Problems problems = new Problems();
    problems.addAll(shelf.fullCopies());
    problems.addAll(opened.problems());
    List<Readers> readers = opened.choose(wanted, problems);
    List<PrintedFigure> known = FigureLedger.ofAll(shelf, opened.readerIds()).figures();
    List<RenderedEdition> audited = new ArrayList<>();
    Questions.Asked asked =
        problems.hasErrors() ? Questions.Asked.NOTHING : opened.ask(readers, asOf);
    for (Readers group : readers) {
      shelf.recover(group.id());
      Path standing = shelf.published(group.id());
      if (!Files.isDirectory(standing)) {
        problems.add(
            Problem.reminder(
                Place.of(shelf.name(group.id())),
                "Nothing is published for these readers.",
                "Publish first, then audit."));
        continue;
      }
      if (problems.hasErrors()) {
        continue;
      }
      Withholder.Withheld withheld =
          opened.prepare(group, asOf, asked.photographs(), progress).against(known);
      progress.begin(Step.of(Step.Kind.AUDITING, group.id()));
      Manifest manifest = Manifest.read(shelf.manifest(group.id()));
      Set<String> mayStand = OpenWords.of(opened, group, withheld, asked, asOf).mayStand();
      AuditReport report =
          new EditionSearch(standing, manifest, opened, withheld, mayStand, group.id()).afresh();
      RenderedEdition draft =
          new RenderedEdition(
              group,
              opened.log().agreements().values(),
              withheld,
              manifest,
              report.with(changes(manifest, standing)));
      new Records(shelf, group.id()).writeAudit(draft, asOf);
      audited.add(draft);
    }
    return new Outcome(
        problems.list(),
        opened.problems(),
        problems.hasErrors() ? List.of() : audited.stream().map(e -> e.made(shelf)).toList(),
        List.of());
  }

  /** What is not as it was published, whatever is in it. */
  private static List<Finding> changes(Manifest manifest, Path standing) throws IOException {
    List<Finding> changes = new ArrayList<>();
    manifest
        .differencesIn(standing)
        .forEach(
            (name, differences) ->
                differences.forEach(
                    d -> changes.add(new Finding(name, Sentence.of("the file itself"), d))));
    return changes;
  }
}

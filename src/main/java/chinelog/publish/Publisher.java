package chinelog.publish;

import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Takes a log to published editions: read, reckon, withhold, render, audit, and only then swap. */
public final class Publisher {

  private final Occasion occasion;
  private final Progress progress;

  /** Where each edition stands is known once the log is read. */
  private Shelf shelf;

  /**
   * @param folder the log's
   * @param today the real date
   * @param asOf the day for which editions are made
   * @param zone for a log that names none
   */
  public Publisher(Path folder, LocalDate today, LocalDate asOf, ZoneId zone, Progress progress) {
    this.occasion = new Occasion(folder, today, asOf, zone);
    this.progress = progress;
    this.shelf = new Shelf(folder);
  }

  /**
   * Publishes the editions of some readers: all of them, or, after an error or a leak, none.
   *
   * @param wanted ids of readers; empty for all of the log's
   * @throws IOException if the log cannot be read or an edition cannot be written
   */
  public Outcome publish(List<String> wanted) throws IOException {
    progress.begin(Step.of(Step.Kind.LOOKING_AT_CHANGES));
    try (Closeable claim = shelf.claim();
        Course course = new Course(occasion.folder(), progress)) {
      return publishClaimed(wanted, course, false);
    }
  }

  /**
   * Makes all editions and searches them as {@link #publish} does, then throws them away: nothing
   * of them counts as given out.
   *
   * @throws IOException if the log cannot be read or an edition cannot be written
   */
  public Outcome rehearse() throws IOException {
    try (Closeable claim = shelf.claim();
        Course course = new Course(occasion.folder(), progress)) {
      return publishClaimed(List.of(), course, true);
    }
  }

  /**
   * Makes the sites of some readers as drafts, into the workshop: whatever would stop their
   * publishing is told as a reminder, and none of it counts as given out.
   *
   * @param wanted ids of readers; empty for all of the log's
   * @throws IOException if the log cannot be read or a site cannot be written
   */
  public Outcome draft(List<String> wanted) throws IOException {
    try (Closeable claim = shelf.claim();
        Course course = new Course(occasion.folder(), progress)) {
      Workshop.Opened opened = occasion.open(course);
      shelf = shelf.of(opened.log());
      Problems problems = new Problems();
      problems.addAll(opened.problems());
      List<Readers> readers = opened.choose(wanted, problems);
      if (problems.hasErrors()) {
        return new Outcome(problems.list(), opened.problems(), List.of(), List.of());
      }
      course.begin(Step.of(Step.Kind.ASKING));
      Questions.Asked asked = opened.ask(readers, occasion.asOf());
      FigureLedger.Reading before = FigureLedger.ofAll(shelf, opened.readerIds());
      Foresight foreseen = Foresight.of(opened, before, readers, asked, occasion.asOf(), course);
      Stream.concat(asked.open().stream(), foreseen.problems().stream())
          .map(p -> Problem.reminder(p.place(), p.what(), p.remedy()))
          .forEach(problems::add);
      DraftSite drafts = new DraftSite(occasion.folder(), shelf, course);
      List<Outcome.Made> made = new ArrayList<>();
      for (Readers group : readers) {
        Withholder.Withheld withheld = foreseen.editions().get(group.id());
        if (withheld != null) {
          made.add(drafts.write(group, withheld, occasion.asOf()));
        }
      }
      return new Outcome(problems.list(), opened.problems(), made, List.of());
    }
  }

  /** What publishing this log would come to, as far as nothing has to be written to know it. */
  public Foreseen foresee(Workshop.Opened opened, Questions.Asked asked) throws IOException {
    shelf = shelf.of(opened.log());
    List<Readers> readers = opened.log().readers();
    FigureLedger.Reading before = FigureLedger.ofAll(shelf, opened.readerIds());
    Foresight foreseen = Foresight.of(opened, before, readers, asked, occasion.asOf(), progress);
    List<Problem> problems = new ArrayList<>(foreseen.problems());
    before.yetToCome(occasion.today()).ifPresent(problems::add);
    Standing standing = Standing.before(occasion.folder(), occasion.settings());
    List<Foreseen.PostTold> posts = new ArrayList<>();
    for (Readers group : readers) {
      List<Problem> foreign = shelf.foreign(group.id());
      problems.addAll(foreign);
      if (foreign.isEmpty() && standing.since(group.id(), shelf) == Standing.Change.EDITION) {
        problems.addAll(shelf.changed(group.id()));
      }
      posts.addAll(foreseen.posts(group));
    }
    boolean printed =
        readers.stream()
            .flatMap(r -> r.outputs().stream())
            .anyMatch(output -> output != Readers.Output.SITE);
    return new Foreseen(problems.stream().distinct().toList(), List.copyOf(posts), printed);
  }

  /**
   * @param rehearsal whether all is thrown away in the end
   */
  private Outcome publishClaimed(List<String> wanted, Course course, boolean rehearsal)
      throws IOException {
    Standing standing = Standing.before(occasion.folder(), occasion.settings());
    LastReading last = LastReading.of(occasion.folder(), standing.sources(), occasion.today());
    Optional<Outcome> same = rehearsal ? Optional.empty() : unread(wanted, last, standing);
    if (same.isPresent()) {
      return same.get();
    }
    Workshop.Opened opened = occasion.open(course);
    last.keep(opened);
    shelf = shelf.of(opened.log());
    Problems problems = new Problems();
    problems.addAll(shelf.fullCopies());
    problems.addAll(opened.problems());
    List<Readers> readers = opened.choose(wanted, problems);
    List<Readers> unchanged = new ArrayList<>();
    Set<String> asLeft = new TreeSet<>();
    for (Readers group : readers) {
      shelf.recover(group.id());
      List<Problem> foreign = shelf.foreign(group.id());
      problems.addAll(foreign);
      if (foreign.isEmpty()) {
        switch (standing.since(group.id(), shelf)) {
          case NOTHING -> unchanged.add(group);
          case SOURCES -> asLeft.add(group.id());
          case EDITION -> problems.addAll(shelf.changed(group.id()));
        }
      }
    }
    FigureLedger.Reading before = FigureLedger.ofAll(shelf, opened.readerIds());
    problems.addAll(before.problems());
    if (problems.hasErrors()) {
      return new Outcome(problems.list(), opened.problems(), List.of(), List.of());
    }
    List<Readers> changed = readers.stream().filter(g -> !unchanged.contains(g)).toList();
    if (changed.isEmpty()) {
      // A publish that was killed may have left what it was making.
      for (Readers group : readers) {
        shelf.dropMaking(group.id());
      }
      return new Outcome(problems.list(), opened.problems(), List.of(), unchanged(ids(unchanged)));
    }
    // With questions open nothing is written, but what else stops the publishing is told too.
    course.begin(Step.of(Step.Kind.ASKING));
    Questions.Asked asked = opened.ask(changed, occasion.asOf());
    problems.addAll(asked.open());
    before.yetToCome(occasion.today()).ifPresent(problems::add);
    List<RenderedEdition> drafts = List.of();
    EditionRun run = new EditionRun(occasion, opened, shelf, course);
    try {
      List<Proof> proofs =
          Proof.of(opened, changed, asked, before.figures(), occasion.asOf(), course, problems);
      for (Proof proof : proofs) {
        problems.addAll(
            Lookalikes.inEdition(
                opened, proof.group().id(), proof.withheld(), occasion.asOf(), course));
      }
      if (!problems.hasErrors()) {
        drafts = run.render(proofs, asLeft, problems);
      }
      if (rehearsal) {
        run.saveDigests();
      } else if (!problems.hasErrors() && drafts.stream().allMatch(d -> d.report().isClean())) {
        // All that needs room on the disk is written before anything is moved.
        for (RenderedEdition draft : drafts) {
          shelf.ledger(draft.group().id()).add(draft.withheld().printed());
          new Records(shelf, draft.group().id()).write(draft, occasion.asOf());
          shelf.keepBack(draft.group().id(), opened.keptBack(draft.group(), occasion.asOf()));
        }
        for (RenderedEdition draft : drafts) {
          shelf.swap(draft.group().id());
        }
        run.remember(drafts);
        for (RenderedEdition draft : drafts) {
          standing.keep(draft.group().id(), shelf);
        }
        run.saveDigests();
        course.remember();
      } else if (!problems.hasErrors()) {
        for (RenderedEdition draft : drafts) {
          new Records(shelf, draft.group().id()).writeRefusal(draft, occasion.asOf());
        }
      }
    } finally {
      for (Readers group : readers) {
        shelf.dropMaking(group.id());
      }
    }
    if (problems.hasErrors()) {
      return new Outcome(problems.list(), opened.problems(), List.of(), List.of());
    }
    return new Outcome(
        problems.list(),
        opened.problems(),
        drafts.stream().map(d -> d.made(shelf)).toList(),
        unchanged(ids(unchanged)));
  }

  private static List<String> ids(List<Readers> groups) {
    return groups.stream().map(Readers::id).toList();
  }

  private List<Outcome.Unchanged> unchanged(List<String> readers) throws IOException {
    List<Outcome.Unchanged> all = new ArrayList<>();
    for (String who : readers) {
      Manifest manifest = Manifest.read(shelf.manifest(who));
      all.add(new Outcome.Unchanged(who, shelf.published(who), manifest.topFiles()));
    }
    return all;
  }

  /** What comes of it where every edition stands as the log would give it: nothing is read then. */
  private Optional<Outcome> unread(List<String> wanted, LastReading last, Standing standing)
      throws IOException {
    Optional<LastReading.Told> told = last.recall();
    if (told.isEmpty() || !told.get().readers().containsAll(wanted)) {
      return Optional.empty();
    }
    shelf = new Shelf(occasion.folder(), told.get().ofWorkshop());
    List<String> readers =
        wanted.isEmpty() ? told.get().readers() : wanted.stream().distinct().toList();
    Problems problems = new Problems();
    problems.addAll(shelf.fullCopies());
    problems.addAll(told.get().problems());
    problems.addAll(FigureLedger.ofAll(shelf, told.get().readers()).problems());
    for (String who : readers) {
      shelf.recover(who);
      if (!shelf.foreign(who).isEmpty()
          || standing.since(who, shelf) != Standing.Change.NOTHING
          || problems.hasErrors()) {
        return Optional.empty();
      }
    }
    for (String who : readers) {
      shelf.dropMaking(who);
    }
    return Optional.of(
        new Outcome(problems.list(), told.get().problems(), List.of(), unchanged(readers)));
  }

  /** Audits again what stands published. */
  public Outcome audit(List<String> wanted) throws IOException {
    // An audit settles what an interrupted swap left, so it must not meet one that is under way.
    try (Closeable claim = shelf.claim()) {
      return new LaterAudit(occasion, shelf, progress).run(wanted);
    }
  }
}

package chinelog.publish;

import chinelog.audit.Audit;
import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.label.Agreement;
import chinelog.label.Clearance;
import chinelog.log.Log;
import chinelog.log.Readers;
import chinelog.markup.Theme;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Problems;
import chinelog.problem.Suggestion;
import chinelog.site.SiteWriter;
import chinelog.withhold.PrintedFigure;
import chinelog.withhold.Withholder;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Takes a log to published editions: read, reckon, withhold, render, audit, and only then swap. */
public final class Publisher {

  private final Path folder;
  private final LocalDate today;
  private final LocalDate asOf;
  private final ZoneId zone;
  private final Progress progress;
  private final Shelf shelf;

  /**
   * @param folder the log's
   * @param today the real date
   * @param asOf the day for which editions are made
   * @param zone for a log that names none
   */
  public Publisher(Path folder, LocalDate today, LocalDate asOf, ZoneId zone, Progress progress) {
    this.folder = folder;
    this.today = today;
    this.asOf = asOf;
    this.zone = zone;
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
    try (Closeable claim = shelf.claim()) {
      return publishClaimed(wanted);
    }
  }

  private Outcome publishClaimed(List<String> wanted) throws IOException {
    Standing standing = Standing.before(folder, shelf, settings());
    Workshop.Opened opened = Workshop.open(folder, today, asOf, zone, progress);
    Problems problems = new Problems();
    problems.addAll(opened.problems());
    List<Readers> readers = choose(opened, wanted, problems);
    List<Readers> unchanged = new ArrayList<>();
    for (Readers group : readers) {
      shelf.recover(group.id());
      List<Problem> foreign = shelf.foreign(group.id());
      problems.addAll(foreign);
      if (foreign.isEmpty()) {
        switch (standing.since(group.id())) {
          case NOTHING -> unchanged.add(group);
          case SOURCES -> {}
          case EDITION -> problems.addAll(shelf.changed(group.id()));
        }
      }
    }
    FigureLedger.Reading before = known(opened.log());
    problems.addAll(before.problems());
    if (problems.hasErrors()) {
      return new Outcome(problems.list(), opened.problems(), List.of(), List.of());
    }
    List<Readers> changed = readers.stream().filter(g -> !unchanged.contains(g)).toList();
    List<Draft> drafts = new ArrayList<>();
    CleanPictures clean = CleanPictures.of(folder);
    try {
      List<PrintedFigure> known = knownAfter(opened, changed, before.figures());
      for (Readers group : changed) {
        Draft draft = draft(opened, group, known, clean, problems);
        if (draft != null) {
          drafts.add(draft);
        }
      }
      if (!problems.hasErrors() && drafts.stream().allMatch(d -> d.report().isClean())) {
        // All that needs room on the disk is written before anything is moved.
        for (Draft draft : drafts) {
          shelf.ledger(draft.group().id()).add(draft.withheld().printed());
          new Records(shelf, draft.group().id()).write(draft, asOf);
        }
        for (Draft draft : drafts) {
          shelf.swap(draft.group().id());
        }
        for (Draft draft : drafts) {
          standing.keep(draft.group().id());
        }
      } else if (!problems.hasErrors()) {
        for (Draft draft : drafts) {
          new Records(shelf, draft.group().id()).writeRefusal(draft, asOf);
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
        drafts.stream().map(this::made).toList(),
        unchanged(unchanged));
  }

  /** What an edition depends on besides files. */
  private String settings() {
    return asOf + " " + zone;
  }

  private List<Outcome.Unchanged> unchanged(List<Readers> groups) throws IOException {
    List<Outcome.Unchanged> all = new ArrayList<>();
    for (Readers group : groups) {
      Manifest manifest = Manifest.read(shelf.manifest(group.id()));
      all.add(new Outcome.Unchanged(group.id(), shelf.published(group.id()), topFiles(manifest)));
    }
    return all;
  }

  private static List<Readers> choose(
      Workshop.Opened opened, List<String> wanted, Problems problems) {
    List<Readers> all = opened.log().readers();
    if (wanted.isEmpty()) {
      return all;
    }
    List<Readers> chosen = new ArrayList<>();
    for (String id : wanted.stream().distinct().toList()) {
      Optional<Readers> found = all.stream().filter(r -> r.id().equals(id)).findFirst();
      found.ifPresentOrElse(
          chosen::add,
          () ->
              problems.error(
                  Place.of("log.yaml"),
                  "This log names no readers \u201c" + id + "\u201d.",
                  Suggestion.remedy(id, all.stream().map(Readers::id).toList())));
    }
    return chosen;
  }

  /** An edition that was rendered and audited but not yet put in its place. */
  record Draft(
      Readers group,
      Collection<Agreement> agreements,
      Withholder.Withheld withheld,
      Manifest manifest,
      Audit.Report report) {}

  private @Nullable Draft draft(
      Workshop.Opened opened,
      Readers group,
      List<PrintedFigure> known,
      CleanPictures clean,
      Problems problems)
      throws IOException {
    try {
      return attempt(opened, group, known, clean, problems);
    } catch (ProblemException e) {
      problems.add(e.problem());
      return null;
    }
  }

  private @Nullable Draft attempt(
      Workshop.Opened opened,
      Readers group,
      List<PrintedFigure> known,
      CleanPictures clean,
      Problems problems)
      throws IOException {
    String who = group.id();
    progress.begin("withholding for " + who);
    Withholder.Withheld withheld = withhold(opened, group, known);
    problems.addAll(withheld.problems());
    problems.addAll(Lookalikes.inEdition(opened, who, withheld, progress));
    if (problems.hasErrors()) {
      return null;
    }
    Edition edition = withheld.edition();
    if (group.outputs().stream().anyMatch(output -> output != Readers.Output.SITE)) {
      problems.addAll(Press.proofread(edition, Workshop.theme(folder, edition.contents().theme())));
    }
    Path making = shelf.startMaking(who);
    render(edition, group, making);
    FileTimes.set(making, asOf);
    Manifest manifest = Manifest.of(making);
    progress.begin("auditing the edition for " + who);
    Audit.Report report =
        search(
            making, manifest, opened, withheld, who, EditionPictures.of(withheld), clean.hashes());
    clean.addAll(report.cleanPictures());
    return new Draft(group, opened.log().agreements().values(), withheld, manifest, report);
  }

  private Withholder.Withheld withhold(
      Workshop.Opened opened, Readers group, List<PrintedFigure> known) throws IOException {
    Log log = opened.log();
    Clearance clearance = Clearance.of(group.partyTo(), log.agreements().values(), asOf);
    return Withholder.withhold(
        log,
        opened.facts(),
        opened.album(),
        new LogPictures(log, clearance, progress),
        group,
        asOf,
        known);
  }

  /** All that was ever printed for any readers: those who may meet compare what they have. */
  private FigureLedger.Reading known(Log log) throws IOException {
    List<PrintedFigure> figures = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    SortedSet<String> all = new TreeSet<>(shelf.recorded());
    log.readers().forEach(r -> all.add(r.id()));
    for (String who : all) {
      FigureLedger.Reading reading = shelf.ledger(who).read();
      figures.addAll(reading.figures());
      problems.addAll(reading.problems());
    }
    return new FigureLedger.Reading(figures, problems);
  }

  /** What will be known once the editions of these readers are out, too. */
  private List<PrintedFigure> knownAfter(
      Workshop.Opened opened, List<Readers> groups, List<PrintedFigure> before) throws IOException {
    List<PrintedFigure> figures = new ArrayList<>(before);
    if (groups.size() > 1) {
      for (Readers group : groups) {
        progress.begin("withholding for " + group.id());
        figures.addAll(withhold(opened, group, before).printed());
      }
    }
    return List.copyOf(figures);
  }

  /** Searches an edition anew, whatever was found in its pictures before. */
  static Audit.Report search(
      Path edition,
      Manifest manifest,
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      String readers)
      throws IOException {
    List<Audit.Picture> pictures = EditionPictures.of(withheld);
    return search(edition, manifest, opened, withheld, readers, pictures, Set.of());
  }

  private static Audit.Report search(
      Path edition,
      Manifest manifest,
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      String readers,
      List<Audit.Picture> pictures,
      Set<String> decodable)
      throws IOException {
    return Audit.search(
        edition,
        manifest.names(),
        opened.log(),
        readers,
        withheld.clearance(),
        Canaries.of(opened, withheld),
        Canaries.shown(opened, withheld),
        pictures,
        decodable);
  }

  private void render(Edition edition, Readers group, Path making) throws IOException {
    Theme theme = Workshop.theme(folder, edition.contents().theme());
    if (group.outputs().contains(Readers.Output.SITE)) {
      progress.begin("writing the site for " + group.id());
      Path templates = folder.resolve("site-template");
      SiteWriter.write(
          edition,
          theme,
          Files.isDirectory(templates) ? templates : null,
          Files.createDirectory(making.resolve("site")));
    }
    if (group.outputs().contains(Readers.Output.BOOK)) {
      progress.begin("printing the build book for " + group.id());
      Press.printBuildBook(edition, theme, making.resolve("build-book.pdf"));
    }
    if (group.outputs().contains(Readers.Output.HANDOVER)) {
      progress.begin("printing the handover booklet for " + group.id());
      Press.printHandover(edition, theme, making.resolve("handover.pdf"));
    }
    if (group.outputs().contains(Readers.Output.HANDOVER_SHEETS)) {
      progress.begin("laying out the sheets of the booklet for " + group.id());
      Press.printHandoverSheets(
          edition, theme, Press.Options.of(edition, false), making.resolve("handover-sheets.pdf"));
    }
    if (group.outputs().contains(Readers.Output.PRINT_READY)) {
      progress.begin("printing the build book for the printing house for " + group.id());
      Press.printBuildBook(
          edition,
          theme,
          Press.Options.of(edition, true),
          making.resolve("build-book-print-ready.pdf"));
    }
  }

  private Outcome.Made made(Draft draft) {
    Edition.Contents contents = draft.withheld().edition().contents();
    SortedMap<String, Integer> withheld = new TreeMap<>();
    draft
        .withheld()
        .register()
        .withheld()
        .forEach(line -> withheld.merge(line.label().toString(), 1, Integer::sum));
    return new Outcome.Made(
        draft.group().id(),
        shelf.published(draft.group().id()),
        topFiles(draft.manifest()),
        contents.entries().size(),
        contents.plates().size(),
        contents.figures().size(),
        withheld,
        draft.withheld().register().released().size(),
        draft.report().findings().stream()
            .map(f -> new Outcome.Finding(f.file(), f.where(), f.what()))
            .toList());
  }

  private static List<String> topFiles(Manifest manifest) {
    return manifest.names().stream()
        .filter(n -> !n.contains("/") || n.equals("site/index.html"))
        .toList();
  }

  /** Audits again what stands published. */
  public Outcome audit(List<String> wanted) throws IOException {
    // An audit settles what an interrupted swap left, so it must not meet one that is under way.
    try (Closeable claim = shelf.claim()) {
      return auditClaimed(wanted);
    }
  }

  private Outcome auditClaimed(List<String> wanted) throws IOException {
    Workshop.Opened opened = Workshop.open(folder, today, asOf, zone, progress);
    Problems problems = new Problems();
    problems.addAll(opened.problems());
    List<Readers> readers = choose(opened, wanted, problems);
    List<PrintedFigure> known = known(opened.log()).figures();
    List<Draft> audited = new ArrayList<>();
    for (Readers group : readers) {
      shelf.recover(group.id());
      Path standing = shelf.published(group.id());
      if (!Files.isDirectory(standing)) {
        problems.add(
            Problem.reminder(
                Place.of("published/" + group.id()),
                "Nothing is published for these readers.",
                "Publish first, then audit."));
        continue;
      }
      if (problems.hasErrors()) {
        continue;
      }
      Withholder.Withheld withheld = withhold(opened, group, known);
      progress.begin("auditing the edition for " + group.id());
      Manifest manifest = Manifest.read(shelf.manifest(group.id()));
      Audit.Report report = search(standing, manifest, opened, withheld, group.id());
      Draft draft =
          new Draft(group, opened.log().agreements().values(), withheld, manifest, report);
      new Records(shelf, group.id()).writeAudit(draft, asOf);
      audited.add(draft);
    }
    return new Outcome(
        problems.list(),
        opened.problems(),
        problems.hasErrors() ? List.of() : audited.stream().map(this::made).toList(),
        List.of());
  }
}

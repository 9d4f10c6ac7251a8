package chinelog.publish;

import chinelog.audit.AllowedPicture;
import chinelog.audit.Audit;
import chinelog.audit.AuditReport;
import chinelog.audit.Before;
import chinelog.audit.Decoded;
import chinelog.audit.Finding;
import chinelog.book.Press;
import chinelog.digest.Sha256;
import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.photo.Workers;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.talk.TalkWriter;
import chinelog.withhold.PrintedFigure;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.function.Function;
import java.util.stream.Stream;

/** Takes a log to published editions: read, reckon, withhold, render, audit, and only then swap. */
public final class Publisher {

  /** What making one edition may take, its books apart. */
  private static final long ROOM_BYTES = 200L << 20;

  private final Path folder;
  private final LocalDate today;
  private final LocalDate asOf;
  private final ZoneId zone;
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
    progress.begin(Step.of(Step.Kind.LOOKING_AT_CHANGES));
    try (Closeable claim = shelf.claim();
        Course course = new Course(folder, progress)) {
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
        Course course = new Course(folder, progress)) {
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
        Course course = new Course(folder, progress)) {
      Workshop.Opened opened = Workshop.open(folder, today, asOf, zone, course);
      shelf = shelf.of(opened.log());
      Problems problems = new Problems();
      problems.addAll(opened.problems());
      List<Readers> readers = choose(opened, wanted, problems);
      if (problems.hasErrors()) {
        return new Outcome(problems.list(), opened.problems(), List.of(), List.of());
      }
      Foresight foreseen = foresee(opened, readers, course);
      foreseen.problems().stream()
          .map(p -> Problem.reminder(p.place(), p.what(), p.remedy()))
          .forEach(problems::add);
      DraftSite drafts = new DraftSite(folder, shelf, course);
      List<Outcome.Made> made = new ArrayList<>();
      for (Readers group : readers) {
        Withholder.Withheld withheld = foreseen.editions().get(group.id());
        if (withheld != null) {
          made.add(drafts.write(group, withheld, asOf));
        }
      }
      return new Outcome(problems.list(), opened.problems(), made, List.of());
    }
  }

  /**
   * What stands against publishing before anything is written.
   *
   * @param problems questions, and figures that could be worked out
   */
  record Foresight(Map<String, Withholder.Withheld> editions, List<Problem> problems) {}

  /**
   * What publishing would come to.
   *
   * @param problems that it would bring up besides questions
   * @param posts that the sites would tell
   * @param printed whether any readers get what is printed
   */
  public record Foreseen(List<Problem> problems, List<PostTold> posts, boolean printed) {}

  /**
   * A post of the site of some readers.
   *
   * @param words of its entries
   * @param minutes to read it in silence
   */
  public record PostTold(
      String readers, int number, String title, int entries, int words, int minutes) {}

  /** What publishing this log would come to, as far as nothing has to be written to know it. */
  public Foreseen foresee(Workshop.Opened opened, Questions.Asked asked) throws IOException {
    shelf = shelf.of(opened.log());
    List<Readers> readers = opened.log().readers();
    Foresight foreseen = foresee(opened, readers, asked, progress);
    List<Problem> problems = new ArrayList<>(foreseen.problems());
    yetToCome(known(ids(opened.log().readers())).figures()).ifPresent(problems::add);
    Standing standing = Standing.before(folder, settings());
    List<PostTold> posts = new ArrayList<>();
    for (Readers group : readers) {
      List<Problem> foreign = shelf.foreign(group.id());
      problems.addAll(foreign);
      if (foreign.isEmpty() && standing.since(group.id(), shelf) == Standing.Change.EDITION) {
        problems.addAll(shelf.changed(group.id()));
      }
      Withholder.Withheld edition = foreseen.editions().get(group.id());
      if (edition != null && group.outputs().contains(Readers.Output.SITE)) {
        edition
            .edition()
            .contents()
            .posts()
            .forEach(
                p ->
                    posts.add(
                        new PostTold(
                            group.id(),
                            p.number(),
                            p.title(),
                            p.entries().size(),
                            p.words(),
                            p.readingMinutes())));
      }
    }
    boolean printed =
        readers.stream()
            .flatMap(r -> r.outputs().stream())
            .anyMatch(output -> output != Readers.Output.SITE);
    return new Foreseen(problems.stream().distinct().toList(), List.copyOf(posts), printed);
  }

  private Foresight foresee(Workshop.Opened opened, List<Readers> readers, Course course)
      throws IOException {
    course.begin(Step.of(Step.Kind.ASKING));
    Questions.Asked asked = opened.ask(readers, asOf);
    Foresight foreseen = foresee(opened, readers, asked, course);
    List<Problem> all = new ArrayList<>(asked.open());
    all.addAll(foreseen.problems());
    return new Foresight(foreseen.editions(), all);
  }

  private Foresight foresee(
      Workshop.Opened opened, List<Readers> readers, Questions.Asked asked, Progress told)
      throws IOException {
    FigureLedger.Reading before = known(ids(opened.log().readers()));
    List<Problem> problems = new ArrayList<>(before.problems());
    List<PrintedFigure> known = new ArrayList<>(before.figures());
    SortedMap<String, Withholder.Prepared> prepared = new TreeMap<>();
    for (Readers group : readers) {
      told.begin(Step.of(Step.Kind.WITHHOLDING, group.id()));
      try {
        prepared.put(group.id(), opened.prepare(group, asOf, asked.photographs(), told));
      } catch (ProblemException e) {
        problems.add(e.problem());
      }
    }
    SortedMap<String, List<PrintedFigure>> printed = new TreeMap<>();
    prepared.forEach((who, edition) -> printed.put(who, edition.printed()));
    List<Proof> proofs =
        held(
            opened,
            asked,
            readers,
            prepared,
            who -> {
              List<PrintedFigure> all = new ArrayList<>(known);
              printed.forEach(
                  (other, theirs) -> all.addAll(other.equals(who) ? List.of() : theirs));
              return List.copyOf(all);
            });
    SortedMap<String, Withholder.Withheld> editions = new TreeMap<>();
    proofs.forEach(p -> editions.put(p.group().id(), p.withheld()));
    editions.values().forEach(e -> problems.addAll(e.problems()));
    editions.values().forEach(e -> problems.addAll(TalkReminders.of(opened.log(), e.edition())));
    problems.addAll(OpenWords.questions(words(proofs), asOf));
    return new Foresight(editions, problems.stream().distinct().toList());
  }

  /**
   * Holds editions against what their readers know, as many at a time as there is room for.
   *
   * @param known figures that some readers are taken to know, by their id
   */
  private List<Proof> held(
      Workshop.Opened opened,
      Questions.Asked asked,
      List<Readers> readers,
      Map<String, Withholder.Prepared> prepared,
      Function<String, List<PrintedFigure>> known)
      throws IOException {
    return Workers.all(
        readers.stream().filter(group -> prepared.containsKey(group.id())).toList(),
        atATime(),
        group -> {
          Withholder.Prepared edition = Objects.requireNonNull(prepared.get(group.id()));
          Withholder.Withheld withheld = edition.against(known.apply(group.id()));
          return new Proof(
              group, withheld, OpenWords.of(opened, group, withheld, asked, asOf));
        },
        chinelog.photo.PhotoProgress.SILENT);
  }

  private static SortedMap<String, OpenWords> words(List<Proof> proofs) {
    SortedMap<String, OpenWords> words = new TreeMap<>();
    proofs.forEach(p -> words.put(p.group().id(), p.words()));
    return words;
  }

  /**
   * @param rehearsal whether all is thrown away in the end
   */
  private Outcome publishClaimed(List<String> wanted, Course course, boolean rehearsal)
      throws IOException {
    Standing standing = Standing.before(folder, settings());
    LastReading last = LastReading.of(folder, standing.sources(), today);
    Optional<Outcome> same = rehearsal ? Optional.empty() : unread(wanted, last, standing);
    if (same.isPresent()) {
      return same.get();
    }
    Workshop.Opened opened = Workshop.open(folder, today, asOf, zone, course);
    last.keep(opened);
    shelf = shelf.of(opened.log());
    Problems problems = new Problems();
    problems.addAll(shelf.fullCopies());
    problems.addAll(opened.problems());
    List<Readers> readers = choose(opened, wanted, problems);
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
    FigureLedger.Reading before = known(ids(opened.log().readers()));
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
    Questions.Asked asked = opened.ask(changed, asOf);
    problems.addAll(asked.open());
    yetToCome(before.figures()).ifPresent(problems::add);
    List<RenderedEdition> drafts = List.of();
    CleanPictures clean = CleanPictures.of(folder);
    Made made =
        new Made(
            opened,
            Digests.open(folder),
            clean,
            new Decoded(clean.hashes()),
            Program.stamp(),
            new ConcurrentSkipListMap<>(),
            asked,
            course);
    try {
      List<Proof> proofs = proofs(made, changed, before.figures(), problems);
      if (!problems.hasErrors()) {
        drafts = drafts(made, proofs, asLeft, problems);
      }
      if (rehearsal) {
        made.digests().save();
      } else if (!problems.hasErrors() && drafts.stream().allMatch(d -> d.report().isClean())) {
        // All that needs room on the disk is written before anything is moved.
        for (RenderedEdition draft : drafts) {
          shelf.ledger(draft.group().id()).add(draft.withheld().printed());
          new Records(shelf, draft.group().id()).write(draft, asOf);
          shelf.keepBack(draft.group().id(), opened.keptBack(draft.group(), asOf));
        }
        for (RenderedEdition draft : drafts) {
          shelf.swap(draft.group().id());
        }
        for (EarlierEdition earlier : made.earlier().values()) {
          earlier.remember();
        }
        for (RenderedEdition draft : drafts) {
          String who = draft.group().id();
          Audited.write(folder, who, made.program(), draft.report().outcome());
          standing.keep(who, shelf);
        }
        made.digests().save();
        course.remember();
      } else if (!problems.hasErrors()) {
        for (RenderedEdition draft : drafts) {
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
        unchanged(ids(unchanged)));
  }

  /**
   * An error where something was published on a day that is yet to come: the clock was wrong then
   * or is wrong now, and an agreement may have been taken as ended.
   */
  private Optional<Problem> yetToCome(List<PrintedFigure> figures) {
    return figures.stream()
        .filter(f -> f.since().isAfter(today))
        .findFirst()
        .map(
            f ->
                Problem.error(
                    Place.of("records/" + f.readers()),
                    Sentence.of(
                        "An edition was published on {0}, which is after today, {1}.",
                        f.since(), today),
                    "Put the clock of this computer right; if it was wrong on that day, see whether"
                        + " an agreement was taken as ended."));
  }

  /** What an edition depends on besides files. */
  private String settings() {
    return asOf + " " + zone;
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
    shelf = new Shelf(folder, told.get().ofWorkshop());
    List<String> readers =
        wanted.isEmpty() ? told.get().readers() : wanted.stream().distinct().toList();
    Problems problems = new Problems();
    problems.addAll(shelf.fullCopies());
    problems.addAll(told.get().problems());
    problems.addAll(known(told.get().readers()).problems());
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
                  Sentence.of("This log names no readers \u201c{0}\u201d.", id),
                  Suggestion.remedy(id, all.stream().map(Readers::id).toList())));
    }
    return chosen;
  }

  /** What the making of all editions shares. */
  private record Made(
      Workshop.Opened opened,
      Digests digests,
      CleanPictures clean,
      Decoded decoded,
      String program,
      Map<String, EarlierEdition> earlier,
      Questions.Asked asked,
      Course course) {}

  /** An edition before it is written. */
  private record Proof(Readers group, Withholder.Withheld withheld, OpenWords words) {}

  /** Makes the editions, and holds each against all that readers will have been given then. */
  private List<Proof> proofs(
      Made made, List<Readers> groups, List<PrintedFigure> before, Problems problems)
      throws IOException {
    SortedMap<String, Withholder.Prepared> prepared = new TreeMap<>();
    List<PrintedFigure> known = new ArrayList<>(before);
    for (Readers group : groups) {
      made.course().begin(Step.of(Step.Kind.WITHHOLDING, group.id()));
      try {
        prepared.put(
            group.id(),
            made.opened().prepare(group, asOf, made.asked().photographs(), made.course()));
      } catch (ProblemException e) {
        problems.add(e.problem());
      }
    }
    if (groups.size() > 1) {
      groups.stream()
          .flatMap(g -> Optional.ofNullable(prepared.get(g.id())).stream())
          .forEach(edition -> known.addAll(edition.printed()));
    }
    List<PrintedFigure> all = List.copyOf(known);
    List<Proof> proofs = held(made.opened(), made.asked(), groups, prepared, who -> all);
    for (Proof proof : proofs) {
      String who = proof.group().id();
      problems.addAll(proof.withheld().problems());
      problems.addAll(
          Lookalikes.inEdition(made.opened(), who, proof.withheld(), asOf, made.course()));
    }
    problems.addAll(OpenWords.questions(words(proofs), asOf));
    return proofs;
  }

  /** An edition as made, or why it was not. */
  private record Attempt(List<RenderedEdition> drafts, List<Problem> problems) {}

  /** As many editions as there is room for; the books come one after the other. */
  private static int atATime() {
    long room = Math.max(1, Runtime.getRuntime().maxMemory() / ROOM_BYTES);
    return (int) Math.min(room, Runtime.getRuntime().availableProcessors());
  }

  private List<RenderedEdition> drafts(
      Made made, List<Proof> proofs, Set<String> asLeft, Problems problems) throws IOException {
    List<RenderedEdition> drafts = new ArrayList<>();
    for (Attempt attempt :
        Workers.all(
            proofs,
            atATime(),
            p -> attempt(made, p, asLeft.contains(p.group().id())),
            chinelog.photo.PhotoProgress.SILENT)) {
      drafts.addAll(attempt.drafts());
      problems.addAll(attempt.problems());
    }
    for (RenderedEdition draft : drafts) {
      made.clean().addAll(draft.report().cleanPictures());
    }
    return drafts;
  }

  private Attempt attempt(Made made, Proof proof, boolean asLeft) throws IOException {
    Problems problems = new Problems();
    List<RenderedEdition> drafts = new ArrayList<>();
    try {
      drafts.add(draft(made, proof, asLeft, problems));
    } catch (ProblemException e) {
      problems.add(e.problem());
    } finally {
      made.course().end();
    }
    return new Attempt(drafts, problems.list());
  }

  /**
   * Writes an edition and audits it.
   *
   * @param asLeft whether the one that stands certainly is as it was left
   */
  private RenderedEdition draft(Made made, Proof proof, boolean asLeft, Problems problems)
      throws IOException {
    Withholder.Withheld withheld = proof.withheld();
    Edition edition = withheld.edition();
    Readers group = proof.group();
    String who = group.id();
    Theme theme = Workshop.theme(folder, edition.contents().theme());
    if (group.outputs().stream().anyMatch(output -> output != Readers.Output.SITE)) {
      problems.addAll(Press.proofread(edition, theme));
    }
    problems.addAll(TalkReminders.of(made.opened().log(), edition));
    Path making = shelf.startMaking(who);
    EarlierEdition earlier =
        EarlierEdition.of(
            folder, shelf, who, asLeft, making, FileTimes.of(asOf), made.digests().ofEditions());
    EditionWriter writer =
        new EditionWriter(folder, edition, theme, earlier, made.program(), making, made.course());
    for (Readers.Output output : new TreeSet<>(group.outputs())) {
      writer.write(output);
    }
    FileTimes.set(making, asOf);
    Manifest manifest = Manifest.of(making, earlier.kept(), made.digests()::ofCopy);
    made.course().begin(Step.of(Step.Kind.AUDITING, who));
    AuditReport report =
        search(
            making,
            manifest,
            made.opened(),
            withheld,
            proof.words().mayStand(),
            who,
            Stream.concat(
                    EditionPictures.of(withheld, made.digests()::of).stream(),
                    EditionPictures.frames(withheld, TalkWriter.places(edition), manifest.files())
                        .stream())
                .toList(),
            new Before(
                made.decoded(),
                manifest.files(),
                Audited.read(folder, who, made.program()),
                made.digests()::find));
    made.earlier().put(who, earlier);
    return new RenderedEdition(
        group, made.opened().log().agreements().values(), withheld, manifest, report);
  }

  /** All that was ever printed for any readers: those who may meet compare what they have. */
  private FigureLedger.Reading known(List<String> readers) throws IOException {
    List<PrintedFigure> figures = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    SortedSet<String> all = new TreeSet<>(shelf.recorded());
    all.addAll(readers);
    for (String who : all) {
      FigureLedger.Reading reading = shelf.ledger(who).read();
      figures.addAll(reading.figures());
      problems.addAll(reading.problems());
    }
    return new FigureLedger.Reading(figures, problems);
  }

  /** Searches an edition anew, whatever was found in its pictures before. */
  static AuditReport search(
      Path edition,
      Manifest manifest,
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      Set<String> mayStand,
      String readers)
      throws IOException {
    List<AllowedPicture> pictures = new ArrayList<>(EditionPictures.of(withheld));
    pictures.addAll(framesAfresh(opened, withheld));
    return search(
        edition, manifest, opened, withheld, mayStand, readers, pictures, Before.nothing());
  }

  /** The frames that these readers may be shown, whichever stand in their edition. */
  private static List<AllowedPicture> framesAfresh(
      Workshop.Opened opened, Withholder.Withheld withheld) throws IOException {
    Edition edition = withheld.edition();
    Map<String, String> hashes = new TreeMap<>();
    TalkWriter.draw(
        edition,
        Workshop.theme(opened.log().folder(), edition.contents().theme()),
        (place, jpeg) -> hashes.put(place.file(), Sha256.of(jpeg)));
    return EditionPictures.frames(withheld, TalkWriter.places(edition), hashes);
  }

  private static AuditReport search(
      Path edition,
      Manifest manifest,
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      Set<String> mayStand,
      String readers,
      List<AllowedPicture> pictures,
      Before before)
      throws IOException {
    return Audit.search(
        edition,
        manifest.names(),
        opened.log(),
        readers,
        withheld.clearance(),
        Canaries.of(opened, withheld),
        mayStand,
        pictures,
        before);
  }

  private Outcome.Made made(RenderedEdition draft) {
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
        draft.manifest().topFiles(),
        contents.entries().size(),
        contents.plates().size(),
        contents.figures().size(),
        withheld,
        draft.withheld().register().released().size(),
        draft.report().findings().stream()
            .map(f -> new Outcome.Finding(f.file(), f.where(), f.what()))
            .toList());
  }

  /** What is not as it was published, whatever is in it. */
  private static List<Finding> changes(Manifest manifest, Path standing) throws IOException {
    List<Finding> changes = new ArrayList<>();
    manifest
        .differencesIn(standing)
        .forEach(
            (name, differences) ->
                differences.forEach(d -> changes.add(new Finding(name, "the file itself", d))));
    return changes;
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
    shelf = shelf.of(opened.log());
    Problems problems = new Problems();
    problems.addAll(shelf.fullCopies());
    problems.addAll(opened.problems());
    List<Readers> readers = choose(opened, wanted, problems);
    List<PrintedFigure> known = known(ids(opened.log().readers())).figures();
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
      AuditReport report = search(standing, manifest, opened, withheld, mayStand, group.id());
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
        problems.hasErrors() ? List.of() : audited.stream().map(this::made).toList(),
        List.of());
  }
}

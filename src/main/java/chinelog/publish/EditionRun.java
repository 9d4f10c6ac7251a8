package chinelog.publish;

import chinelog.audit.AuditReport;
import chinelog.audit.Before;
import chinelog.audit.Decoded;
import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Workers;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Problems;
import chinelog.talk.TalkWriter;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Stream;

/** Renders and audits editions, several at a time; what they share is made once. */
final class EditionRun {

  /** What making one edition may take, its books apart. */
  private static final long ROOM_BYTES = 200L << 20;

  private final Occasion occasion;
  private final Workshop.Opened opened;
  private final Shelf shelf;
  private final Course course;
  private final Digests digests;
  private final CleanPictures clean;
  private final Decoded decoded;
  private final String program = Program.stamp();
  private final Map<String, EarlierEdition> earlier = new ConcurrentSkipListMap<>();

  EditionRun(Occasion occasion, Workshop.Opened opened, Shelf shelf, Course course)
      throws IOException {
    this.occasion = occasion;
    this.opened = opened;
    this.shelf = shelf;
    this.course = course;
    this.digests = Digests.open(occasion.folder());
    this.clean = CleanPictures.of(occasion.folder());
    this.decoded = new Decoded(clean.hashes());
  }

  /** An edition as made, or why it was not. */
  private record Attempt(List<RenderedEdition> drafts, List<Problem> problems) {}

  /** As many editions as there is room for; the books come one after the other. */
  static int atATime() {
    long room = Math.max(1, Runtime.getRuntime().maxMemory() / ROOM_BYTES);
    return (int) Math.min(room, Runtime.getRuntime().availableProcessors());
  }

  /**
   * Renders and audits.
   *
   * @param asLeft ids of readers whose edition that stands certainly is as it was left
   */
  List<RenderedEdition> render(List<Proof> proofs, Set<String> asLeft, Problems problems)
      throws IOException {
    List<RenderedEdition> drafts = new ArrayList<>();
    for (Attempt attempt :
        Workers.all(
            proofs,
            atATime(),
            p -> attempt(p, asLeft.contains(p.group().id())),
            PhotoProgress.SILENT)) {
      drafts.addAll(attempt.drafts());
      problems.addAll(attempt.problems());
    }
    for (RenderedEdition draft : drafts) {
      clean.addAll(draft.report().cleanPictures());
    }
    return drafts;
  }

  private Attempt attempt(Proof proof, boolean asLeft) throws IOException {
    Problems problems = new Problems();
    List<RenderedEdition> drafts = new ArrayList<>();
    try {
      drafts.add(draft(proof, asLeft, problems));
    } catch (ProblemException e) {
      problems.add(e.problem());
    } finally {
      course.end();
    }
    return new Attempt(drafts, problems.list());
  }

  /**
   * Writes an edition and audits it.
   *
   * @param asLeft whether the one that stands certainly is as it was left
   */
  private RenderedEdition draft(Proof proof, boolean asLeft, Problems problems) throws IOException {
    Withholder.Withheld withheld = proof.withheld();
    Edition edition = withheld.edition();
    Readers group = proof.group();
    String who = group.id();
    Theme theme = Workshop.theme(occasion.folder(), edition.contents().theme());
    if (group.outputs().stream().anyMatch(output -> output != Readers.Output.SITE)) {
      problems.addAll(Press.proofread(edition, theme));
    }
    problems.addAll(TalkReminders.of(opened.log(), edition));
    Path making = shelf.startMaking(who);
    EarlierEdition before =
        EarlierEdition.of(
            occasion.folder(),
            shelf,
            who,
            asLeft,
            making,
            FileTimes.of(occasion.asOf()),
            digests.ofEditions());
    EditionWriter writer =
        new EditionWriter(occasion.folder(), edition, theme, before, program, making, course);
    for (Readers.Output output : new TreeSet<>(group.outputs())) {
      writer.write(output);
    }
    FileTimes.set(making, occasion.asOf());
    Manifest manifest = Manifest.of(making, before.kept(), digests::ofCopy);
    course.begin(Step.of(Step.Kind.AUDITING, who));
    AuditReport report =
        new EditionSearch(making, manifest, opened, withheld, proof.words().mayStand(), who)
            .search(
                Stream.concat(
                        EditionPictures.of(withheld, digests::of).stream(),
                        EditionPictures.frames(
                            withheld, TalkWriter.places(edition), manifest.files())
                            .stream())
                    .toList(),
                new Before(
                    decoded,
                    manifest.files(),
                    Audited.read(occasion.folder(), who, program),
                    digests::find));
    earlier.put(who, before);
    return new RenderedEdition(
        group, opened.log().agreements().values(), withheld, manifest, report);
  }

  /** Remembers what was found on the way, of editions that are thrown away too. */
  void saveDigests() throws IOException {
    digests.save();
  }

  /** Remembers the editions, which stand now. */
  void remember(List<RenderedEdition> standing) throws IOException {
    for (EarlierEdition before : earlier.values()) {
      before.remember();
    }
    for (RenderedEdition edition : standing) {
      Audited.write(occasion.folder(), edition.group().id(), program, edition.report().outcome());
    }
  }
}

package chinelog.publish;

import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;

/**
 * The site of some readers for the maker's own eyes: in the workshop, and nowhere taken down as
 * given out.
 */
final class DraftSite {

  private final Path folder;
  private final Shelf shelf;
  private final Course course;
  private final Digests digests;

  DraftSite(Path folder, Shelf shelf, Course course) throws IOException {
    this.folder = folder;
    this.shelf = shelf;
    this.course = course;
    this.digests = Digests.open(folder);
  }

  /**
   * Makes it in the place of the draft that stands.
   *
   * @throws ProblemException if something stands there that chinelog did not write
   */
  Outcome.Made write(Readers group, Withholder.Withheld withheld, java.time.LocalDate asOf)
      throws IOException {
    String who = Shelf.draft(group.id());
    shelf.recover(who);
    List<Problem> foreign = shelf.foreign(who);
    if (!foreign.isEmpty()) {
      throw new ProblemException(foreign.get(0));
    }
    Edition edition = withheld.edition();
    Path making = shelf.startMaking(who);
    try {
      EarlierEdition earlier =
          EarlierEdition.of(
              folder, shelf, who, false, making, FileTimes.of(asOf), digests.ofEditions());
      new EditionWriter(
              folder,
              edition,
              Workshop.theme(folder, edition.contents().theme()),
              earlier,
              Program.stamp(),
              making,
              course)
          .write(Readers.Output.SITE);
      FileTimes.set(making, asOf);
      Manifest manifest = Manifest.of(making, earlier.kept(), digests::ofCopy);
      shelf.announce(who, manifest);
      shelf.swap(who);
      Edition.Contents contents = edition.contents();
      return new Outcome.Made(
          group.id(),
          shelf.published(who),
          manifest.topFiles(),
          contents.entries().size(),
          contents.plates().size(),
          contents.figures().size(),
          new TreeMap<>(),
          0,
          List.of());
    } finally {
      shelf.dropMaking(who);
      course.end();
    }
  }
}

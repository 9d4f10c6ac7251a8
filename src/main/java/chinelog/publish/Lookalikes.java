package chinelog.publish;

import chinelog.photo.Album;
import chinelog.photo.Darkroom;
import chinelog.photo.Likeness;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/** Asks the maker to look at photographs that look like one that is kept back. */
final class Lookalikes {

  private Lookalikes() {}

  /**
   * An error for each open photograph that looks like one that the readers do not see, or not
   * whole, unless the maker has looked at this very file.
   *
   * @param keptBack paths of the photographs that these readers do not see whole
   */
  static List<Problem> problems(Path folder, Album album, Set<String> keptBack, Progress progress)
      throws IOException {
    return Likeness.find(
            album,
            new Darkroom(folder),
            keptBack,
            (done, of) -> progress.count("comparing photograph", done, of))
        .stream()
        .filter(l -> !l.isSettled())
        .map(Likeness::problem)
        .toList();
  }
}

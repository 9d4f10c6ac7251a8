package chinelog.photo.pixels;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.IOException;

/** A file that cannot be shown, with words for its maker. */
public final class UnusablePhoto extends IOException {

  private final transient Sentence what;
  private final transient Sentence remedy;

  public UnusablePhoto(CharSequence what, CharSequence remedy) {
    super(what + " " + remedy);
    this.what = Sentence.of(what);
    this.remedy = Sentence.of(remedy);
  }

  /** A picture that begins well and does not end so. */
  public static UnusablePhoto damaged(CharSequence how) {
    return new UnusablePhoto(
        Sentence.of("The picture is damaged: {0}.", Sentence.of(how)),
        "Copy it again from the card; if there is no better copy, move it out of photos.");
  }

  public Sentence what() {
    return what;
  }

  public Problem at(Place place) {
    return Problem.error(place, what, remedy);
  }
}

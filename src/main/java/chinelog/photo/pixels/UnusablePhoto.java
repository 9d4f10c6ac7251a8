package chinelog.photo.pixels;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import java.io.IOException;

/** A file that cannot be shown, with words for its maker. */
public final class UnusablePhoto extends IOException {

  private final String what;
  private final String remedy;

  public UnusablePhoto(String what, String remedy) {
    super(what + " " + remedy);
    this.what = what;
    this.remedy = remedy;
  }

  /** A picture that begins well and does not end so. */
  public static UnusablePhoto damaged(String how) {
    return new UnusablePhoto(
        "The picture is damaged: " + how + ".",
        "Copy it again from the card; if there is no better copy, move it out of photos.");
  }

  public String what() {
    return what;
  }

  public Problem at(Place place) {
    return Problem.error(place, what, remedy);
  }
}

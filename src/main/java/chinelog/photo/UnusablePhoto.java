package chinelog.photo;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import java.io.IOException;

/** A file that cannot be shown, with words for its maker. */
final class UnusablePhoto extends IOException {

  private final String what;
  private final String remedy;

  UnusablePhoto(String what, String remedy) {
    super(what + " " + remedy);
    this.what = what;
    this.remedy = remedy;
  }

  /** A picture that begins well and does not end so. */
  static UnusablePhoto damaged(String how) {
    return new UnusablePhoto(
        "The picture is damaged: " + how + ".",
        "Copy it again from the card; if there is no better copy, move it out of photos.");
  }

  String what() {
    return what;
  }

  Problem at(Place place) {
    return Problem.error(place, what, remedy);
  }
}

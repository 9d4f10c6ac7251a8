package chinelog.talk;

import chinelog.digest.Sha256;
import chinelog.edition.Edition.Post;
import java.util.List;
import java.util.Locale;

/**
 * One post as it is told.
 *
 * @param scenes each with a frame of its own
 */
record Instalment(Post post, List<Shot> scenes) {

  private static final int SCRIPT_DIGITS = 10;

  Instalment {
    scenes = List.copyOf(scenes);
  }

  /** Name of its folder, such as {@code 02-fifty-strips}. */
  String folder() {
    return String.format(Locale.ROOT, "%02d-%s", post.number(), post.slug());
  }

  /** Of a frame, counted from 1, such as {@code 007.jpg}. */
  static String frame(int number) {
    return String.format(Locale.ROOT, "%03d.jpg", number);
  }

  /** Tells its words and their frames from others. */
  String script() {
    StringBuilder all = new StringBuilder();
    for (Shot scene : scenes) {
      all.append('\f');
      scene.said().forEach(s -> all.append(s.spoken()).append('\n'));
    }
    return Sha256.of(all.toString()).substring(0, SCRIPT_DIGITS);
  }
}

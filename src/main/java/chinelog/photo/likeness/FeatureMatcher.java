package chinelog.photo.likeness;

import boofcv.factory.geo.ConfigRansac;
import boofcv.factory.geo.FactoryMultiViewRobust;
import boofcv.struct.geo.AssociatedPair;
import georegression.struct.homography.Homography2D_F64;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ddogleg.fitting.modelset.ransac.Ransac;
import org.jspecify.annotations.Nullable;

/**
 * Finds one picture within another: features that look the same and lie as a flat picture would
 * seen from another place (a homography, found by random sample consensus: Fischler and Bolles,
 * 1981).
 */
final class FeatureMatcher {

  /** Of the distance to the second nearest feature (Lowe, 2004). */
  private static final double NEARER = 0.8;

  /** Between descriptors of length 1; farther ones are strangers. */
  private static final double FARTHEST = 0.7;

  private static final int ITERATIONS = 400;
  private static final double OFF_PX = 4;

  /** Several matches within one square of this size count once. */
  private static final int CELL_PX = 6;

  /**
   * Of the 32 numbers that may have either sign, strangers differ in half; who differs in more than
   * this is not compared further.
   */
  private static final int MOST_SIGNS = 11;

  /** The same two for features that look very much alike, as most of those do that are the same. */
  private static final int FEW_SIGNS = 6;

  private static final double NEAR = 0.4;

  /**
   * How many of these must agree upon how the original lies. Chosen after measuring, no source: of
   * 245 pictures in which it was then found, 30 or more did for a photograph, and 13 or more for a
   * drawing; of strangers 1 in 50 has so many for a photograph, and 1 in 5 for a drawing.
   */
  private static final int VOTES = 8;

  private static final int LEAST = 8;
  private static final long SAMPLES = 123;

  private FeatureMatcher() {}

  /**
   * How one picture lies in another.
   *
   * @param matches how many features agree, at different places
   * @param area of the scene that encloses them, in its pixels
   */
  record Match(int matches, boolean mirrored, double[] area) {}

  /**
   * Whether the original may be in the scene at all: whether enough features that look very much
   * alike agree upon how it lies there. Views that are not tilted tell that even of a tilted
   * picture, at a small part of the cost of {@link #find}.
   *
   * @param original at full and at half size
   */
  static boolean mayShow(List<Features> original, List<Features> scene) {
    return votes(original, scene, false) >= VOTES || votes(original, scene, true) >= VOTES;
  }

  static int votes(List<Features> original, List<Features> scene, boolean mirrored) {
    PoseVotes votes = new PoseVotes();
    for (Features seen : scene) {
      Features turned = mirrored ? seen.mirrored() : seen;
      for (Features view : original) {
        match(view, turned, FEW_SIGNS, NEAR, (i, j) -> votes.add(view, i, turned, j, mirrored));
      }
    }
    return votes.most();
  }

  /** The best match of any view of the original with any of the scene, if one is good enough. */
  static @Nullable Match find(List<Features> original, List<Features> scene, int enough) {
    Match best = null;
    for (boolean mirrored : new boolean[] {false, true}) {
      for (Features seen : scene) {
        Features turned = mirrored ? seen.mirrored() : seen;
        for (Features view : original) {
          int least = best == null ? enough : best.matches + 1;
          Match match = match(view, turned, mirrored, least);
          if (match != null && match.matches >= least) {
            best = match;
          }
        }
      }
    }
    return best;
  }

  /**
   * The match of two views.
   *
   * @param least features that agree; with fewer it need not be looked for
   */
  private static @Nullable Match match(
      Features original, Features scene, boolean mirrored, int least) {
    List<AssociatedPair> pairs = new ArrayList<>();
    match(
        original,
        scene,
        MOST_SIGNS,
        FARTHEST,
        (i, j) ->
            pairs.add(new AssociatedPair(original.x(i), original.y(i), scene.x(j), scene.y(j))));
    if (pairs.size() < LEAST || places(pairs) < least) {
      return null;
    }
    ConfigRansac how = new ConfigRansac(ITERATIONS, OFF_PX);
    how.randSeed = SAMPLES;
    Ransac<Homography2D_F64, AssociatedPair> ransac =
        FactoryMultiViewRobust.homographyRansac(null, how);
    if (!ransac.process(pairs)) {
      return null;
    }
    double[] area = {Double.MAX_VALUE, Double.MAX_VALUE, 0, 0};
    for (AssociatedPair pair : ransac.getMatchSet()) {
      area[0] = Math.min(area[0], pair.p2.x);
      area[1] = Math.min(area[1], pair.p2.y);
      area[2] = Math.max(area[2], pair.p2.x);
      area[3] = Math.max(area[3], pair.p2.y);
    }
    return new Match(places(ransac.getMatchSet()), mirrored, area);
  }

  /** At how many different places of either picture the features lie. */
  private static int places(List<AssociatedPair> pairs) {
    Set<Long> here = new HashSet<>();
    Set<Long> there = new HashSet<>();
    for (AssociatedPair pair : pairs) {
      here.add(cell(pair.p1.x, pair.p1.y));
      there.add(cell(pair.p2.x, pair.p2.y));
    }
    return Math.min(here.size(), there.size());
  }

  private static long cell(double x, double y) {
    return (long) Math.floor(x / CELL_PX) << 32 ^ (long) Math.floor(y / CELL_PX) & 0xFFFFFFFFL;
  }

  /** Told of a feature of the original and the one of the scene that looks like it. */
  interface Matched {
    void by(int original, int scene);
  }

  /**
   * For each feature of the scene the one of the original that is clearly the most like it.
   *
   * @param mostSigns see {@link #MOST_SIGNS}
   * @param farthest see {@link #FARTHEST}
   */
  static void match(
      Features original, Features scene, int mostSigns, double farthest, Matched matched) {
    int far = (int) Math.pow(farthest * Features.UNIT, 2);
    int beyond = (int) (far / (NEARER * NEARER));
    for (int i = 0; i < scene.count(); i++) {
      byte[] descriptor = scene.descriptor(i);
      long signs = scene.signs(i);
      int nearest = beyond;
      int second = beyond;
      int found = -1;
      for (int j : original.like(scene, i)) {
        if (Long.bitCount(signs ^ original.signs(j)) <= mostSigns) {
          int distance = distance(descriptor, original.descriptor(j), second);
          if (distance < nearest) {
            second = nearest;
            nearest = distance;
            found = j;
          } else if (distance < second) {
            second = distance;
          }
        }
      }
      if (found >= 0 && nearest < far && nearest < NEARER * NEARER * second) {
        matched.by(found, i);
      }
    }
  }

  /** The squared distance; no more exact than needed once it is beyond {@code enough}. */
  private static int distance(byte[] a, byte[] b, int enough) {
    int sum = 0;
    for (int from = 0; from < Features.LENGTH && sum < enough; from += 16) {
      for (int k = from; k < from + 16; k++) {
        int d = a[k] - b[k];
        sum += d * d;
      }
    }
    return sum;
  }
}

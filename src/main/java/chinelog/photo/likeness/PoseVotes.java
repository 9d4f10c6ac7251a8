package chinelog.photo.likeness;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Counts how many matches of features agree upon how one picture lies in another. Each match alone
 * tells that, if roughly, by its place, turn and size (pose clustering: Lowe, "Distinctive image
 * features from scale-invariant keypoints", 2004, section 7.3).
 */
final class PoseVotes {

  /** How far turns and sizes of two matches may lie apart; nearly all that are right lie nearer. */
  private static final int TURNS_APART = Features.TURN / 16;

  private static final int SIZES_APART = Features.DOUBLING * 5 / 8;

  /** How far they may lie from where the other has them, in parts of the distance between them. */
  private static final double PLACES_APART = 0.4;

  private static final double LEAST_APART_PX = 8;

  private static final double MOST_APART_PX = 90;

  /** Several matches within one square of this size count once. */
  private static final int CELL_PX = 6;

  private final Cells here = new Cells();
  private final Cells there = new Cells();
  private final List<Vote> votes = new ArrayList<>();

  /**
   * A match.
   *
   * @param x where it lies in the original
   * @param seenX where it lies in the scene
   * @param cell of the original
   * @param seenCell of the scene
   */
  private record Vote(
      double x,
      double y,
      double seenX,
      double seenY,
      int turn,
      int growth,
      int cell,
      int seenCell) {

    boolean agrees(Vote other, double cos, double sin) {
      // The difference of two turns, from -128 to 127.
      if (Math.abs((byte) (other.turn - turn)) > TURNS_APART
          || Math.abs(other.growth - growth) > SIZES_APART) {
        return false;
      }
      double fromX = cos * (other.x - x) - sin * (other.y - y);
      double fromY = sin * (other.x - x) + cos * (other.y - y);
      double offX = other.seenX - seenX - fromX;
      double offY = other.seenY - seenY - fromY;
      double far = Math.sqrt(fromX * fromX + fromY * fromY);
      double apart = Math.min(MOST_APART_PX, LEAST_APART_PX + PLACES_APART * far);
      return offX * offX + offY * offY <= apart * apart;
    }
  }

  /** Numbers the squares of a picture, and counts those that were marked since the last count. */
  private static final class Cells {
    private final Map<Long, Integer> numbers = new HashMap<>();
    private final List<Integer> marks = new ArrayList<>();

    int number(double x, double y) {
      long cell =
          (long) Math.floor(x / CELL_PX) << 32 ^ (long) Math.floor(y / CELL_PX) & 0xFFFFFFFFL;
      return numbers.computeIfAbsent(
          cell,
          c -> {
            marks.add(-1);
            return numbers.size();
          });
    }

    int mark(int number, int mark) {
      return marks.set(number, mark) == mark ? 0 : 1;
    }
  }

  /**
   * Adds a match.
   *
   * @param i the number of the feature of the original
   * @param j the number of the feature of the scene
   * @param mirrored whether the scene's features are those of its mirror image
   */
  void add(Features original, int i, Features scene, int j, boolean mirrored) {
    double x = original.x(i);
    double y = original.y(i);
    double seenX = mirrored ? -scene.x(j) : scene.x(j);
    double seenY = scene.y(j);
    votes.add(
        new Vote(
            x,
            y,
            seenX,
            seenY,
            original.turn(i, scene, j),
            original.growth(i, scene, j),
            here.number(x, y),
            there.number(seenX, seenY)));
  }

  /**
   * How many agree with the one with which most do, itself among them: at how many different places
   * of either picture.
   */
  int most() {
    int most = 0;
    for (int n = 0; n < votes.size(); n++) {
      Vote one = votes.get(n);
      double grown = Math.pow(2, (double) one.growth / Features.DOUBLING);
      double angle = 2 * Math.PI * one.turn / Features.TURN;
      double cos = grown * Math.cos(angle);
      double sin = grown * Math.sin(angle);
      int places = 0;
      int seenPlaces = 0;
      for (Vote other : votes) {
        if (one.agrees(other, cos, sin)) {
          places += here.mark(other.cell, n);
          seenPlaces += there.mark(other.seenCell, n);
        }
      }
      most = Math.max(most, Math.min(places, seenPlaces));
    }
    return most;
  }
}

package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/** Fair curves along a hull, as points {@code {x, y}}. */
final class Profile {

  private static final int PIECES = 16;

  private Profile() {}

  /**
   * A fair curve through one ordinate of each station, each point put in its place; none through
   * fewer than two stations.
   */
  static List<double[]> curve(
      List<HullSection> stations,
      ToDoubleFunction<HullSection> ordinate,
      UnaryOperator<double[]> place) {
    if (stations.size() < 2) {
      return List.of();
    }
    double[] x = stations.stream().mapToDouble(HullSection::x).toArray();
    double[] y = stations.stream().mapToDouble(ordinate).toArray();
    return curve(FairCurve.alongAHull(x, y), place);
  }

  /** A curve in pieces between its ordinates, each point put in its place. */
  static List<double[]> curve(FairCurve fair, UnaryOperator<double[]> place) {
    return Arrays.stream(fair.places(PIECES))
        .mapToObj(at -> place.apply(new double[] {at, fair.at(at)}))
        .toList();
  }

  /** Along one curve and back along the other. */
  static List<double[]> around(List<double[]> there, List<double[]> back) {
    List<double[]> around = new ArrayList<>(there);
    List<double[]> reversed = new ArrayList<>(back);
    Collections.reverse(reversed);
    around.addAll(reversed);
    return around;
  }
}

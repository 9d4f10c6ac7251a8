package chinelog.withhold;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.util.Comparator;
import java.util.List;

/**
 * The maker's private list of what an edition withholds, and of what was released into it.
 *
 * @param withheld by place
 * @param released by place
 */
public record Register(List<Line> withheld, List<Line> released) {

  private static final Comparator<Line> ORDER =
      Comparator.comparing(Line::place).thenComparing(Line::what);

  public Register {
    withheld = withheld.stream().distinct().sorted(ORDER).toList();
    released = released.stream().distinct().sorted(ORDER).toList();
  }

  /**
   * One thing.
   *
   * @param what it is, in words, such as "photograph photos/T20_0415.jpg"
   * @param label the agreements it is under
   * @param why in words, such as "under lines" or "made from full.beam"
   */
  public record Line(String what, Place place, Label label, String why) {}
}

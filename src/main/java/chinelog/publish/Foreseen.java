package chinelog.publish;

import chinelog.problem.Problem;
import java.util.List;

/**
 * What publishing would come to.
 *
 * @param problems that it would bring up besides questions
 * @param posts that the sites would tell
 * @param printed whether any readers get what is printed
 */
public record Foreseen(List<Problem> problems, List<PostTold> posts, boolean printed) {

  /**
   * A post of the site of some readers.
   *
   * @param words of its entries
   * @param minutes to read it in silence
   */
  public record PostTold(
      String readers, int number, String title, int entries, int words, int minutes) {}
}

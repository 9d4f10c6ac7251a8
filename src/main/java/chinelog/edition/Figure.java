package chinelog.edition;

import chinelog.wording.WorkedLine;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fact as its readers see it.
 *
 * @param name such as {@code hull.loa}; an anchor may be made from it
 * @param title in words
 * @param group heading under which it is listed, such as "Hull"
 * @param model as shown, such as {@code 700 mm}; empty where the figure is the subject's alone
 * @param fullSize as shown, such as {@code 11.20 m}; empty where it has no full-size counterpart
 * @param tolerance as shown, such as {@code ± 2 mm}; may be empty
 * @param origin in words, such as "measured on 4 April 2026"
 * @param working how it was worked out, one line a step; empty for what was not reckoned
 * @param entries ids of the entries it comes from that the edition holds
 * @param cell where it stands among figures that say the same of many parts; null if it does not
 * @param chief its place among the figures that say what the model is; null if it is none
 * @param under agreements, for editions whose readers see them all
 */
public record Figure(
    String name,
    String title,
    String group,
    String model,
    String fullSize,
    String tolerance,
    String origin,
    @Nullable LocalDate date,
    List<WorkedLine> working,
    List<String> entries,
    @Nullable Cell cell,
    @Nullable Chief chief,
    About about,
    List<String> under) {

  /** What is told with figures like it. */
  public enum About {
    /** A mass, where one lies, or what the masses come to together. */
    MASS,
    /** The box that she travels in. */
    BOX,
    ANYTHING
  }

  /** Its value for the model, or at full size where it is the subject's alone. */
  public String shown() {
    return model.isEmpty() ? fullSize : model;
  }

  /**
   * A place in a table of parts.
   *
   * @param part what it is a figure of, such as "Wheelhouse" or "Station 2"
   * @param aspect what is said of each part, such as "Mass"
   */
  public record Cell(String part, String aspect) {}

  /**
   * A place among the chief figures.
   *
   * @param rank the lower, the earlier it is told
   * @param what it is a figure of, such as {@code loa}; of two, the one told first stands for both
   */
  public record Chief(int rank, String what) {}
}

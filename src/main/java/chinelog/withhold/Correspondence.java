package chinelog.withhold;

import chinelog.log.records.Release;
import chinelog.reckon.NextBuild;
import org.jspecify.annotations.Nullable;

/**
 * What letters and forms are made of besides the log itself.
 *
 * @param quotation of the next build; null where none can be made
 * @param form to be filled in; null for none
 */
public record Correspondence(NextBuild.@Nullable Priced quotation, @Nullable Form form) {

  public static final Correspondence NONE = new Correspondence(null, null);

  /**
   * A form.
   *
   * @param agreement that it is about
   * @param asked for what leave is asked; null for a form of the agreement itself
   * @param name of that thing, as a release names it
   * @param forWhom who is to see it, in words
   */
  public record Form(String agreement, Release.@Nullable Kind asked, String name, String forWhom) {}
}

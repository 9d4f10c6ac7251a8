package chinelog.log.records;

import chinelog.problem.Place;
import java.util.List;

/**
 * How the series is told aloud over its photographs.
 *
 * @param widthPx of a frame
 * @param heightPx of a frame
 * @param wordsAMinute spoken
 * @param minutes that an instalment should take
 * @param latitudeMinutes by which it may take more or less
 * @param recordings what is known of instalments that were recorded
 */
public record TalkPlan(
    int widthPx,
    int heightPx,
    int wordsAMinute,
    int minutes,
    int latitudeMinutes,
    List<Recording> recordings) {

  /** Where the log says nothing. A brisk reader of prose says 140 words: common practice. */
  public static final TalkPlan USUAL = new TalkPlan(1920, 1080, 140, 8, 2, List.of());

  public TalkPlan {
    recordings = List.copyOf(recordings);
  }

  /**
   * A recorded instalment.
   *
   * @param readers for whom it was recorded
   * @param instalment name of its folder, such as {@code 02-fifty-strips}
   * @param script tells the words that were read from others
   * @param beginsMs when each frame begins, in ms; the first at 0
   * @param endMs when the recording ends, in ms
   */
  public record Recording(
      String readers,
      String instalment,
      String script,
      List<Long> beginsMs,
      long endMs,
      Place place) {

    public Recording {
      beginsMs = List.copyOf(beginsMs);
    }
  }
}

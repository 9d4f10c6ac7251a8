package chinelog.edition;

import java.util.List;

/**
 * How the series is told aloud over its plates, one instalment a post.
 *
 * @param widthPx of a frame; 0 for readers that get no talk
 * @param heightPx of a frame
 * @param wordsAMinute spoken
 * @param minutes that an instalment should take
 * @param latitudeMinutes by which it may take more or less
 * @param recordings what was recorded for these readers
 */
public record Talk(
    int widthPx,
    int heightPx,
    int wordsAMinute,
    int minutes,
    int latitudeMinutes,
    List<Recording> recordings) {

  /** For readers that get none. */
  public static final Talk NONE = new Talk(0, 0, 0, 0, 0, List.of());

  public Talk {
    recordings = List.copyOf(recordings);
  }

  public boolean isTold() {
    return widthPx > 0;
  }

  /**
   * A recorded instalment. It holds only for the words that were read: those of another script are
   * timed as if nothing had been recorded.
   *
   * @param instalment name of its folder, such as {@code 02-fifty-strips}
   * @param script tells the words that were read from others
   * @param beginsMs when each frame begins, in ms
   * @param endMs when the recording ends, in ms
   */
  public record Recording(String instalment, String script, List<Long> beginsMs, long endMs) {
    public Recording {
      beginsMs = List.copyOf(beginsMs);
    }
  }
}

package chinelog.withhold;

import chinelog.edition.Talk;
import chinelog.log.records.Head;
import chinelog.log.records.Readers;
import chinelog.log.records.TalkPlan;

/**
 * Says how the series is told to readers who get it aloud. Of recordings they get those that were
 * made for them alone: how long another one takes would tell of what is said in it.
 */
final class TalkMaker {

  private TalkMaker() {}

  static Talk make(Head head, Readers readers) {
    if (!readers.outputs().contains(Readers.Output.TALK)) {
      return Talk.NONE;
    }
    TalkPlan plan = head.talk();
    return new Talk(
        plan.widthPx(),
        plan.heightPx(),
        plan.wordsAMinute(),
        plan.minutes(),
        plan.latitudeMinutes(),
        plan.recordings().stream()
            .filter(r -> r.readers().equals(readers.id()))
            .map(r -> new Talk.Recording(r.instalment(), r.script(), r.beginsMs(), r.endMs()))
            .toList());
  }
}

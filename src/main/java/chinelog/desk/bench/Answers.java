package chinelog.desk.bench;

import chinelog.desk.files.WriteOutcome;
import chinelog.desk.web.Reply;
import chinelog.problem.Problem;

/** What a browser is told of a change. */
public final class Answers {

  private static final int CONFLICT = 409;

  private Answers() {}

  /** The words of what was done, or why it was not. */
  public static Reply of(WriteOutcome outcome, DeskWords words, String done) {
    if (outcome instanceof WriteOutcome.Written) {
      return Reply.html(done);
    }
    if (outcome instanceof WriteOutcome.Refused refused) {
      Problem problem = refused.problem();
      return refused(problem.place() + ": " + problem.words(words.locale()));
    }
    return refused(words.text("changed.meanwhile"));
  }

  public static Reply refused(String why) {
    return Reply.refused(CONFLICT, why);
  }
}

package chinelog.desk.bench;

import chinelog.desk.web.Routes;

/** One of the desk's pages, with all that can be done on it. */
public interface DeskPage {

  /** Says which addresses it answers: all of them at or below that of its section. */
  void answerAt(Routes routes);
}

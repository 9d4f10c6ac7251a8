package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import java.io.IOException;
import java.util.Map;

/**
 * Closes the log, for whoever opened it without a terminal. What is being typed is kept.
 *
 * @param leave called before the last page is sent
 */
public record Leaving(Bench bench, Runnable leave) implements DeskPage {

  @Override
  public void answerAt(Routes routes) {
    routes.post("/leave", this::leave);
  }

  private Reply leave(WebRequest request) throws IOException {
    Reply last = bench.frame().page(request, DeskSection.TODAY, "left.ftlh", Map.of());
    leave.run();
    return last;
  }
}

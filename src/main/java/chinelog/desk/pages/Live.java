package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * Tells open pages when a file of the log has changed, by server-sent events (HTML, 9.2): {@code
 * event: changed}. A page that is not seen need not listen.
 */
public record Live(Bench bench) implements DeskPage {

  private static final long PAUSE_MILLIS = 1000;

  /** After so long without news, a comment shows whether anybody still listens. */
  private static final int QUIET_PAUSES = 15;

  @Override
  public void answerAt(Routes routes) {
    routes.get("/live", this::listen);
  }

  private Reply listen(WebRequest request) {
    return new Reply(200, "text/event-stream", Map.of(), this::tell);
  }

  private void tell(OutputStream out) throws IOException {
    String known = bench.log().stamps();
    send(out, ": listening\n\n");
    for (int quiet = 0; ; quiet++) {
      try {
        Thread.sleep(PAUSE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
      String now = bench.log().stamps();
      if (!now.equals(known)) {
        known = now;
        quiet = 0;
        send(out, "event: changed\ndata: \n\n");
      } else if (quiet >= QUIET_PAUSES) {
        quiet = 0;
        send(out, ": still here\n\n");
      }
    }
  }

  private static void send(OutputStream out, String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }
}

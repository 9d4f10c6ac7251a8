package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.Page;
import chinelog.desk.bench.Section;
import chinelog.desk.bench.Words;
import chinelog.desk.files.Outcome;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Request;
import chinelog.desk.web.Routes;
import chinelog.json.Json;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Takes back the last change of any file, and makes it again, across restarts. */
public final class Undoing implements Page {

  private final Bench bench;

  public Undoing(Bench bench) {
    this.bench = bench;
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/turn", this::show)
        .post("/turn/back", r -> said(r, bench.files().findUndo(), bench.files().undo()))
        .post("/turn/again", r -> said(r, bench.files().findRedo(), bench.files().redo()));
  }

  private Reply show(Request request) throws IOException {
    Map<String, Object> values = new TreeMap<>();
    values.put("undo", bench.files().findUndo().orElse(""));
    values.put("redo", bench.files().findRedo().orElse(""));
    return bench.frame().part(request, Section.TODAY, "turn.ftlh", values);
  }

  private Reply said(Request request, Optional<String> what, Optional<Outcome> outcome) {
    Words words = bench.frame().words(request, Section.TODAY);
    String said = "";
    if (outcome.isPresent() && outcome.get() instanceof Outcome.Refused refused) {
      said = refused.problem().words(words.locale());
    } else if (outcome.isPresent() && outcome.get() instanceof Outcome.Changed changed) {
      said = words.text("turn.changed", changed.onDisk().path());
    } else if (outcome.isPresent()) {
      return Reply.json(Json.of(Map.of("done", words.text("turn.done", what.orElse("")))));
    }
    return Reply.json(Json.of(Map.of("refused", said)));
  }
}

package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.json.Json;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Takes back the last change of any file, and makes it again, across restarts. */
public record Undoing(Bench bench) implements DeskPage {

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/turn", this::show)
        .post("/turn/back", r -> said(r, bench.files().findUndo(), bench.files().undo()))
        .post("/turn/again", r -> said(r, bench.files().findRedo(), bench.files().redo()));
  }

  private Reply show(WebRequest request) throws IOException {
    Map<String, Object> values = new TreeMap<>();
    values.put("undo", bench.files().findUndo().orElse(""));
    values.put("redo", bench.files().findRedo().orElse(""));
    return bench.frame().part(request, DeskSection.TODAY, "turn.ftlh", values);
  }

  private Reply said(WebRequest request, Optional<String> what, Optional<WriteOutcome> outcome) {
    DeskWords words = bench.frame().words(request, DeskSection.TODAY);
    String said = "";
    if (outcome.isPresent() && outcome.get() instanceof WriteOutcome.Refused refused) {
      said = refused.problem().words(words.locale());
    } else if (outcome.isPresent() && outcome.get() instanceof WriteOutcome.Changed changed) {
      said = words.text("turn.changed", changed.onDisk().path());
    } else if (outcome.isPresent()) {
      return Reply.json(Json.of(Map.of("done", words.text("turn.done", what.orElse("")))));
    }
    return Reply.json(Json.of(Map.of("refused", said)));
  }
}

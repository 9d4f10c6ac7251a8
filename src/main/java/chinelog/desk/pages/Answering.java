package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Lines;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.photo.album.Photograph;
import chinelog.problem.ProblemException;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The open questions, each answered by a click: it may stand, with a reason, or it goes under the
 * agreement where it stands.
 */
public record Answering(Bench bench) implements DeskPage {

  private static final Path ANSWERS = Path.of("answers.yaml");

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/today/questions", r -> questions(r, !r.text("answered").isEmpty()))
        .post("/today/may-stand", this::mayStand);
  }

  /**
   * @param answered whether one was answered just now, so that none is worth a word
   */
  private Reply questions(WebRequest request, boolean answered) throws IOException {
    Snapshot now = bench.log().now();
    List<Questions.Asking> asked = now.asking();
    List<Map<String, Object>> lines =
        Lines.of(asked.stream().map(Questions.Asking::problem).toList(), request.locale(), now);
    for (int i = 0; i < asked.size(); i++) {
      Questions.Asking asking = asked.get(i);
      Map<String, Object> line = new HashMap<>(lines.get(i));
      line.put("ids", asking.ids());
      line.put("found", asking.found());
      Optional<Photograph> photograph = photograph(asking, now);
      boolean isAnywhere = asking.label().isNone() && photograph.isPresent();
      line.put("isPhotograph", photograph.isPresent());
      line.put(
          "already",
          photograph.map(p -> List.copyOf(p.file().label().agreements())).orElse(List.of()));
      line.put("under", isAnywhere ? now.agreements() : List.copyOf(asking.label().agreements()));
      lines.set(i, line);
    }
    return bench
        .frame()
        .part(
            request,
            DeskSection.TODAY,
            "questions.ftlh",
            Map.of("questions", lines, "answered", answered));
  }

  /** The photograph that a question is about. */
  private static Optional<Photograph> photograph(Questions.Asking asking, Snapshot now) {
    return now.opened().album().photographs().stream()
        .filter(p -> p.file().path().equals(asking.problem().place().file()))
        .findFirst();
  }

  private Reply mayStand(WebRequest request) throws IOException {
    List<String> ids = request.all("question");
    String reason = request.text("reason").strip();
    if (ids.isEmpty() || reason.isEmpty()) {
      return Reply.refused(
          400, bench.frame().words(request, DeskSection.TODAY).text("question.no-reason"));
    }
    Map<String, YamlValue> answer = new LinkedHashMap<>();
    answer.put("questions", YamlValue.words(ids));
    answer.put("answer", YamlValue.text("may-stand"));
    answer.put("reason", YamlValue.text(reason));
    answer.put("on", YamlValue.bare(bench.today().toString()));
    WriteOutcome outcome =
        bench
            .files()
            .edit(
                ANSWERS,
                now -> withAnswer(now, new YamlValue.Keys(answer, false)),
                bench.frame().words(request, DeskSection.TODAY).text("did.may-stand"));
    if (outcome instanceof WriteOutcome.Refused refused) {
      throw new ProblemException(refused.problem());
    }
    return questions(request, true);
  }

  private static String withAnswer(FileVersion file, YamlValue answer) throws ProblemException {
    return YamlText.of(file).plus(List.of(), answer).text();
  }
}

package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Lines;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.problem.ProblemException;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The open questions, each answered by a click: it may stand, with a reason, or it goes under the
 * agreement where it stands.
 */
public final class Answering implements DeskPage {

  private static final Path ANSWERS = Path.of("answers.yaml");

  private final Bench bench;

  public Answering(Bench bench) {
    this.bench = bench;
  }

  @Override
  public void answerAt(Routes routes) {
    routes.get("/today/questions", this::questions).post("/today/may-stand", this::mayStand);
  }

  private Reply questions(WebRequest request) throws IOException {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Questions.Asking asking : bench.log().now().asking()) {
      Map<String, Object> line =
          new HashMap<>(Lines.of(List.of(asking.problem()), DeskWords.locale(request)).get(0));
      line.put("ids", asking.ids());
      line.put("found", asking.found());
      line.put("under", List.copyOf(asking.label().agreements()));
      lines.add(line);
    }
    return bench
        .frame()
        .part(request, DeskSection.TODAY, "questions.ftlh", Map.of("questions", lines));
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
    return questions(request);
  }

  private static String withAnswer(FileVersion file, YamlValue answer) throws ProblemException {
    return YamlText.of(file).plus(List.of(), answer).text();
  }
}

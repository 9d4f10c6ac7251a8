package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.Lines;
import chinelog.desk.bench.Page;
import chinelog.desk.bench.Section;
import chinelog.desk.bench.Words;
import chinelog.desk.files.Outcome;
import chinelog.desk.files.Version;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Request;
import chinelog.desk.web.Routes;
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
public final class Answering implements Page {

  private static final Path ANSWERS = Path.of("answers.yaml");

  private final Bench bench;

  public Answering(Bench bench) {
    this.bench = bench;
  }

  @Override
  public void answerAt(Routes routes) {
    routes.get("/today/questions", this::questions).post("/today/may-stand", this::mayStand);
  }

  private Reply questions(Request request) throws IOException {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Questions.Asking asking : bench.log().now().asking()) {
      Map<String, Object> line =
          new HashMap<>(Lines.of(List.of(asking.problem()), Words.locale(request)).get(0));
      line.put("ids", asking.ids());
      line.put("found", asking.found());
      line.put("under", List.copyOf(asking.label().agreements()));
      lines.add(line);
    }
    return bench.frame().part(request, Section.TODAY, "questions.ftlh", Map.of("questions", lines));
  }

  private Reply mayStand(Request request) throws IOException {
    List<String> ids = request.all("question");
    String reason = request.text("reason").strip();
    if (ids.isEmpty() || reason.isEmpty()) {
      return Reply.refused(
          400, bench.frame().words(request, Section.TODAY).text("question.no-reason"));
    }
    Map<String, YamlValue> answer = new LinkedHashMap<>();
    answer.put("questions", YamlValue.words(ids));
    answer.put("answer", YamlValue.text("may-stand"));
    answer.put("reason", YamlValue.text(reason));
    answer.put("on", YamlValue.bare(bench.today().toString()));
    Outcome outcome =
        bench
            .files()
            .edit(
                ANSWERS,
                now -> withAnswer(now, new YamlValue.Keys(answer, false)),
                bench.frame().words(request, Section.TODAY).text("did.may-stand"));
    if (outcome instanceof Outcome.Refused refused) {
      throw new ProblemException(refused.problem());
    }
    return questions(request);
  }

  private static String withAnswer(Version file, YamlValue answer) throws ProblemException {
    return YamlText.of(file).plus(List.of(), answer).text();
  }
}

package chinelog.desk.notes;

import chinelog.desk.bench.DeskPage;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.NoteText;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.json.Json;
import chinelog.problem.ProblemException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the editor's buttons do to a text that is being typed: it is sent, and comes back changed,
 * or with the words why it cannot be. Nothing is written.
 */
public final class Changes implements DeskPage {

  private static final int MOST_LINES = 40;
  private static final List<String> USED = List.of("used");

  @Override
  public void answerAt(Routes routes) {
    routes
        .post("/notes/under", r -> changed(r, Changes::under))
        .post("/notes/insert", r -> changed(r, Changes::insert))
        .post("/notes/key", r -> changed(r, Changes::key));
  }

  private interface Change {
    String of(WebRequest request, FileVersion text) throws ProblemException;
  }

  private static Reply changed(WebRequest request, Change change) {
    FileVersion text =
        new FileVersion(request.text("file"), LineEnds.plain(request.text("text")), "", true);
    try {
      return Reply.json(Json.of(Map.of("text", change.of(request, text))));
    } catch (ProblemException e) {
      String words = e.problem().words(request.locale());
      return Reply.json(Json.of(Map.of("refused", words)));
    }
  }

  /** Puts what is chosen under agreements, or takes the mark off. */
  private static String under(WebRequest request, FileVersion text) throws ProblemException {
    NoteText note = NoteText.of(text);
    List<String> agreements = request.all("under");
    int from = request.number("from", 0);
    int to = request.number("to", from);
    return switch (request.text("what")) {
      case "paragraph" -> note.paragraphUnder(from, agreements).text();
      case "section" -> note.sectionUnder(from, agreements).text();
      case "note" -> note.noteUnder(agreements).text();
      case "off" -> note.notUnder(from).text();
      default -> note.under(from, to, agreements).text();
    };
  }

  private static String insert(WebRequest request, FileVersion text) throws ProblemException {
    NoteText note = NoteText.of(text);
    int at = request.number("from", 0);
    return switch (request.text("what")) {
      case "photograph" ->
          note.withPicture(at, request.text("photograph"), request.text("caption")).text();
      case "fact" -> note.withFact(at, request.text("fact")).text();
      case "footnote" -> note.withFootnote(at, request.text("words")).text();
      default -> note.withTable(at, lines(request, "rows"), lines(request, "columns")).text();
    };
  }

  private static int lines(WebRequest request, String name) {
    return Math.max(1, Math.min(MOST_LINES, request.number(name, 2)));
  }

  /** Writes or takes away a key at the top of a note. */
  private static String key(WebRequest request, FileVersion text) throws ProblemException {
    YamlText keys = YamlText.ofHead(text);
    List<String> at = Arrays.asList(request.text("at").split("/"));
    String value = request.text("value").strip();
    List<String> all = request.all("word");
    if (value.isEmpty() && all.isEmpty()) {
      return keys.without(at).text();
    }
    YamlValue written =
        !all.isEmpty()
            ? YamlValue.under(all)
            : value.matches("-?[0-9]+([.][0-9]+)?") ? YamlValue.bare(value) : YamlValue.text(value);
    boolean isNewUse =
        at.size() == 2 && at.get(0).equals("used") && keys.size(USED) > 0 && !keys.has(at);
    return isNewUse
        ? keys.plus(USED, new YamlValue.Keys(use(at.get(1), written), true)).text()
        : keys.with(at, written).text();
  }

  /** A line of what was used, where that is written as a list. */
  private static Map<String, YamlValue> use(String material, YamlValue amount) {
    Map<String, YamlValue> use = new LinkedHashMap<>();
    use.put("material", YamlValue.text(material));
    use.put("amount", amount);
    return use;
  }
}

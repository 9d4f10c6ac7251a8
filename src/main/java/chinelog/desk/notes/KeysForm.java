package chinelog.desk.notes;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.YamlText;
import chinelog.desk.web.Reply;
import chinelog.desk.web.WebRequest;
import chinelog.problem.ProblemException;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.Facts;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The keys at the top of a note as a form: day, stage, time, what was used, measured, weighed. */
final class KeysForm {

  private static final Pattern DAY_IN_NAME = Pattern.compile("(?:.*/)?(\\d{4}-\\d{2}-\\d{2}).*");

  private final Bench bench;

  KeysForm(Bench bench) {
    this.bench = bench;
  }

  /** The form by itself, for a text that was changed. */
  Reply part(WebRequest request, FileVersion text) throws IOException {
    return bench
        .frame()
        .part(
            request, DeskSection.NOTES, "note-form.ftlh", values(request, text, bench.log().now()));
  }

  Map<String, Object> values(WebRequest request, FileVersion text, Snapshot now) {
    Map<String, Object> values = new HashMap<>();
    values.put("agreements", Editor.agreements(now));
    values.put("stages", NotesPages.stages(now));
    NumberStyle style =
        new NumberStyle(bench.frame().words(request, DeskSection.NOTES).locale(), 0);
    List<Map<String, String>> materials = materials(now, style);
    values.put("materials", materials);
    try {
      YamlText keys = YamlText.ofHead(text);
      values.put("date", keys.find(List.of("date")).orElse(""));
      Matcher day = DAY_IN_NAME.matcher(text.path());
      values.put("dateInName", day.matches() ? day.group(1) : "");
      values.put("stage", keys.find(List.of("stage")).orElse(""));
      values.put("time", String.join(", ", keys.words(List.of("time"))));
      values.put("used", used(keys, materials));
      values.put("measured", readings(keys, "measured"));
      values.put("weighed", readings(keys, "weighed"));
      values.put("under", keys.words(List.of("under")));
    } catch (ProblemException e) {
      values.put("wrong", e.problem().words(request.locale()));
    }
    return values;
  }

  private static List<Map<String, String>> materials(Snapshot now, NumberStyle style) {
    List<Map<String, String>> materials = new ArrayList<>();
    Facts facts = now.opened().facts();
    for (Facts.MaterialSum material : facts.materials()) {
      materials.add(
          Map.of(
              "id", material.material(),
              "title", material.title(),
              "left", facts.find(material.leftFact()).map(f -> style.show(f.value())).orElse("")));
    }
    return materials;
  }

  /** A line of the form: where its value stands in the keys, and what stands there. */
  private static Map<String, String> line(List<String> at, String name, String value) {
    return Map.of("at", String.join("/", at), "name", name, "value", value);
  }

  private static List<Map<String, String>> used(
      YamlText keys, List<Map<String, String>> materials) {
    List<Map<String, String>> lines = new ArrayList<>();
    for (int i = 0; i < keys.size(List.of("used")); i++) {
      String item = String.valueOf(i);
      lines.add(
          withLeft(
              line(
                  List.of("used", item, "amount"),
                  keys.find(List.of("used", item, "material")).orElse(""),
                  keys.find(List.of("used", item, "amount")).orElse("")),
              materials));
    }
    for (String material : keys.keys(List.of("used"))) {
      List<String> at = List.of("used", material);
      List<String> amount =
          keys.has(List.of("used", material, "amount")) ? List.of("used", material, "amount") : at;
      lines.add(withLeft(line(amount, material, keys.find(amount).orElse("")), materials));
    }
    return lines;
  }

  private static Map<String, String> withLeft(
      Map<String, String> line, List<Map<String, String>> materials) {
    Map<String, String> whole = new HashMap<>(line);
    for (Map<String, String> material : materials) {
      if (String.valueOf(material.get("id")).equals(line.get("name"))) {
        whole.put("title", material.get("title"));
        whole.put("left", material.get("left"));
      }
    }
    return whole;
  }

  private static List<Map<String, String>> readings(YamlText keys, String group) {
    List<Map<String, String>> lines = new ArrayList<>();
    for (String name : keys.keys(List.of(group))) {
      List<String> whole = List.of(group, name);
      List<String> is = List.of(group, name, "is");
      List<String> at = keys.has(is) ? is : whole;
      lines.add(line(at, name, keys.find(at).orElse("")));
    }
    return lines;
  }
}

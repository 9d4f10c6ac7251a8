package chinelog.desk.settings;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.FileVersion;
import chinelog.json.Json;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What would come of some lines more in a file: what is wrong, by the key it is wrong in, and the
 * figures that would be reckoned from them.
 */
record Trying(Bench bench, DeskWords words) {

  private static final Pattern KEY = Pattern.compile("\\s*(?:- )?([A-Za-z][A-Za-z0-9_.-]*)\\s*:.*");

  /**
   * As JSON: {@code wrong} by key, the empty one for what is wrong with all of it, and {@code
   * figures}, each a title and a value.
   */
  String of(FileVersion now, String text) throws IOException {
    Snapshot before = bench.log().now();
    Set<Sentence> known = new HashSet<>();
    before.problems().forEach(p -> known.add(p.what()));
    SortedMap<String, String> unsaved = new TreeMap<>();
    unsaved.put(now.path(), text);
    Snapshot after = bench.log().as(unsaved);
    List<String> lines = text.lines().toList();
    Map<String, Object> wrong = new LinkedHashMap<>();
    for (Problem problem : after.problems()) {
      if (problem.isError() && !known.contains(problem.what())) {
        wrong.putIfAbsent(key(problem, now.path(), lines), problem.words(words.locale()));
      }
    }
    return Json.of(Map.of("wrong", wrong, "figures", figures(before, after)));
  }

  /** The key on whose line a problem lies. */
  private static String key(Problem problem, String file, List<String> lines) {
    int line = problem.place().line();
    if (!problem.place().file().equals(file) || line < 1 || line > lines.size()) {
      return "";
    }
    Matcher key = KEY.matcher(lines.get(line - 1));
    return key.matches() ? key.group(1) : "";
  }

  private List<Object> figures(Snapshot before, Snapshot after) {
    NumberStyle style = new NumberStyle(words.locale(), after.log().head().inchDenominator());
    Catalogue titles = Catalogue.of(Facts.MESSAGES, words.locale());
    Set<String> known = new HashSet<>(before.opened().facts().byName().keySet());
    List<Object> figures = new ArrayList<>();
    for (Fact fact : after.opened().facts().inOrder()) {
      if (!known.contains(fact.name())) {
        figures.add(List.of(titles.text(fact.title()), style.show(fact.value())));
      }
    }
    Set<String> limits = new HashSet<>();
    before.opened().facts().limits().forEach(l -> limits.add(l.limit().id()));
    for (Facts.LimitCheck check : after.opened().facts().limits()) {
      if (!limits.contains(check.limit().id())) {
        String verdict =
            words.text("verdict." + check.verdict().name().toLowerCase(java.util.Locale.ROOT));
        figures.add(
            List.of(check.limit().title(), style.show(check.value()) + " \u00b7 " + verdict));
      }
    }
    return figures;
  }
}

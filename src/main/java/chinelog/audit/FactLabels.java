package chinelog.audit;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Release;
import chinelog.log.records.Request;
import chinelog.log.records.Statement;
import chinelog.log.records.Table;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The labels of the facts that a log names, by what they are stated to rest on. */
final class FactLabels {

  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]*(?:\\.[a-z0-9_]+)*");

  private final Map<String, Label> labels = new TreeMap<>();
  private final Map<String, Set<String>> inputs = new TreeMap<>();
  private final Map<String, Set<String>> released = new TreeMap<>();

  /** Labels found, after all releases and before any. */
  private final Map<String, Label> asReleased = new HashMap<>();

  private final Map<String, Label> asMeasured = new HashMap<>();

  private FactLabels() {}

  static FactLabels of(Log log, String readers) {
    FactLabels facts = new FactLabels();
    for (Release release : log.releases()) {
      if (release.kind() == Release.Kind.FACT && release.readers().contains(readers)) {
        facts
            .released
            .computeIfAbsent(release.name(), n -> new HashSet<>())
            .add(release.agreement());
      }
    }
    Marked<?> scale = log.head().scale();
    if (scale != null) {
      facts.join("scale", scale.label());
    }
    for (Statement s : log.statements()) {
      facts.join(s.name(), s.label());
      String source = s.source();
      if (source != null) {
        log.sheets().stream()
            .filter(sheet -> sheet.path().equals(source.replaceFirst("#.*", "")))
            .forEach(sheet -> facts.join(s.name(), sheet.label(source)));
      }
      Matcher m = NAME.matcher(s.expression());
      while (m.find()) {
        facts.inputs.computeIfAbsent(s.name(), n -> new LinkedHashSet<>()).add(m.group());
        facts.join(s.name(), ofTable(log, m.group()));
      }
    }
    for (Request request : log.requests()) {
      Label label = request.label().join(request.reckoning().label());
      for (Marked<String> input : request.inputs().values()) {
        label = label.join(input.label());
        for (var table : log.tables()) {
          if (table.name().equals(input.value())) {
            label = label.join(table.label());
          }
        }
      }
      facts.join(request.prefix() + ".*", label);
    }
    for (Entry entry : log.entries()) {
      entry.measured().forEach(m -> facts.join(m.fact(), entry.label().join(m.label())));
      entry.weighed().forEach(w -> facts.join("mass." + w.part(), entry.label().join(w.label())));
    }
    return facts;
  }

  /** Of the table whose column a formula names, all its columns and rows with it. */
  private static Label ofTable(Log log, String name) {
    Label label = Label.NONE;
    for (var table : log.tables()) {
      String called = table.name().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}0-9]+", "_");
      if (name.startsWith(called + ".")) {
        label = label.join(ofAll(table));
      }
    }
    return label;
  }

  /** Of a table with all its columns and rows. */
  static Label ofAll(Table table) {
    Label label = table.label();
    for (var column : table.columns()) {
      label = label.join(column.label());
    }
    for (var row : table.rows()) {
      label = label.join(row.label());
    }
    return label;
  }

  /** Of all facts that a formula names, none of them released: what is drawn can be measured. */
  Label ofAll(String formula) {
    Label label = Label.NONE;
    Matcher m = NAME.matcher(formula);
    while (m.find()) {
      label = label.join(of(m.group(), asMeasured, false));
    }
    return label;
  }

  private void join(String name, Label label) {
    labels.merge(name, label, Label::join);
  }

  /** The label of a fact, after all releases to these readers. */
  Label of(String name) {
    return of(name, asReleased, true);
  }

  private Label of(String name, Map<String, Label> known, boolean isFreed) {
    Label found = known.get(name);
    if (found != null) {
      return found;
    }
    Label label = labels.getOrDefault(name, Label.NONE);
    int dot = name.indexOf('.');
    if (!labels.containsKey(name) && dot > 0) {
      label = labels.getOrDefault(name.substring(0, dot) + ".*", Label.NONE);
    }
    // A formula that names itself by some way is an error elsewhere; here it must end.
    known.put(name, label);
    for (String input : inputs.getOrDefault(name, Set.of())) {
      label = label.join(of(input, known, isFreed));
    }
    for (String agreement : isFreed ? released.getOrDefault(name, Set.of()) : Set.<String>of()) {
      label = label.without(agreement);
    }
    known.put(name, label);
    return label;
  }

  boolean isReleased(String name) {
    return released.containsKey(name);
  }
}

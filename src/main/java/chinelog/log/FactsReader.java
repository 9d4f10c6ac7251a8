package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Amounts;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Marked;
import chinelog.log.records.Request;
import chinelog.log.records.Statement;
import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads facts.yaml: facts stated, formulas, and trade reckonings asked for. */
final class FactsReader {

  private final Scope scope;
  private final List<Statement> statements = new ArrayList<>();
  private final List<Request> requests = new ArrayList<>();

  FactsReader(Scope scope) {
    this.scope = scope;
  }

  void read(Yaml root) {
    for (Yaml.Pair pair : Fields.mapping(root, scope).pairs()) {
      if (new Values(scope).isFactName(pair.key())) {
        fact(pair);
      }
    }
  }

  List<Statement> statements() {
    return statements;
  }

  List<Request> requests() {
    return requests;
  }

  private void fact(Yaml.Pair pair) {
    if (!(pair.value() instanceof Yaml.Mapping mapping)) {
      state(pair, pair.value(), null);
      return;
    }
    if (isDividedByComma(mapping)) {
      return;
    }
    if (mapping.pairs().stream().anyMatch(p -> p.key().text().equals("reckon"))) {
      request(pair, mapping);
      return;
    }
    Fields fields = new Fields(mapping, scope, Label.NONE, "is", "title", "from", "on", "under");
    Yaml is = fields.require("is", "11.20 m ± 5 mm");
    if (is != null) {
      state(pair, is, fields);
    }
  }

  /**
   * Whether a comma inside braces has cut a value in two, as in {@code {is: max(a, b)}} and in
   * {@code {is: 12,5 mm}}, which is said.
   */
  private boolean isDividedByComma(Yaml.Mapping mapping) {
    for (int i = 1; i < mapping.pairs().size(); i++) {
      Yaml.Pair before = mapping.pairs().get(i - 1);
      String rest = mapping.pairs().get(i).key().text();
      boolean alone =
          mapping.pairs().get(i).value() instanceof Yaml.Scalar value && value.text().isEmpty();
      if (!alone || !(before.value() instanceof Yaml.Scalar cut)) {
        continue;
      }
      boolean number = cut.text().matches(".*[0-9]") && rest.matches("[0-9].*");
      boolean bracket = count(cut.text(), '(') > count(cut.text(), ')');
      if (number || bracket) {
        StringBuilder whole = new StringBuilder(cut.text());
        for (int k = i; k < mapping.pairs().size() && count(whole, '(') > count(whole, ')'); k++) {
          whole.append(", ").append(mapping.pairs().get(k).key().text());
        }
        scope.error(
            cut.place(),
            Sentence.of("A comma cuts this value short: \"{0}\".", cut.text()),
            bracket
                ? Sentence.of("Put it in quotes: {0}: \"{1}\".", before.key().text(), whole)
                : Sentence.of("Write a decimal point: {0}.{1}.", cut.text(), rest));
        return true;
      }
    }
    return false;
  }

  private static long count(CharSequence text, char c) {
    return text.chars().filter(each -> each == c).count();
  }

  private void state(Yaml.Pair pair, Yaml expression, @Nullable Fields fields) {
    Values values = new Values(scope);
    String text = values.text(expression);
    if (text == null) {
      return;
    }
    Label label = Amounts.own(text, fields == null ? Label.NONE : fields.label());
    String source = fields == null ? null : fields.text("from");
    statements.add(
        new Statement(
            pair.key().text(),
            fields == null ? "" : fields.text("title", ""),
            text,
            source,
            fields == null ? null : fields.pastDate("on"),
            label,
            pair.key().place(),
            expression.place()));
  }

  private void request(Yaml.Pair pair, Yaml.Mapping mapping) {
    String[] keys = mapping.pairs().stream().map(p -> p.key().text()).toArray(String[]::new);
    Fields fields = new Fields(mapping, scope, Label.NONE, keys);
    Label label = fields.has("under") ? fields.label() : Label.NONE;
    Marked<String> reckoning = fields.marked("reckon");
    SortedMap<String, Marked<String>> inputs = new TreeMap<>();
    for (Yaml.Pair input : mapping.pairs()) {
      String key = input.key().text();
      if (!key.equals("reckon") && !key.equals("under")) {
        Marked<String> value = fields.marked(input.value());
        if (value != null) {
          inputs.put(key, value);
        }
      }
    }
    if (reckoning != null) {
      requests.add(new Request(pair.key().text(), reckoning, inputs, label, pair.key().place()));
    }
  }
}

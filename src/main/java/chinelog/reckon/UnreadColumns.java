package chinelog.reckon;

import chinelog.log.records.Log;
import chinelog.log.records.Request;
import chinelog.log.records.Table;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.reckon.trade.Parameter;
import chinelog.reckon.trade.TradeReckoning;
import chinelog.reckon.trade.TradeReckonings;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Columns with figures that nothing reads, though their table is reckoned with: one whose heading
 * is misspelt would be left out in silence.
 */
record UnreadColumns(Log log, ColumnNames formulas, Problems problems) {

  void remind() {
    for (Table table : log.tables()) {
      List<Parameter> readers = new ArrayList<>();
      TreeSet<String> reckonings = new TreeSet<>();
      for (Request request : log.requests()) {
        TradeReckonings.find(request.reckoning().value())
            .ifPresent(r -> gather(r, request, table, readers, reckonings));
      }
      for (int i = 0; !readers.isEmpty() && i < table.columns().size(); i++) {
        String name = table.columns().get(i).name();
        if (readers.stream().noneMatch(p -> p.reads(name))
            && !formulas.reads(table, i)
            && holdsFigures(table, i)) {
          remind(table.columns().get(i), readers, reckonings);
        }
      }
    }
  }

  private static void gather(
      TradeReckoning reckoning,
      Request request,
      Table table,
      List<Parameter> readers,
      TreeSet<String> reckonings) {
    for (Parameter parameter : reckoning.parameters()) {
      var input = request.inputs().get(parameter.name());
      Parameter.Kind kind = parameter.kind();
      if ((kind == Parameter.Kind.TABLE || kind == Parameter.Kind.SOLIDS)
          && input != null
          && input.value().strip().equals(table.name())) {
        readers.add(parameter);
        reckonings.add(reckoning.name());
      }
    }
  }

  private static boolean holdsFigures(Table table, int column) {
    return table.rows().stream().anyMatch(r -> r.cells().get(column).quantity() != null);
  }

  private void remind(Table.Column column, List<Parameter> readers, TreeSet<String> reckonings) {
    List<String> known =
        readers.stream()
            .flatMap(p -> p.choices().stream())
            .map(c -> c.replace("?", ""))
            .distinct()
            .toList();
    Sentence read =
        Sentence.of(
            "Read are {0}; take the column out if it is not meant.", String.join(", ", known));
    problems.reminder(
        column.place(),
        Sentence.of(
            "The column \"{0}\" is not read by {1}.",
            column.name(), String.join(" or ", reckonings)),
        Suggestion.findNearest(
                column.name(), known.stream().filter(k -> !k.contains("half-breadth")).toList())
            .map(near -> Sentence.of("{0} {1}", Suggestion.of(near), read))
            .orElse(read));
  }
}

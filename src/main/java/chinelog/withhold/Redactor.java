package chinelog.withhold;

import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Release;
import chinelog.log.records.Request;
import chinelog.log.records.Stage;
import chinelog.log.records.Statement;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.reckon.FactId;
import chinelog.withhold.Register.Kind;
import chinelog.withhold.question.Sight;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Removes from a log everything that counts in figures and must leave no trace for some readers.
 *
 * <p>A hidden reading of a fact goes out even where it leaves a note, if there is another reading
 * that is seen: which of them is the latest would else tell of the hidden one's day.
 */
final class Redactor {

  private final Log log;
  private final Account account;
  private final Sight sight;
  private final Set<String> readable = new HashSet<>();
  private boolean changed;

  Redactor(WholeLog whole, Account account) {
    this.log = whole.log();
    this.account = account;
    this.sight = account.sight();
    for (Entry entry : log.entries()) {
      entry.measured().stream()
          .filter(m -> sight.allows(entry.label().join(m.label())))
          .forEach(m -> readable.add(measured(m.fact())));
      entry.weighed().stream()
          .filter(w -> sight.allows(entry.label().join(w.label())))
          .forEach(w -> readable.add(weighed(w.part())));
    }
  }

  private static String measured(String fact) {
    return "measured " + fact;
  }

  private static String weighed(String part) {
    return "weighed " + part;
  }

  /** What is left; the very same log if nothing was to be taken out. */
  Log sift() {
    List<Stage> stages = keep(log.stages(), s -> goes(s.label(), s.place(), Kind.STAGE, s.id()));
    Set<String> named = stages.stream().map(Stage::id).collect(Collectors.toSet());
    Log left =
        log.with(
            head(),
            stages,
            keep(log.limits(), l -> goes(l.label(), l.place(), Kind.LIMIT, l.id())),
            keep(log.posts(), p -> goes(p.label(), p.place(), Kind.POST, "")),
            keep(log.handover(), h -> goes(h.label(), h.place(), Kind.HANDOVER_SECTION, h.id())),
            keep(log.statements(), s -> goes(label(s), s.place(), Kind.FIGURE, s.name())),
            requests(),
            lots(),
            tables(),
            entries(named));
    return changed ? left : log;
  }

  /** Whether a thing goes out, which the register then says. */
  private boolean goes(Label label, Place place, Kind kind, String name) {
    if (sight.allows(label) || sight.presence(label) == Presence.NOTE) {
      return false;
    }
    account.sees(label, place, kind, name);
    changed = true;
    return true;
  }

  private static <T> List<T> keep(List<T> things, Predicate<T> goes) {
    return things.stream().filter(goes.negate()).toList();
  }

  private <T> @Nullable Marked<T> marked(
      @Nullable Marked<T> value, Label around, Kind kind, String name) {
    return value == null || goes(around.join(value.label()), value.place(), kind, name)
        ? null
        : value;
  }

  private Head head() {
    Head head = log.head();
    SortedMap<String, Marked<chinelog.quantity.Quantity>> budgets = new TreeMap<>(head.budgets());
    budgets
        .entrySet()
        .removeIf(
            b ->
                goes(
                    b.getValue().label(),
                    b.getValue().place(),
                    Kind.FIGURE,
                    new FactId.Budget(b.getKey()).name()));
    return head.withFigures(
        marked(head.scale(), Label.NONE, Kind.FIGURE, FactId.SCALE.name()),
        marked(head.rate(), Label.NONE, Kind.FIGURE, FactId.RATE.name()),
        budgets);
  }

  /** Of a statement: its own, and that of the sheet it was taken from. */
  private Label label(Statement statement) {
    String source = statement.source();
    return source == null
        ? statement.label()
        : log.sheets().stream()
            .filter(s -> s.path().equals(source.replaceFirst("#.*", "")))
            .map(s -> statement.label().join(s.label(source)))
            .findFirst()
            .orElse(statement.label());
  }

  private List<Request> requests() {
    List<Request> left = new ArrayList<>();
    for (Request request : log.requests()) {
      Label label = request.label().join(request.reckoning().label());
      String prefix = request.prefix();
      if (goes(label, request.place(), Kind.RECKONING, prefix)) {
        continue;
      }
      SortedMap<String, Marked<String>> inputs = new TreeMap<>();
      for (Map.Entry<String, Marked<String>> input : request.inputs().entrySet()) {
        Marked<String> value = input.getValue();
        if (!goes(value.label(), value.place(), Kind.RECKONING, prefix + ": " + input.getKey())) {
          inputs.put(input.getKey(), value);
        }
      }
      left.add(request.withInputs(inputs));
    }
    return left;
  }

  private List<Lot> lots() {
    List<Lot> left = new ArrayList<>();
    for (Lot lot : log.stock()) {
      if (!goes(lot.label(), lot.place(), Kind.LOT_OF, lot.material())) {
        left.add(lot.withPrice(marked(lot.price(), lot.label(), Kind.PRICE_OF, lot.material())));
      }
    }
    return left;
  }

  private List<Table> tables() {
    List<Table> left = new ArrayList<>();
    for (Table table : log.tables()) {
      if (goes(table.label(), table.place(), Kind.TABLE, table.name())) {
        continue;
      }
      List<Integer> columns = new ArrayList<>();
      for (int i = 0; i < table.columns().size(); i++) {
        Table.Column column = table.columns().get(i);
        Label label = table.label().join(column.label());
        if (!goes(label, column.place(), Kind.COLUMN_OF_TABLE, table.name())) {
          columns.add(i);
        }
      }
      if (columns.isEmpty()) {
        continue;
      }
      List<Table.Row> rows =
          keep(
              table.rows(),
              r -> goes(table.label().join(r.label()), r.place(), Kind.ROW_OF_TABLE, table.name()));
      left.add(table.with(columns, rows));
    }
    return left;
  }

  private List<Entry> entries(Set<String> stages) {
    Set<String> gone =
        log.stages().stream()
            .map(Stage::id)
            .filter(id -> !stages.contains(id))
            .collect(Collectors.toSet());
    List<Entry> left = new ArrayList<>();
    for (Entry e : log.entries()) {
      Label own = e.label();
      Label seen = account.afterReleases(Release.Kind.ENTRY, e.id(), own);
      if (goes(seen, e.place(), Kind.ENTRY, e.id())) {
        continue;
      }
      String what = " of entry " + e.id();
      left.add(
          e.withStage(gone.contains(e.stage()) ? "" : e.stage())
              .withFigures(
                  keep(
                      e.worked(),
                      w -> goes(own.join(w.label()), w.place(), Kind.HOURS_OF_ENTRY, e.id())),
                  keep(
                      e.used(),
                      u -> goes(own.join(u.label()), u.place(), Kind.MATERIAL_OF_ENTRY, e.id())),
                  keep(
                      e.measured(),
                      m ->
                          readingGoes(
                              measured(m.fact()), own.join(m.label()), m.place(), m.fact() + what)),
                  keep(
                      e.weighed(),
                      w ->
                          readingGoes(
                              weighed(w.part()),
                              own.join(w.label()),
                              w.place(),
                              w.part() + what))));
    }
    return left;
  }

  private boolean readingGoes(String key, Label label, Place place, String what) {
    if (goes(label, place, Kind.READING, what)) {
      return true;
    }
    if (sight.allows(label) || !readable.contains(key)) {
      return false;
    }
    account.sees(label, place, Kind.READING, what);
    changed = true;
    return true;
  }
}

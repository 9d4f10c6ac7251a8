package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.MarkWatch;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Entry;
import chinelog.log.records.Marked;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Reads hours.csv: time at work that no note tells of, one stretch to a line, such as {@code
 * 2026-03-14,2 h 30 min,planking}.
 *
 * <p>What was worked on the day of a note of the same stage counts as that note's; all else makes
 * an entry of its own, which is not told and only counts.
 */
final class HoursReader {

  private static final String DATE = "date";
  private static final String TIME = "time";
  private static final String STAGE = "stage";
  private static final String UNDER = "under";
  private static final List<String> COLUMNS = List.of(DATE, TIME, STAGE, UNDER);
  private static final String EXAMPLE =
      "Write such as \"date,time,stage\" in the first line, and \"2026-03-14,2 h 30 min,planking\""
          + " below it.";

  private final Scope scope;
  private final Values values;
  private final List<Stage> stages;

  /** The agreements of each stage, whose marks the hours follow. */
  private final Map<String, Label> labels = new HashMap<>();

  /** One line of the file. */
  private record Line(
      LocalDate date, String stage, List<Entry.Worked> worked, Label label, Place place) {}

  /**
   * @param stages of the plan; empty where the log has none
   */
  HoursReader(Scope scope, List<Stage> stages) {
    this.scope = scope;
    this.values = new Values(scope);
    this.stages = stages;
    stages.forEach(s -> labels.put(s.id(), s.label()));
  }

  /** The entries with the hours of the file among them. */
  List<Entry> addTo(List<Entry> entries, Source source) {
    List<Entry> all = new ArrayList<>(entries);
    List<Entry> untold = new ArrayList<>();
    Map<LocalDate, Integer> ofDay = new HashMap<>();
    for (Line line : lines(source)) {
      int note = noteOf(line, all);
      if (note >= 0) {
        all.set(note, with(all.get(note), line.worked()));
      } else {
        int count = ofDay.merge(line.date(), 1, Integer::sum);
        untold.add(untold(line, line.date() + (count == 1 ? "" : "-" + count)));
      }
    }
    all.addAll(untold);
    return all;
  }

  /** The note that tells of the day: of the same stage, or the first where no stage is written. */
  private static int noteOf(Line line, List<Entry> entries) {
    Predicate<Entry> same =
        e ->
            e.date().equals(line.date())
                && (line.stage().isEmpty() || e.stage().equals(line.stage()));
    for (int i = 0; i < entries.size(); i++) {
      if (same.test(entries.get(i))) {
        return i;
      }
    }
    return -1;
  }

  private static Entry with(Entry entry, List<Entry.Worked> more) {
    List<Entry.Worked> all = new ArrayList<>(entry.worked());
    all.addAll(more);
    return entry.withWorked(List.copyOf(all));
  }

  private static Entry untold(Line line, String name) {
    return new Entry(
        Entry.HOURS_FILE + "#" + name,
        new Marked<>("", line.label(), line.place()),
        line.date(),
        line.stage(),
        List.of(),
        line.worked(),
        List.of(),
        List.of(),
        List.of(),
        line.label(),
        line.place());
  }

  private List<Line> lines(Source source) {
    MarkWatch.refuse(source, scope.problems());
    KeyWatch.refuseInRemarks(source, scope);
    List<List<CsvRecords.Field>> records =
        CsvRecords.read(CsvRecords.withoutRemarks(source), scope.problems());
    List<Line> lines = new ArrayList<>();
    if (records.isEmpty()) {
      scope.error(Place.of(source.file()), "No column of this file has a name.", EXAMPLE);
      return lines;
    }
    List<String> columns = columns(records.get(0));
    for (String needed : List.of(DATE, TIME)) {
      if (!columns.contains(needed)) {
        scope.error(
            records.get(0).get(0).place(),
            Sentence.of("The column \"{0}\" is missing here.", needed),
            EXAMPLE);
        return lines;
      }
    }
    for (List<CsvRecords.Field> record : records.subList(1, records.size())) {
      if (record.size() != columns.size()) {
        scope.error(
            record.get(0).place(),
            Sentence.of(
                record.size() == 1
                    ? "This line has {0} cell, but the first has {1}."
                    : "This line has {0} cells, but the first has {1}.",
                record.size(),
                columns.size()),
            "Give each line a cell for each column; put several times of a day in quotation marks:"
                + " \"09:10-12:40, 14:00-15:15\".");
        continue;
      }
      Line line = line(columns, record);
      if (line != null && !line.worked().isEmpty()) {
        lines.add(line);
      }
    }
    return lines;
  }

  private List<String> columns(List<CsvRecords.Field> head) {
    List<String> columns = new ArrayList<>();
    for (CsvRecords.Field field : head) {
      String name = field.text().strip();
      if (!COLUMNS.contains(name) || columns.contains(name)) {
        scope.error(
            field.place(),
            columns.contains(name)
                ? Sentence.of("Two columns are named \"{0}\".", name)
                : Sentence.of("\"{0}\" is no column here.", name),
            columns.contains(name) ? "Keep one." : Suggestion.remedy(name, COLUMNS));
      }
      columns.add(name);
    }
    return columns;
  }

  private @Nullable Line line(List<String> columns, List<CsvRecords.Field> record) {
    LocalDate date = date(cell(record, columns, DATE));
    Yaml.Scalar time = cell(record, columns, TIME);
    Yaml.Scalar stage = cell(record, columns, STAGE);
    Yaml.Scalar under = cell(record, columns, UNDER);
    String of = stage == null || stage.isEmpty() ? "" : stage.text();
    if (!of.isEmpty() && !stages.isEmpty() && stage != null) {
      values.known(stage, ids(), "a stage of this log");
    }
    Label label = labels.getOrDefault(of, Label.NONE).join(label(under));
    if (date == null || time == null) {
      return null;
    }
    return new Line(
        date,
        of,
        new WorkedReader(date, scope.zone(), scope.problems()).read(time, label),
        label,
        time.place());
  }

  private Collection<String> ids() {
    return stages.stream().map(Stage::id).toList();
  }

  private @Nullable LocalDate date(Yaml.@Nullable Scalar cell) {
    return cell == null ? null : values.pastDate(cell);
  }

  private Label label(Yaml.@Nullable Scalar under) {
    if (under == null || under.isEmpty()) {
      return Label.NONE;
    }
    List<Yaml> words = new ArrayList<>();
    for (String word : under.text().split("[,\\s]+")) {
      words.add(new Yaml.Scalar(word, true, Source.near(under.place(), word)));
    }
    return values.under(new Yaml.Sequence(words, under.place()));
  }

  private static Yaml.@Nullable Scalar cell(
      List<CsvRecords.Field> record, List<String> columns, String name) {
    int at = columns.indexOf(name);
    if (at < 0) {
      return null;
    }
    String text = record.get(at).text().strip();
    return new Yaml.Scalar(text, true, Source.near(record.get(at).place(), text));
  }
}

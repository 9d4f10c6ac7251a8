package chinelog.desk.notes;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.bench.UnnotedDays;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Entry;
import chinelog.log.records.Stage;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** The list of all notes beside a calendar of the days worked, and new notes. */
public record NotesPages(Bench bench) implements DeskPage {

  private static final int DAYS_OF_WEEK = 7;

  @Override
  public void answerAt(Routes routes) {
    routes.get("/notes", this::show).post("/notes/new", this::begin);
  }

  /** Where a file of the log is edited. */
  public static String editing(String file) {
    String page = Entry.isNoteFile(file) ? "/notes/edit" : "/text";
    return page + "?file=" + URLEncoder.encode(file, StandardCharsets.UTF_8);
  }

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Locale locale = bench.frame().words(request, DeskSection.NOTES).locale();
    SortedMap<YearMonth, List<Entry>> months = new TreeMap<>((a, b) -> b.compareTo(a));
    SortedSet<LocalDate> noted = new TreeSet<>();
    for (Entry entry : now.log().notes()) {
      months.computeIfAbsent(YearMonth.from(entry.date()), m -> new ArrayList<>()).add(entry);
      noted.add(entry.date());
    }
    SortedMap<LocalDate, List<String>> photographed = UnnotedDays.of(now);
    photographed
        .keySet()
        .forEach(d -> months.computeIfAbsent(YearMonth.from(d), m -> new ArrayList<>()));
    months.computeIfAbsent(YearMonth.from(now.today()), m -> new ArrayList<>());
    List<Map<String, Object>> shown = new ArrayList<>();
    months.forEach(
        (month, entries) ->
            shown.add(
                Map.of(
                    "title",
                    DateTimeFormatter.ofPattern("LLLL yyyy", locale).format(month),
                    "weeks",
                    weeks(month, noted, photographed.keySet(), now.today()),
                    "entries",
                    lines(month, entries, photographed, now))));
    Map<String, Object> values = new HashMap<>();
    values.put("months", shown);
    values.put("weekdays", weekdays(locale));
    values.put("today", now.today().toString());
    values.put("day", request.find("day").orElse(now.today().toString()));
    values.put("stages", stages(now));
    return bench.frame().page(request, DeskSection.NOTES, "notes.ftlh", values);
  }

  private static List<String> weekdays(Locale locale) {
    List<String> days = new ArrayList<>();
    for (DayOfWeek day : DayOfWeek.values()) {
      days.add(day.getDisplayName(TextStyle.NARROW_STANDALONE, locale));
    }
    return days;
  }

  static List<Map<String, String>> stages(Snapshot now) {
    List<Map<String, String>> stages = new ArrayList<>();
    for (Stage stage : now.log().stages()) {
      stages.add(Map.of("id", stage.id(), "title", stage.title()));
    }
    return stages;
  }

  /** The notes of a month, and in their order the days of which none tells. */
  private static List<Map<String, Object>> lines(
      YearMonth month,
      List<Entry> entries,
      SortedMap<LocalDate, List<String>> photographed,
      Snapshot now) {
    List<Map<String, Object>> lines = new ArrayList<>();
    entries.forEach(e -> lines.add(line(e, now)));
    photographed.forEach(
        (day, paths) -> {
          if (YearMonth.from(day).equals(month)) {
            lines.add(
                Map.of(
                    "date",
                    day.toString(),
                    "day",
                    day.getDayOfMonth(),
                    "photographs",
                    paths.size()));
          }
        });
    lines.sort(Comparator.comparing(l -> String.valueOf(l.get("date"))));
    return lines;
  }

  private static Map<String, Object> line(Entry entry, Snapshot now) {
    String stage =
        now.log().stages().stream()
            .filter(s -> s.id().equals(entry.stage()))
            .map(Stage::title)
            .findFirst()
            .orElse("");
    return Map.of(
        "title", entry.title().value(),
        "date", entry.date().toString(),
        "day", entry.date().getDayOfMonth(),
        "stage", stage,
        "under", List.copyOf(entry.label().agreements()),
        "address", editing(entry.place().file()));
  }

  /** Weeks from Monday on (ISO 8601); a day outside of the month is empty. */
  private static List<List<Map<String, Object>>> weeks(
      YearMonth month, SortedSet<LocalDate> noted, Set<LocalDate> photographed, LocalDate today) {
    List<List<Map<String, Object>>> weeks = new ArrayList<>();
    LocalDate first = month.atDay(1);
    LocalDate day = first.minusDays(first.getDayOfWeek().getValue() - 1L);
    while (!day.isAfter(month.atEndOfMonth())) {
      List<Map<String, Object>> week = new ArrayList<>();
      for (int i = 0; i < DAYS_OF_WEEK; i++) {
        Map<String, Object> cell = new HashMap<>();
        if (YearMonth.from(day).equals(month)) {
          cell.put("number", day.getDayOfMonth());
          cell.put("date", day.toString());
          cell.put("noted", noted.contains(day));
          cell.put("photographed", photographed.contains(day));
          cell.put("today", day.equals(today));
          cell.put("ahead", day.isAfter(today));
        }
        week.add(cell);
        day = day.plusDays(1);
      }
      weeks.add(week);
    }
    return weeks;
  }

  private Reply begin(WebRequest request) throws IOException {
    LocalDate day;
    try {
      day = LocalDate.parse(request.text("day"));
    } catch (DateTimeParseException e) {
      return Reply.seeOther("/notes");
    }
    String title = request.text("title").strip().replaceAll("\\s+", " ");
    String stage = request.text("stage");
    String file = FileNames.of(day, title, name -> Files.exists(bench.folder().resolve(name)));
    String text =
        (stage.isEmpty() ? "" : "---\nstage: " + stage + "\n---\n")
            + (title.isEmpty() ? "" : "# " + title + "\n")
            + "\n";
    WriteOutcome outcome =
        bench
            .files()
            .write(
                Path.of(file),
                FileVersion.NONE,
                text,
                bench.frame().words(request, DeskSection.NOTES).text("did.new-note", title));
    if (outcome instanceof WriteOutcome.Refused refused) {
      throw new ProblemException(refused.problem());
    }
    return Reply.seeOther(editing(file));
  }
}

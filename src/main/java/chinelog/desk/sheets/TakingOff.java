package chinelog.desk.sheets;

import chinelog.desk.bench.Answers;
import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Sheet;
import chinelog.photo.derivatives.SheetPrinter;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is taken off a sheet by clicks: its scale, lengths and angles, and a table of offsets. */
record TakingOff(Bench bench, SheetPrinter printer) implements DeskPage {

  private static final DeskSection HERE = DeskSection.SHEETS;
  private static final Path FACTS = Path.of("facts.yaml");
  private static final String NAME = "[a-z][a-z0-9_]*(\\.[a-z0-9][a-z0-9_]*)*";

  /** A line this far off level or plumb was not clicked along or up: its sine. */
  private static final double SLANT = 0.1;

  @Override
  public void answerAt(Routes routes) {
    routes
        .post("/sheets/scale", this::scale)
        .get("/sheets/measure", this::measure)
        .post("/sheets/fact", this::fact)
        .post("/sheets/offsets", this::offsets);
  }

  /** What was asked of one page of a sheet. */
  private record Asked(DeskWords words, Snapshot now, Sheet sheet, ShownSheet drawing) {

    /** The page's own agreements, which all that is taken off it is under. */
    YamlValue under() {
      return YamlValue.under(List.copyOf(sheet.label(drawing.source()).agreements()));
    }
  }

  private Asked asked(WebRequest request) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    Snapshot now = bench.log().now();
    Sheet sheet =
        Sheets.find(now, request.text("sheet")).orElseThrow(() -> new IOException("no such sheet"));
    ShownSheet drawing = ShownSheet.of(printer, sheet.path(), request.number("page", 1));
    return new Asked(words, now, sheet, drawing);
  }

  /** Two clicks and the true length between them, along the sheet or up it. */
  private Reply scale(WebRequest request) throws IOException {
    Asked asked = asked(request);
    DeskWords words = asked.words;
    boolean along = request.text("along").equals("true");
    Optional<List<Point>> points = Point.parse(request.all("point"));
    if (points.isEmpty() || points.get().size() != 2) {
      return Answers.refused(words.text("two-clicks"));
    }
    Point a = points.get().get(0);
    Point b = points.get().get(1);
    double across = Math.abs(a.x() - b.x());
    double up = Math.abs(a.y() - b.y());
    double px = Math.hypot(across, up);
    if (px < 10 || (along ? up : across) > SLANT * px) {
      return Answers.refused(words.text(along ? "slant.along" : "slant.up"));
    }
    String truth = request.text("truth").strip();
    try {
      Quantity length = Quantity.parse(truth);
      if (!length.unit().isCompatible(Unit.METRE) || length.value().signum() <= 0) {
        return Answers.refused(words.text("no-length", truth));
      }
    } catch (QuantityException e) {
      return Answers.refused(words.text("no-length", truth));
    }
    Measured scan =
        new Measured(px * asked.drawing.mmPerPx(), Scale.CLICKS_PX * asked.drawing.mmPerPx(), "mm");
    String prefix = asked.drawing.prefix();
    if (!along && asked.now.opened().facts().find(prefix + ".factor_x").isEmpty()) {
      return Answers.refused(words.text("along-first"));
    }
    String axis = along ? "x" : "y";
    String said = words.text(along ? "done.along" : "done.up", truth);
    WriteOutcome outcome =
        bench
            .files()
            .edit(
                FACTS,
                file -> {
                  YamlText yaml = YamlText.of(file);
                  if (!yaml.has(List.of(prefix))) {
                    return yaml.with(List.of(prefix), request(asked, axis, truth, scan.text()))
                        .text();
                  }
                  return yaml.with(List.of(prefix, "true_" + axis), YamlValue.text(truth))
                      .with(List.of(prefix, "scan_" + axis), YamlValue.text(scan.text()))
                      .with(List.of(prefix, "under"), asked.under())
                      .text();
                },
                said);
    return Answers.of(outcome, words, said);
  }

  private static YamlValue request(Asked asked, String axis, String truth, String scan) {
    Map<String, YamlValue> keys = new LinkedHashMap<>();
    keys.put("reckon", YamlValue.text(ShownSheet.SCAN_SCALE));
    keys.put("true_" + axis, YamlValue.text(truth));
    keys.put("scan_" + axis, YamlValue.text(scan));
    keys.put("under", asked.under());
    return new YamlValue.Keys(keys, false);
  }

  /** A length of two points or an angle of three, in words. */
  private Reply measure(WebRequest request) throws IOException {
    Asked asked = asked(request);
    Optional<Measured> measured = measured(request, asked);
    return measured.isEmpty()
        ? Answers.refused(asked.words.text("scale-first"))
        : Reply.bytes(
            "text/plain; charset=utf-8",
            measured.get().text().getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  private static Optional<Measured> measured(WebRequest request, Asked asked) {
    Optional<List<Point>> points = Point.parse(request.all("point"));
    Optional<Scale> scale = asked.drawing.findScale(asked.now);
    if (points.isEmpty() || scale.isEmpty()) {
      return Optional.empty();
    }
    List<Point> at = points.get();
    return switch (at.size()) {
      case 2 -> Optional.of(scale.get().length(at.get(0), at.get(1)));
      case 3 -> Optional.of(scale.get().angle(at.get(0), at.get(1), at.get(2)));
      default -> Optional.empty();
    };
  }

  /** Keeps what was measured as a fact under the sheet's agreements. */
  private Reply fact(WebRequest request) throws IOException {
    Asked asked = asked(request);
    DeskWords words = asked.words;
    Optional<Measured> measured = measured(request, asked);
    if (measured.isEmpty()) {
      return Answers.refused(words.text("scale-first"));
    }
    String name = request.text("name").strip();
    String title = request.text("title").strip();
    if (!name.matches(NAME)) {
      return Answers.refused(words.text("name.wrong", name));
    }
    if (asked.now.opened().facts().find(name).isPresent()) {
      return Answers.refused(words.text("name.taken", name));
    }
    Map<String, YamlValue> keys = new LinkedHashMap<>();
    keys.put("is", YamlValue.text(measured.get().text()));
    if (!title.isEmpty()) {
      keys.put("title", YamlValue.text(title));
    }
    keys.put("from", YamlValue.text(asked.drawing.source()));
    keys.put("on", YamlValue.text(bench.today().toString()));
    keys.put("under", asked.under());
    String said = words.text("done.fact", name, measured.get().text());
    WriteOutcome outcome =
        bench
            .files()
            .edit(
                FACTS,
                file ->
                    YamlText.of(file).with(List.of(name), new YamlValue.Keys(keys, true)).text(),
                said);
    return Answers.of(outcome, words, said);
  }

  /** Writes a table of offsets, and first of all puts it under the sheet's agreements. */
  private Reply offsets(WebRequest request) throws IOException {
    Asked asked = asked(request);
    DeskWords words = asked.words;
    Optional<Scale> scale = asked.drawing.findScale(asked.now);
    Optional<List<Point>> origin = Point.parse(request.all("origin"));
    List<String> waterlines = request.all("waterline");
    if (scale.isEmpty() || origin.isEmpty() || origin.get().size() != 1) {
      return Answers.refused(words.text("scale-first"));
    }
    List<OffsetsTaken.Station> stations = new ArrayList<>();
    for (String sent : request.all("station")) {
      Optional<OffsetsTaken.Station> station = OffsetsTaken.parse(sent, waterlines.size());
      if (station.isEmpty()) {
        return Answers.refused(words.text("station.wrong", sent.split("\\|", 2)[0]));
      }
      stations.add(station.get());
    }
    String name = request.text("name").strip();
    if (!name.matches("[A-Za-z0-9][A-Za-z0-9_-]{0,40}")
        || stations.isEmpty()
        || !waterlines.stream().allMatch(w -> w.matches("[0-9]{1,6}([.][0-9]{1,4})?"))) {
      return Answers.refused(words.text("table.wrong"));
    }
    Path table = Path.of("tables", name + ".csv");
    if (bench.files().read(table).exists()) {
      return Answers.refused(words.text("table.there", table.toString()));
    }
    String csv = new OffsetsTaken(scale.get(), origin.get().get(0), waterlines, stations).csv();
    String said = words.text("done.table", table.toString());
    // In this order: a table that stands there for a moment under no agreement could get out.
    WriteOutcome marked =
        bench
            .files()
            .edit(
                Path.of("log.yaml"),
                file ->
                    YamlText.of(file).with(List.of("tables", name, "under"), asked.under()).text(),
                said);
    return marked instanceof WriteOutcome.Written
        ? Answers.of(bench.files().write(table, FileVersion.NONE, csv, said), words, said)
        : Answers.of(marked, words, said);
  }
}

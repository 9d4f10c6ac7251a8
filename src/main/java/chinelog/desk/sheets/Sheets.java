package chinelog.desk.sheets;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.label.Label;
import chinelog.log.records.Sheet;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.SheetPrinter;
import chinelog.problem.ProblemException;
import chinelog.quantity.NumberStyle;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The sheets of the log, and each of their pages seen large, brought to scale and measured. */
public final class Sheets implements DeskPage {

  private static final DeskSection HERE = DeskSection.SHEETS;

  private final Bench bench;
  private final SheetPrinter printer;

  public Sheets(Bench bench) {
    this.bench = bench;
    this.printer = new SheetPrinter(bench.folder());
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/sheets", this::show)
        .get("/sheets/print", this::print)
        .get("/sheets/look", this::look);
    new TakingOff(bench, printer).answerAt(routes);
  }

  /**
   * A page of a sheet.
   *
   * @param wrong why it cannot be shown; empty if it can
   */
  public record Leaf(String path, String title, int page, int pages, String under, String wrong) {}

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    List<Leaf> leaves = new ArrayList<>();
    for (Sheet sheet : now.log().sheets()) {
      try {
        int pages = printer.pages(sheet.path());
        for (int page = 1; page <= pages; page++) {
          leaves.add(
              new Leaf(sheet.path(), sheet.title(), page, pages, under(sheet.label(page)), ""));
        }
      } catch (ProblemException e) {
        String wrong = e.problem().words(request.locale());
        leaves.add(new Leaf(sheet.path(), sheet.title(), 1, 1, under(sheet.label()), wrong));
      }
    }
    return bench.frame().page(request, HERE, "sheets.ftlh", Map.of("leaves", leaves));
  }

  /** A derivative out of the private cache; without an edge, the largest. */
  private Reply print(WebRequest request) throws IOException {
    Optional<Sheet> sheet = find(bench.log().now(), request.text("sheet"));
    if (sheet.isEmpty()) {
      return Reply.notFound();
    }
    int edge = request.number("edge", Integer.MAX_VALUE);
    Darkroom.Print chosen = null;
    for (Darkroom.Print print :
        printer.print(sheet.get().path(), request.number("page", 1)).prints()) {
      if (chosen == null || Math.max(chosen.widthPx(), chosen.heightPx()) < edge) {
        chosen = print;
      }
    }
    return chosen == null ? Reply.notFound() : Reply.file("image/jpeg", chosen.jpeg());
  }

  private static String under(Label label) {
    return String.join(", ", label.agreements());
  }

  static Optional<Sheet> find(Snapshot now, String path) {
    return now.log().sheets().stream().filter(s -> s.path().equals(path)).findFirst();
  }

  private Reply look(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Optional<Sheet> sheet = find(now, request.text("sheet"));
    if (sheet.isEmpty()) {
      return Reply.notFound();
    }
    int page = request.number("page", 1);
    ShownSheet drawing = ShownSheet.of(printer, sheet.get().path(), page);
    DeskWords words = bench.frame().words(request, HERE);
    NumberStyle style = new NumberStyle(words.locale(), now.log().head().inchDenominator());
    Map<String, Object> values = new TreeMap<>();
    values.put("sheet", sheet.get().path());
    values.put("title", sheet.get().title());
    values.put("page", page);
    values.put("pages", printer.pages(sheet.get().path()));
    values.put("widthPx", drawing.widthPx());
    values.put("heightPx", drawing.heightPx());
    values.put("under", under(sheet.get().label(page)));
    values.put("prefix", drawing.prefix());
    for (String fact : List.of("factor_x", "factor_y", "stretch")) {
      values.put(
          fact,
          now.opened()
              .facts()
              .find(drawing.prefix() + "." + fact)
              .map(f -> style.show(f.value()))
              .orElse(""));
    }
    Optional<Scale> scale = drawing.findScale(now);
    values.put("unit", scale.map(Scale::unit).orElse(""));
    values.put("acrossPerPx", scale.map(s -> Double.toString(s.acrossPerPx())).orElse(""));
    values.put("upPerPx", scale.map(s -> Double.toString(s.upPerPx())).orElse(""));
    return bench.frame().page(request, HERE, "sheet.ftlh", values);
  }
}

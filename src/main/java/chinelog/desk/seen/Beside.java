package chinelog.desk.seen;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Readers;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a page shows, once as the workshop has it and once as some readers get it: {@code
 * /beside/facts?for=public}. Every place that is withheld says under what.
 */
public record Beside(Bench bench) implements DeskPage {

  @Override
  public void answerAt(Routes routes) {
    routes.get("/beside/readers", this::readers);
    for (DeskSection section : DeskSection.values()) {
      routes.get("/beside/" + section.id(), r -> show(r, section));
    }
  }

  /** Those for whom a page may be looked at. */
  private Reply readers(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    List<Map<String, String>> readers = new ArrayList<>();
    if (!now.opened().hasErrors()) {
      now.log().readers().forEach(r -> readers.add(Map.of("id", r.id(), "title", r.title())));
    }
    return bench
        .frame()
        .part(request, DeskSection.TODAY, "beside-readers.ftlh", Map.of("readers", readers));
  }

  private Reply show(WebRequest request, DeskSection section) throws IOException {
    Snapshot now = bench.log().now();
    Optional<Readers> readers = now.findReaders(request.text("for"));
    if (readers.isEmpty() || now.opened().hasErrors()) {
      return Reply.html("");
    }
    Locale locale = bench.frame().words(request, section).locale();
    Sides sides = new Sides(now, readers.get(), locale);
    List<Sides.Pair> pairs =
        switch (section) {
          case PHOTOGRAPHS -> sides.photographs(request.text("photo"));
          case SHEETS -> sides.sheets(request.text("sheet"), request.number("page", 0));
          case FACTS -> sides.facts();
          case TODAY, NOTES, AGREEMENTS, PUBLISHING -> sides.notes();
        };
    Map<String, Object> values = new HashMap<>();
    values.put("pairs", pairs);
    values.put("pictures", section == DeskSection.PHOTOGRAPHS || section == DeskSection.SHEETS);
    values.put("alike", (int) pairs.stream().filter(p -> p.why().isEmpty()).count());
    values.put("for", readers.get().id());
    values.put("forTitle", readers.get().title());
    return bench.frame().part(request, section, "beside.ftlh", values);
  }
}

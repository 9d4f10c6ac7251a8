package chinelog.desk.pages;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Lines;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.bench.UnnotedDays;
import chinelog.desk.files.TypedDraft;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.label.Agreement;
import chinelog.photo.album.Photograph;
import chinelog.problem.Problem;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.Facts;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** What wants doing, each thing a click from being done. */
public record Today(Bench bench) implements DeskPage {

  /** An agreement that ends within so many days is told of. */
  /** A limit is near when its fact comes within a twentieth of it. */
  private static final BigDecimal NEAR = BigDecimal.valueOf(20);

  private static final int SOON_DAYS = 60;

  private static final int MOST_DAYS = 6;

  @Override
  public void answerAt(Routes routes) {
    routes.get("/", this::show);
  }

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Map<String, Object> values = new TreeMap<>();
    values.put("title", now.log().head().title().value());
    values.put("day", now.today().toString());
    Locale locale = request.locale();
    SortedMap<LocalDate, List<String>> days = UnnotedDays.of(now);
    values.put(
        "errors", Lines.of(now.problems().stream().filter(Problem::isError).toList(), locale, now));
    values.put(
        "reminders",
        Lines.of(
            now.problems().stream().filter(p -> !p.isError() && !isOfDay(p, days)).toList(),
            locale,
            now));
    values.put("days", days(days));
    values.put("moreDays", Math.max(0, days.size() - MOST_DAYS));
    values.put("hasAgreement", !now.promises().isEmpty());
    values.put("entries", now.log().notes().size());
    values.put("photographs", now.opened().album().photographs().size());
    values.put("facts", now.opened().facts().byName().size());
    values.put(
        "unplaced",
        (int)
            now.opened().album().photographs().stream()
                .filter(p -> p.link() == Photograph.Link.UNPLACED)
                .count());
    values.put("wordless", wordless(now));
    values.put("limits", limits(request, now));
    values.put("ending", ending(now));
    values.put(
        "published",
        now.log().readers().stream()
            .filter(r -> Files.isDirectory(now.opened().place(r).resolve("site")))
            .map(r -> Map.of("id", r.id(), "title", r.title()))
            .toList());
    List<Map<String, String>> drafts = new ArrayList<>();
    for (TypedDraft draft : bench.files().drafts()) {
      drafts.add(Map.of("file", draft.path()));
    }
    values.put("drafts", drafts);
    return bench.frame().page(request, DeskSection.TODAY, "today.ftlh", values);
  }

  private static List<Map<String, Object>> days(SortedMap<LocalDate, List<String>> unnoted) {
    return unnoted.entrySet().stream()
        .limit(MOST_DAYS)
        .map(
            d ->
                Map.<String, Object>of(
                    "day", d.getKey().toString(), "photographs", d.getValue().size()))
        .toList();
  }

  /** Whether a reminder says of a day what its line among the things to do says already. */
  private static boolean isOfDay(Problem reminder, SortedMap<LocalDate, List<String>> days) {
    return days.entrySet().stream()
        .anyMatch(
            d ->
                d.getValue().contains(reminder.place().file())
                    && reminder.what().parts().contains(d.getKey().toString()));
  }

  /** Photographs of which nothing says what they show. */
  private static int wordless(Snapshot now) {
    return (int)
        now.opened().album().photographs().stream()
            .filter(p -> p.link() != Photograph.Link.LEFT_OUT)
            .filter(p -> p.file().alt().isEmpty())
            .count();
  }

  private List<Map<String, Object>> limits(WebRequest request, Snapshot now) {
    NumberStyle style =
        new NumberStyle(bench.frame().words(request, DeskSection.TODAY).locale(), 0);
    List<Map<String, Object>> limits = new ArrayList<>();
    for (Facts.LimitCheck check : now.opened().facts().limits()) {
      if (check.verdict() != Facts.Verdict.KEPT || isNear(check)) {
        limits.add(
            Map.of(
                "title", check.limit().title(),
                "fact", check.fact(),
                "broken", check.verdict() == Facts.Verdict.BROKEN,
                "margin", style.show(check.margin().abs())));
      }
    }
    return limits;
  }

  /** Whether little is left of what a limit allows, and there is one side to stay on. */
  private static boolean isNear(Facts.LimitCheck check) {
    BigDecimal room = check.margin().value().abs();
    return room.signum() > 0 && room.multiply(NEAR).compareTo(check.bound().value().abs()) < 0;
  }

  private static List<Map<String, Object>> ending(Snapshot now) {
    List<Map<String, Object>> ending = new ArrayList<>();
    for (Agreement agreement : now.log().agreements().values()) {
      LocalDate until = agreement.until();
      if (until != null && !until.isBefore(now.today())) {
        int days = (int) ChronoUnit.DAYS.between(now.today(), until);
        if (days <= SOON_DAYS) {
          ending.add(Map.of("id", agreement.id(), "until", until.toString(), "days", days));
        }
      }
    }
    return ending;
  }
}

package chinelog.withhold;

import chinelog.log.records.Readers;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.withhold.question.Sight;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Figures that readers were given before, each as a figure of the quantity that it was then: of
 * what an edition of that day told, or of the whole log of that day.
 */
final class Knowledge {

  /**
   * A figure of a quantity.
   *
   * @param quantity its name in the web
   */
  record Given(String quantity, PrintedFigure figure) {}

  private final WholeLog whole;
  private final Web web;
  private final List<Web.Side> today;
  private final Readers own;
  private final Map<String, List<Web.Side>> days = new HashMap<>();

  /**
   * @param today what the edition tells, then the whole log
   * @param own readers for whom an edition is made
   */
  Knowledge(WholeLog whole, Web web, List<Web.Side> today, Readers own) {
    this.whole = whole;
    this.web = web;
    this.today = today;
    this.own = own;
  }

  /** What these figures tell; one that fits no figure of its day tells nothing that can be used. */
  List<Given> read(List<PrintedFigure> figures) {
    List<Given> given = new ArrayList<>();
    for (PrintedFigure figure : figures) {
      find(today, figure)
          .or(() -> find(sides(figure), figure))
          .ifPresent(quantity -> given.add(new Given(quantity, figure)));
    }
    return given;
  }

  private static Optional<String> find(List<Web.Side> sides, PrintedFigure figure) {
    for (Web.Side side : sides) {
      Optional<Fact> fact =
          side.find(figure.fact()).filter(f -> figure.tells(f.value().coherent()));
      if (fact.isPresent()) {
        return fact.map(side::quantity);
      }
    }
    return Optional.empty();
  }

  private List<Web.Side> sides(PrintedFigure figure) {
    LocalDate day = figure.since();
    return days.computeIfAbsent(
        figure.readers() + " " + day,
        key -> {
          WholeLog then = whole.until(day);
          Readers readers =
              whole.log().readers().stream()
                  .filter(r -> r.id().equals(figure.readers()))
                  .findFirst()
                  .orElse(own);
          Account unkept = new Account(new Sight(then.log(), readers, day));
          Facts told = VisibleLog.of(then, unkept).facts();
          String called = " of " + day;
          return List.of(
              web.side(told, called + " as told to " + readers.id()),
              web.side(then.facts(), called));
        });
  }
}

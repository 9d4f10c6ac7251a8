package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PricePlan;
import chinelog.log.records.PricePlan.Driver;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.trade.PriceRequest;
import chinelog.reckon.trade.Pricing;
import chinelog.reckon.trade.Quotation;
import chinelog.reckon.trade.TradeException;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Prices the next build from the hours and the material that this one took. */
public final class NextBuild {

  /** The facts that are taken for this build's length where the plan does not say. */
  private static final List<String> LENGTHS = List.of("built.loa", "hull.loa");

  private final PricePlan plan;
  private final Log log;
  private final Facts facts;
  private final Problems problems = new Problems();
  private final List<String> notes = new ArrayList<>();
  private Label label;

  private NextBuild(PricePlan plan, Log log, Facts facts) {
    this.plan = plan;
    this.log = log;
    this.facts = facts;
    this.label = plan.label();
  }

  /**
   * A quotation, with all that was wrong with what was asked.
   *
   * @param quotation null where something stands in the way
   * @param notes what the price leaves out, in sentences
   * @param label agreements of all the figures it rests on
   */
  public record Priced(
      @Nullable Quotation quotation, List<String> notes, Label label, List<Problem> problems) {}

  /** The quotation for a plan, from the facts of a log. */
  public static Priced price(PricePlan plan, Log log, Facts facts) {
    NextBuild next = new NextBuild(plan, log, facts);
    Quotation quotation = next.quotation();
    return new Priced(quotation, List.copyOf(next.notes), next.label, next.problems.list());
  }

  private @Nullable Quotation quotation() {
    Quantity rate = rate();
    List<PriceRequest.StageWork> stages = stages();
    SortedMap<Driver, Quantity> built = built();
    if (rate == null || problems.list().stream().anyMatch(Problem::isError)) {
      return null;
    }
    leftOut();
    PriceRequest request =
        new PriceRequest(
            plan.title(),
            money(),
            stages,
            built,
            plan.wanted(),
            rate,
            plan.number(),
            plan.learning(),
            plan.wastage(),
            plan.overhead(),
            plan.margin(),
            plan.tax());
    try {
      return Pricing.quote(request);
    } catch (TradeException e) {
      problems.error(place(e.input()), e.what(), e.remedy());
      return null;
    }
  }

  private Unit money() {
    try {
      return Unit.parse(log.head().currency());
    } catch (QuantityException e) {
      throw new IllegalStateException("the log's currency was read as one", e);
    }
  }

  /** A measure that is missing is missed under "wanted"; all else has a key of its own. */
  private Place place(String input) {
    boolean measure = List.of("length", "area", "count").contains(input);
    return plan.place(measure ? "wanted" : input);
  }

  private @Nullable Quantity rate() {
    Quantity own = plan.rate();
    if (own != null) {
      return own;
    }
    Marked<Quantity> rate = log.head().rate();
    if (rate == null) {
      problems.error(
          plan.place(),
          "Neither this file nor log.yaml says what an hour costs.",
          Sentence.of("Write such as \"rate: 34 {0}/h\".", log.head().currency()));
      return null;
    }
    label = label.join(rate.label());
    return rate.value();
  }

  private List<PriceRequest.StageWork> stages() {
    List<PriceRequest.StageWork> stages = new ArrayList<>();
    for (PricePlan.StagePrice price : plan.stages()) {
      Fact hours = facts.find(hours(price.stage())).orElse(null);
      if (hours == null || hours.value().value().signum() == 0) {
        problems.error(
            price.place(),
            Sentence.of("No hours are written down for the stage \"{0}\".", price.stage()),
            "Take it out of this file, or write its hours into the entries.");
        continue;
      }
      Fact cost = facts.find(new FactId.Cost(FactId.Span.STAGE, price.stage())).orElse(null);
      label = label.join(hours.label());
      if (cost != null) {
        label = label.join(cost.label());
      }
      stages.add(
          new PriceRequest.StageWork(
              title(price.stage()),
              hours.value(),
              cost == null ? null : cost.value(),
              price.driver(),
              price.low(),
              price.high(),
              price.learnt()));
    }
    return stages;
  }

  private static FactId hours(String stage) {
    return new FactId.Hours(FactId.Span.STAGE, stage);
  }

  private String title(String id) {
    return log.stages().stream()
        .filter(s -> s.id().equals(id))
        .map(Stage::title)
        .findFirst()
        .orElse(id);
  }

  private SortedMap<Driver, Quantity> built() {
    SortedMap<Driver, Quantity> built = new TreeMap<>();
    plan.built()
        .forEach(
            (driver, written) -> {
              Quantity value = measure(written);
              if (value != null) {
                built.put(driver, asWanted(driver, value));
              }
            });
    if (!built.containsKey(Driver.LENGTH) && plan.wanted().containsKey(Driver.LENGTH)) {
      LENGTHS.stream()
          .flatMap(n -> facts.find(n).stream())
          .findFirst()
          .ifPresent(f -> built.put(Driver.LENGTH, asWanted(Driver.LENGTH, known(f))));
    }
    return built;
  }

  /** Without its tolerance, and in the unit of the next one's, that the two compare at sight. */
  private Quantity asWanted(Driver driver, Quantity built) {
    Quantity bare = Quantity.of(built.value(), built.unit());
    Quantity wanted = plan.wanted().get(driver);
    try {
      return wanted == null || !wanted.unit().isCompatible(built.unit())
          ? bare
          : bare.in(wanted.unit());
    } catch (QuantityException e) {
      throw new IllegalStateException("units of one kind", e);
    }
  }

  private Quantity known(Fact fact) {
    label = label.join(fact.label());
    return fact.value();
  }

  private @Nullable Quantity measure(Marked<String> written) {
    Fact fact = facts.find(written.value()).orElse(null);
    if (fact != null) {
      return known(fact);
    }
    try {
      return Quantity.parse(written.value());
    } catch (QuantityException e) {
      problems.error(
          written.place(),
          Sentence.of("This log has no fact \"{0}\".", written.value()),
          Suggestion.remedy(written.value(), facts.byName().keySet()));
      return null;
    }
  }

  /** Work of this build that is not in the price. */
  private void leftOut() {
    List<String> priced = plan.stages().stream().map(PricePlan.StagePrice::stage).toList();
    for (Stage stage : log.stages()) {
      facts
          .find(hours(stage.id()))
          .filter(f -> !priced.contains(stage.id()) && f.value().value().signum() > 0)
          .ifPresent(f -> notes.add("Not priced: " + stage.title() + "."));
    }
    long loose = facts.hoursByDay().stream().filter(d -> isOfNoStage(d.stage())).count();
    if (loose > 0) {
      notes.add("Not priced: entries of no stage, " + loose + " in number.");
    }
  }

  private boolean isOfNoStage(String id) {
    return log.stages().stream().noneMatch(s -> s.id().equals(id));
  }
}

package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Limit;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.reckon.trade.Part;
import chinelog.reckon.trade.Sketch;
import chinelog.wording.NaturalOrder;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.jspecify.annotations.Nullable;

/**
 * All facts of a log and what was made from them.
 *
 * @param byName every fact by its name
 * @param limits in the log's order
 * @param uses material used, by entry, in the order used
 * @param materials stock by material, by name
 * @param hoursByDay hours worked on each day, in order, one for each entry
 * @param massGrowth total of what was weighed so far, after each weighing
 * @param drawings what reckonings draw, in the log's order
 */
public record Facts(
    SortedMap<String, Fact> byName,
    List<LimitCheck> limits,
    List<UseCost> uses,
    List<MaterialSum> materials,
    List<DayHours> hoursByDay,
    List<MassPoint> massGrowth,
    List<Drawing> drawings) {

  /** The table of texts for the titles and methods of facts. */
  public static final String MESSAGES = "chinelog.reckon.messages";

  /** With the numbers in names as numbers, so that {@code area_2} comes before {@code area_10}. */
  public static final Comparator<String> NAMES_IN_ORDER =
      Comparator.comparing(NaturalOrder::key).thenComparing(Comparator.naturalOrder());

  /** All, by their names in order. */
  public List<Fact> inOrder() {
    return byName.values().stream()
        .sorted(Comparator.comparing(Fact::name, NAMES_IN_ORDER))
        .toList();
  }

  public Optional<Fact> find(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  public Optional<Fact> find(FactId id) {
    return find(id.name());
  }

  /** How a limit is kept. */
  public enum Verdict {
    KEPT,
    /** Kept, but not if the tolerance falls the wrong way. */
    CLOSE,
    BROKEN
  }

  /**
   * A limit held against its fact.
   *
   * @param fact name of the fact on the rule's left
   * @param names of all facts that it rests on, those of the bound too
   * @param value in the unit of the bound, like the margin
   * @param margin how much room is left; negative if it is broken
   * @param label of the rule, the fact and the bound together
   */
  public record LimitCheck(
      Limit limit,
      String fact,
      List<String> names,
      String comparison,
      Quantity value,
      Quantity bound,
      Quantity margin,
      Verdict verdict,
      Label label) {}

  /**
   * Material used by one entry.
   *
   * @param amountFact name of the fact with the amount
   * @param costFact name of the fact with its cost; null where no price is known
   */
  public record UseCost(
      String entry, String material, String title, String amountFact, @Nullable String costFact) {}

  /**
   * What became of a material.
   *
   * @param boughtFact names of facts, each with its own label
   */
  public record MaterialSum(
      String material,
      String title,
      List<String> hazards,
      String repair,
      String boughtFact,
      String leftFact,
      Label label) {}

  /**
   * What one reckoning draws.
   *
   * @param request what the names of its facts begin with
   * @param parts to cut by
   * @param sketches to look at
   * @param named which fact an input is, where it is one and not worked out from several
   * @param inputs names of the facts it rests on directly
   * @param label of all that decides what is drawn, the facts included
   */
  public record Drawing(
      String request,
      List<Part> parts,
      List<Sketch> sketches,
      List<String> inputs,
      SortedMap<String, String> named,
      Label label,
      Place place) {

    /** The same under another label. */
    public Drawing under(Label other) {
      return new Drawing(request, parts, sketches, inputs, named, other, place);
    }
  }

  public record DayHours(LocalDate day, String entry, String stage, String fact) {}

  /**
   * The mass of all that was weighed up to an entry.
   *
   * @param fact name of the fact with the sum so far
   */
  public record MassPoint(LocalDate day, String entry, String fact) {}
}

package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fact measured in entries; the latest measurement counts, an earlier one keeps its place as
 * {@code NAME.at_ENTRY}.
 *
 * <p>What facts.yaml says of the same name is then the plan, {@code NAME.planned}. A measurement is
 * under the agreements of its plan too, as it tells as much.
 */
final class MeasuredNode implements Node {

  private record Reading(Entry entry, Entry.Measurement measurement) {}

  private final String name;
  private final List<Reading> readings = new ArrayList<>();
  private @Nullable String plan;
  private Phrase title;

  MeasuredNode(String name) {
    this.name = name;
    this.title = Ledger.title("", name);
  }

  void add(Entry entry, Entry.Measurement measurement) {
    readings.add(new Reading(entry, measurement));
  }

  /**
   * Names the fact with what was planned.
   *
   * @param plannedTitle without saying that it was planned
   */
  void plannedAs(String planned, Phrase plannedTitle) {
    this.plan = planned;
    this.title = plannedTitle;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public List<String> needs() {
    String planned = plan;
    return planned == null ? List.of() : List.of(planned);
  }

  @Override
  public boolean yield(Ledger ledger) {
    Label ofPlan = ledger.join(Label.NONE, needs());
    for (int i = 0; i < readings.size(); i++) {
      Reading reading = readings.get(i);
      boolean last = i == readings.size() - 1;
      Entry.Measurement m = reading.measurement;
      Phrase own = m.title().isEmpty() ? title : Phrase.own(m.title());
      ledger.given(
          id(i),
          last ? own : Message.of("measured.on", own, reading.entry.date()),
          m.value(),
          Origin.MEASURED,
          reading.entry.date(),
          reading.entry.label().join(m.label()).join(ofPlan),
          m.place(),
          reading.entry.id());
    }
    return isOfOneKind(ledger);
  }

  private FactId id(int reading) {
    FactId latest = new FactId.Named(name);
    boolean last = reading == readings.size() - 1;
    return last ? latest : new FactId.Reading(latest, readings.get(reading).entry.id());
  }

  /** Whether every reading is of one kind with the plan, or where there is none with the last. */
  private boolean isOfOneKind(Ledger ledger) {
    Fact like = ledger.require(plan == null ? name : plan);
    Unit unit = like.value().unit();
    boolean all = true;
    for (int i = 0; i < readings.size(); i++) {
      Entry.Measurement m = readings.get(i).measurement;
      if (m.value().unit().isCompatible(unit)) {
        continue;
      }
      all = false;
      ledger.error(
          m.place(),
          Sentence.of(
              plan == null
                  ? "\"{0}\" is measured as {1}, but another time in {2} ({3})."
                  : "\"{0}\" is measured as {1}, but its plan is in {2} ({3}).",
              name,
              m.value(),
              unit,
              like.place()),
          "Write the measurement with a unit of the same kind.");
      ledger.withdraw(id(i).name());
    }
    return all;
  }

  @Override
  public void unknown(Ledger ledger, String need, FactGraph graph) {
    // Its only need is the plan, which has said itself what is wrong with it.
  }

  @Override
  public Place place() {
    return readings.get(0).measurement.place();
  }

  @Override
  public void circular(Ledger ledger, List<String> circle) {
    ledger.error(
        readings.get(0).measurement.place(),
        Sentence.of("\"{0}\" rests on itself: {1}.", name, String.join(" → ", circle)),
        "State one of them instead of reckoning it.");
  }
}

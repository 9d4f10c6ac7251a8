package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.wording.Message;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What was weighed: the latest mass of each part, their total, and how the total grew.
 *
 * <p>An earlier weighing of a part keeps its place as {@code mass.PART.at_ENTRY}.
 */
final class MassBook {

  /** Words for the boat as a whole, in the languages of the log. */
  private static final Pattern WHOLE =
      Pattern.compile(
          "\\b(?:whole|boat|model|complete|all|everything|ganz\\w*|boot|gesamt\\w*|schiff|heel|schip"
              + "|entier|bateau|complet|tout|entero|barco|todo)\\b");

  private static final BigDecimal TWENTY = BigDecimal.valueOf(20);

  private final Log log;
  private final Ledger ledger;
  private final Map<String, String> latest = new TreeMap<>();
  private final Map<String, Integer> weighings = new TreeMap<>();
  private final List<Facts.MassPoint> growth = new ArrayList<>();
  private @Nullable String sumSoFar;
  private BigDecimal spread = BigDecimal.ZERO;

  MassBook(Log log, Ledger ledger) {
    this.log = log;
    this.ledger = ledger;
  }

  List<Facts.MassPoint> reckon() {
    log.entries()
        .forEach(e -> e.weighed().forEach(w -> weighings.merge(w.part(), 1, Integer::sum)));
    for (Entry entry : log.entries()) {
      boolean weighed = false;
      for (Entry.Weighing weighing : entry.weighed()) {
        weighed |= weigh(entry, weighing);
      }
      String total = sumSoFar;
      if (weighed && total != null) {
        growth.add(new Facts.MassPoint(entry.date(), entry.id(), total));
      }
    }
    remindOfWholeAmongParts();
    ledger.sum(
        FactId.MASS,
        Message.of("mass.total"),
        List.copyOf(latest.values()),
        Label.NONE,
        growth.isEmpty() ? Place.of("entries") : placeOfLast());
    return List.copyOf(growth);
  }

  /**
   * What weighs about as much as all that was weighed before it is the boat, put on the balance
   * with her parts in her; the total counts them twice.
   */
  private void remindOfWholeAmongParts() {
    Map<String, BigDecimal> aboard = new TreeMap<>();
    for (Entry entry : log.entries()) {
      Set<String> weighedNow = new TreeSet<>();
      for (Entry.Weighing weighing : entry.weighed()) {
        Optional<Fact> fact = ledger.find(new FactId.Mass(weighing.part()).name());
        if (fact.isEmpty()) {
          continue;
        }
        weighedNow.add(weighing.part());
        BigDecimal others =
            aboard.entrySet().stream()
                .filter(e -> !weighedNow.contains(e.getKey()))
                .map(Map.Entry::getValue)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        long parts = aboard.keySet().stream().filter(p -> !weighedNow.contains(p)).count();
        BigDecimal mass = grams(weighing.mass());
        if (parts > 1 && isWhole(weighing, mass, others) && isLatest(entry, weighing)) {
          ledger.reminder(
              weighing.place(),
              Sentence.of(
                  "\"{0}\" weighs {1}, about what all {2} parts weighed before do; if they"
                      + " are in it, mass.total counts them twice.",
                  weighing.part(), weighing.mass(), parts),
              Sentence.of(
                  "Weigh the whole as measured: {model.mass: {0}} instead, which adds to"
                      + " nothing.",
                  weighing.mass()));
        }
      }
      entry.weighed().forEach(w -> aboard.put(w.part(), grams(w.mass())));
    }
  }

  private boolean isLatest(Entry entry, Entry.Weighing weighing) {
    return log.entries().stream()
        .filter(e -> e.weighed().stream().anyMatch(w -> w.part().equals(weighing.part())))
        .reduce((first, second) -> second)
        .filter(entry::equals)
        .isPresent();
  }

  /** By its name, or by weighing as much as the parts to a twentieth. */
  private static boolean isWhole(Entry.Weighing weighing, BigDecimal mass, BigDecimal others) {
    String words = Ledger.words(weighing.part()) + " " + weighing.title();
    boolean named = WHOLE.matcher(words.toLowerCase(Locale.ROOT)).find();
    BigDecimal off = mass.subtract(others).abs().multiply(TWENTY);
    return others.signum() > 0
        && (named ? mass.compareTo(others) >= 0 : off.compareTo(others) <= 0);
  }

  private static BigDecimal grams(Quantity mass) {
    try {
      return mass.unit().isCompatible(Unit.GRAM) ? mass.valueIn(Unit.GRAM) : BigDecimal.ZERO;
    } catch (QuantityException e) {
      throw new IllegalStateException("masses are masses", e);
    }
  }

  private Place placeOfLast() {
    return ledger.require(growth.get(growth.size() - 1).fact()).place();
  }

  private boolean weigh(Entry entry, Entry.Weighing weighing) {
    if (!weighing.mass().unit().isCompatible(Unit.GRAM)) {
      ledger.error(
          weighing.place(),
          Sentence.of(
              "\"{0}\" is weighed as {1}, which is no mass.", weighing.part(), weighing.mass()),
          "Write such as 412 g or 14 1/2 oz.");
      return false;
    }
    FactId.Mass latestId = new FactId.Mass(weighing.part());
    if (latestId.name().equals(FactId.MASS.name())) {
      ledger.error(
          weighing.place(),
          Sentence.of(
              "A part cannot be called \"{0}\", as {1} is reckoned.",
              weighing.part(), latestId.name()),
          "Name the part that was weighed.");
      return false;
    }
    boolean last = weighings.merge(weighing.part(), -1, Integer::sum) == 0;
    FactId id = last ? latestId : new FactId.Reading(latestId, entry.id());
    String name = id.name();
    Label label = entry.label().join(weighing.label());
    String title =
        weighing.title().isEmpty() ? Ledger.words(FactId.part(weighing.part())) : weighing.title();
    if (ledger.find(name).isPresent()) {
      ledger.error(
          weighing.place(),
          Sentence.of("\"{0}\" is weighed twice in one entry.", weighing.part()),
          "Keep one of the two.");
      return false;
    }
    ledger.given(
        id,
        last ? Message.of("mass.part", title) : Message.of("mass.part.on", title, entry.date()),
        weighing.mass(),
        Origin.WEIGHED,
        entry.date(),
        label,
        weighing.place(),
        entry.id());
    centre(id, FactId.Axis.X, Message.of("mass.part.x", title), weighing.x(), weighing, entry);
    centre(id, FactId.Axis.Z, Message.of("mass.part.z", title), weighing.z(), weighing, entry);
    grow(entry, weighing, name, latest.put(latestId.name(), name));
    return true;
  }

  private void centre(
      FactId part,
      FactId.Axis axis,
      Message title,
      @Nullable Quantity at,
      Entry.Weighing weighing,
      Entry entry) {
    if (at != null) {
      ledger.given(
          new FactId.Centre(part, axis),
          title,
          at,
          Origin.MEASURED,
          entry.date(),
          entry.label().join(weighing.label()),
          weighing.place(),
          entry.id());
    }
  }

  /** Adds what a weighing brings to the sum so far; a part weighed before is first taken off. */
  private void grow(Entry entry, Entry.Weighing weighing, String name, @Nullable String before) {
    String sum = sumSoFar;
    List<String> inputs = new ArrayList<>();
    Expression tree = new Expression.Name(name);
    if (sum != null) {
      inputs.add(sum);
      tree = new Expression.Binary('+', new Expression.Name(sum), tree);
    }
    inputs.add(name);
    if (before != null) {
      inputs.add(before);
      tree = new Expression.Binary('-', tree, new Expression.Name(before));
    }
    FactId id = new FactId.Growth(entry.id(), weighing.part());
    String point = id.name();
    ledger.reckoned(
        id,
        Message.of("mass.until", entry.date()),
        tree,
        inputs,
        Label.NONE,
        weighing.place(),
        entry.id());
    sumSoFar = point;
    keepTolerance(point, name, before);
  }

  /** The tolerance of a part that was taken off again does not count. */
  private void keepTolerance(String point, String name, @Nullable String before) {
    spread = spread.add(grams(name), MathContext.DECIMAL128);
    if (before != null) {
      spread = spread.subtract(grams(before), MathContext.DECIMAL128);
    }
    Fact fact = ledger.require(point);
    try {
      Quantity value =
          spread.signum() == 0 && fact.value().tolerance() == null
              ? fact.value()
              : fact.value().withTolerance(Quantity.of(spread, Unit.GRAM));
      ledger.amend(fact.withValue(value));
    } catch (QuantityException e) {
      throw new IllegalStateException("masses are masses", e);
    }
  }

  private BigDecimal grams(String name) {
    Quantity mass = ledger.require(name).value();
    BigDecimal t = mass.tolerance();
    try {
      return t == null ? BigDecimal.ZERO : Quantity.of(t, mass.unit()).valueIn(Unit.GRAM);
    } catch (QuantityException e) {
      throw new IllegalStateException("masses are masses", e);
    }
  }
}

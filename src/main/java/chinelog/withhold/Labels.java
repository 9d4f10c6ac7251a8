package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.Influence;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * The labels of facts with all that decides what they are: besides what goes into a sum, what could
 * have gone into it, or into another. Which sum an entry counts in, and from which lot a use is
 * taken, is part of the entry.
 *
 * <p>What is reckoned from a fact carries its whole label.
 */
final class Labels {

  private final Facts facts;
  private final Map<String, Label> found = new HashMap<>();

  /** Of all entries together. */
  private final Label entries;

  /** Of all weighings together. */
  private final Label weighings;

  private final Map<String, Label> materials = new HashMap<>();

  Labels(VisibleLog visible) {
    this.facts = visible.facts();
    this.entries =
        visible.log().entries().stream().map(Entry::label).reduce(Label.NONE, Label::join);
    List<Facts.MassPoint> growth = facts.massGrowth();
    this.weighings = growth.isEmpty() ? Label.NONE : raw(growth.get(growth.size() - 1).fact());
    facts.materials().forEach(m -> materials.put(m.material(), m.label()));
  }

  private Label raw(String name) {
    return facts.find(name).map(Fact::label).orElse(Label.NONE);
  }

  /** Walks down without recursion, as facts may rest on thousands, one upon the other. */
  Label of(Fact fact) {
    Deque<Fact> path = new ArrayDeque<>();
    Deque<Iterator<String>> inputs = new ArrayDeque<>();
    path.push(fact);
    inputs.push(fact.inputs().iterator());
    while (!path.isEmpty()) {
      if (inputs.element().hasNext() && !found.containsKey(path.element().name())) {
        facts
            .find(inputs.element().next())
            .filter(f -> !found.containsKey(f.name()))
            .ifPresent(
                f -> {
                  path.push(f);
                  inputs.push(f.inputs().iterator());
                });
      } else {
        inputs.pop();
        settled(path.pop());
      }
    }
    return settled(fact);
  }

  private Label settled(Fact fact) {
    Label known = found.get(fact.name());
    if (known != null) {
      return known;
    }
    // Facts rest on no circles, but an input that is asked for on the way must not ask again.
    found.put(fact.name(), fact.label());
    Label label = fact.label();
    for (Influence influence : fact.id().influences()) {
      label = label.join(of(influence));
    }
    for (String input : fact.inputs()) {
      label = label.join(facts.find(input).map(this::settled).orElse(Label.NONE));
    }
    found.put(fact.name(), label);
    return label;
  }

  private Label of(Influence influence) {
    return switch (influence.kind()) {
      case ENTRIES -> entries;
      case WEIGHINGS -> weighings;
      case LOTS -> materials.getOrDefault(influence.material(), Label.NONE);
      case USES -> uses(influence.material());
      case LOTS_IN_TURN -> lotsInTurn(influence.material());
      case ALL_LOTS_IN_TURN ->
          materials.keySet().stream().map(this::lotsInTurn).reduce(Label.NONE, Label::join);
    };
  }

  private Label uses(String material) {
    return raw(new FactId.Stock(material, FactId.Balance.USED).name());
  }

  private Label lotsInTurn(String material) {
    boolean several = facts.find(new FactId.Lot(material, 2, false)).isPresent();
    return several ? uses(material) : Label.NONE;
  }
}

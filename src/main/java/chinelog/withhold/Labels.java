package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.Entry;
import chinelog.log.Log;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The labels of facts with all that decides what they are: besides what goes into a sum, what could
 * have gone into it, or into another. Which sum an entry counts in, and from which lot a use is
 * taken, is part of the entry.
 *
 * <p>What is reckoned from a fact carries its whole label.
 */
final class Labels {

  private static final Pattern SORTED_SUM = Pattern.compile("(hours\\.(stage|week)|growth)\\..*");

  private static final Pattern STOCK = Pattern.compile("stock\\.([^.]+)\\.([^.]+)(\\..*)?");
  private static final Pattern COST_OF_USE = Pattern.compile("cost\\.use\\.([^.]+)\\..*");

  private final Facts facts;
  private final Map<String, Label> found = new HashMap<>();

  /** Of all entries together. */
  private final Label entries;

  /** Of all weighings together. */
  private final Label weighings;

  private final Map<String, Label> materials = new HashMap<>();
  private final Set<String> severalLots = new HashSet<>();

  Labels(Log log, Facts facts) {
    this.facts = facts;
    this.entries = log.entries().stream().map(Entry::label).reduce(Label.NONE, Label::join);
    List<Facts.MassPoint> growth = facts.massGrowth();
    this.weighings = growth.isEmpty() ? Label.NONE : raw(growth.get(growth.size() - 1).fact());
    for (Facts.MaterialSum material : facts.materials()) {
      String part = STOCK.matcher(material.boughtFact()).replaceFirst("$1");
      materials.put(part, material.label());
      if (facts.find("stock." + part + ".lot_2.bought").isPresent()) {
        severalLots.add(part);
      }
    }
  }

  private Label raw(String name) {
    return facts.find(name).map(Fact::label).orElse(Label.NONE);
  }

  Label of(Fact fact) {
    Label known = found.get(fact.name());
    if (known != null) {
      return known;
    }
    // Facts rest on no circles, but an input that is asked for on the way must not ask again.
    found.put(fact.name(), fact.label());
    Label label = fact.label().join(deciding(fact.name()));
    for (String input : fact.inputs()) {
      label = label.join(facts.find(input).map(this::of).orElse(Label.NONE));
    }
    found.put(fact.name(), label);
    return label;
  }

  private Label deciding(String name) {
    Matcher cost = COST_OF_USE.matcher(name);
    if (cost.matches()) {
      return severalLots.contains(cost.group(1)) ? used(cost.group(1)) : Label.NONE;
    }
    if (name.startsWith("cost.")) {
      // Whether a use has a price at all may hang on the lot that it is taken from.
      Label sorted = name.startsWith("cost.stage.") ? entries : Label.NONE;
      return severalLots.stream().map(this::used).reduce(sorted, Label::join);
    }
    if (SORTED_SUM.matcher(name).matches()) {
      return name.startsWith("growth.") ? entries.join(weighings) : entries;
    }
    Matcher stock = STOCK.matcher(name);
    if (!stock.matches()) {
      return Label.NONE;
    }
    String material = stock.group(1);
    String what = stock.group(2);
    Label own = materials.getOrDefault(material, Label.NONE);
    if (what.equals("bought") || what.startsWith("lot_")) {
      return own;
    }
    boolean oneUse = what.equals("used") && stock.group(3) != null;
    return oneUse ? Label.NONE : own.join(entries).join(used(material));
  }

  private Label used(String material) {
    return raw("stock." + material + ".used");
  }
}

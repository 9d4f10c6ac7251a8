package chinelog.withhold.derive;

import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Finds out whether printed figures give away a withheld one, such as {@code full.beam} where
 * {@code hull.beam = full.beam / scale} is printed with its scale.
 *
 * <p>A reader is taken to know every printed figure as printed (to half its last step), every
 * equation, and that what is not negative is not. The answer is {@link Answer#DERIVABLE} if the
 * ranges that are left lie within the closeness, or if the equations fix the quantity and no
 * allowed values were found beyond it on both sides; it is {@link Answer#SAFE} only with two sets
 * of values in hand that print the same and lie at least twice the closeness apart; else it is
 * {@link Answer#UNKNOWN}, to be treated as derivable.
 */
public final class Derivability {

  /** As few whole pieces as this can be tried out one by one. */
  private static final int FEW = 8;

  private static final int MOST_CANDIDATES = 24;
  private static final int MOST_IN_PAIRS = 8;
  private static final int MOST_REMEDIES = 4;

  private final Model model;
  private final double[] grains;
  private final double closeness;

  private Derivability(Model model, double[] grains, double closeness) {
    this.model = model;
    this.grains = grains;
    this.closeness = closeness;
  }

  /**
   * A quantity, printed, withheld or merely not shown.
   *
   * @param name such as {@code hull.loa}; unique
   * @param value the true one, in coherent SI units
   * @param sight what readers get of it
   * @param printed the printed figure's value, in the same unit; ignored if it is not printed
   * @param step value of its last digit; 0 for an exact count or scale
   * @param shown the figure as printed, such as {@code 700 mm}; empty if it is not printed
   * @param grain what it is a whole multiple of, such as 1 for pieces; 0 if of nothing
   */
  public record Item(
      String name,
      double value,
      Sight sight,
      double printed,
      double step,
      String shown,
      double grain) {

    public static Item printed(
        String name, double value, double printed, double step, String shown) {
      return new Item(name, value, Sight.PRINTED, printed, step, shown, 0);
    }

    public static Item withheld(String name, double value) {
      return new Item(name, value, Sight.WITHHELD, value, 0, "", 0);
    }

    /** A quantity that is neither printed nor to be protected. */
    public static Item unshown(String name, double value) {
      return new Item(name, value, Sight.UNSHOWN, value, 0, "", 0);
    }

    /** This, a whole multiple of {@code grain}. */
    public Item inGrains(double grain) {
      return new Item(name, value, sight, printed, step, shown, grain);
    }
  }

  /** What readers get of a quantity. */
  public enum Sight {
    PRINTED,
    WITHHELD,
    UNSHOWN
  }

  /** An equation between items, such as {@code hull.loa = full.loa / scale}. */
  public record Relation(String name, Expression formula) {}

  /** Whether a withheld quantity is safe. */
  public enum Answer {
    DERIVABLE,
    SAFE,
    /** Neither was shown; to be treated as derivable. */
    UNKNOWN
  }

  /**
   * What was found about one withheld quantity.
   *
   * @param low the least value that the printed figures were shown to leave
   * @param high the greatest
   * @param path how it can be worked out, a sentence with its stop; empty if it is safe
   * @param causes the printed figures from which it can be worked out; empty if it is safe
   * @param remedies sets of further figures, each of which would make it safe if not printed, the
   *     smallest and the totals first; empty if it is safe, or if no one or two figures would do
   */
  public record Verdict(
      String name,
      Answer answer,
      double low,
      double high,
      CharSequence path,
      Set<String> causes,
      List<Set<String>> remedies) {

    private Verdict with(
        CharSequence newPath, Set<String> newCauses, List<Set<String>> newRemedies) {
      return new Verdict(name, answer, low, high, newPath, newCauses, newRemedies);
    }
  }

  /**
   * Answers for every withheld item, in the order given.
   *
   * @param relations between the items; every name in them is an item's
   * @param closeness how near to the truth counts as known, such as 0.05
   * @param inSi the value of a formula's literal in the same coherent SI units as the items'
   */
  public static List<Verdict> check(
      List<Item> items,
      List<Relation> relations,
      double closeness,
      ToDoubleFunction<Quantity> inSi) {
    double[] grains = items.stream().mapToDouble(Item::grain).toArray();
    Model model = model(items, relations, inSi);
    Derivability check = new Derivability(model, grains, closeness);
    Interval[] domains = model.domains();
    Propagation.narrow(model, model.equations(), domains);
    BitSet withheld = new BitSet();
    for (int i = 0; i < items.size(); i++) {
      withheld.set(i, items.get(i).sight() == Sight.WITHHELD);
    }
    SortedMap<Integer, Verdict> verdicts = new TreeMap<>();
    for (int i = withheld.nextSetBit(0); i >= 0; i = withheld.nextSetBit(i + 1)) {
      if (!verdicts.containsKey(i)) {
        Inquiry inquiry = check.inquiry(model, i, domains, withheld);
        Remedies remedies = check.new Remedies(withheld);
        inquiry.asked.stream()
            .forEach(item -> verdicts.put(item, check.verdict(item, inquiry, remedies)));
      }
    }
    return List.copyOf(verdicts.values());
  }

  private Inquiry inquiry(Model of, int item, Interval[] domains, BitSet withheld) {
    Model.Component component = of.componentOf(item);
    BitSet asked = (BitSet) component.unknown().clone();
    asked.and(withheld);
    return new Inquiry(of, component, asked, domains);
  }

  private static Model model(
      List<Item> items, List<Relation> relations, ToDoubleFunction<Quantity> inSi) {
    int n = items.size();
    Map<String, Integer> indexes = new HashMap<>();
    double[] values = new double[n];
    Interval[] asPrinted = new Interval[n];
    BitSet printed = new BitSet();
    List<List<Equation>> equationsOf = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Item item = items.get(i);
      if (indexes.put(item.name(), i) != null) {
        throw new IllegalArgumentException("two items are named " + item.name());
      }
      values[i] = item.value();
      asPrinted[i] = asPrinted(item);
      printed.set(i, item.sight() == Sight.PRINTED);
      equationsOf.add(new ArrayList<>());
    }
    FormulaBuilder builder = new FormulaBuilder(indexes, inSi);
    List<Equation> equations = new ArrayList<>();
    for (Relation relation : relations) {
      Set<String> names = new LinkedHashSet<>(List.of(relation.name()));
      names.addAll(ExpressionWords.names(relation.formula()));
      RangedFormula formula = relation.formula().accept(builder);
      int[] members = names.stream().mapToInt(name -> index(indexes, name)).toArray();
      Equation equation = new Equation(members[0], formula, members, relation.formula());
      equations.add(equation);
      for (int member : members) {
        equationsOf.get(member).add(equation);
      }
    }
    return new Model(
        items.stream().map(Item::name).toArray(String[]::new),
        items.stream().map(Item::shown).toArray(String[]::new),
        values,
        printed,
        asPrinted,
        equations,
        equationsOf);
  }

  private static int index(Map<String, Integer> indexes, String name) {
    Integer index = indexes.get(name);
    if (index == null) {
      throw new IllegalArgumentException("no item is named " + name);
    }
    return index;
  }

  /** Half a step to either side, and always the truth, however it was rounded. */
  private static Interval asPrinted(Item item) {
    double reach = item.step() / 2 + 1e-12 * Math.abs(item.printed());
    return new Interval(
        Math.min(item.printed() - reach, item.value()),
        Math.max(item.printed() + reach, item.value()));
  }

  private Verdict verdict(int item, Inquiry inquiry, Remedies remedies) {
    Answer answer = inquiry.answer(item);
    Interval range = inquiry.domains[item];
    Verdict bare =
        new Verdict(
            model.names()[item], answer, range.low(), range.high(), "", Set.of(), List.of());
    if (answer == Answer.SAFE) {
      return bare;
    }
    Path path = Path.find(model, inquiry.component, item);
    Set<String> causes =
        path.printed().stream()
            .map(i -> model.names()[i])
            .collect(Collectors.toCollection(LinkedHashSet::new));
    return bare.with(path.inWords(bare), causes, remedies.find(item, path));
  }

  /**
   * What might not be printed instead, for the quantities of one component: what is found about one
   * of them, with some figure less, holds for all that hang together then.
   */
  private final class Remedies {
    private final BitSet withheld;
    private final Map<Set<Integer>, List<Inquiry>> tried = new HashMap<>();

    Remedies(BitSet withheld) {
      this.withheld = withheld;
    }

    List<Set<String>> find(int item, Path path) {
      List<Integer> candidates = path.printed().stream().limit(MOST_CANDIDATES).toList();
      List<Set<String>> found = new ArrayList<>();
      for (int candidate : candidates) {
        if (found.size() < MOST_REMEDIES && isSafeWithout(item, List.of(candidate))) {
          found.add(Set.of(model.names()[candidate]));
        }
      }
      int few = found.isEmpty() ? Math.min(MOST_IN_PAIRS, candidates.size()) : 0;
      for (int a = 0; a < few; a++) {
        for (int b = a + 1; b < few && found.size() < MOST_REMEDIES; b++) {
          if (isSafeWithout(item, List.of(candidates.get(a), candidates.get(b)))) {
            Set<String> both = new LinkedHashSet<>();
            both.add(model.names()[candidates.get(a)]);
            both.add(model.names()[candidates.get(b)]);
            found.add(both);
          }
        }
      }
      return found;
    }

    private boolean isSafeWithout(int item, List<Integer> fewer) {
      List<Inquiry> inquiries = tried.computeIfAbsent(Set.copyOf(fewer), f -> new ArrayList<>());
      for (Inquiry inquiry : inquiries) {
        if (inquiry.component.unknown().get(item)) {
          return inquiry.answer(item) == Answer.SAFE;
        }
      }
      Model less = model.without(fewer);
      Interval[] domains = less.domains();
      Propagation.narrow(less, less.componentOf(item).equations(), domains);
      Inquiry made = inquiry(less, item, domains, withheld);
      inquiries.add(made);
      return made.answer(item) == Answer.SAFE;
    }
  }

  /** The questions about one component, which share what was found. */
  private final class Inquiry {
    private final Model of;
    private final Model.Component component;
    private final BitSet asked;
    private final Interval[] domains;
    private @Nullable BitSet fixed;
    private boolean scaled;
    private final Witness witness;
    private final int[] members;

    /** The least and the greatest value seen of each member. */
    private final double[] least;

    private final double[] greatest;

    /**
     * @param asked quantities of the component about which something is asked
     */
    Inquiry(Model of, Model.Component component, BitSet asked, Interval[] domains) {
      this.of = of;
      this.component = component;
      this.asked = asked;
      this.domains = domains;
      this.witness = new Witness(of, component, domains);
      this.members = component.unknown().stream().toArray();
      this.least = Arrays.stream(members).mapToDouble(i -> of.values()[i]).toArray();
      this.greatest = least.clone();
    }

    private boolean isFixed(int item) {
      BitSet found = fixed;
      if (found == null) {
        found = Identification.fixed(of, component);
        fixed = found;
      }
      return found.get(item);
    }

    /** Where little is printed, everything may be larger or smaller together. */
    private void scaleAll() {
      double c = closeness;
      double[] factors = {1 + 1.3 * c, 1 - 1.3 * c, 1 + 2 * c, 1 - 2 * c, 1 + 8 * c, 0.5, 3, 0, 10};
      Forward forward = new Forward(of, component, domains);
      forward.searchTogether(factors, this::note);
      BitSet open = open();
      if (open.isEmpty()) {
        return;
      }
      Compensation compensation = new Compensation(of, component, domains, forward);
      for (int i : forward.fromTheMiddle(open)) {
        if (!isSpread(i, 2 * reach(i))) {
          compensation.search(i, 2.1 * reach(i), this::note);
        }
      }
      open = open();
      forward.search(factors, open, this::note);
      if (open().isEmpty()) {
        return;
      }
      for (double part : new double[] {1.3, 2, 4}) {
        note(witness.findScaled(1 + part * closeness));
        note(witness.findScaled(1 - part * closeness));
      }
    }

    /** What is asked about and was not seen to lie far apart. */
    private BitSet open() {
      BitSet open = new BitSet();
      asked.stream().filter(i -> !isSpread(i, 2 * reach(i))).forEach(open::set);
      return open;
    }

    private double reach(int item) {
      double truth = of.values()[item];
      return closeness * (truth == 0 ? largest() : Math.abs(truth));
    }

    private void note(double @Nullable [] found) {
      if (found == null) {
        return;
      }
      for (int k = 0; k < members.length; k++) {
        least[k] = Math.min(least[k], found[members[k]]);
        greatest[k] = Math.max(greatest[k], found[members[k]]);
      }
    }

    /**
     * Whether values were seen that lie so far apart (sliding protection, as in Zayatz, RR-92/02).
     */
    private boolean isSpread(int item, double width) {
      int k = Arrays.binarySearch(members, item);
      return greatest[k] - least[k] >= width && width > 0;
    }

    Answer answer(int item) {
      double truth = of.values()[item];
      double reach = reach(item);
      Interval range = domains[item];
      if (range.low() >= truth - reach && range.high() <= truth + reach) {
        return Answer.DERIVABLE;
      }
      double grain = grains[item];
      if (grain > 0 && Math.floor(range.high() / grain) - Math.ceil(range.low() / grain) < FEW) {
        return Answer.DERIVABLE;
      }
      if (!scaled) {
        scaled = true;
        scaleAll();
      }
      if (isSpread(item, 2 * reach)) {
        return Answer.SAFE;
      }
      boolean above = reaches(item, truth + reach * (1 + 1e-9));
      boolean below = truth == 0 || reaches(item, truth - reach * (1 + 1e-9));
      if (above && below || isSpread(item, 2 * reach)) {
        return Answer.SAFE;
      }
      // Where one side is closed, as below nought, the other may be open twice as far.
      double twice = 2 * reach * (1 + 1e-9);
      if (above && reaches(item, truth + twice) || below && reaches(item, truth - twice)) {
        return Answer.SAFE;
      }
      return isFixed(item) ? Answer.DERIVABLE : Answer.UNKNOWN;
    }

    private double largest() {
      double most =
          component.unknown().stream().mapToDouble(i -> Math.abs(of.values()[i])).max().orElse(0);
      for (Equation equation : component.equations()) {
        for (int member : equation.members()) {
          most = most == 0 ? Math.abs(of.values()[member]) : most;
        }
      }
      return most == 0 ? 1 : most;
    }

    /** Whether values that print the same are known with {@code item} at {@code goal} or beyond. */
    private boolean reaches(int item, double goal) {
      boolean up = goal > of.values()[item];
      int k = Arrays.binarySearch(members, item);
      if (up ? greatest[k] >= goal : least[k] <= goal) {
        return true;
      }
      double[] found = witness.find(item, goal);
      if (found == null) {
        return false;
      }
      note(found);
      return true;
    }
  }
}

package chinelog.withhold.derive;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.reckon.formula.Expression;
import chinelog.withhold.derive.Derivability.Answer;
import chinelog.withhold.derive.Derivability.Item;
import chinelog.withhold.derive.Derivability.Relation;
import chinelog.withhold.derive.Derivability.Verdict;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Sums of sums, of which only the last figures are shown. */
class LongSumsTest {

  private static final int LINKS = Integer.getInteger("chinelog.links", 500);
  private static final int SMALL_SYSTEMS = 300;

  private final List<Relation> relations = new ArrayList<>();
  private final Map<String, Double> values = new TreeMap<>();

  enum Shape {
    CHAIN,
    LADDER,
    TREE,
    GRAPH
  }

  @ParameterizedTest
  @EnumSource
  @Timeout(120)
  void whatOnlyItsLastSumTellsOfIsSafeAndSoonAnswered(Shape shape) {
    List<String> last = built(shape, LINKS, new Random(7));
    long start = cpuMilliseconds();
    List<Verdict> verdicts = verdicts(last, 0.01);
    assertThat(cpuMilliseconds() - start).isLessThan(Math.max(2000, 6L * LINKS));
    assertThat(verdicts).hasSizeGreaterThan(LINKS).allMatch(v -> v.answer() == Answer.SAFE);
  }

  /** Of what can be worked out, what hangs together is looked at together. */
  @Test
  @Timeout(120)
  void whatSumsShownInBetweenGiveAwayIsSoonAnswered() {
    int links = 4 * LINKS;
    chain(links, new Random(7));
    List<String> shown = new ArrayList<>();
    for (int i = 10; i <= links; i += 10) {
      shown.add("sum" + i);
    }
    long start = cpuMilliseconds();
    List<Verdict> verdicts = verdicts(shown, 0.01);
    assertThat(cpuMilliseconds() - start).isLessThan(Math.max(2000, (long) links));
    List<Verdict> mended = verdicts.stream().filter(v -> !v.remedies().isEmpty()).toList();
    assertThat(mended).hasSizeGreaterThan(links / 20);
    Verdict one = mended.get(mended.size() / 2);
    shown.removeAll(one.remedies().get(0));
    assertThat(verdicts(shown, 0.01))
        .filteredOn(v -> v.name().equals(one.name()))
        .extracting(Verdict::answer)
        .containsExactly(Answer.SAFE);
  }

  /** By elimination in whole numbers, which shares nothing with the check. */
  @Test
  void nothingThatTheEquationsFixIsCalledSafe() {
    Random random = new Random(11);
    int fixed = 0;
    int safe = 0;
    for (int system = 0; system < SMALL_SYSTEMS; system++) {
      relations.clear();
      values.clear();
      built(Shape.values()[system % 3], 2 + random.nextInt(9), random);
      List<String> shown = new ArrayList<>(values.keySet());
      double share = random.nextDouble();
      shown.removeIf(name -> random.nextDouble() > share);
      for (Verdict verdict : verdicts(shown, 0)) {
        boolean known = isFixed(verdict.name(), shown);
        assertThat(known && verdict.answer() == Answer.SAFE)
            .as("%s of system %d, shown %s", verdict.name(), system, shown)
            .isFalse();
        fixed += known ? 1 : 0;
        safe += verdict.answer() == Answer.SAFE ? 1 : 0;
      }
    }
    assertThat(fixed).isGreaterThan(SMALL_SYSTEMS);
    assertThat(safe).isGreaterThan(SMALL_SYSTEMS);
  }

  private static long cpuMilliseconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1_000_000;
  }

  private List<Verdict> verdicts(List<String> shown, double step) {
    List<Item> items = new ArrayList<>();
    values.forEach(
        (name, value) ->
            items.add(
                shown.contains(name)
                    ? Item.printed(name, value, value, step, "" + value)
                    : Item.withheld(name, value)));
    return Derivability.check(items, relations, 0.05, q -> q.value().doubleValue());
  }

  /** Whether a quantity's axis lies in the space of the equations' rows. */
  private boolean isFixed(String name, List<String> shown) {
    List<String> unknown = new ArrayList<>(values.keySet());
    unknown.removeAll(shown);
    List<double[]> rows = new ArrayList<>();
    for (Relation relation : relations) {
      double[] row = new double[unknown.size()];
      add(row, unknown, relation.name(), -1);
      ExpressionWords.names(relation.formula()).forEach(part -> add(row, unknown, part, 1));
      rows.add(row);
    }
    int before = rank(rows);
    double[] axis = new double[unknown.size()];
    add(axis, unknown, name, 1);
    rows.add(axis);
    return rank(rows) == before;
  }

  private static void add(double[] row, List<String> unknown, String name, double factor) {
    if (unknown.contains(name)) {
      row[unknown.indexOf(name)] += factor;
    }
  }

  private static int rank(List<double[]> rows) {
    List<double[]> left = new ArrayList<>();
    rows.forEach(row -> left.add(row.clone()));
    int rank = 0;
    for (int column = 0; column < rows.get(0).length; column++) {
      int at = column;
      double[] pivot = left.stream().filter(r -> Math.abs(r[at]) > 1e-9).findFirst().orElse(null);
      if (pivot != null) {
        rank++;
        left.remove(pivot);
        for (double[] row : left) {
          double factor = row[at] / pivot[at];
          for (int k = 0; k < row.length; k++) {
            row[k] -= factor * pivot[k];
          }
        }
      }
    }
    return rank;
  }

  /** The names of the last sums. */
  private List<String> built(Shape shape, int links, Random random) {
    return switch (shape) {
      case CHAIN -> chain(links, random);
      case LADDER -> ladder(links, random);
      case TREE -> tree(links, random);
      case GRAPH -> graph(links, random);
    };
  }

  private String part(String name, Random random) {
    values.put(name, 0.25 + 0.25 * random.nextInt(20));
    return name;
  }

  private String sum(String name, String... parts) {
    Expression sum = new Expression.Name(parts[0]);
    double total = values.getOrDefault(parts[0], 0.0);
    for (int i = 1; i < parts.length; i++) {
      sum = new Expression.Binary('+', sum, new Expression.Name(parts[i]));
      total += values.getOrDefault(parts[i], 0.0);
    }
    values.put(name, total);
    relations.add(new Relation(name, sum));
    return name;
  }

  private List<String> chain(int links, Random random) {
    String sum = part("sum0", random);
    for (int i = 1; i <= links; i++) {
      sum = sum("sum" + i, sum, part("part" + i, random));
    }
    return List.of(sum);
  }

  private List<String> ladder(int links, Random random) {
    String left = part("left0", random);
    String right = part("right0", random);
    for (int i = 1; i <= links; i++) {
      String rung = part("rung" + i, random);
      left = sum("left" + i, left, rung);
      right = sum("right" + i, right, rung, part("own" + i, random));
    }
    return List.of(left, right);
  }

  private List<String> tree(int leaves, Random random) {
    List<String> open = new ArrayList<>();
    for (int i = 0; i < leaves; i++) {
      open.add(part("leaf" + i, random));
    }
    for (int i = 0; i + 1 < open.size(); i += 2) {
      open.add(sum("node" + i, open.get(i), open.get(i + 1)));
    }
    return List.of(open.get(open.size() - 1));
  }

  /** Each a share of two earlier ones, and something of its own. */
  private List<String> graph(int links, Random random) {
    List<String> all = new ArrayList<>(List.of(part("own", random), part("other", random)));
    for (int i = 0; i < links; i++) {
      String a = all.get(all.size() - 2);
      String b = all.get(all.size() - 1 - random.nextInt(Math.min(40, all.size())));
      values.put("share" + i, 0.5);
      String both = sum("both" + i, a, b);
      Expression half =
          new Expression.Binary('*', new Expression.Name("share" + i), new Expression.Name(both));
      String own = part("own" + i, random);
      values.put("d" + i, 0.5 * values.getOrDefault(both, 0.0) + values.getOrDefault(own, 0.0));
      relations.add(
          new Relation("d" + i, new Expression.Binary('+', half, new Expression.Name(own))));
      all.add("d" + i);
    }
    return List.of("d" + (links - 1));
  }
}

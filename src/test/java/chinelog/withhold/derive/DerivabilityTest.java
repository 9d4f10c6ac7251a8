package chinelog.withhold.derive;

import static chinelog.withhold.derive.Derivability.Answer.DERIVABLE;
import static chinelog.withhold.derive.Derivability.Answer.SAFE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.withhold.derive.Derivability.Item;
import chinelog.withhold.derive.Derivability.Relation;
import chinelog.withhold.derive.Derivability.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class DerivabilityTest {

  private static final double TEN_PERCENT = 0.1;

  // The seven cases measured on a prototype that shared no code with this one.

  @Test
  void fullSizeFollowsFromModelAndScale() {
    Verdict full =
        only(
            List.of(
                printed("hull.beam", 0.1900, 0.001, "190 mm"),
                exact("scale", 16),
                Item.withheld("full.beam", 3.04)),
            relation("hull.beam", binary('/', name("full.beam"), name("scale"))));
    assertThat(full.answer()).isEqualTo(DERIVABLE);
    assertThat(full.path().toString())
        .isEqualTo("full.beam can be worked out to within 0.3 %: hull.beam 190 mm × scale 16.");
    assertThat(full.remedies()).containsExactly(Set.of("hull.beam"), Set.of("scale"));
  }

  @Test
  void aSmallPartAtOneToFortyEightIsKnownToASixthOfAPercent() {
    Verdict full =
        only(
            List.of(
                printed("part", 0.0313, 0.0001, "31.3 mm"),
                exact("scale", 48),
                Item.withheld("full", 1.5024)),
            relation("part", binary('/', name("full"), name("scale"))));
    assertThat(halfWidth(full)).isCloseTo(0.0016, within(0.0001));
  }

  @Test
  void aPartFollowsFromTheTotalAndTheOtherParts() {
    List<Item> items = new ArrayList<>(List.of(printed("hours.total", 61.5, 0.5, "61.5 h")));
    double[] parts = {18.25, 14.5, 9.75, 6.75};
    for (int i = 0; i < parts.length; i++) {
      items.add(printed("hours." + i, parts[i], 0.25, parts[i] + " h"));
    }
    items.add(Item.withheld("hours.rigging", 12.25));
    Verdict rigging =
        only(
            items,
            relation(
                "hours.total", sum("hours.0", "hours.1", "hours.2", "hours.3", "hours.rigging")));
    assertThat(rigging.answer()).isEqualTo(DERIVABLE);
    assertThat(halfWidth(rigging)).isCloseTo(0.061, within(0.001));
    assertThat(rigging.remedies()).first().isEqualTo(Set.of("hours.total"));
  }

  @Test
  void twoPartsWithheldProtectEachOther() {
    List<Verdict> two =
        check(
            List.of(
                printed("total", 61.5, 0.5, "61.5 h"),
                printed("a", 39.25, 0.25, "39.25 h"),
                Item.withheld("b", 12.25),
                Item.withheld("c", 10)),
            TEN_PERCENT,
            relation("total", sum("a", "b", "c")));
    assertThat(two).extracting(Verdict::answer).containsExactly(SAFE, SAFE);
    assertThat(two).allSatisfy(v -> assertThat(v.path()).isEmpty());
  }

  @Test
  void roundingAloneMayProtect() {
    // Hours and their charge at two known rates: 8 h at 30, 5 h at 42; the total is coarse.
    List<Verdict> two =
        check(
            List.of(
                printed("hours", 13, 1, "13 h"),
                printed("charge", 450, 10, "450 GBP"),
                exact("rate.a", 30),
                exact("rate.b", 42),
                Item.withheld("a", 8),
                Item.withheld("b", 5)),
            TEN_PERCENT,
            relation("hours", sum("a", "b")),
            relation(
                "charge",
                binary(
                    '+',
                    binary('*', name("rate.a"), name("a")),
                    binary('*', name("rate.b"), name("b")))));
    assertThat(two).extracting(Verdict::answer).containsExactly(SAFE, SAFE);
  }

  @Test
  void areaAndDiagonalLeaveOnlyTwoSolutions() {
    Expression diagonal =
        call(
            "sqrt",
            binary(
                '+',
                binary('^', name("length"), literal("2")),
                binary('^', name("breadth"), literal("2"))));
    Verdict length =
        check(
                List.of(
                    printed("area", 0.7 * 0.19, 0.00001, "1330 cm²"),
                    printed("diagonal", Math.hypot(0.7, 0.19), 0.0001, "725.3 mm"),
                    Item.withheld("length", 0.7),
                    Item.unshown("breadth", 0.19)),
                TEN_PERCENT,
                relation("area", binary('*', name("length"), name("breadth"))),
                relation("diagonal", diagonal))
            .get(0);
    assertThat(halfWidth(length)).isGreaterThan(TEN_PERCENT);
    assertThat(length.answer()).isEqualTo(DERIVABLE);
    assertThat(length.path()).contains("from these together");
  }

  @Test
  void threeSumsOfTwoFixAllThree() {
    List<Verdict> three =
        check(
            List.of(
                exact("xy", 3),
                exact("yz", 5),
                exact("xz", 4),
                Item.withheld("x", 1),
                Item.withheld("y", 2),
                Item.withheld("z", 3)),
            0.05,
            relation("xy", sum("x", "y")),
            relation("yz", sum("y", "z")),
            relation("xz", sum("x", "z")));
    assertThat(three).extracting(Verdict::answer).containsOnly(DERIVABLE);
  }

  @Test
  void fewWholePiecesCanBeTriedOut() {
    Item parts = Item.withheld("parts", 80);
    Relation boxes = relation("boxes", call("ceil", binary('/', name("parts"), literal("12"))));
    Verdict many = check(List.of(exact("boxes", 7), parts.inGrains(1)), 0.04, boxes).get(0);
    assertThat(many.low()).isCloseTo(72, within(0.01));
    assertThat(many.high()).isCloseTo(84, within(0.01));
    assertThat(many.answer()).isEqualTo(SAFE);
    Verdict few = check(List.of(exact("boxes", 7), parts.inGrains(2)), 0.04, boxes).get(0);
    assertThat(few.answer()).isEqualTo(DERIVABLE);
  }

  // Eurostat/ESSnet, Handbook on Statistical Disclosure Control, 2nd edition, chapter 4, example
  // 1a.

  @Test
  void aHiddenTurnoverIsTheTotalLessTheOthers() {
    Verdict hidden =
        only(
            List.of(
                exact("total", 56600),
                exact("a", 47600),
                exact("b", 8002),
                Item.withheld("c", 998)),
            relation("total", sum("a", "b", "c")));
    assertThat(hidden.answer()).isEqualTo(DERIVABLE);
    assertThat(hidden.low()).isCloseTo(998, within(1e-4));
    assertThat(hidden.high()).isCloseTo(998, within(1e-4));
    assertThat(hidden.path()).startsWith("c can be worked out: total 56600 − a 47600 − b 8002");
  }

  // The same, chapter 4, example 3 (Geurts 1992): the range of X11 is [3; 6].

  @Test
  void aTwoByTwoTableLeavesARange() {
    List<Verdict> cells =
        check(
            List.of(
                exact("row1", 7),
                exact("row2", 3),
                exact("column1", 6),
                exact("column2", 4),
                Item.withheld("x11", 5),
                Item.withheld("x12", 2),
                Item.withheld("x21", 1),
                Item.withheld("x22", 2)),
            0.05,
            relation("row1", sum("x11", "x12")),
            relation("row2", sum("x21", "x22")),
            relation("column1", sum("x11", "x21")),
            relation("column2", sum("x12", "x22")));
    assertThat(cells).extracting(Verdict::answer).containsOnly(SAFE);
    assertThat(cells.get(0).low()).isCloseTo(3, within(1e-6));
    assertThat(cells.get(0).high()).isCloseTo(6, within(1e-6));
  }

  // FCSM Statistical Policy Working Paper 22, delinquent children (table from memory): two or more
  // cells are hidden in every row and column, yet D3 = (20 + 55) - (35 + 30) less what is published
  // of those rows and columns = 1 can be worked out.

  @Test
  void twoHiddenCellsInEveryRowAndColumnAreNotEnough() {
    List<Item> items = new ArrayList<>();
    double[] hidden = {1, 3, 1, 10, 10, 3, 2, 12, 2};
    for (int i = 1; i <= 9; i++) {
      items.add(Item.withheld("D" + i, hidden[i - 1]));
    }
    Map<String, Double> shown =
        Map.ofEntries(
            Map.entry("a1", 15.0),
            Map.entry("b1", 20.0),
            Map.entry("b4", 15.0),
            Map.entry("c2", 10.0),
            Map.entry("c3", 10.0),
            Map.entry("d2", 14.0),
            Map.entry("d3", 7.0),
            Map.entry("r1", 20.0),
            Map.entry("r2", 55.0),
            Map.entry("r3", 25.0),
            Map.entry("r4", 35.0),
            Map.entry("k1", 50.0),
            Map.entry("k2", 35.0),
            Map.entry("k3", 30.0),
            Map.entry("k4", 20.0));
    shown.forEach((n, v) -> items.add(exact(n, v)));
    List<Verdict> cells =
        check(
            items,
            0.05,
            relation("r1", sum("a1", "D1", "D2", "D3")),
            relation("r2", sum("b1", "D4", "D5", "b4")),
            relation("r3", sum("D6", "c2", "c3", "D7")),
            relation("r4", sum("D8", "d2", "d3", "D9")),
            relation("k1", sum("a1", "b1", "D6", "D8")),
            relation("k2", sum("D1", "D4", "c2", "d2")),
            relation("k3", sum("D2", "D5", "c3", "d3")),
            relation("k4", sum("D3", "b4", "D7", "D9")));
    assertThat(cells.stream().filter(v -> !isSafe(v)).map(Verdict::name)).containsExactly("D3");
    assertThat(cells.get(2).path()).contains("together");
  }

  // R package GaussSuppression, vignette, small-count example (dataset_a).

  @Test
  void oneHiddenCellInAPublishedRowIsNoSecretEvenIfItIsNought() {
    Verdict portugal =
        only(
            List.of(
                exact("young", 7),
                exact("iceland", 2),
                exact("spain", 5),
                Item.withheld("portugal", 0)),
            relation("young", sum("iceland", "portugal", "spain")));
    assertThat(portugal.answer()).isEqualTo(DERIVABLE);
  }

  @Test
  void aSecondRowAndColumnProtectIt() {
    List<Verdict> cells =
        check(
            List.of(
                exact("young", 7),
                exact("old", 13),
                exact("all.iceland", 5),
                exact("all.portugal", 4),
                exact("all.spain", 11),
                exact("y.spain", 5),
                exact("o.spain", 6),
                Item.withheld("y.portugal", 0),
                Item.withheld("y.iceland", 2),
                Item.withheld("o.iceland", 3),
                Item.withheld("o.portugal", 4)),
            0.05,
            relation("young", sum("y.iceland", "y.portugal", "y.spain")),
            relation("old", sum("o.iceland", "o.portugal", "o.spain")),
            relation("all.iceland", sum("y.iceland", "o.iceland")),
            relation("all.portugal", sum("y.portugal", "o.portugal")),
            relation("all.spain", sum("y.spain", "o.spain")));
    // Nothing lies below nought, so that each of the four can only be wrong on one side.
    assertThat(cells).allMatch(DerivabilityTest::isSafe);
  }

  // Handbook, chapter 5: differencing two releases of overlapping areas, and linking tables.

  @Test
  void theDifferenceOfTwoReleasesIsKnown() {
    Verdict between =
        only(
            List.of(exact("first", 50), exact("second", 52), Item.withheld("between", 2)),
            relation("second", sum("first", "between")));
    assertThat(between.answer()).isEqualTo(DERIVABLE);
    assertThat(between.path()).contains("second 52 − first 50");
  }

  @Test
  void linkedTablesGiveTheWomenAway() {
    int[][] allAndMen = {{22, 21, 1}, {63, 58, 5}, {27, 23, 4}};
    for (int[] row : allAndMen) {
      Verdict women =
          only(
              List.of(exact("all", row[0]), exact("men", row[1]), Item.withheld("women", row[2])),
              relation("all", sum("men", "women")));
      assertThat(women.answer()).isEqualTo(DERIVABLE);
      assertThat(women.low()).isCloseTo(row[2], within(1e-6));
    }
  }

  // What a builder's log holds.

  @Test
  void aChainOfStepsIsToldInOrder() {
    Verdict displacement =
        only(
            List.of(
                printed("hull.loa", 0.7, 0.001, "700 mm"),
                exact("scale", 16),
                Item.withheld("full.loa", 11.2),
                exact("fullness", 0.4),
                Item.unshown("unused", 3)),
            relation("hull.loa", binary('/', name("full.loa"), name("scale"))));
    assertThat(displacement.path()).contains("hull.loa 700 mm × scale 16");
  }

  @Test
  void aPriceFollowsFromCostAndAmount() {
    Verdict price =
        only(
            List.of(
                printed("cost", 2.16, 0.01, "2.16 GBP"),
                exact("used", 6),
                exact("bought", 60),
                Item.withheld("price", 21.6)),
            relation(
                "cost", binary('*', binary('/', name("price"), name("bought")), name("used"))));
    assertThat(price.answer()).isEqualTo(DERIVABLE);
    assertThat(price.path()).contains("cost 2.16 GBP ÷ used 6 × bought 60");
  }

  @Test
  void theGreatestOfSomeTellsWhichOneItIs() {
    List<Verdict> both =
        check(
            List.of(
                printed("longest", 0.312, 0.001, "312 mm"),
                Item.withheld("a", 0.312),
                Item.withheld("b", 0.1)),
            0.05,
            relation("longest", call("max", name("a"), name("b"))));
    // Either of the two may be the longest.
    assertThat(both.get(0).answer()).isNotEqualTo(SAFE);
  }

  @Test
  void aQuantityThatNothingTouchesIsSafe() {
    assertThat(only(List.of(Item.withheld("secret", 4)))).matches(DerivabilityTest::isSafe);
  }

  @Test
  void anUnprintedFigureIsNotHeldAgainstTheMaker() {
    Verdict full =
        only(
            List.of(
                Item.unshown("hull.beam", 0.19),
                exact("scale", 16),
                Item.withheld("full.beam", 3.04)),
            relation("hull.beam", binary('/', name("full.beam"), name("scale"))));
    assertThat(full.answer()).isEqualTo(SAFE);
  }

  @Test
  void namesThatNoItemHasAreRefused() {
    assertThatThrownBy(() -> only(List.of(Item.withheld("a", 1)), relation("a", name("elsewhere"))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("elsewhere");
  }

  @Test
  @Timeout(5)
  void threeThousandQuantitiesTakeLessThanASecond() {
    List<Item> items = new ArrayList<>();
    List<Relation> relations = new ArrayList<>();
    Random random = new Random(4);
    for (int group = 0; group < 110; group++) {
      List<String> names = new ArrayList<>();
      double total = 0;
      for (int i = 0; i < 27; i++) {
        double value = 1 + Math.round(random.nextDouble() * 40) / 4.0;
        String name = "g" + group + "." + i;
        total += value;
        names.add(name);
        items.add(i < 3 ? Item.withheld(name, value) : exact(name, value));
      }
      items.add(exact("total" + group, total));
      relations.add(relation("total" + group, sum(names.toArray(String[]::new))));
    }
    check(items, 0.05, relations.get(0));
    long start = System.nanoTime();
    List<Verdict> verdicts = check(items, 0.05, relations.toArray(Relation[]::new));
    long milliseconds = (System.nanoTime() - start) / 1_000_000;
    assertThat(items).hasSizeGreaterThan(3000);
    assertThat(verdicts).hasSize(330).allMatch(DerivabilityTest::isSafe);
    assertThat(milliseconds).isLessThan(1000);
  }

  @Test
  @Timeout(10)
  void aLargeTableThatHangsTogetherIsStillAnswered() {
    int n = 20;
    List<Item> items = new ArrayList<>();
    List<Relation> relations = new ArrayList<>();
    double[] columns = new double[n];
    for (int r = 0; r < n; r++) {
      double row = 0;
      List<String> names = new ArrayList<>();
      for (int c = 0; c < n; c++) {
        double value = 1 + (r * 7 + c * 3) % 11;
        String name = "x" + r + "." + c;
        names.add(name);
        row += value;
        columns[c] += value;
        items.add((r + c) % 3 == 0 ? Item.withheld(name, value) : exact(name, value));
      }
      items.add(exact("row" + r, row));
      relations.add(relation("row" + r, sum(names.toArray(String[]::new))));
    }
    for (int c = 0; c < n; c++) {
      int column = c;
      items.add(exact("column" + c, columns[c]));
      relations.add(
          relation(
              "column" + c,
              sum(
                  java.util.stream.IntStream.range(0, n)
                      .mapToObj(r -> "x" + r + "." + column)
                      .toArray(String[]::new))));
    }
    List<Verdict> verdicts = check(items, 0.05, relations.toArray(Relation[]::new));
    assertThat(verdicts).hasSizeGreaterThan(130).allMatch(DerivabilityTest::isSafe);
  }

  @Test
  @Timeout(10)
  void aLongChainOfRunningSumsIsAnsweredInASecond() {
    List<Item> items = new ArrayList<>(List.of(Item.withheld("sum0", 0.5)));
    List<Relation> relations = new ArrayList<>();
    double sum = 0.5;
    for (int i = 1; i <= 300; i++) {
      double part = 0.01 + 0.001 * (i * 37 % 101);
      sum += part;
      items.add(i % 10 == 0 ? exact("part" + i, part) : Item.withheld("part" + i, part));
      items.add(Item.withheld("sum" + i, sum));
      relations.add(relation("sum" + i, sum("sum" + (i - 1), "part" + i)));
    }
    long start = System.nanoTime();
    List<Verdict> verdicts = check(items, 0.05, relations.toArray(Relation[]::new));
    long milliseconds = (System.nanoTime() - start) / 1_000_000;
    assertThat(verdicts).allMatch(DerivabilityTest::isSafe);
    assertThat(milliseconds).isLessThan(1000);
  }

  private static double halfWidth(Verdict verdict) {
    return (verdict.high() - verdict.low()) / (verdict.high() + verdict.low());
  }

  private static Verdict only(List<Item> items, Relation... relations) {
    List<Verdict> verdicts = check(items, TEN_PERCENT, relations);
    assertThat(verdicts).hasSize(1);
    return verdicts.get(0);
  }

  private static List<Verdict> check(List<Item> items, double closeness, Relation... relations) {
    return Derivability.check(
        items, Arrays.asList(relations), closeness, q -> q.value().doubleValue());
  }

  private static Item exact(String name, double value) {
    String shown = value == Math.rint(value) ? "" + (long) value : "" + value;
    return Item.printed(name, value, value, 0, shown);
  }

  private static Item printed(String name, double value, double step, String shown) {
    return Item.printed(name, value, Math.round(value / step) * step, step, shown);
  }

  private static Relation relation(String name, Expression formula) {
    return new Relation(name, formula);
  }

  private static Expression name(String name) {
    return new Expression.Name(name);
  }

  private static Expression literal(String number) {
    try {
      return new Expression.Literal(Quantity.parse(number).in(Unit.ONE));
    } catch (QuantityException e) {
      throw new IllegalArgumentException(number, e);
    }
  }

  private static Expression binary(char operator, Expression left, Expression right) {
    return new Expression.Binary(operator, left, right);
  }

  private static Expression call(String function, Expression... arguments) {
    return new Expression.Call(function, List.of(arguments));
  }

  private static Expression sum(String... names) {
    return call("sum", Stream.of(names).map(DerivabilityTest::name).toArray(Expression[]::new));
  }

  private static boolean isSafe(Verdict verdict) {
    return verdict.answer() == SAFE;
  }
}

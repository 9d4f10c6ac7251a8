package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class CurveAreaTest {

  private static final String DERRETT =
      "x [m],y [m]\n0,0\n20,3.7\n40,5.9\n60,7.6\n80,7.5\n100,4.6\n120,0.1";

  private static Given curve(String csv, String rule) {
    return Given.the("curve").table("ordinates", csv).word("rule", rule);
  }

  private static String sample(double from, double to, int n, DoubleUnaryOperator f) {
    StringBuilder csv = new StringBuilder("x,y");
    for (int i = 0; i <= n; i++) {
      double x = from + (to - from) * i / n;
      csv.append(String.format(Locale.ROOT, "%n%.17f,%.17f", x, f.applyAsDouble(x)));
    }
    return csv.toString();
  }

  @Test // N01, N02: Derrett and Barrass, Ship Stability for Masters and Mates, 5th ed. (1999) p. 74
  void simpsonsFirstRuleGivesThePrintedWaterplane() throws Exception {
    Given plane = curve(DERRETT, "simpson-1").quantity("sides", "2");
    double area = plane.in("m²", "area");
    assertThat(area).isCloseTo(1206.66666666667, within(0.01));
    assertThat(area * 1.025 / 100).isCloseTo(12.3683333333333, within(0.001));
  }

  @Test // N03: the same, p. 77
  void simpsonsSecondRuleGivesThePrintedWaterplane() throws Exception {
    assertThat(curve(DERRETT, "simpson-2").quantity("sides", "2").in("m²", "area"))
        .isCloseTo(1206, within(0.01));
  }

  @Test // N04: University of Southampton edshare item 4624, Cutty Sark midship section 1869
  void theCuttySarksMidshipSectionComesOut() throws Exception {
    Given half =
        curve(
            "x [ft],y [ft]\n0,17.15\n3.4,17.40\n6.8,17.45\n10.2,17.30\n13.6,16.10\n17,10.65\n"
                + "20.4,0.60",
            "by-spacing");
    assertThat(half.quantity("sides", "2").in("ft²", "area")).isCloseTo(603.5, within(0.05));
  }

  @Test // N05, N06: Derrett and Barrass p. 88, half intervals at the ends
  void halfStationsAtTheEndsAreFoundFromTheSpacing() throws Exception {
    Given plane =
        curve(
                "x [m],y [m]\n0,0\n4.6875,1\n9.375,2\n18.75,4\n28.125,5\n37.5,5\n46.875,5\n"
                    + "56.25,4\n65.625,3\n70.3125,2\n75,0",
                "by-spacing")
            .quantity("sides", "2");
    assertThat(plane.in("m²", "area")).isCloseTo(534.375, within(1e-6));
    assertThat(plane.in("m", "centre") - 37.5).isCloseTo(1.2609649122807, within(0.005));
  }

  @Test // N07: C. L. Dubey stability exercise 02, worked solution (marinegyaan.com)
  void immersionIntegratedOverDraughtGivesTheVolume() throws Exception {
    Given curve =
        curve("x [m],y [t/cm]\n2,19.68\n3,20.91\n4,21.53\n5,22.04\n6,22.45", "by-spacing");
    double tonnes = curve.in("t", "area") + 3280;
    assertThat(tonnes / 1.025).isCloseTo(11557.3983739837, within(0.01));
  }

  @Test // N08: C. L. Dubey exercise 02, sum of products 370.8
  void fullBreadthsGiveTheWaterplane() throws Exception {
    Given plane =
        curve(
            "x [m],y [m]\n0,1.2\n12,9.6\n24,13.2\n36,15\n48,15.3\n60,15.6\n72,15.6\n84,14.7\n"
                + "96,12.9\n108,9\n120,0",
            "simpson-1");
    assertThat(plane.in("m²", "area")).isCloseTo(1483.2, within(0.01));
  }

  @Test // N09 to N12: OpenStax Calculus vol. 2 section 3.6 (modules m53685, m53686)
  void textbookIntegralsComeOutAsPrinted() throws Exception {
    assertThat(curve(sample(0, 1, 2, x -> x * x * x), "simpson-1").number("area"))
        .isCloseTo(0.25, within(1e-12));
    assertThat(curve(sample(1, 2, 5, x -> 1 / x), "trapezoidal").number("area"))
        .isCloseTo(0.695634920634921, within(1e-9));
    assertThat(curve(sample(0, 0.4, 4, x -> Math.sin(x * x)), "simpson-1").number("area"))
        .isCloseTo(0.0212936801705408, within(1e-9));
    assertThat(
            curve(sample(1, 2, 4, x -> Math.sqrt(Math.pow(x, 5) + 2)), "trapezoidal")
                .number("area"))
        .isCloseTo(3.35438450958667, within(1e-9));
  }

  @Test // N17: exact error term h²/12; 1.32 where the truth is 4/3
  void theTrapezoidalRuleIsReallyTheTrapezoidalRule() throws Exception {
    String parabola = sample(-1, 1, 10, x -> 1 - x * x);
    assertThat(curve(parabola, "trapezoidal").number("area")).isCloseTo(1.32, within(1e-12));
    assertThat(curve(parabola, "by-spacing").number("area")).isCloseTo(4.0 / 3, within(1e-12));
  }

  @Test // N26: Derrett and Barrass p. 79: S1 = 7918, h = 1 m, so one third of it at 1.025 t/m³
  void aSumOfProductsGivesTheDisplacement() throws Exception {
    // Ordinates whose products with 1, 4, 1 add up to the printed 7918.
    Given volume = curve("x [m],y [m²]\n0,1000\n1,1500\n2,918", "simpson-1");
    assertThat(volume.in("m³", "area") * 1.025).isCloseTo(2705.3166666325, within(0.05));
  }

  @Test // N32: Tupper, Introduction to Naval Architecture (northernarchitecture.us prints 3543000)
  void aSecondMomentComesOutAsPrinted() throws Exception {
    // Half-breadths whose products with the multipliers and levers squared add up to the 1896.
    Given plane = curve("x [m],y [m]\n-14.1,948\n0,20\n14.1,948", "simpson-1");
    double moment = plane.quantity("sides", "2").in("m⁴", "second_moment");
    assertThat(moment / 3543271.344).isCloseTo(1, within(1e-4));
  }

  @Test // N30: closed form of the rule
  void fiveEightMinusOneTakesTheFirstInterval() throws Exception {
    assertThat(curve("x,y\n0,0\n2,4\n4,2", "5-8-1").number("area")).isCloseTo(5, within(1e-12));
  }

  @Test // Simpson's second rule takes over the last three intervals of an odd number
  void anEvenNumberOfOrdinatesTakesBothRules() throws Exception {
    Given cubic = curve(sample(0, 1, 5, x -> x * x * x), "by-spacing");
    assertThat(cubic.number("area")).isCloseTo(0.25, within(1e-12));
    assertThat(cubic.methodOf("area")).contains("first rule over 2").contains("second rule over 3");
  }

  @Test
  void anEvenNumberOfOrdinatesIsRefusedWhereSimpsonIsDemanded() {
    assertThatThrownBy(() -> curve(sample(0, 1, 5, x -> x), "simpson-1").yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.what()).contains("cannot take 6 ordinates");
              assertThat(e.input()).isEqualTo("rule");
            });
  }

  @Test
  void unequalSpacingIsRefusedWhereARuleIsDemanded() {
    assertThatThrownBy(() -> curve("x,y\n0,1\n1,1\n3,1", "simpson-1").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("equal spacing");
  }
}

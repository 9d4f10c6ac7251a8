package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.quantity.Quantity;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Hulls of known form whose offsets stand at uneven stations and heights, against the integrals of
 * the form itself, worked out here by the midpoint rule over a fine grid (the closed forms where
 * there are any: box and wedge, V = LBT and LBT/2; half ellipse, A = πbT/2).
 */
@Order(2)
class UnevenOffsetsTest {

  private static final double LENGTH = 1.2;
  private static final double HALF = 0.1;
  private static final double DEPTH = 0.13;

  /** Every number of stations with every number of waterlines, at the least. */
  private static final int SPACINGS = Integer.getInteger("chinelog.spacings", 45);

  /** Half-breadth as part of the greatest, over u from −1 to 1 and the share of the depth. */
  enum Form {
    BOX((u, z) -> 1),
    WEDGE((u, z) -> z),
    V_SECTIONS((u, z) -> (1 - u * u) * z),
    HALF_ELLIPSE((u, z) -> Math.sqrt(z * (2 - z))),
    ELLIPTIC_SECTIONS((u, z) -> (1 - u * u) * Math.sqrt(z * (2 - z))),
    ELLIPSOID((u, z) -> Math.sqrt(Math.max(0, 1 - u * u)) * Math.sqrt(z * (2 - z))),
    WIGLEY((u, z) -> (1 - u * u) * z * (2 - z)),
    PARABOLIC((u, z) -> (1 - u * u) * Math.sqrt(z)),
    FLARED((u, z) -> (1 - u * u) * Math.pow(z, 1.5)),
    FLARED_ABOVE_A_FLAT((u, z) -> (1 - u * u) * (0.4 + 0.6 * z * z)),
    SECTIONS_THAT_CHANGE((u, z) -> (1 - u * u) * (1 + 0.3 * u) * Math.pow(z, 0.7 + 0.4 * u), false),
    HOLLOW_ENDS((u, z) -> Math.pow(Math.cos(Math.PI * u / 2), 2) * z * (2 - z), false),
    FULL_ENDS_3((u, z) -> full(u, 3) * full(1 - z, 2), false),
    FULL_ENDS_4((u, z) -> full(u, 4) * full(1 - z, 2), false),
    FULL_ENDS_6((u, z) -> full(u, 6) * full(1 - z, 2), false),
    FULL_BOW_3((u, z) -> full((u + 1) / 2, 3) * full(1 - z, 2), false),
    FULL_BOW_6((u, z) -> full((u + 1) / 2, 6) * full(1 - z, 2), false),
    FULL_BOTTOM_3((u, z) -> (1 - u * u) * full(1 - z, 3), false),
    FULL_BOTTOM_6((u, z) -> (1 - u * u) * full(1 - z, 6), false),
    FULL_ALL_OVER((u, z) -> full(u, 3) * full(1 - z, 3), false);

    private final DoubleBinaryOperator half;

    /** Whether one of the curves is made for it, so that it comes out right by few offsets. */
    private final boolean isFitted;

    Form(DoubleBinaryOperator half) {
      this(half, true);
    }

    Form(DoubleBinaryOperator half, boolean isFitted) {
      this.half = half;
      this.isFitted = isFitted;
    }

    /** A quarter of a superellipse, which is fuller than an ellipse where the power is above 2. */
    private static double full(double place, int power) {
      return Math.pow(Math.max(0, 1 - Math.pow(Math.abs(place), power)), 1.0 / power);
    }

    /** Every spacing is tried, or every second one where only the estimate is looked at. */
    int step() {
      return isFitted ? 1 : 2;
    }

    /**
     * How many may lie out of their own estimates: one in twenty; one in seven of unfitted forms.
     */
    int mayMiss(int hulls) {
      return (int) Math.ceil(hulls * (isFitted ? 0.05 : 0.15)) - (isFitted ? 1 : 0);
    }

    /** In m, at x from the aft end and z above the keel. */
    double at(double x, double z) {
      return HALF * half.applyAsDouble(2 * x / LENGTH - 1, z / DEPTH);
    }
  }

  private static double[] uneven(Random random, int n, double to) {
    double[] places = new double[n];
    for (int i = 1; i < n; i++) {
      places[i] = places[i - 1] + 0.4 + 1.2 * random.nextDouble();
    }
    double all = places[n - 1];
    for (int i = 0; i < n; i++) {
      places[i] *= to / all;
    }
    return places;
  }

  private static String table(Form form, double[] x, double[] z) {
    StringBuilder csv = new StringBuilder("station,x [m],keel [m]");
    for (double height : z) {
      csv.append(",WL ").append(decimal(height)).append(" half-breadth [m]");
    }
    for (int i = 0; i < x.length; i++) {
      csv.append('\n').append(i).append(',').append(decimal(x[i])).append(",0");
      for (double height : z) {
        csv.append(',').append(decimal(form.at(x[i], height)));
      }
    }
    return csv.toString();
  }

  private static String decimal(double d) {
    return String.format(Locale.ROOT, "%.15f", d);
  }

  private static Given hull(Form form, double[] x, double[] z, double draught) {
    return Given.the("hull-form")
        .table("offsets", table(form, x, z))
        .quantity("draught", decimal(draught) + " m");
  }

  /** Volume, KB, BM and LCB of the form itself. */
  private static double[] truth(Form form, double draught) {
    return truth(form::at, draught);
  }

  private static double[] truth(DoubleBinaryOperator hull, double draught) {
    int along = 120;
    int up = 200;
    double volume = 0;
    double upward = 0;
    double forward = 0;
    double across = 0;
    for (int i = 0; i < along; i++) {
      // Closer at the ends, so that a blunt end is met.
      double angle = Math.PI * (i + 0.5) / along;
      double x = LENGTH / 2 * (1 - Math.cos(angle));
      double dx = LENGTH / 2 * Math.sin(angle) * Math.PI / along;
      for (int k = 0; k < up; k++) {
        double share = (k + 0.5) / up;
        double z = draught * share * share;
        double dv = 2 * hull.applyAsDouble(x, z) * dx * 2 * draught * share / up;
        volume += dv;
        upward += z * dv;
        forward += x * dv;
      }
      across += Math.pow(hull.applyAsDouble(x, draught), 3) * dx * 2 / 3;
    }
    return new double[] {volume, upward / volume, across / volume, forward / volume};
  }

  private static double[] reckoned(Given hull) throws Exception {
    return new double[] {
      hull.in("m³", "volume"), hull.in("m", "vcb"), hull.in("m", "bm"), hull.in("m", "lcb")
    };
  }

  private static final String[] FIGURES = {"volume", "vcb", "bm", "lcb"};

  @ParameterizedTest
  @EnumSource(Form.class)
  void anySpacingFromFiveStationsAndFourWaterlinesOnIsRightToThreeInAThousand(Form form)
      throws Exception {
    double[] worst = new double[4];
    double[] estimates = new double[4];
    int doubted = 0;
    SoftAssertions all = new SoftAssertions();
    int hulls = 0;
    for (int i = 0; i < SPACINGS; i += form.step()) {
      hulls++;
      Random random = new Random(i);
      double[] x = uneven(random, 5 + i % 9, LENGTH);
      double[] z = uneven(random, 5 + i / 9 % 5, DEPTH);
      double draught = DEPTH * (0.25 + 0.74 * random.nextDouble());
      Given hull = hull(form, x, z, draught);
      double[] found = reckoned(hull);
      double[] truth = truth(form, draught);
      boolean within = true;
      for (int k = 0; k < 4; k++) {
        double error = found[k] / truth[k] - 1;
        worst[k] = Math.max(worst[k], Math.abs(error));
        if (form.isFitted) {
          all.assertThat(Math.abs(error))
              .as("%s, %s, spacing %d: %.4f %%", form, FIGURES[k], i, 100 * error)
              .isLessThan(0.003);
        }
        var tolerance = hull.quantityOf(FIGURES[k]).tolerance();
        double said =
            tolerance == null
                ? 0.001
                : tolerance.doubleValue() / hull.quantityOf(FIGURES[k]).value().doubleValue();
        within &= Math.abs(error) <= said;
        estimates[k] = Math.max(estimates[k], said);
      }
      doubted += within ? 1 : 0;
    }
    System.out.printf(
        Locale.ROOT,
        "%-20s worst of %d spacings (and its estimate): V %.3f (%.2f) %%, KB %.3f (%.2f) %%,"
            + " BM %.3f (%.2f) %%, LCB %.3f (%.2f) %%; within its own estimate %d times%n",
        form,
        hulls,
        100 * worst[0],
        100 * estimates[0],
        100 * worst[1],
        100 * estimates[1],
        100 * worst[2],
        100 * estimates[2],
        100 * worst[3],
        100 * estimates[3],
        doubted);
    all.assertThat(hulls - doubted)
        .as("%s lies out of its own estimate", form)
        .isLessThanOrEqualTo(form.mayMiss(hulls));
    all.assertAll();
  }

  /** GM of her as she floats is KB + BM − KG. Ends that are blunt are not told by five stations. */
  @ParameterizedTest
  @EnumSource(Form.class)
  void theMetacentricHeightLiesWithinItsOwnEstimate(Form form) throws Exception {
    double worst = 0;
    double estimates = 0;
    int within = 0;
    int hulls = 0;
    for (int i = 0; i < SPACINGS; i += Math.max(1, SPACINGS / 9 * form.step())) {
      Random random = new Random(i);
      double[] x = uneven(random, 5 + i % 9, LENGTH);
      double[] z = uneven(random, 5 + i / 9 % 5, DEPTH);
      double[] truth = truth(form, DEPTH * (0.25 + 0.74 * random.nextDouble()));
      double km = truth[1] + truth[2];
      double kg = DEPTH / 3;
      String mass = decimal(truth[0] * 1000) + "," + decimal(truth[3]) + "," + decimal(kg);
      Given she =
          Given.the("afloat")
              .table("offsets", table(form, x, z))
              .table("masses", "mass [kg],x [m],z [m]\n" + mass)
              .quantity("heel_most", "5 deg")
              .quantity("density", "1 g/cm³");
      double error = Math.abs(she.in("m", "gm") - (km - kg)) / km;
      Quantity gm = she.quantityOf("gm");
      double estimate =
          gm.tolerance() == null
              ? 0.001
              : gm.tolerance().doubleValue() / Math.abs(gm.value().doubleValue()) * (km - kg) / km;
      worst = Math.max(worst, error);
      estimates += Math.abs(estimate);
      within += error <= Math.abs(estimate) ? 1 : 0;
      hulls++;
    }
    System.out.printf(
        Locale.ROOT,
        "%-20s GM of %d spacings, as part of KM: worst %.3f %%, its estimate %.2f %% in the mean,"
            + " within it %d times%n",
        form,
        hulls,
        100 * worst,
        100 * estimates / hulls,
        within);
    assertThat(hulls - within).isLessThanOrEqualTo(form.mayMiss(hulls));
    if (form.isFitted) {
      assertThat(worst).isLessThan(0.003);
      assertThat(estimates / hulls).isLessThan(form == Form.ELLIPSOID ? 0.04 : 0.002);
    }
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void whatSinksDeeperDisplacesMoreAndHasItsCentreHigher(Form form) throws Exception {
    for (int i = 0; i < 5; i += form.step()) {
      Random random = new Random(1000 + i);
      double[] x = uneven(random, 5 + i, LENGTH);
      double[] z = uneven(random, 6, DEPTH);
      double[] draughts = IntStream.rangeClosed(1, 40).mapToDouble(k -> DEPTH * k / 40).toArray();
      sinksSteadily(form.name(), table(form, x, z), draughts, 0);
    }
  }

  /**
   * A bottom that rises straight to a chine, sides that flare above it. The chine stands at one
   * height, or rises forward; what its columns tell is kept as a corner.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.02})
  void aChineThatIsToldStaysACorner(double rise) throws Exception {
    DoubleUnaryOperator chine = x -> 0.05 + rise * x / LENGTH;
    DoubleUnaryOperator half = x -> HALF * (1 - Math.pow(2 * x / LENGTH - 1, 2));
    DoubleBinaryOperator hull =
        (x, z) -> {
          double above = z - chine.applyAsDouble(x);
          return half.applyAsDouble(x)
              * (above < 0 ? z / chine.applyAsDouble(x) : 1 + 2 * above + 9 * above * above);
        };
    double worst = 0;
    for (int i = 0; i < 30; i++) {
      Random random = new Random(i);
      double[] x = uneven(random, 7 + i % 6, LENGTH);
      double[] z = uneven(random, 6, DEPTH);
      double draught = 0.02 + 0.1 * random.nextDouble();
      StringBuilder csv =
          new StringBuilder("station,x [m],keel [m],chine [m],chine half-breadth [m]");
      for (double height : z) {
        csv.append(",WL ").append(decimal(height)).append(" half-breadth [m]");
      }
      for (int k = 0; k < x.length; k++) {
        csv.append('\n').append(k).append(',').append(decimal(x[k])).append(",0,");
        csv.append(decimal(chine.applyAsDouble(x[k]))).append(',');
        csv.append(decimal(half.applyAsDouble(x[k])));
        for (double height : z) {
          csv.append(',').append(decimal(hull.applyAsDouble(x[k], height)));
        }
      }
      Given given =
          Given.the("hull-form")
              .table("offsets", csv.toString())
              .quantity("draught", decimal(draught) + " m");
      double[] truth = truth(hull, draught);
      double[] found = reckoned(given);
      for (int k = 0; k < 4; k++) {
        worst = Math.max(worst, Math.abs(found[k] / truth[k] - 1));
      }
    }
    // Where the water cuts the chine between two stations, the areas have a turn that none tells.
    assertThat(worst).isLessThan(rise == 0 ? 0.003 : 0.01);
  }

  @Test
  void theDemosHullSinksSteadilyPastItsWaterlines() throws Exception {
    double[] draughts = IntStream.range(0, 234).mapToDouble(k -> 0.025 + 0.0003 * k).toArray();
    sinksSteadily("Merrow", Given.resource("offsets.csv"), draughts, 0.0025);
  }

  /**
   * Every tenth draught as a maker is told of it, and the ones between as they are integrated: what
   * is told besides, such as how far a figure may be out, takes most of the time.
   */
  private static void sinksSteadily(String hull, String table, double[] draughts, double siding)
      throws Exception {
    List<HullSection> stations =
        Offsets.read(
                new Inputs(
                    Map.of("siding", Quantity.parse(decimal(siding) + " m")),
                    Map.of("offsets", Given.parse("offsets", table)),
                    Map.of()))
            .stations();
    double volume = 0;
    double centre = 0;
    Given form =
        Given.the("hull-form").table("offsets", table).quantity("siding", decimal(siding) + " m");
    for (int i = 0; i < draughts.length; i++) {
      double draught = draughts[i];
      Afloat afloat = Afloat.at(stations, draught, siding);
      if (i % 10 == 0) {
        form.quantity("draught", decimal(draught) + " m");
        assertThat(form.in("m³", "volume")).isCloseTo(afloat.volume(), within(1e-12));
        assertThat(form.in("m", "vcb")).isCloseTo(afloat.vcb(), within(1e-12));
      }
      assertThat(afloat.volume()).as("%s at %f m", hull, draught).isGreaterThan(volume);
      assertThat(afloat.vcb()).as("%s at %f m", hull, draught).isGreaterThan(centre);
      volume = afloat.volume();
      centre = afloat.vcb();
    }
  }
}

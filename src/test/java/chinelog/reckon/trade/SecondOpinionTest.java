package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.analysis.integration.UnivariateIntegrator;
import org.apache.commons.math3.geometry.euclidean.twod.PolygonsSet;
import org.apache.commons.math3.geometry.euclidean.twod.Vector2D;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/** The same figures from a general-purpose library: Apache Commons Math 3.6.1. */
class SecondOpinionTest {

  private static final Random RANDOM = new Random(20260516);

  private static double integral(UnivariateFunction f, double from, double to) {
    UnivariateIntegrator gauss = new IterativeLegendreGaussIntegrator(16, 1e-12, 1e-12);
    return gauss.integrate(1_000_000, f, from, to);
  }

  private static String decimal(double d) {
    return String.format(Locale.ROOT, "%.15f", d);
  }

  /** Half-breadth of a hull in m: an ogive with hollow ends, full above. */
  private static double half(double x, double z) {
    return 0.11 * Math.pow(Math.sin(Math.PI * x / 0.7), 1.5) * Math.sin(Math.PI / 2 * z / 0.09);
  }

  private static Given hull(int stations, int waterlines) {
    StringBuilder csv = new StringBuilder("station,x [m],keel [m]");
    for (int k = 0; k <= waterlines; k++) {
      csv.append(",WL ").append(decimal(0.08 * k / waterlines)).append(" half-breadth [m]");
    }
    for (int i = 0; i <= stations; i++) {
      double x = 0.7 * i / stations;
      csv.append('\n').append(i).append(',').append(decimal(x)).append(",0");
      for (int k = 0; k <= waterlines; k++) {
        csv.append(',').append(decimal(half(x, 0.08 * k / waterlines)));
      }
    }
    return Given.the("hull-form").table("offsets", csv.toString()).quantity("draught", "60 mm");
  }

  @Test
  void aHullHasTheVolumeAndCentresOfItsSurface() throws Exception {
    double along = integral(x -> half(x, 0.09), 0, 0.7);
    double up = integral(z -> Math.sin(Math.PI / 2 * z / 0.09), 0, 0.06);
    double moment = integral(z -> z * Math.sin(Math.PI / 2 * z / 0.09), 0, 0.06);
    Given hull = hull(40, 16);
    double volume = 2 * along * up;
    assertThat(hull.in("m³", "volume") / volume).isCloseTo(1, within(1e-3));
    assertThat(hull.in("m", "vcb")).isCloseTo(moment / up, within(1e-4));
    assertThat(hull.in("m", "lcb")).isCloseTo(0.35, within(1e-6));
    assertThat(hull.in("m²", "waterplane") / (2 * integral(x -> half(x, 0.06), 0, 0.7)))
        .isCloseTo(1, within(1e-3));
    double bm = 2.0 / 3 * integral(x -> Math.pow(half(x, 0.06), 3), 0, 0.7) / volume;
    assertThat(hull.in("m", "bm") / bm).isCloseTo(1, within(2e-3));
  }

  @Test
  void aCurveOfManyOrdinatesHasItsIntegral() throws Exception {
    for (int round = 0; round < 20; round++) {
      double a = RANDOM.nextDouble(0.5, 3);
      double b = RANDOM.nextDouble(0.1, 2);
      UnivariateFunction f = x -> a + Math.cos(b * x) * Math.exp(-x / 5);
      StringBuilder csv = new StringBuilder("x,y");
      for (int i = 0; i <= 60; i++) {
        csv.append('\n').append(decimal(i / 10.0)).append(',').append(decimal(f.value(i / 10.0)));
      }
      Given curve = Given.the("curve").table("ordinates", csv.toString());
      double area = integral(f, 0, 6);
      assertThat(curve.number("area")).isCloseTo(area, within(1e-5));
      assertThat(curve.number("centre"))
          .isCloseTo(integral(x -> x * f.value(x), 0, 6) / area, within(1e-5));
      assertThat(curve.number("second_moment"))
          .isCloseTo(integral(x -> x * x * f.value(x), 0, 6), within(1e-4));
    }
  }

  @Test
  void anOutlineHasItsAreaAndCentre() {
    for (int round = 0; round < 50; round++) {
      int corners = RANDOM.nextInt(3, 12);
      double[] x = new double[corners];
      double[] z = new double[corners];
      Vector2D[] points = new Vector2D[corners];
      for (int i = 0; i < corners; i++) {
        double angle = 2 * Math.PI * i / corners;
        double radius = RANDOM.nextDouble(0.5, 2);
        x[i] = 3 + radius * Math.cos(angle);
        z[i] = 1 + radius * Math.sin(angle);
        points[i] = new Vector2D(x[i], z[i]);
      }
      PolygonsSet opinion = new PolygonsSet(1e-10, points);
      Vector2D centre = (Vector2D) opinion.getBarycenter();
      Polygon ours = Polygon.of(x, z);
      assertThat(ours.area()).isCloseTo(opinion.getSize(), within(1e-9));
      assertThat(List.of(ours.x() - centre.getX(), ours.z() - centre.getY()))
          .allSatisfy(d -> assertThat(d).isCloseTo(0, within(1e-9)));
    }
  }

  @Test
  void theGrowthOfMassFollowsTheLineOfLeastSquares() throws Exception {
    SimpleRegression line = new SimpleRegression();
    StringBuilder csv = new StringBuilder("done [%],mass [g]");
    double last = 0;
    for (int i = 0; i < 12; i++) {
      last = 400 + 150 * i + RANDOM.nextInt(100);
      line.addData(5 + 7 * i, last);
      csv.append('\n').append(5 + 7 * i).append(',').append(last);
    }
    assertThat(Given.the("mass-growth").table("weighings", csv.toString()).in("g", "forecast"))
        .isCloseTo(last + line.getSlope() * (100 - 82), within(1e-6));
  }
}

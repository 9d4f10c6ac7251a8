package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

class HullFormTest {

  /** Offsets of y(x, z) in m over equal intervals, the base line at the keel. */
  private static String offsets(
      double length, int stations, double depth, int waterlines, DoubleBinaryOperator half) {
    StringBuilder csv = new StringBuilder("station,x [m],keel [m]");
    for (int k = 0; k <= waterlines; k++) {
      csv.append(",WL ").append(decimal(depth * k / waterlines)).append(" half-breadth [m]");
    }
    for (int i = 0; i <= stations; i++) {
      double x = length * i / stations;
      csv.append('\n').append(i).append(',').append(decimal(x)).append(",0");
      for (int k = 0; k <= waterlines; k++) {
        csv.append(',').append(decimal(half.applyAsDouble(x, depth * k / waterlines)));
      }
    }
    return csv.toString();
  }

  private static String decimal(double d) {
    return String.format(Locale.ROOT, "%.15f", d);
  }

  private static Given wigley(double l, double b, double t) {
    return wigley(l, b, t, 40);
  }

  private static Given wigley(double l, double b, double t, int stations) {
    return Given.the("hull-form")
        .table(
            "offsets",
            offsets(
                l,
                stations,
                t,
                4,
                (x, z) ->
                    b / 2 * (1 - Math.pow(2 * x / l - 1, 2)) * (1 - Math.pow((t - z) / t, 2))))
        .quantity("draught", decimal(t) + " m");
  }

  @Test // N13 to N15: closed form, exact for Simpson's rule
  void theParabolicHullHasItsExactVolumeAndCentre() throws Exception {
    Given hull = wigley(1, 0.1, 0.0625);
    assertThat(hull.in("L", "volume")).isCloseTo(2.77777777777778, within(1e-9));
    assertThat(hull.number("cb")).isCloseTo(4.0 / 9, within(1e-11));
    assertThat(hull.number("cw")).isCloseTo(2.0 / 3, within(1e-11));
    assertThat(hull.number("cm")).isCloseTo(2.0 / 3, within(1e-11));
    assertThat(hull.number("cp")).isCloseTo(2.0 / 3, within(1e-11));
    assertThat(hull.in("mm", "vcb")).isCloseTo(39.0625, within(1e-9));
    assertThat(hull.in("m", "lcb")).isCloseTo(0.5, within(1e-12));
    assertThat(hull.in("m", "lcf")).isCloseTo(0.5, within(1e-12));
  }

  @Test // N16: BM = 3B²/(35T), BM_L = 3L²/(40T); the cube of y is of degree 6, so not to the last
  void theParabolicHullHasItsMetacentres() throws Exception {
    Given hull = wigley(1, 0.1, 0.0625, 400);
    assertThat(hull.in("mm", "bm")).isCloseTo(13.7142857142857, within(13.7e-9));
    assertThat(hull.in("m", "bml")).isCloseTo(3 / (40 * 0.0625), within(1.2e-9));
  }

  @Test // M11: closed form with the ITTC's density of fresh water at 15 °C, 999.1026 kg/m³
  void theParabolicModelLeavesRoomForBallast() throws Exception {
    Given hull = wigley(1.2, 0.24, 0.12);
    assertThat(hull.in("kg", "displacement") - 9.2).isCloseTo(6.146215936, within(1e-6));
  }

  @Test // M06: examination worked solution "Naval numerical 28": KB 2, BM 3 m
  void aBoxHasItsExactFigures() throws Exception {
    Given box =
        Given.the("hull-form")
            .table("offsets", offsets(65, 10, 4, 4, (x, z) -> 6))
            .quantity("draught", "4 m")
            .quantity("density", "1025 kg/m³");
    assertThat(box.in("m³", "volume")).isCloseTo(65 * 12 * 4, within(1e-8));
    assertThat(box.in("m", "vcb")).isCloseTo(2, within(1e-12));
    assertThat(box.in("m", "bm")).isCloseTo(3, within(1e-12));
    assertThat(box.in("m", "bml")).isCloseTo(65 * 65 / 48.0, within(1e-9));
    assertThat(box.in("t/cm", "immersion")).isCloseTo(65 * 12 * 1.025 / 100, within(1e-9));
    assertThat(box.in("m²", "waterplane")).isCloseTo(780, within(1e-9));
  }

  @Test // M10: Derrett and Barrass, Ship Stability for Masters and Mates, 5th ed. (1999) p. 111
  void aBoxHasItsLeastMetacentreAtABreadthOverTheRootOfSix() throws Exception {
    double t = 10 / Math.sqrt(6);
    Given box =
        Given.the("hull-form")
            .table("offsets", offsets(30, 4, t, 2, (x, z) -> 5))
            .quantity("draught", decimal(t) + " m");
    assertThat(box.in("m", "vcb") + box.in("m", "bm")).isCloseTo(4.08248290463863, within(1e-4));
  }

  @Test // M21: stability exercise, public study page: 1640 t, 50 × 10 m, 1.025
  void aMassFindsItsDraught() throws Exception {
    Given box =
        Given.the("hull-form")
            .table("offsets", offsets(50, 4, 5, 4, (x, z) -> 5))
            .quantity("mass", "1640 t")
            .quantity("density", "1025 kg/m³");
    assertThat(box.in("m", "draught")).isCloseTo(3.2, within(1e-9));
  }

  @Test // M09: hydraulics exercise page, barge of 100 × 30 ft and 500000 lb in 62.4 lb/ft³
  void aBargeInFeetFloatsAtItsDraught() throws Exception {
    String table =
        "station,x [ft],keel [ft],WL 0 [ft],WL 3 [ft],WL 6 [ft]\n"
            + "0,0,0,15,15,15\n1,50,0,15,15,15\n2,100,0,15,15,15";
    Given barge =
        Given.the("hull-form")
            .table("offsets", table)
            .quantity("mass", "500000 lb")
            .quantity("density", "62.4 lb/ft³");
    assertThat(barge.in("ft", "draught")).isCloseTo(2.67094017094017, within(1e-3));
    assertThat(barge.in("ft", "vcb")).isCloseTo(1.33547008547009, within(1e-3));
    assertThat(barge.in("ft", "bm")).isCloseTo(28.08, within(1e-3));
  }

  @Test // N19: closed form V = LBT/2, KB = 2T/3
  void aWedgeHasItsExactFigures() throws Exception {
    Given wedge =
        Given.the("hull-form")
            .table("offsets", offsets(1, 4, 0.1, 4, (x, z) -> z))
            .quantity("draught", "0.1 m");
    assertThat(wedge.in("m³", "volume")).isCloseTo(0.01, within(1e-13));
    assertThat(wedge.in("m", "vcb")).isCloseTo(0.0666666666666667, within(1e-13));
    // Two sides at 45°: girth 2 × 0.1 √2.
    assertThat(wedge.in("m", "wet_girth_2")).isCloseTo(0.2 * Math.sqrt(2), within(1e-12));
    assertThat(wedge.in("m²", "wetted_skin")).isCloseTo(0.2 * Math.sqrt(2), within(1e-12));
    assertThat(wedge.in("m²", "skin")).isCloseTo(0.2 * Math.sqrt(2), within(1e-12));
  }

  @Test // Closed forms: L (B + 2T), and 2L (½B ÷ cos β + T − ½B tan β) above a bottom that rises by
  // β
  void noChordCutsACornerOfTheSkin() throws Exception {
    Given box =
        Given.the("hull-form")
            .table(
                "offsets",
                "station,x [mm],keel [mm],keel half-breadth [mm],WL 120 half-breadth [mm]\n"
                    + "0,0,0,100,100\n1,200,0,100,100\n2,450,0,100,100\n3,1000,0,100,100")
            .quantity("draught", "45 mm");
    assertThat(box.in("mm²", "wetted_skin")).isCloseTo(1000 * (200 + 2 * 45), within(1e-6));
    assertThat(box.in("mm²", "skin")).isCloseTo(1000 * (200 + 2 * 120), within(1e-6));
    Given chined =
        Given.the("hull-form")
            .table(
                "offsets",
                "station,x [mm],keel [mm],chine [mm],chine half-breadth [mm],"
                    + "WL 60 half-breadth [mm],WL 120 half-breadth [mm]\n"
                    + "0,0,0,30,40,40,40\n1,300,0,30,40,40,40\n2,700,0,30,40,40,40")
            .quantity("draught", "60 mm");
    assertThat(chined.in("mm²", "wetted_skin")).isCloseTo(1400 * (50 + 30), within(1e-6));
    // Between keel and chine and from chine to sheer nothing is round: A = ½Bh + B(T − h).
    assertThat(chined.in("mm²", "area_1")).isCloseTo(80 * 15 + 80 * 30, within(1e-6));
    assertThat(chined.in("mm³", "volume")).isCloseTo(700 * 3600, within(1e-3));
    assertThat(chined.quantityOf("volume").tolerance()).isNull();
  }

  @Test // N18: half cylinder, area πr²/2, centroid 4r/(3π) below the flat; 100 waterlines
  void aHalfCylinderComesCloseToItsFigures() throws Exception {
    double r = 0.05;
    Given half =
        Given.the("hull-form")
            .table(
                "offsets",
                offsets(1, 2, r, 100, (x, z) -> Math.sqrt(Math.max(0, r * r - (r - z) * (r - z)))))
            .quantity("draught", "0.05 m");
    // The root's vertical tangent at the keel costs the rule h to the power 3/2 there.
    assertThat(half.in("mm", "vcb")).isCloseTo(50 - 21.2206590789194, within(0.01));
    assertThat(half.in("m³", "volume")).isCloseTo(Math.PI * r * r / 2, within(2e-6));
    assertThat(half.in("mm", "wet_girth_1")).isCloseTo(Math.PI * 50, within(0.05));
  }

  private static Given merrow() {
    return Given.the("hull-form")
        .table("offsets", Given.resource("offsets.csv"))
        .quantity("draught", "52 mm")
        .quantity("siding", "2.5 mm");
  }

  /**
   * The demo hull, against figures of the surface that its offsets were taken from. Chords lose a
   * little of the girth, and the skin ends at station 12 where the surface runs on 20 mm to the
   * stem.
   */
  @Test
  void theDemoHullAgreesWithTheSurfaceItWasTakenFrom() throws Exception {
    Map<String, Double> expected = new TreeMap<>();
    for (String line : Given.resource("hydrostatics.csv").strip().split("\n")) {
      if (!line.startsWith("quantity")) {
        expected.put(line.split(",")[0], Double.valueOf(line.split(",")[1]));
      }
    }
    Given hull = merrow();
    assertThat(hull.in("cm³", "volume") / expected.get("volume_cm3")).isBetween(0.998, 1.002);
    assertThat(hull.in("kg", "displacement") / expected.get("mass_fresh_kg"))
        .isBetween(0.998, 1.002);
    assertThat(hull.in("mm", "lcb")).isCloseTo(expected.get("lcb_from_transom_mm"), within(0.2));
    assertThat(hull.in("mm", "lwl")).isCloseTo(expected.get("lwl_mm"), within(1.5));
    assertThat(hull.in("mm", "bwl")).isCloseTo(expected.get("bwl_mm"), within(0.8));
    assertThat(hull.in("cm²", "waterplane") / expected.get("waterplane_cm2"))
        .isBetween(0.998, 1.002);
    assertThat(hull.in("cm²", "wetted_skin") / expected.get("wetted_skin_cm2"))
        .isBetween(0.99, 1.005);
    assertThat(hull.in("cm²", "skin") / expected.get("hull_skin_both_sides_cm2"))
        .isBetween(0.975, 1.0);
    assertThat(hull.number("cb")).isCloseTo(expected.get("block_coefficient"), within(0.005));
    for (int i = 0; i <= 12; i++) {
      double whole = expected.get("full_girth_station_" + i + "_mm");
      assertThat(hull.in("mm", "girth_" + i) / whole).isBetween(0.985, 1.002);
      liesWithinItsEstimate(hull, "mm", "girth_" + i, whole);
    }
    for (int i = 0; i <= 10; i++) {
      double wet = expected.get("wetted_girth_station_" + i + "_mm");
      assertThat(hull.in("mm", "wet_girth_" + i) / wet).isBetween(0.98, 1.002);
      liesWithinItsEstimate(hull, "mm", "wet_girth_" + i, wet);
    }
  }

  @Test
  void theRulesUsedAreSaid() throws Exception {
    assertThat(merrow().methodOf("volume"))
        .contains("along the hull on a smooth curve")
        .contains("leaving out one station or height")
        .contains("5th edition");
    assertThat(merrow().methodOf("displacement")).contains("Fresh water at 15 °C");
  }

  @Test
  void aToleranceOfTheDraughtIsCarriedThrough() throws Exception {
    var volume = merrow().quantity("draught", "52 mm ± 0.5 mm").quantityOf("volume");
    double own = Objects.requireNonNull(merrow().quantityOf("volume").tolerance()).doubleValue();
    // Half a millimetre of an 855 cm² waterplane, besides what the offsets leave in doubt.
    assertThat(Objects.requireNonNull(volume.tolerance()).doubleValue() - own)
        .isCloseTo(42.8, within(0.5));
  }

  private static final String HEAD = "station,x [mm],keel [mm],WL 0 [mm],WL 10 [mm],WL 20 [mm]\n";

  private static void refuses(String rows, String what, int line) {
    assertThatThrownBy(
            () ->
                Given.the("hull-form")
                    .table("offsets", HEAD + rows)
                    .quantity("draught", "20 mm")
                    .yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.what()).contains(what);
              assertThat(e.remedy()).endsWith(".");
              assertThat(e.input()).isEqualTo("offsets");
              assertThat(Objects.requireNonNull(e.place()).line()).isEqualTo(line);
            });
  }

  @Test
  void aTableThatIsNotSoundIsRefusedAtItsPlace() {
    refuses("0,0,0,1,2,3\n1,20,0,1,2,3\n2,10,0,1,2,3", "lies beyond it", 4);
    refuses("0,0,0,1,2,3\n1,10,0,1,2,3\n2,10,0,1,2,3", "there twice", 4);
    refuses("0,0,0,1,2,3\n1,10,0,1,2,3\n1,20,0,1,2,3", "another station", 4);
    refuses("0,-5,0,1,2,3\n1,10,0,1,2,3\n2,20,0,1,2,3", "negative x", 2);
    refuses("0,0,0,1,,3\n1,10,0,1,2,3\n2,20,0,1,2,3", "gap", 2);
    refuses("0,0,0,1,2,3\n1,10,0,1,-2,3\n2,20,0,1,2,3", "negative", 3);
    refuses("0,0,0,1,2,3\n1,10,5,1,2,3\n2,20,0,1,2,3", "below the station's keel", 3);
    refuses("0,0,0,1,2,3\n1,10,0,,,\n2,20,0,1,2,3", "no half-breadth", 3);
    refuses("0,0,0,1,2,3\n1,10,0,1,two,3\n2,20,0,1,2,3", "not a number", 3);
  }

  @Test
  void waterOverTheLastHalfBreadthIsRefused() {
    assertThatThrownBy(() -> merrow().quantity("draught", "120 mm").yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.input()).isEqualTo("draught");
              assertThat(e.what()).contains("station 0");
            });
  }

  @Test
  void aToleranceLargerThanItsValueIsRefused() {
    assertThatThrownBy(
            () ->
                merrow()
                    .quantity("siding", "2.5 mm")
                    .quantity("density", "1000 kg/m³ ± 1100 kg/m³")
                    .yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.what()).contains("reaches too far");
              assertThat(e.input()).isEqualTo("density");
            });
  }

  @Test
  void aTableWithoutRowsOrColumnsIsRefused() {
    assertThatThrownBy(
            () ->
                Given.the("hull-form")
                    .table("offsets", "station,x [mm]\n0,0\n1,1")
                    .quantity("draught", "20 mm")
                    .yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("no column \"keel\"");
    assertThatThrownBy(
            () ->
                Given.the("hull-form")
                    .table("offsets", "station,x [mm]")
                    .quantity("draught", "20 mm")
                    .yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("no rows");
  }

  @Test
  void draughtAndMassTogetherAreRefused() {
    assertThatThrownBy(() -> merrow().quantity("mass", "2 kg").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("twice");
  }

  @Test
  void aQuantityOfTheWrongKindIsRefused() {
    assertThatThrownBy(() -> merrow().quantity("draught", "52 g").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("not of the right kind");
  }

  @Test
  void doublingTheScaleMakesEightTimesTheMass() throws Exception {
    double small = wigley(1, 0.1, 0.0625).in("kg", "displacement");
    assertThat(wigley(2, 0.2, 0.125).in("kg", "displacement") / small).isCloseTo(8, within(1e-9));
  }

  private static void liesWithinItsEstimate(Given hull, String unit, String figure, double truth)
      throws Exception {
    Quantity told = hull.quantityOf(figure).in(Unit.parse(unit));
    BigDecimal tolerance = told.tolerance();
    double doubt = tolerance == null ? 5e-4 * truth : tolerance.doubleValue();
    // The offsets and the girths that were taken from the surface are told to 0.1 mm.
    assertThat(told.value().doubleValue()).as(figure).isCloseTo(truth, within(doubt + 0.15));
  }
}

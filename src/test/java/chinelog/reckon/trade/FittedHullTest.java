package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Hulls with fins, bulbs and lead below them, against closed forms and each other. */
class FittedHullTest {

  /** 600 × 160 mm, 120 mm deep. */
  private static final String BOX = box();

  private static String box() {
    StringBuilder offsets =
        new StringBuilder(
            "x [mm],keel [mm],keel half-breadth [mm],WL 60 half-breadth [mm],WL 120 half-breadth"
                + " [mm]\n");
    for (int i = 0; i <= 4; i++) {
      offsets.append(i * 150).append(",0,80,80,80\n");
    }
    return offsets.toString();
  }

  /** A fin of 300 cm³ and a bulb of 180 cm³. */
  private static Given fitted(Given given) {
    return given
        .word("appendages", "fin bulb")
        .quantity("appendages.fin.volume", "300 cm³")
        .quantity("appendages.fin.x", "310 mm")
        .quantity("appendages.fin.z", "-60 mm")
        .quantity("appendages.fin.skin", "400 cm²")
        .quantity("appendages.bulb.volume", "180 cm³")
        .quantity("appendages.bulb.x", "330 mm")
        .quantity("appendages.bulb.z", "-150 mm")
        .quantity("appendages.bulb.skin", "220 cm²");
  }

  @Test // box of 4800 cm³ at 50 mm with 300 and 180 cm³ below it
  void aFormCarriesWhatIsFixedToItByName() throws Exception {
    Given bare =
        Given.the("hull-form")
            .table("offsets", BOX)
            .quantity("draught", "50 mm")
            .word("water", "fresh");
    Given form =
        fitted(
            Given.the("hull-form")
                .table("offsets", BOX)
                .quantity("draught", "50 mm")
                .word("water", "fresh"));
    double v = 4800 + 300 + 180;
    assertThat(form.in("cm³", "hull_volume")).isCloseTo(4800, within(1e-6));
    assertThat(form.in("cm³", "volume")).isCloseTo(v, within(1e-6));
    assertThat(form.in("mm", "lcb"))
        .isCloseTo((4800 * 300 + 300 * 310 + 180 * 330) / v, within(1e-6));
    assertThat(form.in("mm", "vcb"))
        .isCloseTo((4800 * 25 - 300 * 60 - 180 * 150) / v, within(1e-6));
    assertThat(form.in("mm", "bm")).isCloseTo(600 * Math.pow(160, 3) / 12 / 1000 / v, within(1e-6));
    assertThat(form.in("cm²", "wetted_skin"))
        .isCloseTo(bare.in("cm²", "wetted_skin") + 620, within(1e-6));
    assertThat(form.number("cb")).isCloseTo(1, within(1e-9));
  }

  @Test
  void aFormIsFoundAtTheDraughtThatBearsHullAndAppendages() throws Exception {
    Given form =
        fitted(
            Given.the("hull-form")
                .table("offsets", BOX)
                .quantity("mass", "5280 g")
                .quantity("density", "1 g/cm³"));
    assertThat(form.in("mm", "draught")).isCloseTo(50, within(1e-6));
  }

  @Test
  void aFinAboveTheWaterIsRefused() {
    Given form =
        fitted(Given.the("hull-form").table("offsets", BOX).quantity("draught", "50 mm"))
            .quantity("appendages.fin.z", "60 mm");
    assertThatThrownBy(form::yields).hasMessageContaining("\"fin\" has its centre above the water");
  }

  @Test // the same by a table
  void aTableOfAppendagesDoesAsWell() throws Exception {
    Given form =
        Given.the("hull-form")
            .table("offsets", BOX)
            .quantity("draught", "50 mm")
            .table(
                "appendages",
                "item,volume [cm³],x [mm],z [mm],skin [cm²]\nFin,300,310,-60,400\nBulb,180,330,-150,220");
    assertThat(form.in("cm³", "volume")).isCloseTo(5280, within(1e-6));
  }

  /**
   * Lead outside bears itself in part: m = n/(1 − ρw/ρ). Masses, lead and its buoyancy balance at
   * the wanted waterline, and the metacentric height is that found from the form itself.
   */
  @Test
  void leadBelowTheHullIsBorneInPartByTheWater() throws Exception {
    String masses = "item,mass [g],x [mm],z [mm]\nHull,2000,290,60\nGear,800,330,70";
    Given balance =
        Given.the("balance")
            .table("masses", masses)
            .quantity("displacement", "4800 g")
            .quantity("lcb", "300 mm")
            .quantity("vcb", "25 mm")
            .quantity("bm", "42.6666666667 mm")
            .quantity("ballast_z", "-150 mm")
            .quantity("ballast_density", "11.34 g/cm³")
            .quantity("water_density", "1 g/cm³")
            .word("ballast_lies", "outside");
    double mass = 2000 / (1 - 1 / 11.34);
    double volume = mass / 11.34;
    double x = (4800 * 300 - 2000 * 290 - 800 * 330) / 2000.0;
    assertThat(balance.in("g", "ballast_net")).isCloseTo(2000, within(1e-9));
    assertThat(balance.in("g", "ballast")).isCloseTo(mass, within(1e-9));
    assertThat(balance.in("cm³", "ballast_volume")).isCloseTo(volume, within(1e-9));
    assertThat(balance.in("mm", "ballast_at")).isCloseTo(x, within(1e-9));
    String ballast = String.format(Locale.ROOT, "\nLead,%.9f,%.9f,-150", mass, x);
    Given afloat =
        Given.the("afloat")
            .table("offsets", BOX)
            .table("masses", masses + ballast)
            .table(
                "appendages",
                String.format(Locale.ROOT, "volume [cm³],x [mm],z [mm]\n%.9f,%.9f,-150", volume, x))
            .quantity("density", "1 g/cm³");
    assertThat(afloat.in("mm", "draught_aft")).isCloseTo(50, within(1e-5));
    assertThat(afloat.in("mm", "draught_fore")).isCloseTo(50, within(1e-5));
    assertThat(balance.in("mm", "gm")).isCloseTo(afloat.in("mm", "gm"), within(0.01));
  }

  /** Half-breadths of a Wigley hull of 1.2 × 0.2 m, 0.13 m deep, flared on above its keel. */
  private static String wigley(int stations, int heights) {
    StringBuilder csv = new StringBuilder("station,x [m],keel [m]");
    for (int k = 0; k < heights; k++) {
      csv.append(
          String.format(Locale.ROOT, ",WL %.12f half-breadth [m]", 0.13 * k / (heights - 1)));
    }
    for (int i = 0; i < stations; i++) {
      double u = 2.0 * i / (stations - 1) - 1;
      csv.append(String.format(Locale.ROOT, "\n%d,%.12f,0", i, 0.6 * (u + 1)));
      for (int k = 0; k < heights; k++) {
        double z = (double) k / (heights - 1);
        double half = 0.1 * (1 - u * u) * Math.sqrt(z) * (0.6 + 0.4 * z);
        csv.append(String.format(Locale.ROOT, ",%.12f", half));
      }
    }
    return csv.toString();
  }

  private static Given lying(int stations, int heights) {
    return Given.the("afloat")
        .table("offsets", wigley(stations, heights))
        .table("masses", "mass [kg],x [m],y [m],z [m]\n5,0.61,0.002,0.06");
  }

  /**
   * What fine offsets give lies within the estimate of error that coarse ones tell: for draughts,
   * trim, heel, metacentric height and arms up to 30° always, and beyond, where deck and bilge
   * cross the water between two stations, nine times in ten. No estimate is a bound.
   */
  @Test
  void eachFigureAfloatTellsHowFarItMayBeOut() throws Exception {
    Given fine = lying(21, 11);
    int beyond = 0;
    int within = 0;
    for (int stations = 5; stations <= 9; stations++) {
      for (Yield yield : lying(stations, 5).yields()) {
        double truth = fine.quantityOf(yield.name()).value().doubleValue();
        double found = yield.value().value().doubleValue();
        var tolerance = yield.value().tolerance();
        // Where none is told, it lies below half of the last of four digits.
        double said = tolerance == null ? 5e-4 * Math.abs(found) + 1e-9 : tolerance.doubleValue();
        boolean holds = Math.abs(found - truth) <= 1.001 * said;
        if (yield.name().matches("gz_[4-9]0|range")) {
          beyond++;
          within += holds ? 1 : 0;
        } else {
          assertThat(holds).as("%s of %d stations", yield.name(), stations).isTrue();
        }
      }
    }
    assertThat(within).isGreaterThanOrEqualTo(beyond * 9 / 10);
    assertThat(lying(5, 5).quantityOf("gm").tolerance()).isNotNull();
  }

  @Test // widths 400, 420 and 0 by a parabola: centre at L × 2 SMG/(SF + 4 SMG)
  void theCentreOfASpinnakerIsThatOfItsWidths() throws Exception {
    Given sail =
        Given.the("sail")
            .word("shape", "spinnaker")
            .quantity("luff", "900 mm")
            .quantity("leech", "900 mm")
            .quantity("foot", "400 mm")
            .quantity("half", "420 mm")
            .quantity("tack_x", "900 mm")
            .quantity("tack_z", "120 mm");
    double area = 0;
    double moment = 0;
    int n = 100_000;
    for (int i = 0; i < n; i++) {
      double z = (i + 0.5) / n;
      // The parabola through 400 at 0, 420 at one half and 0 at 1.
      double w = 400 * (1 - z) * (1 - 2 * z) + 420 * 4 * z * (1 - z);
      area += w * 900.0 / n;
      moment += w * z * 900 * 900.0 / n;
    }
    assertThat(sail.in("mm²", "area")).isCloseTo(area, within(0.1));
    assertThat(sail.in("mm", "ce_z")).isCloseTo(moment / area, within(1e-3));
    assertThat(sail.in("mm", "ce_x")).isCloseTo(200, within(1e-9));
    assertThat(sail.in("mm", "x")).isCloseTo(700, within(1e-9));
    assertThat(sail.in("mm", "z")).isCloseTo(120 + moment / area, within(1e-3));
  }

  @Test // 143 mm of girth, 30 mm between battens: 5 spaces, 4 battens; 7 strips meet in the fourth
  void plankingIsLinedOffAndLaidInItsOrder() throws Exception {
    Given planks =
        Given.the("planking")
            .table("girths", "station,x [mm],girth [mm]\na,0,100\nb,350,140\nc,700,90")
            .quantity("strip_width", "20 mm")
            .quantity("strip_thickness", "2 mm")
            .quantity("lap", "4 mm")
            .quantity("batten_spacing", "30 mm")
            .word("order", "both");
    assertThat(planks.number("strips")).isEqualTo(7);
    assertThat(planks.number("battens")).isEqualTo(4);
    assertThat(planks.in("mm", "batten_mark_a")).isCloseTo(20, within(1e-9));
    assertThat(planks.in("mm", "batten_mark_b")).isCloseTo(28, within(1e-9));
    assertThat(planks.in("m", "batten_length")).isCloseTo(2 * 4 * 0.7, within(1e-9));
    int[] turns = {1, 3, 5, 7, 6, 4, 2};
    for (int strip = 1; strip <= 7; strip++) {
      assertThat(planks.number("laid_" + strip)).as("strip %d", strip).isEqualTo(turns[strip - 1]);
    }
    assertThat(planks.number("shutter")).isEqualTo(4);
    assertThat(planks.in("mm", "plank_width")).isCloseTo(24, within(1e-9));
    assertThat(planks.in("mm", "gain_length")).isCloseTo(24, within(1e-9));
    assertThat(planks.in("mm", "gain_depth")).isCloseTo(1, within(1e-9));
    assertThat(planks.in("mm", "gain_depth_50")).isCloseTo(0.5, within(1e-9));
  }
}

package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Equilibrium and righting arms of a box, whose closed forms are exact. */
class AsSheFloatsTest {

  /** 600 × 160 mm, 120 mm deep; of 5 stations. */
  private static Given box(String masses) {
    StringBuilder offsets =
        new StringBuilder(
            "x [mm],keel [mm],keel half-breadth [mm],WL 60 half-breadth [mm],WL 120 half-breadth [mm]\n");
    for (int i = 0; i <= 4; i++) {
      offsets.append(i * 150).append(",0,80,80,80\n");
    }
    return Given.the("afloat")
        .table("offsets", offsets.toString())
        .table("masses", masses)
        .quantity("density", "1 g/cm³");
  }

  private static Given upright() {
    return box("mass [g],x [mm],z [mm]\n4800,300,45");
  }

  @Test // 4800 g over 960 cm²: 50 mm; KB 25, BM b²/12T = 42.667, KG 45: GM 22.667 mm
  void aBoxFloatsAtItsMassOverItsArea() throws Exception {
    assertThat(upright().in("mm", "draught_aft")).isCloseTo(50, within(1e-6));
    assertThat(upright().in("mm", "draught_fore")).isCloseTo(50, within(1e-6));
    assertThat(upright().in("mm", "freeboard")).isCloseTo(70, within(1e-6));
    assertThat(upright().in("mm", "sinkage")).isCloseTo(10 / 960.0 * 10, within(1e-6));
    assertThat(upright().in("mm", "gm")).isCloseTo(22.6667, within(0.01));
  }

  /** Upright sides: GZ = (GM + ½ BM tan² φ) sin φ, exact while neither deck nor bilge crosses. */
  @Test
  void theArmOfABoxIsThatForUprightSides() throws Exception {
    for (int angle : new int[] {10, 20, 30}) {
      double phi = Math.toRadians(angle);
      double gz = (22.66667 + 42.66667 / 2 * Math.pow(Math.tan(phi), 2)) * Math.sin(phi);
      assertThat(upright().in("mm", "gz_" + angle)).isCloseTo(gz, within(1e-3));
    }
  }

  /** On its side the box is one of 120 mm breadth: GZ = −(KG − ½ depth) = 15 mm at 90°. */
  @Test
  void onItsSideTheArmIsThatOfTheTurnedBox() throws Exception {
    assertThat(upright().in("mm", "gz_90")).isCloseTo(15, within(1e-3));
  }

  /** Longitudinal shift: trim exact, tan θ = x (GML = KB + L²/12T (1 + ½ tan² θ) − KG, about). */
  @Test
  void aBoxTrimsByItsLongitudinalMetacentre() throws Exception {
    Given box = box("mass [g],x [mm],z [mm]\n4800,306,45");
    double bml = 600.0 * 600 / 12 / 50;
    double tan = 6 / (25 + bml - 45);
    for (int i = 0; i < 20; i++) {
      // Upright ends: (xB − L/2) = BML tan θ, (zB − KB) = ½ BML tan² θ.
      tan = 6 / (bml + 25 + bml * tan * tan / 2 - 45);
    }
    assertThat(box.in("mm", "trim")).isCloseTo(600 * tan, within(1e-4));
  }

  @Test // heel where (GM + ½ BM tan² φ) tan φ = y
  void aMassOffTheMiddleHeelsHer() throws Exception {
    Given box = box("mass [g],x [mm],y [mm],z [mm]\n4800,300,4,45");
    double tan = 4 / 22.6667;
    for (int i = 0; i < 100; i++) {
      tan = 4 / (22.66667 + 42.66667 / 2 * tan * tan);
    }
    assertThat(box.in("deg", "heel")).isCloseTo(Math.toDegrees(Math.atan(tan)), within(1e-3));
  }

  @Test // a solid of 480 cm³ under water carries 480 g: the box rises by 5 mm
  void aSolidUnderWaterCarriesItsShare() throws Exception {
    Given box = upright().table("appendages", "volume [cm³],x [mm],z [mm]\n480,300,-30");
    assertThat(box.in("mm", "draught_aft")).isCloseTo(45, within(1e-6));
  }

  @Test
  void whatIsTooHeavyIsRefused() {
    assertThatThrownBy(() -> box("mass [g],x [mm],z [mm]\n14800,300,45").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("weighs more than the hull displaces");
  }

  /** The demo's hull: at rest it lies where hull-form says that it displaces its mass. */
  @Test
  void theDemoHullLiesAtTheDraughtOfItsMass() throws Exception {
    Given form =
        Given.the("hull-form")
            .table("offsets", Given.resource("offsets.csv"))
            .quantity("draught", "52 mm");
    double lcb = form.in("mm", "lcb");
    double gm = form.in("mm", "vcb") + form.in("mm", "bm") - 47;
    Given she =
        Given.the("afloat")
            .table("offsets", Given.resource("offsets.csv"))
            .table(
                "masses",
                "mass [g],x [mm],z [mm]\n" + form.in("g", "displacement") + "," + lcb + ",47");
    assertThat(she.in("mm", "draught_aft")).isCloseTo(52, within(0.15));
    assertThat(she.in("mm", "trim")).isCloseTo(0, within(0.3));
    assertThat(she.in("mm", "gm") / gm).isCloseTo(1, within(0.01));
  }
}

package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BalanceTest {

  private static Given balance(String csv) {
    return Given.the("balance").table("masses", csv);
  }

  @Test // M01, M02, M15: OpenStax Calculus vol. 2 section 2.6 (module m53649)
  void centresComeOutAsPrinted() throws Exception {
    assertThat(balance("mass [kg],x [m]\n30,-2\n5,3\n10,6\n15,-3").in("m", "lcg"))
        .isCloseTo(-0.5, within(1e-12));
    Given plate = balance("mass [kg],x [m],z [m]\n2,-1,3\n6,1,1\n4,2,-2");
    assertThat(plate.in("m", "lcg")).isCloseTo(1, within(1e-12));
    assertThat(plate.in("m", "vcg")).isCloseTo(1.0 / 3, within(1e-12));
    Given checkpoint = balance("mass [kg],x [m],z [m]\n5,-2,-3\n3,2,3\n2,-3,-2");
    assertThat(checkpoint.in("m", "lcg")).isCloseTo(-1, within(1e-12));
    assertThat(checkpoint.in("m", "vcg")).isCloseTo(-1, within(1e-12));
  }

  @Test // M03: arithmetic
  void ballastAtTheSternMovesTheCentre() throws Exception {
    assertThat(balance("mass [g],x [mm]\n820,410\n180,500\n250,300").in("mm", "lcg"))
        .isCloseTo(400.96, within(1e-6));
  }

  @Test // M04: FAA-H-8083-1 Aircraft Weight and Balance Handbook, permanent ballast (7.7 lb)
  void permanentBallastBringsTheCentreToItsLimit() throws Exception {
    Given aircraft =
        balance("mass [lb],x [in]\n1876,32.2")
            .quantity("target", "33.0 in")
            .quantity("ballast_x", "228 in");
    assertThat(aircraft.in("lb", "ballast_to_target")).isCloseTo(7.69641025641026, within(0.01));
  }

  @Test // M05: Derrett and Barrass, Ship Stability for Masters and Mates, 5th ed. (1999) p. 117
  void momentsToPortAndStarboardLeaveAnArm() throws Exception {
    Given ship =
        balance("mass [t],x [m],y [m]\n4250,0,0.5011764705882353\n4250,0,-0.4305882352941176");
    assertThat(ship.in("m", "tcg")).isCloseTo(0.0352941176470588, within(5e-4));
  }

  private static Given examinedBox() {
    return balance("mass [t],x [m],z [m]\n3198,32.5,4")
        .quantity("vcb", "2 m")
        .quantity("bm", "3 m");
  }

  @Test // M06, M07: examination worked solution "Naval numerical 28" (its moment, 278.9, rounds
  // early)
  void aBoxStandsUpAsExamined() throws Exception {
    assertThat(examinedBox().in("m", "gm")).isCloseTo(1, within(1e-12));
    assertThat(examinedBox().quantity("heel", "5 deg").in("t·m", "righting"))
        .isCloseTo(278.724065307011, within(0.01));
  }

  @Test // M08: the same, wall-sided formula at 25°
  void aBoxRightsItselfAsExamined() throws Exception {
    assertThat(examinedBox().quantity("heel", "25 deg").in("m", "gz"))
        .isCloseTo(0.560461229306653, within(1e-4));
  }

  @Test // M09: hydraulics exercise page, KB and BM from hull-form (see HullFormTest)
  void aBargeInFeetHasItsMetacentricHeight() throws Exception {
    Given barge =
        balance("mass [lb],x [ft],z [ft]\n500000,50,4")
            .quantity("vcb", "1.33547008547009 ft")
            .quantity("bm", "28.08 ft");
    assertThat(barge.in("ft", "gm")).isCloseTo(25.4154700854701, within(0.001));
  }

  @Test // M12: density of lead 11.34 g/cm³, a handbook value from memory
  void leadTakesItsVolume() throws Exception {
    Given model =
        balance("mass [kg],x [mm]\n9.2,600")
            .quantity("displacement", "15.346 kg")
            .quantity("ballast_density", "11.34 g/cm³");
    assertThat(model.in("kg", "ballast")).isCloseTo(6.146, within(1e-12));
    assertThat(model.in("cm³", "ballast_volume")).isCloseTo(541.975308641975, within(0.01));
  }

  @Test // M13: closed form, box of 60 × 10 × 3 m, BML = L²/(12T), KG 2 m
  void aBoxTakesItsMomentToChangeTrim() throws Exception {
    Given box =
        balance("mass [t],x [m],z [m]\n1845,30,2")
            .quantity("displacement", "1845 t")
            .quantity("vcb", "1.5 m")
            .quantity("bml", "100 m")
            .quantity("lwl", "60 m");
    assertThat(box.in("t·m", "mct")).isCloseTo(30.59625, within(1e-6));
  }

  @Test // arithmetic: trim = moment / MCT, shared about the waterplane's centre
  void trimIsSharedAboutTheCentreOfTheWaterplane() throws Exception {
    Given box =
        balance("mass [t],x [m],z [m]\n1845,30.5,2")
            .quantity("displacement", "1845 t")
            .quantity("lcb", "30 m")
            .quantity("lcf", "24 m")
            .quantity("vcb", "1.5 m")
            .quantity("bml", "100 m")
            .quantity("lwl", "60 m");
    double trim = 1845 * 0.5 / 30.59625;
    assertThat(box.in("cm", "trim")).isCloseTo(trim, within(1e-6));
    assertThat(box.in("cm", "trim_fore")).isCloseTo(trim * 0.6, within(1e-6));
    assertThat(box.in("cm", "trim_aft")).isCloseTo(-trim * 0.4, within(1e-6));
  }

  @Test // arithmetic: the ballast found is put aboard, and the centre is over that of buoyancy
  void ballastPutWhereItIsToldBringsTheCentreHome() throws Exception {
    Given model =
        balance("mass [g],x [mm]\n412,330\n900,280")
            .quantity("displacement", "2377 g")
            .quantity("lcb", "307.5 mm")
            .quantity("immersion", "85.52 g/mm");
    double ballast = model.in("g", "ballast");
    double at = model.in("mm", "ballast_at");
    Given aboard = balance("mass [g],x [mm]\n412,330\n900,280\n" + ballast + "," + at);
    assertThat(aboard.in("g", "mass")).isCloseTo(2377, within(1e-9));
    assertThat(aboard.in("mm", "lcg")).isCloseTo(307.5, within(1e-9));
    assertThat(model.in("mm", "sinkage")).isCloseTo(-1065 / 85.52, within(1e-9));
  }

  @Test
  void theOrderOfItemsAndSplittingThemChangeNothing() throws Exception {
    List<String> rows =
        new ArrayList<>(List.of("412,330,60", "900,280,20", "35.5,610,140", "120,95,33"));
    String head = "mass [g],x [mm],z [mm]\n";
    double lcg = balance(head + String.join("\n", rows)).in("mm", "lcg");
    Collections.shuffle(rows, new Random(16));
    rows.remove("900,280,20");
    rows.add("400,280,20");
    rows.add("500,280,20");
    assertThat(balance(head + String.join("\n", rows)).in("mm", "lcg"))
        .isCloseTo(lcg, within(1e-9));
  }

  @Test
  void noMassAtAllIsRefused() {
    assertThatThrownBy(() -> balance("mass [g],x [mm]\n0,330").yields())
        .isInstanceOfSatisfying(
            TradeException.class, e -> assertThat(e.what()).contains("together are zero"));
  }

  @Test // arithmetic on a straight line: 400 g and 20 g for each 1 %
  void growthIsFollowedToTheEnd() throws Exception {
    Given growth =
        Given.the("mass-growth")
            .table("weighings", "done [%],mass [g]\n10,600\n25,900\n50,1400")
            .quantity("budget", "2.3 kg");
    assertThat(growth.in("g", "forecast")).isCloseTo(2400, within(1e-9));
    assertThat(growth.in("g", "margin")).isCloseTo(-100, within(1e-9));
  }
}

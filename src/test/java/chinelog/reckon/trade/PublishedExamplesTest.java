package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Worked examples as they are printed, to half of the last digit that is printed there. Where the
 * source rounds on its way, the bound says so.
 */
class PublishedExamplesTest {

  private static Given standing(String mass, String height) {
    return Given.the("balance").table("masses", "mass [t],x [m],z [m]\n" + mass + ",0," + height);
  }

  // Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition (1999), page 130,
  // example 1: GZ 0.35 m and 2,100 t m, the moment being worked out from the rounded arm.
  @Test
  void theRightingMomentAtTwentyFiveDegrees() throws Exception {
    Given ship =
        standing("6000", "5.5")
            .quantity("vcb", "3 m")
            .quantity("bm", "3 m")
            .quantity("heel", "25 deg");
    assertThat(ship.in("m", "gm")).isCloseTo(0.5, within(1e-9));
    assertThat(ship.in("m", "gz")).isCloseTo(0.35, within(0.005));
    assertThat(ship.in("t·m", "righting_by_arm")).isCloseTo(2100, within(0.005 * 6000));
  }

  // The same page, example 2: box of 65 by 12 by 4 m draught, KG 4 m; 278.9 t m at 5°, the sine
  // rounded to 0.0872.
  @Test
  void theRightingMomentOfABoxAtFiveDegrees() throws Exception {
    Given box =
        standing("3198", "4")
            .quantity("vcb", "2 m")
            .quantity("bm", "3 m")
            .quantity("heel", "5 deg");
    assertThat(box.in("t·m", "righting")).isCloseTo(278.9, within(0.00005 * 3198 + 0.05));
  }

  // Nicholls's Seamanship and Nautical Knowledge, page 527: KM 16 ft, KG 13.8 ft, 6,000 tons, 8°:
  // GZ 0.306 ft, 1,836 foot-tons, from the rounded arm.
  @Test
  void theRightingMomentAtEightDegreesInFeet() throws Exception {
    Given ship =
        Given.the("balance")
            .table("masses", "mass [long ton],x [ft],z [ft]\n6000,0,13.8")
            .quantity("vcb", "10 ft")
            .quantity("bm", "6 ft")
            .quantity("heel", "8 deg");
    assertThat(ship.in("ft", "gm") * Math.sin(Math.toRadians(8))).isCloseTo(0.306, within(5e-4));
    assertThat(ship.in("long ton·ft", "righting")).isCloseTo(1836, within(0.0005 * 6000));
  }

  // A marine engineer's examination question, as printed with its answer: pitch 3.8 m, 87 rpm,
  // 10 kn over the ground, slip +6.6 % (funnel2tunnel.com, "What is slip").
  @Test
  void theSlipOfAScrew() throws Exception {
    Given screw =
        Given.the("motor")
            .quantity("turns", "87 rpm")
            .quantity("pitch", "3.8 m")
            .quantity("speed", "10 kn");
    assertThat(screw.in("%", "slip")).isCloseTo(6.6, within(0.05));
    assertThat(screw.in("nmi/h", "pitch_speed") * 24).isCloseTo(257.054, within(5e-4));
  }

  // White, Fluid Mechanics, the exercise of a boat of 30 m at 9 m/s and a model of 0.5 m (number
  // from memory), with the answers as printed on pages of solutions: 1.16 m/s, and a share of the
  // power of √15/6,480,000.
  @Test
  void speedAndPowerOfAModelByFroudesLaw() throws Exception {
    Given model =
        Given.the("motor")
            .quantity("full_speed", "9 m/s")
            .quantity("full_power", "1000 kW")
            .quantity("scale", "60");
    assertThat(model.in("m/s", "scale_speed")).isCloseTo(1.16, within(0.005));
    assertThat(model.in("kW", "scale_power") / 1000)
        .isCloseTo(Math.sqrt(15) / 6_480_000, within(1e-13));
  }

  // A published exercise: EV 30,000, PV 40,000, AC 45,000, BAC 50,000; EAC 75,000 at the present
  // rate and 85,000 by both indices (justaaa.com, question 495270). Hours stand for the money.
  @Test
  void theForecastOfABuildInArrears() throws Exception {
    Given build =
        Given.the("earned-value")
            .table(
                "stages", "stage,planned [h],due [%],done [%],worked [h]\nAll,50000,80,60,45000");
    assertThat(build.in("h", "earned")).isCloseTo(30000, within(1e-6));
    assertThat(build.in("h", "due")).isCloseTo(40000, within(1e-6));
    assertThat(build.number("cost_index")).isCloseTo(0.667, within(5e-4));
    assertThat(build.number("schedule_index")).isCloseTo(0.75, within(1e-9));
    assertThat(build.in("h", "forecast")).isCloseTo(75000, within(1e-6));
    assertThat(build.in("h", "forecast_by_both")).isCloseTo(85000, within(1e-6));
  }

  // A reply on a public forum of wooden boats, 18 November 2005: luff 12 ft, leech 17 ft, foot
  // 9 ft, gaff 7 ft 8 in, the boom at 85° to the mast: 108.5 sq ft.
  @Test
  void theAreaOfAGaffSail() throws Exception {
    double diagonal = Math.sqrt(144 + 81 - 2 * 12 * 9 * Math.cos(Math.toRadians(85)));
    Given sail =
        Given.the("sail")
            .word("shape", "gaff")
            .quantity("luff", "12 ft")
            .quantity("foot", "9 ft")
            .quantity("leech", "17 ft")
            .quantity("head", "92 in")
            .quantity("diagonal", String.format(Locale.ROOT, "%.9f ft", diagonal));
    assertThat(sail.in("ft²", "area")).isCloseTo(108.5, within(0.05));
  }

  // A sheet of carbon weighed: 4.24 g of cloth in 6.29 g, epoxy of 1.1 and fibre of 1.78 g/cm³,
  // fibre's share of the volume 0.56 (avdweb.nl, "Composites theory"; its 1.6 is 1.78/1.1 rounded).
  @Test
  void theFibreVolumeOfACarbonSheet() throws Exception {
    Given sheet =
        Given.the("laminate")
            .quantity("area", "50 cm²")
            .quantity("cloth", "212 g/m²")
            .quantity("layers", "4")
            .quantity("fraction", "0.674085850556")
            .quantity("fibre_density", "1.78 g/cm³")
            .quantity("resin_density", "1.1 g/cm³");
    assertThat(sheet.in("g", "fibre_mass")).isCloseTo(4.24, within(0.005));
    assertThat(sheet.in("g", "resin_mass")).isCloseTo(2.05, within(0.005));
    assertThat(sheet.number("fibre_volume")).isCloseTo(0.56, within(0.005));
  }

  // USDA Wood Handbook, FPL-GTR-190 (2010), table 4-3.
  @ParameterizedTest
  @CsvSource({
    "alaska-yellow-cedar,2.8,6.0,9.2",
    "basswood,6.6,9.3,15.8",
    "black-cherry,3.7,7.1,11.5",
    "black-walnut,5.5,7.8,12.8",
    "douglas-fir,4.8,7.6,12.4",
    "port-orford-cedar,4.6,6.9,10.1",
    "western-redcedar,2.4,5.0,6.8",
    "white-ash,4.9,7.8,13.3",
    "white-oak,5.6,10.5,16.3",
    "yellow-birch,7.3,9.5,16.8",
    "yellow-poplar,4.6,8.2,12.7",
  })
  void theShrinkageOfWoods(String wood, double radial, double tangential, double volumetric)
      throws Exception {
    Given given = Given.the("material").word("name", wood);
    assertThat(given.in("%", "shrinkage_radial")).isEqualTo(radial);
    assertThat(given.in("%", "shrinkage_tangential")).isEqualTo(tangential);
    assertThat(given.in("%", "shrinkage_volumetric")).isEqualTo(volumetric);
  }

  // Dooley, Applied Science for Metal Workers (1919), chapter XXXI, § 426, in 32nds of an inch to
  // the foot.
  @ParameterizedTest
  @CsvSource({
    "cast-iron,3",
    "steel,6",
    "brass,6",
    "bronze,5",
    "aluminium,7",
    "zinc,7",
    "lead,7",
    "tin,6",
  })
  void theShrinkageOfCastings(String metal, int thirtySeconds) throws Exception {
    Given given = Given.the("material").word("name", metal);
    assertThat(given.number("casting_shrinkage"))
        .isCloseTo(thirtySeconds / 32.0 / 12, within(1e-12));
    assertThat(given.number("pattern_factor"))
        .isCloseTo(1 + thirtySeconds / 32.0 / 12, within(1e-12));
  }

  // The Wigley hull of the ITTC's cooperative experiments, L/B = 10, B/T = 1.6: wetted surface
  // 0.1487 L² (from memory); V = 4LBT/9, KB = 5T/8 and BM = 3B²/35T by integration.
  @Test
  void theWigleyHull() throws Exception {
    StringBuilder csv = new StringBuilder("station,x [m],keel [m]");
    for (int k = 0; k <= 8; k++) {
      csv.append(String.format(Locale.ROOT, ",WL %.9f half-breadth [m]", 0.0625 * k / 8));
    }
    for (int i = 0; i <= 20; i++) {
      double u = i / 10.0 - 1;
      csv.append(String.format(Locale.ROOT, "\n%d,%.9f,0", i, i / 20.0));
      for (int k = 0; k <= 8; k++) {
        double down = 1 - k / 8.0;
        csv.append(String.format(Locale.ROOT, ",%.9f", 0.05 * (1 - u * u) * (1 - down * down)));
      }
    }
    Given hull =
        Given.the("hull-form").table("offsets", csv.toString()).quantity("draught", "0.0625 m");
    assertThat(hull.in("m³", "volume")).isCloseTo(4 * 0.1 * 0.0625 / 9, within(2e-6));
    assertThat(hull.in("m", "vcb")).isCloseTo(5 * 0.0625 / 8, within(2e-5));
    assertThat(hull.in("m", "bm")).isCloseTo(3 * 0.01 / (35 * 0.0625), within(2e-5));
    assertThat(hull.in("m²", "wetted_skin")).isCloseTo(0.1487, within(0.0003));
    assertThat(hull.number("cb")).isCloseTo(4.0 / 9, within(3e-4));
  }
}

package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LaminateTest {

  private static Given laminate(String area, String cloth, String fraction) {
    return Given.the("laminate")
        .quantity("area", area)
        .quantity("cloth", cloth)
        .quantity("fraction", fraction);
  }

  @Test // L01, L02: thickness formula as in ISO 12215-5 annex C, identity with the two-density rule
  void thicknessIsThatOfTheScantlingRule() throws Exception {
    assertThat(laminate("1 m²", "300 g/m²", "0.30").in("mm", "thickness"))
        .isCloseTo(0.700520833333333, within(1e-6));
    assertThat(laminate("1 m²", "600 g/m²", "0.50").in("mm", "thickness"))
        .isCloseTo(0.734375, within(1e-9));
  }

  @Test // L03: university lecture notes "Fibre volume fraction and laminate thickness"
  void twoLayersOfMatAtTwoToOne() throws Exception {
    Given mat = laminate("1 m²", "450 g/m²", "0.333333333333333333333").quantity("layers", "2");
    assertThat(mat.in("mm", "thickness")).isCloseTo(1.8515625, within(1e-6));
  }

  @Test // L04: 6 oz/yd² by the exact factor
  void resinFollowsFromTheFibresShare() throws Exception {
    assertThat(laminate("1.8 m²", "6 oz/yd²", "45 %").in("g", "resin_mass"))
        .isCloseTo(447.55586666868, within(0.01));
  }

  @Test // L05, L06: rule of mixtures
  void sharesOfVolumeAndDensityFollowTheRuleOfMixtures() throws Exception {
    Given half = laminate("1 m²", "600 g/m²", "0.5");
    assertThat(half.number("fibre_volume")).isCloseTo(0.319148936170213, within(1e-6));
    assertThat(half.in("g/cm³", "density")).isCloseTo(1.63404255319149, within(1e-6));
  }

  @Test // L07: definition; 2 : 1 by volume, 1.15 and 0.95 g/cm³
  void aRatioByVolumeIsNotThatByMass() throws Exception {
    Given mix =
        laminate("1 m²", "600 g/m²", "0.5")
            .quantity("mix_resin", "2")
            .quantity("mix_hardener", "1")
            .word("mix_by", "volume")
            .quantity("liquid_resin_density", "1.15 g/cm³")
            .quantity("liquid_hardener_density", "0.95 g/cm³");
    assertThat(mix.number("hardener_per_100")).isCloseTo(41.304347826087, within(1e-4));
    assertThat(mix.in("mL", "mix_resin_volume"))
        .isCloseTo(2 * mix.in("mL", "mix_hardener_volume"), within(1e-9));
  }

  @Test // L08: definition; 150 g at 100 : 35 by mass
  void aBatchIsSplitByItsRatio() throws Exception {
    Given mix =
        laminate("1 m²", "150 g/m²", "0.5")
            .quantity("mix_resin", "100")
            .quantity("mix_hardener", "35");
    assertThat(mix.in("g", "mix_resin_mass")).isCloseTo(111.111111111111, within(1e-6));
    assertThat(mix.in("g", "mix_hardener_mass")).isCloseTo(38.8888888888889, within(1e-6));
  }

  @Test // L09: divide by 0.85, do not multiply by 1.15
  void wasteIsAShareOfWhatIsMixed() throws Exception {
    assertThat(
            laminate("1 m²", "363 g/m²", "0.5").quantity("waste", "15 %").in("g", "resin_to_mix"))
        .isCloseTo(427.058823529412, within(0.01));
  }

  @Test // L14: definition; 0.42 m², 2 layers of 163 g/m², ψ = 0.48
  void aSkinWeighsClothAndResin() throws Exception {
    assertThat(laminate("0.42 m²", "163 g/m²", "0.48").quantity("layers", "2").in("g", "mass"))
        .isCloseTo(285.25, within(0.01));
  }

  /** Common practice, no source: one layer outside, inside one above the waterline, three below. */
  @Test
  void zonesAddUp() throws Exception {
    Given zones =
        Given.the("laminate")
            .table(
                "zones",
                "zone,area [cm²],cloth [oz/yd²],layers\noutside,1870,6,1\ninside above,840,6,1\n"
                    + "inside below,1030,6,3")
            .quantity("fraction", "45 %");
    double layers = 0.1870 + 0.0840 + 3 * 0.1030;
    assertThat(zones.in("m²", "cloth_area")).isCloseTo(layers, within(1e-12));
    assertThat(zones.in("g", "fibre_mass")).isCloseTo(layers * 203.434484849294, within(1e-6));
    assertThat(zones.in("mm", "thickness_inside_below"))
        .isCloseTo(3 * zones.in("mm", "thickness_outside"), within(1e-9));
  }

  @Test // arithmetic: 20 min at 10 g/min is 200 g at most; 450 g in three of 150 g
  void batchesFitThePotLife() throws Exception {
    Given batches =
        laminate("1 m²", "450 g/m²", "0.5")
            .quantity("pot_life", "20 min")
            .quantity("pace", "10 g/min");
    assertThat(batches.number("batches")).isEqualTo(3);
    assertThat(batches.in("g", "batch")).isCloseTo(150, within(1e-9));
  }

  @Test
  void aMixRatioOfZeroIsRefused() {
    assertThatThrownBy(
            () ->
                laminate("1 m²", "150 g/m²", "0.5")
                    .quantity("mix_resin", "100")
                    .quantity("mix_hardener", "0")
                    .yields())
        .isInstanceOfSatisfying(
            TradeException.class, e -> assertThat(e.input()).isEqualTo("mix_hardener"));
  }

  @Test
  void aShareOfAllFibreIsRefused() {
    assertThatThrownBy(() -> laminate("1 m²", "150 g/m²", "100 %").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("share");
  }

  @Test // arithmetic; common practice, no source
  void paintGoesAsFarAsItsCoverage() throws Exception {
    Given paint =
        Given.the("coating")
            .quantity("area", "0.187 m²")
            .quantity("coats", "2")
            .quantity("coverage", "11 m²/L")
            .quantity("density", "1.2 g/cm³")
            .quantity("solids", "50 %");
    assertThat(paint.in("mL", "volume")).isCloseTo(34, within(1e-9));
    assertThat(paint.in("g", "wet_mass")).isCloseTo(40.8, within(1e-9));
    assertThat(paint.in("g", "mass")).isCloseTo(20.4, within(1e-9));
  }
}

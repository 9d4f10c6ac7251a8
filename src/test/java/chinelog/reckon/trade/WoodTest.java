package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** USDA Wood Handbook, FPL-GTR-190 (2010), chapters 4 and 13. */
class WoodTest {

  private static Given gravity(String gravity, String moisture) {
    return Given.the("wood").quantity("gravity", gravity).quantity("moisture", moisture);
  }

  @Test // W07, W08: University of Missouri forestry page quoting ch. 4 (448; 27.968 lb/ft³); W24
  void densityGrowsWithMoisture() throws Exception {
    assertThat(gravity("0.40", "12 %").in("kg/m³", "density")).isCloseTo(448, within(1e-9));
    // The page takes water as 62.43 lb/ft³.
    assertThat(gravity("0.40", "12 %").in("lb/ft³", "density")).isCloseTo(27.96864, within(0.001));
    assertThat(gravity("0.32", "10 %").in("kg/m³", "density")).isCloseTo(352, within(1e-9));
  }

  @Test // W09: formula of the US wood design code as quoted on a secondary page
  void theOvenDryBasisGivesAnotherDensity() throws Exception {
    assertThat(gravity("0.40", "12 %").word("basis", "oven-dry").in("lb/ft³", "density"))
        .isCloseTo(26.7975460122699, within(0.001));
  }

  @Test // W05: basswood tangential 9.3 % (table 4-3), to 12 %
  void shrinkageIsAShareOfTheWhole() throws Exception {
    Given basswood = Given.the("wood").quantity("shrinkage", "9.3 %").quantity("moisture", "12 %");
    assertThat(basswood.in("%", "shrinkage")).isCloseTo(5.58, within(1e-9));
  }

  @Test // W06: basswood, tangential coefficient 0.00330 (table 13-5), 50 mm from 8 to 12 %
  void aPieceMovesWithItsMoisture() throws Exception {
    Given basswood =
        Given.the("wood")
            .quantity("size", "50 mm")
            .quantity("coefficient", "0.00330")
            .quantity("moisture", "8 %")
            .quantity("moisture_after", "12 %");
    assertThat(basswood.in("mm", "movement")).isCloseTo(0.66, within(1e-9));
  }

  @Test
  void theCoefficientIsRefusedOutsideItsRange() {
    assertThatThrownBy(
            () ->
                Given.the("wood")
                    .quantity("size", "50 mm")
                    .quantity("coefficient", "0.0033")
                    .quantity("moisture", "8 %")
                    .quantity("moisture_after", "20 %")
                    .yields())
        .isInstanceOfSatisfying(
            TradeException.class, e -> assertThat(e.input()).isEqualTo("moisture_after"));
  }

  private static Given timber(String species) {
    return Given.the("material").word("name", species);
  }

  // W10 to W12: GNU Units 2.22 wood table (26, 9 and 37 lb/ft³, The Wood Database averages)
  @ParameterizedTest
  @CsvSource({
    "basswood, 416.480047722964",
    "balsa, 144.166170365641",
    "honduran-mahogany, 592.683144836525"
  })
  void averageDensitiesAreTheTables(String species, double density) throws Exception {
    assertThat(timber(species).in("kg/m³", "dried_density")).isCloseTo(density, within(0.01));
  }

  // W01, W02: table 4-3 (p. 4-6)
  @ParameterizedTest
  @CsvSource({"basswood, 6.6, 9.3, 15.8", "western-redcedar, 2.4, 5, 6.8"})
  void shrinkagesAreTheTables(String species, double radial, double tangential, double volumetric)
      throws Exception {
    assertThat(timber(species).in("%", "shrinkage_radial")).isEqualTo(radial);
    assertThat(timber(species).in("%", "shrinkage_tangential")).isEqualTo(tangential);
    assertThat(timber(species).in("%", "shrinkage_volumetric")).isEqualTo(volumetric);
  }

  // W15 to W17: Global Wood Density Database (Zanne et al. 2009), copy of 16468 records
  @ParameterizedTest
  @CsvSource({
    "balsa, 14, 0.1576, 0.1, 0.22",
    "obeche, 24, 0.3345, 0.28, 0.411",
    "spanish-cedar, 14, 0.4469, 0.34, 0.66"
  })
  void basicDensitiesAreTheDatabases(
      String species, int records, double mean, double least, double most) throws Exception {
    assertThat(timber(species).in("g/cm³", "basic_density_mean")).isCloseTo(mean, within(1e-4));
    assertThat(timber(species).in("g/cm³", "basic_density_least")).isCloseTo(least, within(1e-4));
    assertThat(timber(species).in("g/cm³", "basic_density_most")).isCloseTo(most, within(1e-4));
    assertThat(timber(species).methodOf("basic_density_mean")).contains(records + " records");
  }
}

package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TradeReckoningsTest {

  static List<String> names() {
    return TradeReckonings.names();
  }

  private static TradeReckoning get(String name) {
    return TradeReckonings.find(name).orElseThrow();
  }

  /** Everything that a form says of a reckoning's keys; values to be typed stay as they are. */
  @Test
  void theKeysOfReckoningsAreToldInEveryLanguage() {
    List<String> told = new ArrayList<>();
    for (String name : TradeReckonings.names()) {
      TradeReckoning reckoning = TradeReckonings.find(name).orElseThrow();
      told.add(reckoning.title());
      for (Parameter parameter : reckoning.parameters()) {
        told.add(parameter.title());
        if (parameter.fallback().matches(".*[a-z]{2,} [a-z]+.*")) {
          told.add(parameter.fallback());
        }
      }
    }
    for (String language : List.of("de", "nl", "fr", "es")) {
      Locale locale = Locale.forLanguageTag(language);
      assertThat(told.stream().filter(t -> Sentence.of(t).in(locale).equals(t)))
          .as(language)
          .isEmpty();
    }
  }

  @Test
  void namesAreDistinctAndInOrder() {
    assertThat(names()).isSorted().doesNotHaveDuplicates().contains("hull-form", "balance");
    assertThat(TradeReckonings.find("hull form")).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("names")
  void everyInputIsDescribedAndNamedOnce(String name) {
    TradeReckoning reckoning = get(name);
    assertThat(reckoning.title()).isNotBlank();
    assertThat(reckoning.parameters()).isNotEmpty();
    assertThat(reckoning.parameters()).extracting(Parameter::name).doesNotHaveDuplicates();
    assertThat(reckoning.parameters()).extracting(Parameter::title).noneMatch(String::isBlank);
  }

  @ParameterizedTest
  @MethodSource("names")
  void anInputThatIsNotTakenIsRefused(String name) {
    assertThatThrownBy(
            () -> get(name).reckon(new Inputs(Map.of(), Map.of(), Map.of("keelson", "oak"))))
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.input()).isEqualTo("keelson");
              assertThat(e.what()).contains("takes no \"keelson\"");
            });
  }

  @ParameterizedTest
  @MethodSource("names")
  void givingNothingIsRefusedInWordsOrDoneWithDefaults(String name) {
    try {
      assertThat(get(name).reckon(new Inputs(Map.of(), Map.of(), Map.of()))).isNotEmpty();
    } catch (TradeException e) {
      assertThat(e.what()).endsWith(".");
      assertThat(e.remedy()).endsWith(".");
      assertThat(e.input()).isNotEmpty();
    }
  }

  @Test
  void aWordThatIsNoChoiceIsRefused() {
    assertThatThrownBy(() -> Given.the("water").word("water", "salt").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("no word for");
  }

  @Test
  void unitsChangeNothing() throws Exception {
    Given metric =
        Given.the("laminate")
            .quantity("area", "1870 cm²")
            .quantity("cloth", "6 oz/yd²")
            .quantity("fraction", "45 %");
    Given inches =
        Given.the("laminate")
            .quantity("area", "0.187 m²")
            .quantity("cloth", "0.203434484849294 kg/m²")
            .quantity("fraction", "0.45");
    assertThat(metric.in("g", "mass")).isCloseTo(inches.in("g", "mass"), within(1e-9));
    Given sail =
        Given.the("sail")
            .quantity("luff", "50 in")
            .quantity("foot", "12 in")
            .quantity("leech", "51 in");
    Given same =
        Given.the("sail")
            .quantity("luff", "1270 mm")
            .quantity("foot", "304.8 mm")
            .quantity("leech", "1295.4 mm");
    assertThat(sail.in("in²", "area")).isCloseTo(same.in("in²", "area"), within(1e-9));
  }

  @Test // worst case of a product: 1 % of the area and 2 % of the fibre make 3 % of the cloth's
  // mass
  void tolerancesAddUpAtTheirWorst() throws Exception {
    var mass =
        Given.the("laminate")
            .quantity("area", "1 m² ± 0.01 m²")
            .quantity("cloth", "100 g/m² ± 2 g/m²")
            .quantity("fraction", "50 %")
            .quantityOf("fibre_mass");
    assertThat(Objects.requireNonNull(mass.tolerance()).doubleValue()).isCloseTo(3, within(1e-9));
  }
}

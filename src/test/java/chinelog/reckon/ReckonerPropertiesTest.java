package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What must hold whatever the figures are. */
class ReckonerPropertiesTest {

  private static final Random RANDOM = new Random(20260314);
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

  @Test
  void scaleThereAndBackIsIdentity() throws Exception {
    for (String unit : List.of("mm", "in", "cm²", "L", "g", "lb", "kn", "m/s")) {
      for (int i = 0; i < 30; i++) {
        Quantity start =
            Quantity.of(BigDecimal.valueOf(RANDOM.nextInt(1, 100000), 2), Unit.parse(unit));
        Quantity scale = Quantity.of(RANDOM.nextInt(2, 200), Unit.ONE);
        Quantity full = Similitude.findFullSize(start, scale).orElseThrow();
        Quantity back = Similitude.findModel(full, scale).orElseThrow();
        assertThat(back.valueIn(start.unit()).subtract(start.value()).abs())
            .isLessThan(start.value().movePointLeft(30));
      }
    }
  }

  @Test
  void doublingTheScaleMultipliesMassByEight() throws Exception {
    Quantity mass = Quantity.parse("412.5 g");
    Quantity once = Similitude.findFullSize(mass, Quantity.parse("16")).orElseThrow();
    Quantity twice = Similitude.findFullSize(mass, Quantity.parse("32")).orElseThrow();
    assertThat(twice).isEqualByComparingTo(once.times(Quantity.parse("8")));
  }

  @Test
  void theTotalMassDoesNotDependOnTheOrderOfWeighing() {
    List<Integer> parts = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      parts.add(i);
    }
    Quantity first = totalMass(parts);
    for (int round = 0; round < 10; round++) {
      Collections.shuffle(parts, RANDOM);
      assertThat(totalMass(parts)).isEqualByComparingTo(first);
    }
  }

  private static Quantity totalMass(List<Integer> parts) {
    LogFixture log = LogFixture.merrow();
    for (int i = 0; i < parts.size(); i++) {
      int part = parts.get(i);
      log.entry("e" + i, DAY.plusDays(i), "", e -> e.weighed("p" + part, part + ".37 g"));
    }
    return Reckoner.reckon(log.build()).facts().find("mass.total").orElseThrow().value();
  }

  @Test
  void anotherUnitChangesNothing() throws Exception {
    Quantity metric = x("11.20 m", "3.40 m", "2500 cm²");
    Quantity mixed = x("1120 cm", "3400 mm", "0.25 m²");
    assertThat(mixed.doubleIn(Unit.METRE.power(2)))
        .isCloseTo(metric.doubleIn(Unit.METRE.power(2)), within(1e-12));
  }

  private static Quantity x(String loa, String beam, String area) {
    Log log =
        LogFixture.merrow()
            .scale("16")
            .state("loa", loa)
            .state("beam", beam)
            .state("area", area)
            .state("x", "loa * beam / scale^2 + area / 3")
            .build();
    return Reckoner.reckon(log).facts().find("x").orElseThrow().value();
  }

  @Test
  void costIssuedAndCostLeftAreWhatWasPaid() {
    for (int round = 0; round < 30; round++) {
      LogFixture log = LogFixture.merrow();
      int bought = 0;
      for (int lot = 0; lot < 5; lot++) {
        int amount = RANDOM.nextInt(1, 50);
        bought += amount;
        log.lot("strip", "" + amount, RANDOM.nextInt(1, 9999) + ".37 GBP", DAY.plusDays(lot));
      }
      for (int use = 0; bought > 7; use++) {
        int amount = RANDOM.nextInt(1, 8);
        bought -= amount;
        log.entry("u" + use, DAY.plusDays(10 + use), "", e -> e.used("strip", "" + amount));
      }
      Facts facts = Reckoner.reckon(log.build()).facts();
      BigDecimal sum =
          facts
              .find("stock.strip.cost")
              .orElseThrow()
              .value()
              .value()
              .add(facts.find("stock.strip.worth").orElseThrow().value().value());
      assertThat(sum.subtract(facts.find("stock.strip.paid").orElseThrow().value().value()).abs())
          .isLessThan(new BigDecimal("1e-25"));
      assertThat(facts.find("cost.total").orElseThrow().value())
          .isEqualByComparingTo(facts.find("stock.strip.cost").orElseThrow().value());
    }
  }
}

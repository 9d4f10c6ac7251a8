package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.log.records.PricePlan.Driver;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.trade.PriceRequest.StageWork;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Expected figures by arithmetic, worked beside each; the log is invented. */
class PricingTest {

  private static Quantity q(String text) {
    try {
      return Quantity.parse(text);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(text, e);
    }
  }

  private static Unit gbp() {
    return q("1 GBP").unit();
  }

  private static StageWork stage(String title, String hours, String material, Driver driver) {
    return new StageWork(title, q(hours), q(material), driver, q("100 %"), q("100 %"), true);
  }

  private static PriceRequest request(List<StageWork> stages, String learning, int number) {
    return new PriceRequest(
        "A second Merrow, 900 mm",
        gbp(),
        stages,
        new TreeMap<>(Map.of(Driver.LENGTH, q("600 mm"), Driver.COUNT, q("20"))),
        new TreeMap<>(Map.of(Driver.LENGTH, q("0.9 m"), Driver.COUNT, q("30"))),
        q("34 GBP/h"),
        number,
        q(learning),
        q("10 %"),
        q("15 %"),
        q("20 %"),
        q("20 %"));
  }

  @Test
  void eachStageGoesByItsOwnDriver() throws Exception {
    Quotation quotation =
        Pricing.quote(
            request(
                List.of(
                    stage("Moulds", "6 h", "9 GBP", Driver.COUNT),
                    stage("Planking", "18 h", "21.60 GBP", Driver.LENGTH),
                    stage("Fairing", "8 h", "5 GBP", Driver.AREA),
                    stage("Drawings", "3 h", "0 GBP", Driver.FIXED)),
                "100 %",
                2));
    assertThat(quotation.lines())
        .extracting(l -> l.hours().value().doubleValue())
        .containsExactly(9.0, 27.0, 18.0, 3.0);
    // 57 h at 34; 13.50 + 32.40 + 11.25 over 0.9 is 15.00 + 36.00 + 12.50.
    assertThat(quotation.labour()).isEqualTo(q("1938 GBP"));
    assertThat(quotation.material()).isEqualTo(q("63.50 GBP"));
    // 15 % of 2001.50 is 300.225, so 300.23; 2301.73 over 0.8 is 2877.1625, so 2877.16.
    assertThat(quotation.overhead()).isEqualTo(q("300.23 GBP"));
    assertThat(quotation.net()).isEqualTo(q("2877.16 GBP"));
    assertThat(quotation.margin()).isEqualTo(q("575.43 GBP"));
    assertThat(quotation.tax()).isEqualTo(q("575.43 GBP"));
    assertThat(quotation.total()).isEqualTo(q("3452.59 GBP"));
    assertThat(quotation.low()).isEqualTo(quotation.total());
    assertThat(quotation.restsOn())
        .anyMatch(s -> s.contains("length was 600 mm and will be 0.9 m"))
        .anyMatch(s -> s.contains("square of the length") && s.contains("2.25 times"));
    assertThat(quotation.lines().get(1).basis()).isEqualTo("18 h × 1.5 by length");
  }

  @Test // T22: Crawford at 80 %, the fourth takes 64 of 100
  void whatWasLearntGoesFaster() throws Exception {
    Quotation quotation =
        Pricing.quote(request(List.of(stage("Rig", "100 h", "0 GBP", Driver.FIXED)), "80 %", 4));
    assertThat(quotation.hours().value().doubleValue()).isCloseTo(64, within(1e-9));
    assertThat(quotation.lines().get(0).basis()).isEqualTo("100 h × 0.64 learnt");
  }

  @Test // T14: O = 5, M = 8, P = 14 give 8.5 and 1.5
  void threePointsWidenThePrice() throws Exception {
    StageWork stage =
        new StageWork("Rig", q("8 h"), null, Driver.FIXED, q("62.5 %"), q("175 %"), false);
    Quotation quotation = Pricing.quote(request(List.of(stage), "80 %", 4));
    assertThat(quotation.hours().value().doubleValue()).isCloseTo(8.5, within(1e-12));
    assertThat(quotation.spread().value().doubleValue()).isCloseTo(1.5, within(1e-12));
    // Two σ are 3 h, 102 GBP: 187 and 391 GBP of labour, times 1.15 / 0.8 × 1.2.
    assertThat(quotation.low().value().doubleValue()).isCloseTo(187 * 1.725, within(0.02));
    assertThat(quotation.high().value().doubleValue()).isCloseTo(391 * 1.725, within(0.02));
  }

  @Test
  void theOrderOfStagesChangesNoSum() throws Exception {
    StageWork a = stage("A", "7.3 h", "3.33 GBP", Driver.LENGTH);
    StageWork b = stage("B", "1.1 h", "7.77 GBP", Driver.AREA);
    assertThat(Pricing.quote(request(List.of(a, b), "90 %", 2)).total())
        .isEqualTo(Pricing.quote(request(List.of(b, a), "90 %", 2)).total());
  }

  private static void refuses(List<StageWork> stages, String what) {
    assertThatThrownBy(() -> Pricing.quote(request(stages, "90 %", 2)))
        .isInstanceOf(TradeException.class)
        .hasMessageContaining(what);
  }

  @Test
  void whatCannotBePricedIsRefused() {
    refuses(List.of(), "no stages");
    refuses(List.of(stage("Rig", "8 h", "3 EUR", Driver.FIXED)), "EUR");
    refuses(List.of(stage("Rig", "8 m", "3 GBP", Driver.FIXED)), "not in h");
    StageWork upsideDown =
        new StageWork("Rig", q("8 h"), null, Driver.FIXED, q("120 %"), q("150 %"), false);
    refuses(List.of(upsideDown), "do not lie about");
  }
}

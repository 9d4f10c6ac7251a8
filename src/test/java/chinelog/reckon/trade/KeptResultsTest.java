package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.junit.jupiter.api.Test;

/** What was kept of a reckoning spares its work, and for the very same inputs alone. */
class KeptResultsTest {

  private static final List<Parameter> LENGTH =
      List.of(Parameter.quantity("length", "A length", Unit.MILLIMETRE));

  private static TradeReckoning twice() {
    return new TradeReckoning(
        "twice",
        "Twice as long",
        LENGTH,
        in -> {
          Quantity twice = in.quantity("length").times(Quantity.of(2, Unit.ONE).value());
          List<Message> method = List.of(Message.of("scale", in.quantity("length")));
          return List.of(new Yield("all", Message.of("scale"), twice, method, List.of(), null));
        });
  }

  private static TradeReckoning idle(String name) {
    return new TradeReckoning(
        name,
        "Never done",
        LENGTH,
        in -> {
          throw new TradeException("length", "It was worked out anew.", "");
        });
  }

  private static Inputs length(String text) throws Exception {
    return new Inputs(Map.of("length", Quantity.parse(text)), Map.of(), Map.of());
  }

  private static SortedMap<String, byte[]> kept(Inputs inputs) throws Exception {
    KeptResults results = KeptResults.of(Map.of());
    TradeReckoning reckoning = twice();
    String digest = results.recall(reckoning, inputs);
    List<Yield> yields = reckoning.reckon(inputs);
    results.keep(digest, yields, reckoning.draw(inputs), reckoning.sketch(inputs));
    return results.fresh().orElseThrow();
  }

  private static List<Yield> recalled(
      Map<String, byte[]> kept, TradeReckoning reckoning, Inputs inputs) throws Exception {
    KeptResults.of(kept).recall(reckoning, inputs);
    return reckoning.reckon(inputs);
  }

  @Test
  void theSameInputsAreNotReckonedAgain() throws Exception {
    Map<String, byte[]> kept = kept(length("11.20 mm ± 0.5 mm"));
    List<Yield> first = twice().reckon(length("11.20 mm ± 0.5 mm"));
    List<Yield> again = recalled(kept, idle("twice"), length("11.20 mm ± 0.5 mm"));
    assertThat(again).isEqualTo(first);
    assertThat(again.get(0).value().inFull()).isEqualTo(first.get(0).value().inFull());
  }

  @Test
  void otherInputsAreHoweverLikeTheyLook() throws Exception {
    Map<String, byte[]> kept = kept(length("11.20 mm ± 0.5 mm"));
    for (String other :
        List.of("11.2 mm ± 0.5 mm", "11.20 mm", "11.20 mm ± 0.50 mm", "1.120 cm ± 0.05 cm")) {
      assertThatThrownBy(() -> recalled(kept, idle("twice"), length(other)))
          .as(other)
          .hasMessageContaining("anew");
    }
    assertThatThrownBy(() -> recalled(kept, idle("thrice"), length("11.20 mm ± 0.5 mm")))
        .hasMessageContaining("anew");
  }

  @Test
  void whatIsSpoiltIsReckonedAnew() throws Exception {
    Inputs inputs = length("11.20 mm");
    SortedMap<String, byte[]> kept = kept(inputs);
    List<Yield> right = twice().reckon(inputs);
    String digest = kept.firstKey();
    byte[] whole = kept.get(digest);
    for (int cut = 0; cut < whole.length; cut++) {
      Map<String, byte[]> spoilt = new HashMap<>();
      spoilt.put(digest, Arrays.copyOf(whole, cut));
      assertThat(recalled(spoilt, twice(), inputs)).isEqualTo(right);
    }
  }

  @Test
  void nothingIsToBeKeptAnewWhereNothingIsNew() throws Exception {
    Inputs inputs = length("11.20 mm");
    KeptResults again = KeptResults.of(kept(inputs));
    TradeReckoning reckoning = idle("twice");
    String digest = again.recall(reckoning, inputs);
    again.keep(digest, reckoning.reckon(inputs), List.of(), List.of());
    assertThat(again.fresh()).isEmpty();
    assertThat(KeptResults.of(kept(inputs)).fresh()).as("nothing is asked any more").isPresent();
  }
}

package chinelog.quantity;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * What one symbol stands for.
 *
 * @param symbol as shown, such as {@code mm}
 * @param factor its size in the coherent unit of its kind, exact
 * @param offset its zero above the zero of that unit, in that unit; 0 but for °C and °F
 * @param dimension powers of base dimensions by their names; a currency is a dimension of its own
 */
record Measure(
    String symbol, BigFraction factor, BigFraction offset, SortedMap<String, Integer> dimension) {

  Measure {
    dimension = Collections.unmodifiableSortedMap(new TreeMap<>(dimension));
  }

  boolean hasOffset() {
    return offset.signum() != 0;
  }
}

package chinelog.reckon.trade;

import chinelog.digest.ContentHash;
import chinelog.digest.RecordTree;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What the reckonings of a log came to, from one run of the program to the next: each by a digest
 * of its name and of all that it was given. Not for use by several threads at once.
 */
public final class KeptResults {

  private final @Nullable Map<String, byte[]> before;
  private final SortedMap<String, byte[]> now = new TreeMap<>();

  private KeptResults(@Nullable Map<String, byte[]> before) {
    this.before = before;
  }

  /** For whoever keeps nothing. */
  public static KeptResults none() {
    return new KeptResults(null);
  }

  /**
   * @param before as {@link #fresh} told them to the same program
   */
  public static KeptResults of(Map<String, byte[]> before) {
    return new KeptResults(Map.copyOf(before));
  }

  /**
   * Spares a reckoning its work where it was done before.
   *
   * @return what its results are to be {@linkplain #keep kept} by; null where nothing is kept
   */
  public @Nullable String recall(TradeReckoning reckoning, Inputs inputs) {
    if (before == null) {
      return null;
    }
    String digest =
        new ContentHash(Quantities.ALL::text).of(List.of(reckoning.name(), inputs.key()));
    byte[] kept = before.get(digest);
    if (kept != null && !reckoning.remembers(inputs)) {
      TradeReckoning.Result result = result(kept);
      if (result != null) {
        reckoning.remember(inputs, result);
      }
    }
    return digest;
  }

  /**
   * Notes what a reckoning came to.
   *
   * @param digest as {@link #recall} told it
   */
  public void keep(
      @Nullable String digest, List<Yield> yields, List<Part> parts, List<Sketch> sketches) {
    if (before == null || digest == null) {
      return;
    }
    byte[] kept = before.get(digest);
    if (kept == null) {
      TradeReckoning.Result result = new TradeReckoning.Result(yields, parts, sketches);
      kept = RecordTree.bytes(result, Quantities.ALL);
      TradeReckoning.Result again = result(kept);
      // What would not come back as the very same is worked out each time.
      if (again == null
          || !result.equals(again)
          || !Arrays.equals(kept, RecordTree.bytes(again, Quantities.ALL))) {
        return;
      }
    }
    now.put(digest, kept);
  }

  /** What is to be kept for the next time; nothing where that is the same as was. */
  public Optional<SortedMap<String, byte[]>> fresh() {
    return before == null || now.keySet().equals(before.keySet())
        ? Optional.empty()
        : Optional.of(now);
  }

  private static TradeReckoning.@Nullable Result result(byte[] kept) {
    try {
      return (TradeReckoning.Result) RecordTree.tree(kept, Quantities.ALL);
    } catch (IOException | ClassCastException e) {
      return null;
    }
  }

  /** The one kind of value that is no record. */
  private enum Quantities implements RecordTree.Other {
    ALL;

    @Override
    public @Nullable String text(Object value) {
      return value instanceof Quantity quantity
          ? quantity.inFull()
          : value instanceof Unit unit ? unit.symbol() : null;
    }

    @Override
    public Object value(String text) throws IOException {
      try {
        return Quantity.ofFull(text);
      } catch (QuantityException | IllegalArgumentException e) {
        throw new IOException("no quantity: " + text, e);
      }
    }
  }
}

package chinelog.wording;

import chinelog.quantity.Quantity;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/**
 * Something that the program says itself, in no language yet, such as {@code hours.stage} of
 * "Planking": "Hours: Planking" in an English log, "Stunden: Planking" in a German one.
 *
 * @param key of its text in a {@link Catalogue}
 * @param arguments what is filled in for {@code {0}}, {@code {1}} …
 */
public record Message(String key, List<Phrase> arguments) implements Phrase {

  public Message {
    arguments = List.copyOf(arguments);
  }

  /** A message; an argument that is neither a phrase nor a quantity stands as it is. */
  public static Message of(String key, Object... arguments) {
    return new Message(key, Arrays.stream(arguments).map(Message::phrase).toList());
  }

  /** Phrases, quantities and signs, one after the other, such as the figures of a sum put in. */
  public static Phrase joined(Object... parts) {
    return new Joined(Arrays.stream(parts).map(Message::phrase).toList());
  }

  /** Whether figures stand in it, besides its words. */
  public boolean hasAmounts() {
    return arguments.stream().anyMatch(Message::hasAmounts);
  }

  private static boolean hasAmounts(Phrase phrase) {
    return phrase instanceof Amount
        || phrase instanceof Joined joined && joined.parts().stream().anyMatch(Message::hasAmounts)
        || phrase instanceof Message message && message.hasAmounts();
  }

  private static Phrase phrase(Object argument) {
    return argument instanceof Phrase phrase
        ? phrase
        : argument instanceof Quantity quantity
            ? new Amount(quantity)
            : argument instanceof Number || argument instanceof LocalDate
                ? new Count(argument.toString())
                : new Own(String.valueOf(argument));
  }
}

package chinelog.wording;

import chinelog.quantity.Quantity;
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

  private static Phrase phrase(Object argument) {
    return argument instanceof Phrase phrase
        ? phrase
        : argument instanceof Quantity quantity
            ? new Amount(quantity)
            : new Own(String.valueOf(argument));
  }
}

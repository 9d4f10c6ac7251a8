package chinelog.log.records;

import chinelog.log.text.Block;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The next letter to those who follow the build.
 *
 * @param since day of the last one; null where it is not said
 * @param text in the maker's words, told to those alone who are told the client's name
 */
public record LetterPlan(@Nullable LocalDate since, List<Block> text) {

  /** Where the log says nothing of a letter. */
  public static final LetterPlan NONE = new LetterPlan(null, List.of());

  public LetterPlan {
    text = List.copyOf(text);
  }
}

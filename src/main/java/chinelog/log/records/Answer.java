package chinelog.log.records;

import chinelog.problem.Place;
import java.time.LocalDate;
import java.util.Set;

/**
 * The maker's word that what questions were about may stand as it is.
 *
 * @param questions ids, such as {@code q3f09b2c81a}
 * @param reason why, in the maker's words
 * @param on the day it was given
 */
public record Answer(Set<String> questions, String reason, LocalDate on, Place place) {

  public Answer {
    questions = Set.copyOf(questions);
  }
}

package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;

/**
 * A rule that a fact must keep.
 *
 * @param title in words, such as "Length over all"
 * @param rule such as {@code hull.loa <= 36 in}
 */
public record Limit(String id, String title, String rule, Label label, Place place) {}

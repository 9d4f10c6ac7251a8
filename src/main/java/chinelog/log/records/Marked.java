package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;

/**
 * A value of the log with the agreements it is under and the place where it was written.
 *
 * @param value immutable
 */
public record Marked<T>(T value, Label label, Place place) {}

package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;

/**
 * A drawing.
 *
 * @param path such as {@code sheets/lines.pdf}
 * @param label the log's agreement for sheets, always
 */
public record Sheet(String path, String title, Label label, Place place) {}

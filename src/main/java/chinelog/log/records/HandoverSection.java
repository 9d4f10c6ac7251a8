package chinelog.log.records;

import chinelog.label.Label;
import chinelog.log.text.Block;
import chinelog.problem.Place;
import java.util.List;

/**
 * A part of the handover booklet.
 *
 * @param id one of the booklet's known sections, such as {@code setting-up}
 * @param text empty where the maker left it so
 */
public record HandoverSection(
    String id, String title, List<Block> text, Label label, Place place) {}

package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The places at which texts of a log show its photographs, each with all agreements that the place
 * is under.
 */
final class PhotoUses {

  private final List<Use> all = new ArrayList<>();
  private final Map<String, Label> labels = new HashMap<>();

  PhotoUses(WholeLog whole) {
    Log log = whole.log();
    Set<String> paths = log.photos().stream().map(p -> p.path()).collect(Collectors.toSet());
    for (Entry entry : log.entries()) {
      collect(entry.text(), entry.label(), entry.id());
    }
    collect(log.head().about(), Label.NONE, "");
    collect(log.head().letter().text(), Label.NONE, "");
    log.stages().forEach(s -> collect(s.about(), s.label(), ""));
    log.handover().forEach(h -> collect(h.text(), h.label(), ""));
    all.removeIf(use -> !paths.contains(use.image().path()));
    all.forEach(use -> labels.merge(use.image().path(), use.label(), Label::join));
  }

  /** The agreements that the places of a photograph put it under. */
  Label labelOf(String path) {
    return labels.getOrDefault(path, Label.NONE);
  }

  boolean isUsed(String path) {
    return labels.containsKey(path);
  }

  /** In the order of the log. */
  List<Use> all() {
    return all;
  }

  private void collect(List<Block> blocks, Label around, String entry) {
    for (Block block : blocks) {
      Label label = around.join(block.label());
      block.lines().forEach(line -> collectRuns(line, label, entry));
      collect(block.children(), label, entry);
    }
  }

  private void collectRuns(List<Inline> runs, Label around, String entry) {
    for (Inline run : runs) {
      Label label = around.join(run.label());
      if (run instanceof Inline.Image image) {
        all.add(new Use(image, label, entry));
      } else {
        collectRuns(run.children(), label, entry);
      }
    }
  }

  /**
   * A photograph shown in a text.
   *
   * @param entry id of the entry; empty for other texts
   */
  record Use(Inline.Image image, Label label, String entry) {}
}

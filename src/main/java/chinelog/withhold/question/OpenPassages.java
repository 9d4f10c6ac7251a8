package chinelog.withhold.question;

import chinelog.log.records.Log;
import chinelog.photo.album.Album;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The texts of a log, each read once for whatever readers. */
final class OpenPassages {

  private final List<Passage> passages;
  private final Locator locator;
  private final Map<String, Reading> readings = new HashMap<>();
  private final Set<String> writtenSmall = new HashSet<>();

  OpenPassages(Log log, Album album) {
    this.passages = LogTexts.of(log, album);
    this.locator = new Locator(log.folder());
    for (Passage passage : passages) {
      if (passage.role() != Passage.Role.NAME) {
        passage.pieces().forEach(p -> small(p.text()));
      }
    }
  }

  private void small(String text) {
    for (Letters.Word word : Letters.words(text)) {
      if (!word.hasCapital()) {
        writtenSmall.add(word.letters());
      }
    }
  }

  List<Passage> passages() {
    return passages;
  }

  /** Finds where in its file something stands. */
  Locator locator() {
    return locator;
  }

  Reading reading(String text) {
    return readings.computeIfAbsent(text, Reading::new);
  }

  /** Words that the log writes small somewhere. */
  Set<String> writtenSmall() {
    return writtenSmall;
  }
}

package chinelog.photo.likeness;

import chinelog.photo.pixels.Pixels;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * An original with its features, ready to be searched for.
 *
 * @param parts each with all its views
 */
record Sought(Original original, List<Part> parts) {

  /** A picture of it, or of a part of it. */
  record Part(Look look, List<Features> views) {}

  static Sought of(Original original, FeatureStore store) throws IOException {
    List<Part> parts = new ArrayList<>();
    List<Pixels> pictures = null;
    int count = Math.max(1, original.parts().size());
    for (int i = 0; i < count; i++) {
      FeatureStore.Entry entry = store.find("original " + i + " " + original.key());
      if (entry == null) {
        pictures = pictures == null ? original.pictures() : pictures;
        Pixels picture = pictures.get(i);
        Look look = LineDrawing.in(picture).isLikely() ? Look.LINES : Look.PLAIN;
        entry = new FeatureStore.Entry(look, look.ofOriginal(picture));
        store.keep("original " + i + " " + original.key(), entry);
      }
      parts.add(new Part(entry.look(), entry.views()));
    }
    return new Sought(original, parts);
  }
}

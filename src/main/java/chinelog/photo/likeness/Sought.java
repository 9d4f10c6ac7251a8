package chinelog.photo.likeness;

import chinelog.photo.pixels.Pixels;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An original that is searched for.
 *
 * @param parts each with all its views
 */
record Sought(Original original, List<Part> parts) {

  static Sought of(Original original, FeatureStore store) throws IOException {
    List<Part> parts = new ArrayList<>();
    List<Pixels> pictures = null;
    int count = Math.max(1, original.parts().size());
    for (int i = 0; i < count; i++) {
      FeatureStore.Entry entry = store.find(name(original, i));
      if (entry == null) {
        pictures = pictures == null ? original.pictures() : pictures;
        Look look = LineDrawing.in(pictures.get(i)).isLined() ? Look.LINES : Look.PLAIN;
        parts.add(new Part(original, i, store, look, null));
      } else {
        parts.add(new Part(original, i, store, entry.look(), entry.views()));
      }
    }
    return new Sought(original, parts);
  }

  private static String name(Original original, int part) {
    return "original " + part + " " + original.key();
  }

  /**
   * A picture of it, or of a part of it. Its features are worked out when they are first asked for:
   * those of a drawing only where there is a photograph that may show one, and those of tilted
   * views only where one may show this.
   */
  static final class Part {

    private final Original original;
    private final int number;
    private final FeatureStore store;
    private final Look look;
    private @Nullable List<Features> upright;
    private @Nullable List<Features> views;

    private Part(
        Original original,
        int number,
        FeatureStore store,
        Look look,
        @Nullable List<Features> upright) {
      this.original = original;
      this.number = number;
      this.store = store;
      this.look = look;
      this.upright = upright;
    }

    Look look() {
      return look;
    }

    /** As it is, at two sizes. */
    synchronized List<Features> upright() throws IOException {
      List<Features> known = upright;
      if (known == null) {
        known = look.upright(original.pictures().get(number));
        store.keep(name(original, number), new FeatureStore.Entry(look, known));
        upright = known;
      }
      return known;
    }

    /** All its views. */
    synchronized List<Features> views() throws IOException {
      List<Features> known = views;
      if (known == null) {
        String name = "tilted " + name(original, number);
        FeatureStore.Entry tilted = store.find(name);
        if (tilted == null) {
          tilted = new FeatureStore.Entry(look, look.tilted(original.pictures().get(number)));
          store.keep(name, tilted);
        }
        known = new ArrayList<>(upright());
        known.addAll(tilted.views());
        views = known;
      }
      return known;
    }
  }
}

package chinelog.photo.likeness;

import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.pixels.Pixels;
import chinelog.photo.pixels.UnusablePhoto;
import java.io.IOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A photograph as it is to be shown, in which originals are searched for. */
final class Scene {

  private final String key;
  private final Pixels picture;
  private final LineDrawing lines;
  private final FeatureStore store;
  private final Map<Look, List<Features>> features = new EnumMap<>(Look.class);

  private Scene(String key, Pixels picture, FeatureStore store) throws IOException {
    this.key = key;
    this.picture = picture;
    this.store = store;
    this.lines = LineDrawing.in(picture);
  }

  /** Null for a photograph that cannot be decoded, of which readers get nothing. */
  static @Nullable Scene of(Darkroom darkroom, Darkroom.Order order, FeatureStore store)
      throws IOException {
    try {
      Darkroom.Prints prints = darkroom.print(order.photograph(), order.filled());
      return new Scene(
          darkroom.key(order.photograph(), order.filled()), Original.picture(prints), store);
    } catch (UnusablePhoto e) {
      return null;
    }
  }

  /** Where the original is to be seen. */
  KnownFindings.Seen find(Sought sought) throws IOException {
    for (Sought.Part part : sought.parts()) {
      // A picture with hardly a line in it shows no drawing.
      if (part.look() != Look.LINES || lines.isWorthSearching()) {
        FeatureMatcher.Match match =
            FeatureMatcher.find(part.views(), features(part.look()), part.look().enough());
        if (match != null) {
          Original original = sought.original();
          return new KnownFindings.Seen(
              original.kind(), original.name(), match.mirrored(), area(match, part.look()));
        }
      }
    }
    return KnownFindings.Seen.NOTHING;
  }

  /** What looks like a drawing, whichever it may be. */
  KnownFindings.Seen drawing() {
    return lines.isLikely()
        ? new KnownFindings.Seen(Recognition.Kind.DRAWING, "", false, lines.area())
        : KnownFindings.Seen.NOTHING;
  }

  private Recognition.Area area(FeatureMatcher.Match match, Look look) {
    double scale = (double) look.edge(picture) / picture.longEdgePx();
    double w = scale * picture.widthPx();
    double h = scale * picture.heightPx();
    double[] box = match.area();
    return new Recognition.Area(
        within(box[0] / w), within(box[1] / h), within(box[2] / w), within(box[3] / h));
  }

  private static double within(double v) {
    return Math.max(0, Math.min(1, v));
  }

  private List<Features> features(Look look) throws IOException {
    List<Features> known = features.get(look);
    if (known == null) {
      String name = "scene " + look + " " + key;
      FeatureStore.Entry entry = store.find(name);
      if (entry == null) {
        entry = new FeatureStore.Entry(look, look.ofScene(picture));
        store.keep(name, entry);
      }
      known = entry.views();
      features.put(look, known);
    }
    return known;
  }
}

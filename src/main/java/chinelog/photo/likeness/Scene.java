package chinelog.photo.likeness;

import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.pixels.Pixels;
import chinelog.photo.pixels.UnusablePhoto;
import java.io.IOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A photograph as it is to be shown, in which originals are searched for. It is decoded only for
 * what the cache does not hold of it.
 */
final class Scene {

  private final String key;
  private final Darkroom.Prints prints;
  private final FeatureStore store;
  private final Map<Look, List<Features>> features = new EnumMap<>(Look.class);
  private @Nullable Pixels picture;
  private @Nullable LineDrawing lines;

  private Scene(String key, Darkroom.Prints prints, FeatureStore store) {
    this.key = key;
    this.prints = prints;
    this.store = store;
  }

  /** Null for a photograph that cannot be decoded, of which readers get nothing. */
  static @Nullable Scene of(Darkroom darkroom, Darkroom.Order order, FeatureStore store)
      throws IOException {
    try {
      Darkroom.Prints prints = darkroom.print(order.photograph(), order.filled());
      return new Scene(darkroom.key(order.photograph(), order.filled()), prints, store);
    } catch (UnusablePhoto e) {
      return null;
    }
  }

  /** Where the original is to be seen. */
  KnownFindings.Seen find(Sought sought) throws IOException {
    for (Sought.Part part : sought.parts()) {
      List<Features> here = features(part.look());
      FeatureMatcher.Match match =
          !here.isEmpty() && FeatureMatcher.mayShow(part.upright(), here)
              ? FeatureMatcher.find(part.views(), here, part.look().enough())
              : null;
      if (match != null) {
        Original original = sought.original();
        return new KnownFindings.Seen(
            original.kind(), original.name(), match.mirrored(), area(match, part.look()));
      }
    }
    return KnownFindings.Seen.NOTHING;
  }

  /** What looks like a drawing, whichever it may be. */
  KnownFindings.Seen drawing() throws IOException {
    return lines().isLikely()
        ? new KnownFindings.Seen(Recognition.Kind.DRAWING, "", false, lines().area())
        : KnownFindings.Seen.NOTHING;
  }

  private Recognition.Area area(FeatureMatcher.Match match, Look look) throws IOException {
    double scale = (double) look.edge(picture()) / picture().longEdgePx();
    double w = scale * picture().widthPx();
    double h = scale * picture().heightPx();
    double[] box = match.area();
    return new Recognition.Area(
        within(box[0] / w), within(box[1] / h), within(box[2] / w), within(box[3] / h));
  }

  private static double within(double v) {
    return Math.max(0, Math.min(1, v));
  }

  /** None for a picture with hardly a line in it, which shows no drawing. */
  private List<Features> features(Look look) throws IOException {
    List<Features> known = features.get(look);
    if (known == null) {
      String name = "scene " + look + " " + key;
      FeatureStore.Entry entry = store.find(name);
      if (entry == null) {
        boolean none = look == Look.LINES && !lines().isWorthSearching();
        entry = new FeatureStore.Entry(look, none ? List.of() : look.upright(picture()));
        store.keep(name, entry);
      }
      known = entry.views();
      features.put(look, known);
    }
    return known;
  }

  private Pixels picture() throws IOException {
    Pixels known = picture;
    if (known == null) {
      known = Original.picture(prints);
      picture = known;
    }
    return known;
  }

  private LineDrawing lines() throws IOException {
    LineDrawing known = lines;
    if (known == null) {
      known = LineDrawing.in(picture());
      lines = known;
    }
    return known;
  }
}

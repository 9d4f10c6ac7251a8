package chinelog.photo.likeness;

import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Says whether a picture looks like a drawing: thin dark lines on a light ground. */
public final class DrawingLike {

  private DrawingLike() {}

  /**
   * @param prints of a photograph, as readers see it
   * @param log the log's folder, in whose cache the answer is kept
   * @throws IOException if the picture cannot be read
   */
  public static boolean isLikely(Darkroom.Prints prints, Path log) throws IOException {
    FeatureStore store = new FeatureStore(log);
    String name = "drawing " + Original.keyOf(prints);
    FeatureStore.Entry known = store.find(name);
    if (known == null) {
      boolean isLikely = LineDrawing.in(Original.picture(prints)).isLikely();
      known = new FeatureStore.Entry(isLikely ? Look.LINES : Look.PLAIN, List.of());
      store.keep(name, known);
    }
    return known.look() == Look.LINES;
  }
}

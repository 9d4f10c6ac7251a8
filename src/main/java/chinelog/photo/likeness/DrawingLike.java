package chinelog.photo.likeness;

import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;

/** Says whether a picture looks like a drawing: thin dark lines on a light ground. */
public final class DrawingLike {

  private DrawingLike() {}

  /**
   * @param prints of a photograph, as readers see it
   * @throws IOException if the picture cannot be read
   */
  public static boolean isLikely(Darkroom.Prints prints) throws IOException {
    return LineDrawing.in(Original.picture(prints)).isLikely();
  }
}

package chinelog.audit;

import chinelog.problem.Sentence;
import java.awt.image.BufferedImage;

/** Looks at the pixels of a part that must be of one colour. */
final class FilledPart {

  /** How far compression may move a colour where nothing but it stands. */
  private static final int EVEN = 2;

  /** How far, in a block of the compression that the part's edge runs through. */
  private static final int AT_THE_EDGE = 48;

  /** Pixels along the edge that scaling mixes with their neighbours. */
  private static final int MIXED_PX = 2;

  private static final int BLOCK_PX = 16;

  private FilledPart() {}

  static void inspect(BufferedImage picture, FilledArea part, Findings findings, Sentence where) {
    int left = (int) Math.ceil(part.left() * picture.getWidth());
    int top = (int) Math.ceil(part.top() * picture.getHeight());
    int right = (int) Math.floor(part.right() * picture.getWidth());
    int bottom = (int) Math.floor(part.bottom() * picture.getHeight());
    // The picture's own edge is none of the part's.
    int l = left <= 0 ? 0 : left + MIXED_PX;
    int t = top <= 0 ? 0 : top + MIXED_PX;
    int r = right >= picture.getWidth() ? right : right - MIXED_PX;
    int b = bottom >= picture.getHeight() ? bottom : bottom - MIXED_PX;
    boolean atRight = r >= picture.getWidth();
    boolean atBottom = b >= picture.getHeight();
    for (int y = t; y < b; y++) {
      for (int x = l; x < r; x++) {
        int bx = x / BLOCK_PX * BLOCK_PX;
        int by = y / BLOCK_PX * BLOCK_PX;
        boolean inside =
            bx >= l
                && by >= t
                && (atRight || bx + BLOCK_PX <= r)
                && (atBottom || by + BLOCK_PX <= b);
        if (distance(picture.getRGB(x, y), part.rgb()) > (inside ? EVEN : AT_THE_EDGE)) {
          findings.add(
              Sentence.of("{0}, the part from {1},{2} to {3},{4}", where, left, top, right, bottom),
              Sentence.of("It is not filled with one colour."));
          return;
        }
      }
    }
  }

  private static int distance(int a, int b) {
    int most = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      most = Math.max(most, Math.abs((a >> shift & 0xFF) - (b >> shift & 0xFF)));
    }
    return most;
  }
}

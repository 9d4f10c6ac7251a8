package chinelog.withhold;

import chinelog.edition.Picture;
import chinelog.photo.pixels.Box;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What is filled in a picture, as rectangles that do not overlap. They follow from the area that is
 * filled alone, so that nobody can tell how many regions were drawn there.
 */
final class FilledParts {

  private FilledParts() {}

  /** From the top down and from the left to the right; each is as high as it can be. */
  static List<Picture.Part> of(List<Box> boxes, int widthPx, int heightPx) {
    List<Box> parts = new ArrayList<>();
    List<Box> open = List.of();
    List<Integer> edges =
        boxes.stream().flatMapToInt(FilledParts::edges).distinct().sorted().boxed().toList();
    for (int i = 0; i + 1 < edges.size(); i++) {
      List<Box> band = band(boxes, edges.get(i), edges.get(i + 1));
      if (haveSameSides(open, band)) {
        band = lengthened(open, edges.get(i + 1));
      } else {
        parts.addAll(open);
      }
      open = band;
    }
    parts.addAll(open);
    return parts.stream().sorted().map(b -> part(b, widthPx, heightPx)).toList();
  }

  private static IntStream edges(Box box) {
    return IntStream.of(box.top(), box.bottom());
  }

  /** What is filled between two heights, side by side. */
  private static List<Box> band(List<Box> boxes, int top, int bottom) {
    List<Box> band = new ArrayList<>();
    boxes.stream()
        .filter(b -> b.top() <= top && b.bottom() >= bottom)
        .sorted(Comparator.comparingInt(Box::left))
        .forEach(
            b -> {
              Box last = band.isEmpty() ? null : band.get(band.size() - 1);
              if (last == null || b.left() > last.right()) {
                band.add(new Box(b.left(), top, b.right(), bottom));
              } else {
                int right = Math.max(last.right(), b.right());
                band.set(band.size() - 1, new Box(last.left(), top, right, bottom));
              }
            });
    return band;
  }

  private static boolean haveSameSides(List<Box> above, List<Box> below) {
    boolean have = above.size() == below.size() && !above.isEmpty();
    for (int i = 0; have && i < above.size(); i++) {
      have =
          above.get(i).left() == below.get(i).left()
              && above.get(i).right() == below.get(i).right();
    }
    return have;
  }

  private static List<Box> lengthened(List<Box> boxes, int bottom) {
    return boxes.stream().map(b -> new Box(b.left(), b.top(), b.right(), bottom)).toList();
  }

  private static Picture.Part part(Box box, double widthPx, double heightPx) {
    return new Picture.Part(
        box.left() / widthPx, box.top() / heightPx, box.right() / widthPx, box.bottom() / heightPx);
  }
}

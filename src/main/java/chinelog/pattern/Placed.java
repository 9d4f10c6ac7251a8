package chinelog.pattern;

import chinelog.drawn.Spot;
import chinelog.edition.Pattern;
import java.util.List;

/**
 * A part on a sheet: turned a quarter to the left, perhaps, and then moved.
 *
 * @param notes those of its lettering that stand on this sheet, in the part's own places
 */
record Placed(Pattern pattern, List<Pattern.Note> notes, boolean turned, double dx, double dy) {

  static Placed whole(Pattern pattern, boolean turned, double dx, double dy) {
    return new Placed(pattern, pattern.notes(), turned, dx, dy);
  }

  double x(Spot p) {
    return (turned ? -p.y() : p.x()) + dx;
  }

  double y(Spot p) {
    return (turned ? p.x() : p.y()) + dy;
  }

  Extent box(Pattern.Note note) {
    Extent box = Extent.of(note);
    return (turned ? box.turned() : box).movedBy(dx, dy);
  }
}

package chinelog.book.page;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is done with a piece: at what size it is shown, or whether it may be parted.
 *
 * @param scale the part of its usual size; 1 for the usual
 */
record Choice(double scale, boolean isParted) {

  static final Choice NONE = new Choice(1, false);

  /** What a change must save at least, in the measure of the white. */
  static final double PRICE = 0.005;

  /** For each part of its size that a plate loses. */
  private static final double PRICE_OF_SIZE = 0.02;

  /** A plate is never shown smaller than this part of its usual size. */
  private static final double LEAST = 0.55;

  /** Nor one with the numbers of parts on it smaller than this. */
  private static final double LEAST_NAMED = 0.7;

  private static final double STEP = 0.05;

  /** What is left below a plate that is made to fit. */
  private static final int SPARE_DOTS = 40;

  /** A table is not parted for less than its head and three rows or so on the first page. */
  private static final double LEAST_PART_DOTS = 25 * Fitting.DOTS_PER_MM;

  /** Nor for less than its head and the last two rows, which stay together. */
  private static final double LEAST_LAST_DOTS = 17 * Fitting.DOTS_PER_MM;

  /** Room between a narrow plate and its caption, as a part of the text's width. */
  private static final double BESIDE = 0.035;

  /**
   * What may be done with a piece.
   *
   * @param followed a layout that says what to do; null where all is open
   */
  static List<Choice> of(Piece piece, Cursor at, @Nullable Layout followed) {
    String id = piece.frame().id();
    if (piece instanceof Piece.Single single
        && !piece.frame().is("full")
        && !piece.frame().is("sized")) {
      return followed != null
          ? List.of(new Choice(followed.scales().getOrDefault(id, 1.0), false))
          : sizes(single, at);
    }
    boolean isOpen = piece instanceof Piece.Table && piece.frame().is("whole") && !id.isEmpty();
    if (!isOpen) {
      return List.of(NONE);
    }
    if (followed != null) {
      return List.of(new Choice(1, followed.parted().contains(id)));
    }
    return List.of(NONE, new Choice(1, true));
  }

  private static List<Choice> sizes(Piece.Single single, Cursor at) {
    List<Choice> sizes = new ArrayList<>();
    sizes.add(NONE);
    // A plate is as wide as the text or clearly narrower: almost as wide looks like an oversight.
    boolean isAnyWidth = isNamed(single) || isNarrow(single);
    double most = isAnyWidth ? 1 - STEP : PlateRows.NARROW / single.width();
    double least = isNamed(single) ? LEAST_NAMED : LEAST;
    for (double scale = most; scale >= least; scale -= STEP) {
      sizes.add(new Choice(scale, false));
    }
    int left = at.bottom(at.pageAt(at.y)) - at.y;
    double fitting =
        single.picture() == 0
            ? 1
            : 1 - (double) (single.height() - left + SPARE_DOTS) / single.picture();
    if (fitting >= least && fitting <= most) {
      sizes.add(new Choice(fitting, false));
    }
    return sizes;
  }

  /** Whether what may be parted is, and is worth it. */
  boolean isWorth(Laid laid) {
    if (!isParted) {
      return true;
    }
    Cursor at = laid.end();
    int first = at.top(at.pageAt(laid.start()) + 1) - laid.start();
    int last = at.y - at.top(at.pageAt(at.y));
    return at.pageAt(at.y) > at.pageAt(laid.start())
        && first > LEAST_PART_DOTS
        && last > LEAST_LAST_DOTS;
  }

  /** Notes what is done, with what it costs. */
  void take(Piece piece, Cursor at) {
    String id = piece.frame().id();
    if (scale < 1) {
      Layout.Change change = new Layout.Change(id, Layout.Kind.SCALE, scale);
      at.add(change, PRICE + PRICE_OF_SIZE * (1 - scale));
    }
    if (isParted) {
      at.add(new Layout.Change(id, Layout.Kind.PART, 1), 2 * PRICE);
    }
  }

  /** The height of a plate that is shown so. */
  int height(Piece.Single single) {
    if (scale == 1) {
      return single.height();
    }
    int picture = (int) (single.picture() * scale);
    if (isNamed(single)) {
      return single.height() - single.picture() + picture;
    }
    boolean wasNarrow = isNarrow(single);
    int usual = wasNarrow ? Math.max(single.picture(), single.caption()) : 0;
    int around =
        wasNarrow
            ? single.height() - usual
            : single.height() - single.picture() - single.captionRoom();
    double room = 1 - single.width() * scale - BESIDE;
    int caption = (int) (single.caption() * single.captionWidth() / room);
    return around + Math.max(picture, caption);
  }

  /** The names of the parts stay below such a plate. */
  private static boolean isNamed(Piece.Single single) {
    return single.frame().is("named");
  }

  private static boolean isNarrow(Piece.Single single) {
    return single.width() < PlateRows.NARROW + 0.01;
  }
}

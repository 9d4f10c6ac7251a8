package chinelog.book.writing;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays the columns of a table that is wider than the page in several tables, the first column
 * repeated in each, or sets it smaller; nothing is cut. How wide words come out is estimated, on
 * the broad side.
 *
 * @param columns indices of those that stand in one table
 * @param widthsMm of each, without its padding; empty if the renderer may choose
 * @param isSmall whether it is set in smaller type
 */
record WideColumns(List<Integer> columns, List<Double> widthsMm, boolean isSmall) {

  /** Of the type that tables are set in: 8.8 points. */
  private static final double EM_MM = 8.8 / 72 * 25.4;

  private static final double SMALL = 0.8;

  /** Room between columns. */
  private static final double GAP_MM = 3.4;

  /** Of it, what the style sheet has as padding, which is no part of the width of a cell. */
  private static final double PADDING_MM = 6 / 72.0 * 25.4;

  /** A number that is longer than this may go over two lines. */
  private static final double LONG_NUMBER_MM = 40;

  /** The first column of several tables takes at most this part of the page. */
  private static final double FIRST = 0.4;

  /**
   * A table whose longest words take up to so much of the page is left to the renderer, which
   * squeezes columns to letters where there is less room.
   */
  private static final double ROOMY = 0.6;

  /** All digits are as wide as each other, in the bold a little wider than in the regular. */
  private static final double DIGIT = 0.53;

  private static final String NARROW = "ijl.,:;'|!()[]\u2019 \u00a0fIrt-";

  private static final char NARROW_SPACE = '\u202f';

  private static final String BROAD = "mwMWQO%@\u2014\u2026";

  /**
   * Plans a table.
   *
   * @param cells of each column, its head first
   * @param isNumber of each column, whether its cells are numbers, which are not parted
   */
  static List<WideColumns> plan(List<List<String>> cells, List<Boolean> isNumber, double textMm) {
    List<Double> least = new ArrayList<>();
    List<Double> usual = new ArrayList<>();
    List<Double> whole = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      double line = cells.get(i).stream().mapToDouble(WideColumns::widthMm).max().orElse(0);
      double word = cells.get(i).stream().mapToDouble(WideColumns::longestWordMm).max().orElse(0);
      List<String> below = cells.get(i).subList(1, cells.get(i).size());
      double number = below.stream().mapToDouble(WideColumns::widthMm).max().orElse(0);
      // A number is not parted; the head above it may go over several lines.
      boolean isKept = isNumber.get(i) && number <= LONG_NUMBER_MM;
      double headWord = longestWordMm(cells.get(i).get(0));
      least.add((isKept ? Math.max(number, headWord) : word) + GAP_MM);
      usual.add(line + GAP_MM);
      whole.add((isNumber.get(i) ? line : word) + GAP_MM);
    }
    List<Integer> all = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      all.add(i);
    }
    if (sum(usual) <= textMm || sum(whole) <= ROOMY * textMm) {
      return List.of(new WideColumns(all, List.of(), false));
    }
    if (sum(least) <= textMm) {
      return List.of(new WideColumns(all, widths(all, least, usual, textMm), false));
    }
    if (sum(least) * SMALL <= textMm) {
      return List.of(new WideColumns(all, widths(all, least, usual, textMm), true));
    }
    return parted(least, usual, textMm);
  }

  /** Classes of such a table, to be added to others. */
  String kind() {
    return (widthsMm.isEmpty() ? "" : " planned") + (isSmall ? " small" : "");
  }

  /** As few tables as will do, each with about as many columns. */
  private static List<WideColumns> parted(List<Double> least, List<Double> usual, double textMm) {
    List<Double> most = new ArrayList<>();
    double first = Math.min(least.get(0), least.size() == 1 ? textMm : FIRST * textMm);
    most.add(first);
    for (double width : least.subList(1, least.size())) {
      most.add(Math.min(width, textMm - first));
    }
    List<List<Integer>> parts = parted(most, textMm, most.size());
    for (int columns = 1; columns < most.size(); columns++) {
      List<List<Integer>> even = parted(most, textMm, columns);
      if (even.size() == parts.size()) {
        parts = even;
        break;
      }
    }
    return parts.stream().map(part -> part(part, most, usual, textMm)).toList();
  }

  /** Columns by table, the first in each of them, and besides it at most so many in one. */
  private static List<List<Integer>> parted(List<Double> widths, double textMm, int columns) {
    List<List<Integer>> parts = new ArrayList<>();
    List<Integer> part = new ArrayList<>(List.of(0));
    double taken = widths.get(0);
    for (int i = 1; i < widths.size(); i++) {
      if (part.size() > columns || part.size() > 1 && taken + widths.get(i) > textMm) {
        parts.add(part);
        part = new ArrayList<>(List.of(0));
        taken = widths.get(0);
      }
      part.add(i);
      taken += widths.get(i);
    }
    parts.add(part);
    return parts;
  }

  private static WideColumns part(
      List<Integer> columns, List<Double> least, List<Double> usual, double textMm) {
    return new WideColumns(List.copyOf(columns), widths(columns, least, usual, textMm), false);
  }

  /** What is left over goes to the columns that could use it. */
  private static List<Double> widths(
      List<Integer> columns, List<Double> least, List<Double> usual, double textMm) {
    double taken = columns.stream().mapToDouble(least::get).sum();
    double wanted =
        columns.stream().mapToDouble(i -> Math.max(0, usual.get(i) - least.get(i))).sum();
    double left = Math.max(0, textMm - taken);
    double scale = Math.min(1, textMm / taken);
    return columns.stream()
        .map(
            i ->
                least.get(i) * scale
                    - PADDING_MM
                    + (wanted == 0
                        ? left / columns.size()
                        : left * Math.max(0, usual.get(i) - least.get(i)) / wanted))
        .toList();
  }

  private static double sum(List<Double> widths) {
    return widths.stream().mapToDouble(w -> w).sum();
  }

  private static double longestWordMm(String text) {
    double longest = 0;
    for (String word : text.split("[ \n]+")) {
      longest = Math.max(longest, widthMm(word));
    }
    return longest;
  }

  /** How wide a text is at most, about. */
  static double widthMm(String text) {
    return text.codePoints().mapToDouble(WideColumns::ems).sum() * EM_MM;
  }

  private static double ems(int sign) {
    if (sign == NARROW_SPACE) {
      return 0.25;
    }
    if (NARROW.indexOf(sign) >= 0) {
      return 0.36;
    }
    if (sign >= '0' && sign <= '9') {
      return DIGIT;
    }
    if (BROAD.indexOf(sign) >= 0 || sign > '\u2E00') {
      return 1;
    }
    return Character.isUpperCase(sign) || sign > '\u024F' ? 0.74 : 0.58;
  }
}

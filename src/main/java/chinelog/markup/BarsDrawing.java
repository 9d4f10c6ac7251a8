package chinelog.markup;

import chinelog.edition.Chart;
import java.util.List;

/** Bars across, a group of them under the name of each category. */
record BarsDrawing(Chart chart, ChartSvg sheet) {

  private static final int NAME_HEIGHT = 21;
  private static final int BAR_HEIGHT = 12;
  private static final int BAR_STEP = 16;
  private static final int GROUP_GAP = 10;
  private static final int GAP = 7;

  /** Draws from {@code top} down and tells the height of the whole. */
  int draw(int top) {
    double longest = chart.highest();
    double perUnit =
        longest > 0 ? (ChartSvg.WIDTH - GAP - ChartSvg.roomForValues(chart)) / longest : 0;
    int y = top;
    for (int c = 0; c < chart.categories().size(); c++) {
      sheet.label(0, y + 15, chart.categories().get(c), "start", false);
      y += NAME_HEIGHT;
      List<Chart.Series> series = chart.series();
      for (int s = 0; s < series.size(); s++) {
        double length = Math.max(0, series.get(s).values().get(c).doubleValue() * perUnit);
        sheet.rect(0.5, y + 0.5, Math.max(length, 0.5), BAR_HEIGHT - 1, s);
        sheet.label(length + GAP, y + BAR_HEIGHT - 1, series.get(s).shown().get(c), "start", s > 0);
        y += BAR_STEP;
      }
      y += GROUP_GAP;
    }
    return y;
  }
}

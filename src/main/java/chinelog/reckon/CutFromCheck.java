package chinelog.reckon;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.log.records.CutFrom;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Request;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.reckon.trade.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Asks whether what parts are cut from is there, and large enough for each of them. */
record CutFromCheck(Log log, Ledger ledger) {

  void check() {
    List<String> materials = log.stock().stream().map(Lot::material).distinct().toList();
    List<String> known = new ArrayList<>(log.requests().stream().map(Request::prefix).toList());
    for (Facts.Drawing drawing : ledger.drawings()) {
      drawing.parts().forEach(part -> known.add(drawing.request() + "." + part.name()));
    }
    for (CutFrom from : log.head().patternSheets().cutFrom()) {
      if (!materials.contains(from.material())) {
        ledger.error(
            from.place(),
            Sentence.of("There is no \"{0}\" in stock.yaml.", from.material()),
            Suggestion.remedy(from.material(), materials));
      }
      for (String name : from.parts()) {
        if (!known.contains(name)) {
          ledger.error(
              from.place(),
              Sentence.of(
                  "No reckoning of facts.yaml, nor a part of one, is called \"{0}\".", name),
              Suggestion.remedy(name, known));
        }
      }
    }
    for (Facts.Drawing drawing : ledger.drawings()) {
      for (Part part : drawing.parts()) {
        log.head()
            .patternSheets()
            .findCutFrom(drawing.request(), part.name())
            .filter(from -> !from.isStrip())
            .ifPresent(from -> fit(from, drawing.request(), part));
      }
    }
  }

  private void fit(CutFrom from, String request, Part part) {
    double[] size = size(part);
    if (size[0] > from.lengthMm() + 1e-6 || size[1] > from.widthMm() + 1e-6) {
      ledger.error(
          from.place(),
          Sentence.of(
              "The part \"{0}\" of \"{1}\" is {2} mm along the grain and {3} mm across, larger than"
                  + " a sheet of \"{4}\".",
              part.name(),
              request,
              String.format(Locale.ROOT, "%.1f", size[0]),
              String.format(Locale.ROOT, "%.1f", size[1]),
              from.material()),
          Sentence.of(
              "Give a larger sheet, cut moulds in halves (mould: half), or write except:"
                  + " [{0}.{1}].",
              request, part.name()));
    }
  }

  /** How far the lines to be cut reach along and up, in mm. */
  private static double[] size(Part part) {
    double left = Double.MAX_VALUE;
    double right = -Double.MAX_VALUE;
    double low = Double.MAX_VALUE;
    double high = -Double.MAX_VALUE;
    for (Stroke stroke : part.strokes()) {
      if (stroke.line() != LineUse.CUT) {
        continue;
      }
      for (Spot p : stroke.points()) {
        left = Math.min(left, p.x());
        right = Math.max(right, p.x());
        low = Math.min(low, p.y());
        high = Math.max(high, p.y());
      }
    }
    return right < left ? new double[2] : new double[] {right - left, high - low};
  }
}

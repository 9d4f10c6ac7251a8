package chinelog.markup;

import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.edition.Diagram;
import java.util.List;
import java.util.Locale;

/** A diagram, turned so that y runs down. */
record DiagramDrawing(Diagram diagram, Brush brush) {

  /** Draws it and tells its height. */
  double draw() {
    for (Diagram.Shape shape : diagram.shapes()) {
      if (shape instanceof Diagram.Line line) {
        brush.path(path(line), look(line.ink()));
      } else if (shape instanceof Diagram.Disc disc) {
        brush.disc(disc.at().x(), down(disc.at()), disc.radius(), look(disc.ink()));
      } else if (shape instanceof Diagram.Note note) {
        brush.text(
            note.at().x(),
            down(note.at()),
            note.text(),
            note.anchor().name().toLowerCase(Locale.ROOT),
            note.quiet());
      }
    }
    return diagram.height();
  }

  private double down(Spot point) {
    return diagram.height() - point.y();
  }

  private String path(Diagram.Line line) {
    StringBuilder d = new StringBuilder();
    List<Spot> points = line.points();
    for (int i = 0; i < points.size(); i++) {
      d.append(i == 0 ? "M" : i == 1 ? "L" : " ")
          .append(ChartSvg.number(points.get(i).x()))
          .append(' ')
          .append(ChartSvg.number(down(points.get(i))));
    }
    return line.closed() ? d.append('Z').toString() : d.toString();
  }

  private static Brush.Look look(Ink ink) {
    String name = "ink-" + ink.name().toLowerCase(Locale.ROOT).replace('_', '-');
    return switch (ink) {
      case HULL -> new Brush.Look(name, "none", "ink", 1.2, null);
      case FINE -> new Brush.Look(name, "none", "soft", 0.5, null);
      case CENTRE -> new Brush.Look(name, "none", "soft", 0.7, "9 2.5 2 2.5");
      case WATER -> new Brush.Look(name, "none", "accent", 1.1, null);
      case CURVE -> new Brush.Look(name, "none", "accent", 1.8, null);
      case AREA -> new Brush.Look(name, "panel", "none", 0, null);
      case SAIL -> new Brush.Look(name, "panel", "ink", 1, null);
      case WEIGHT -> new Brush.Look(name, "none", "accent", 1, null);
      case CENTROID -> new Brush.Look(name, "ink", "paper", 0.8, null);
      case POINTER -> new Brush.Look(name, "none", "soft", 0.5, null);
      case DONE -> new Brush.Look(name, "tint", "paper", 0.6, null);
      case DONE_NEXT -> new Brush.Look(name, "wash", "paper", 0.6, null);
      case COMING -> new Brush.Look(name, "paper", "soft", 0.5, null);
    };
  }
}

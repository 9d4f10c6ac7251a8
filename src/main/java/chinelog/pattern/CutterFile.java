package chinelog.pattern;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.edition.Pattern;
import chinelog.markup.HtmlWriter;
import java.awt.BasicStroke;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * A part as SVG 1.1 for a cutter: a unit is a millimetre, one closed path is cut, and what is
 * scored and engraved stands in groups of its own. Half the kerf lies outside the part's outline.
 */
final class CutterFile {

  private static final double MARGIN = 5;
  private static final double FLATNESS = 0.002;

  private final Pattern pattern;
  private final double kerf;
  private final Extent box;
  private final StringBuilder svg = new StringBuilder();

  private CutterFile(Pattern pattern, double kerf) {
    this.pattern = pattern;
    this.kerf = kerf;
    Extent all = Extent.of(pattern);
    this.box =
        new Extent(
            all.left() - MARGIN, all.bottom() - MARGIN, all.right() + MARGIN, all.top() + MARGIN);
  }

  static void write(Pattern pattern, double kerf, String about, Path file) throws IOException {
    Files.writeString(file, new CutterFile(pattern, kerf).draw(about), StandardCharsets.UTF_8);
  }

  private String draw(String about) {
    svg.append(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"")
        .append(" width=\"")
        .append(number(box.width()))
        .append("mm\" height=\"")
        .append(number(box.height()))
        .append("mm\" viewBox=\"0 0 ")
        .append(number(box.width()))
        .append(' ')
        .append(number(box.height()))
        .append("\" fill=\"none\" stroke-width=\"0.1\">\n<title>")
        .append(HtmlWriter.escaped(pattern.title()))
        .append("</title>\n<desc>")
        .append(HtmlWriter.escaped(about))
        .append("</desc>\n");
    group("engrave", "#0000ff", s -> s.line() == LineUse.GUIDE, true);
    group("score", "#00a000", s -> s.line() == LineUse.SCORE || s.line() == LineUse.CENTRE, false);
    group("cut", "#ff0000", s -> s.line() == LineUse.CUT, false);
    return svg.append("</svg>\n").toString();
  }

  private void group(String id, String colour, Predicate<Stroke> which, boolean letters) {
    svg.append("<g id=\"").append(id).append("\" stroke=\"").append(colour).append("\">\n");
    for (Stroke stroke : pattern.strokes()) {
      if (which.test(stroke)) {
        svg.append("<path d=\"");
        if (stroke.line() == LineUse.CUT && kerf > 0) {
          widened(stroke);
        } else {
          plain(stroke);
        }
        svg.append("\"/>\n");
      }
    }
    if (letters) {
      for (Pattern.Note note : pattern.notes()) {
        svg.append("<text x=\"")
            .append(number(x(note.at().x())))
            .append("\" y=\"")
            .append(number(y(note.at().y())))
            .append("\" font-family=\"sans-serif\" font-size=\"")
            .append(number(note.height() / 0.7))
            .append("\" fill=\"")
            .append(colour)
            .append("\" stroke=\"none\">")
            .append(HtmlWriter.escaped(note.text()))
            .append("</text>\n");
      }
    }
    svg.append("</g>\n");
  }

  private void plain(Stroke stroke) {
    char command = 'M';
    for (Spot p : stroke.points()) {
      svg.append(command).append(number(x(p.x()))).append(' ').append(number(y(p.y())));
      command = 'L';
    }
    if (stroke.closed()) {
      svg.append('Z');
    }
  }

  /** The outline grown by half the kerf. */
  private void widened(Stroke stroke) {
    Path2D outline = new Path2D.Double();
    for (Spot p : stroke.points()) {
      if (outline.getCurrentPoint() == null) {
        outline.moveTo(x(p.x()), y(p.y()));
      } else {
        outline.lineTo(x(p.x()), y(p.y()));
      }
    }
    outline.closePath();
    BasicStroke beam =
        new BasicStroke((float) kerf, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10);
    Area grown = new Area(outline);
    grown.add(new Area(beam.createStrokedShape(outline)));
    double[] at = new double[6];
    List<Spot> ring = new ArrayList<>();
    for (PathIterator i = grown.getPathIterator(null, FLATNESS); !i.isDone(); i.next()) {
      if (i.currentSegment(at) != PathIterator.SEG_CLOSE) {
        ring.add(new Spot(at[0], at[1]));
      } else {
        if (isWide(ring)) {
          char command = 'M';
          for (Spot p : ring) {
            svg.append(command).append(number(p.x())).append(' ').append(number(p.y()));
            command = 'L';
          }
          svg.append('Z');
        }
        ring.clear();
      }
    }
  }

  /** Whether a ring is more than what rounding leaves behind where stretches of a curve meet. */
  private static boolean isWide(List<Spot> ring) {
    double twiceArea = 0;
    double length = 0;
    for (int i = 0; i < ring.size(); i++) {
      Spot a = ring.get(i);
      Spot b = ring.get((i + 1) % ring.size());
      twiceArea += a.x() * b.y() - b.x() * a.y();
      length += Math.hypot(b.x() - a.x(), b.y() - a.y());
    }
    return Math.abs(twiceArea) > FLATNESS * length;
  }

  private double x(double mm) {
    return mm - box.left();
  }

  private double y(double mm) {
    return box.top() - mm;
  }

  private static String number(double mm) {
    String text = String.format(Locale.ROOT, "%.3f", mm).replaceAll("0+$", "");
    return text.endsWith(".") ? text.substring(0, text.length() - 1) : text;
  }
}

package chinelog.talk;

import chinelog.edition.Chart;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.edition.Talk;
import chinelog.jpeg.JpegEncoder;
import chinelog.markup.Theme;
import chinelog.markup.Wording;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Draws frames: plates on the theme's ground, and cards in its type. All measures below are for a
 * frame 1080 pixels high.
 */
final class Frames {

  private static final float QUALITY = 0.92f;
  private static final double HIGH = 1080;

  /** Lettering keeps a tenth of the width from the sides, which any screen shows: EBU R 95. */
  private static final double SIDE = 192;

  private static final double TOP = 150;

  private static final double TYPE = 42;
  private static final double LARGE_TYPE = 54;
  private static final int FEW_LINES = 4;

  /** From line to line, by the size of type. */
  private static final double LEADING = 1.95;

  private final Talk talk;
  private final Theme theme;
  private final Wording wording;
  private final double scale;
  private final Lettering heading;
  private final Lettering plain;
  private final Lettering strong;

  Frames(Edition edition, Theme theme) throws IOException {
    this.talk = edition.contents().talk();
    this.theme = theme;
    this.wording = Wording.of(edition.contents().locale());
    this.scale = talk.heightPx() / HIGH;
    String family =
        theme.value("heading").contains("Sans") && !theme.value("heading").contains("Serif")
            ? "Source Sans 3"
            : "Source Serif 4";
    this.heading = new Lettering(theme, family, 600);
    this.plain = new Lettering(theme, "Source Sans 3", 400);
    this.strong = new Lettering(theme, "Source Sans 3", 600);
  }

  byte[] draw(FrameContent sight) throws IOException {
    BufferedImage frame =
        new BufferedImage(talk.widthPx(), talk.heightPx(), BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = frame.createGraphics();
    try {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      g.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
      g.setColor(colour("paper"));
      g.fillRect(0, 0, frame.getWidth(), frame.getHeight());
      if (sight instanceof FrameContent.Shot shot) {
        plate(g, shot);
      } else {
        g.scale(scale, scale);
        if (sight instanceof FrameContent.Card card) {
          card(g, card);
        } else if (sight instanceof FrameContent.Table table) {
          table(g, table);
        } else if (sight instanceof FrameContent.Graph graph) {
          graph(g, graph.chart());
        }
      }
    } finally {
      g.dispose();
    }
    return JpegEncoder.encode(frame, QUALITY);
  }

  private Color colour(String value) {
    return Color.decode(theme.value(value));
  }

  private void plate(Graphics2D g, FrameContent.Shot shot) throws IOException {
    FramePlace place = FramePlace.of("", shot, talk);
    Picture.Rendition rendition = shot.plate().picture().atLeast(place.width());
    try (InputStream in = rendition.jpeg().open()) {
      BufferedImage picture = ImageIO.read(in);
      if (picture == null) {
        throw new IOException("The picture of " + shot.plate().picture().id() + " is damaged.");
      }
      g.drawImage(picture, place.left(), place.top(), place.width(), place.height(), null);
    }
  }

  private double wide() {
    return talk.widthPx() / scale;
  }

  private void card(Graphics2D g, FrameContent.Card card) throws IOException {
    double most = wide() - 2 * SIDE;
    if (card.isTitle()) {
      title(g, card, most);
      return;
    }
    double type = card.lines().size() > FEW_LINES ? TYPE : LARGE_TYPE;
    double y = heads(g, card.over(), card.title(), card.lines().size() * type * LEADING, most);
    for (FrameContent.Line line : card.lines()) {
      double right = strong.width(line.shown(), type);
      double room = most - Math.min(right, most / 2) - 40;
      g.setColor(colour("ink"));
      plain.draw(g, plain.fitted(line.text(), type, room), SIDE, y, type);
      String shown = strong.fitted(line.shown(), type, most / 2);
      strong.draw(g, shown, SIDE + most - strong.width(shown, type), y, type);
      under(g, y + type * 0.58, most);
      y += type * LEADING;
    }
  }

  /**
   * Draws what stands above lines so high, all of it in the middle, and tells where the first line
   * stands.
   */
  private double heads(Graphics2D g, String over, String title, double high, double most)
      throws IOException {
    double y = Math.max(TOP, (HIGH - high - 230) / 2) + 30;
    g.setColor(colour("soft"));
    plain.draw(g, plain.fitted(over, 36, most), SIDE, y, 36);
    y += 74;
    if (!title.isEmpty()) {
      g.setColor(colour("ink"));
      heading.draw(g, heading.fitted(title, 58, most), SIDE, y, 58);
    }
    rule(g, y + 34);
    return y + 130;
  }

  private void under(Graphics2D g, double y, double most) {
    g.setColor(colour("rule"));
    g.fill(new Rectangle2D.Double(SIDE, y, most, 1.5));
  }

  private void table(Graphics2D g, FrameContent.Table table) throws IOException {
    double most = wide() - 2 * SIDE;
    int columns = table.head().size();
    double[] widths = new double[columns];
    double all = 0;
    for (int c = 0; c < columns; c++) {
      widths[c] = strong.width(table.head().get(c), TYPE);
      for (List<String> row : table.rows()) {
        widths[c] = Math.max(widths[c], plain.width(row.get(c), TYPE));
      }
      all += widths[c];
    }
    double gap = columns > 1 ? Math.max(30, (most - all) / (columns - 1)) : 0;
    double fit = Math.min(1, (most - gap * (columns - 1)) / all);
    double y = heads(g, table.over(), "", (table.rows().size() + 1) * TYPE * LEADING, most) - 40;
    for (int r = -1; r < table.rows().size(); r++) {
      Lettering letters = r < 0 ? strong : plain;
      double x = SIDE;
      for (int c = 0; c < columns; c++) {
        double room = widths[c] * fit;
        String cell = r < 0 ? table.head().get(c) : table.rows().get(r).get(c);
        String shown = letters.fitted(cell, TYPE, room + 1);
        g.setColor(colour("ink"));
        boolean isRight = table.rightAligned().get(c);
        letters.draw(g, shown, isRight ? x + room - letters.width(shown, TYPE) : x, y, TYPE);
        x += room + gap;
      }
      under(g, y + TYPE * 0.58, most);
      y += TYPE * LEADING;
    }
  }

  private void title(Graphics2D g, FrameContent.Card card, double most) throws IOException {
    double size = 104;
    List<String> lines = heading.lines(card.title(), size, most);
    while (lines.size() > 4 && size > 40) {
      size -= 8;
      lines = heading.lines(card.title(), size, most);
    }
    double high = lines.size() * size * 1.16;
    double y = (HIGH - high) / 2 - 40;
    g.setColor(colour("soft"));
    plain.draw(g, plain.fitted(card.over(), 44, most), SIDE, y, 44);
    g.setColor(colour("ink"));
    y += 40 + size;
    for (String line : lines) {
      heading.draw(g, line, SIDE, y, size);
      y += size * 1.16;
    }
    y += 10 - size * 0.58;
    rule(g, y);
    y += 78;
    g.setColor(colour("soft"));
    for (FrameContent.Line line : card.lines()) {
      if (!line.text().isEmpty()) {
        for (String part : plain.lines(line.text(), 40, most)) {
          plain.draw(g, part, SIDE, y, 40);
          y += 56;
        }
      }
    }
  }

  private void rule(Graphics2D g, double y) {
    g.setColor(colour("accent"));
    g.fill(new Rectangle2D.Double(SIDE, y, 150, 6));
  }

  private void graph(Graphics2D g, Chart chart) throws IOException {
    double most = wide() - 2 * SIDE;
    double y = TOP + 20;
    g.setColor(colour("ink"));
    heading.draw(g, heading.fitted(chart.title(), 58, most), SIDE, y, 58);
    rule(g, y + 34);
    new ChartDrawing(g, chart, theme, wording, plain, strong)
        .draw(SIDE, y + 90, most, HIGH - TOP - y - 90);
  }
}

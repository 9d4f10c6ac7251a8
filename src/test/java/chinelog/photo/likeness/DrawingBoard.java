package chinelog.photo.likeness;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Arc2D;
import java.awt.geom.CubicCurve2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.GeneralPath;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.util.Random;

/**
 * Sheets of no vessel in styles that recognition was not tried on while it was made: unlike those
 * of {@link Warps} they have no grid of curves and no table.
 */
enum DrawingBoard {
  /** Sails, spars and rigging with dimensions. */
  SAIL_PLAN(0xFFFFFF, 0x101010, 2.2f),
  /** Side view and deck of a launch, portrait format, hatched parts, notes in columns. */
  ARRANGEMENT(0xEEF0EA, 0x1B2A3A, 1.6f),
  /** Frames one inside the other, and details in circles. */
  FRAMES(0xF7EFD9, 0x3A2E22, 2f),
  /** Faint pencil on tracing paper. */
  TRACING(0xDFE2DC, 0x767A7C, 1.8f);

  private final Color paper;
  private final Color ink;
  private final float stroke;

  DrawingBoard(int paper, int ink, float stroke) {
    this.paper = new Color(paper);
    this.ink = new Color(ink);
    this.stroke = stroke;
  }

  BufferedImage draw(long number) {
    Random random = new Random(31 * number + ordinal());
    boolean portrait = this == ARRANGEMENT;
    int w = portrait ? 1700 : 2400;
    int h = portrait ? 2400 : 1700;
    BufferedImage sheet = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = sheet.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(paper);
    g.fillRect(0, 0, w, h);
    g.setColor(ink);
    g.setStroke(new BasicStroke(stroke));
    g.drawRect(40, 40, w - 80, h - 80);
    switch (this) {
      case SAIL_PLAN -> sails(g, random);
      case ARRANGEMENT -> arrangement(g, random);
      case FRAMES, TRACING -> frames(g, random);
    }
    g.setFont(new Font(Font.SERIF, Font.PLAIN, 30));
    g.drawRect(40, h - 190, 480, 150);
    g.drawString("No. " + (100 + random.nextInt(900)), 60, h - 130);
    g.drawString(name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '), 60, h - 70);
    g.dispose();
    return sheet;
  }

  private static void sails(Graphics2D g, Random random) {
    int mast = 900 + random.nextInt(300);
    int deck = 1250 + random.nextInt(60);
    g.draw(new Line2D.Double(mast, 120, mast + 25, deck));
    g.draw(new Line2D.Double(mast + 14, 120, mast + 40, deck));
    sail(g, random, mast + 30, 180, mast + 60, deck - 90, mast + 900, deck - 140);
    sail(g, random, mast - 30, 220, mast - 60, deck - 50, mast - 650, deck - 20);
    sail(g, random, mast - 80, 420, mast - 330, deck - 60, mast - 780, deck - 10);
    g.draw(new CubicCurve2D.Double(160, deck, 600, deck + 90, 1700, deck + 80, 2250, deck - 20));
    g.draw(new CubicCurve2D.Double(160, deck, 420, deck + 330, 1900, deck + 330, 2250, deck - 20));
    g.setFont(new Font(Font.SERIF, Font.ITALIC, 22));
    for (int i = 0; i < 16; i++) {
      double x = 180 + random.nextInt(2000);
      double y = 140 + random.nextInt(1100);
      double length = 60 + random.nextInt(200);
      g.draw(new Line2D.Double(x, y, x + length, y));
      g.draw(new Line2D.Double(x, y - 9, x, y + 9));
      g.draw(new Line2D.Double(x + length, y - 9, x + length, y + 9));
      g.drawString((20 + random.nextInt(900)) + "", (float) (x + length / 2 - 15), (float) y - 6);
    }
  }

  private static void sail(
      Graphics2D g,
      Random random,
      double ax,
      double ay,
      double bx,
      double by,
      double cx,
      double cy) {
    GeneralPath sail = new GeneralPath();
    sail.moveTo(ax, ay);
    sail.lineTo(bx, by);
    sail.lineTo(cx, cy);
    sail.closePath();
    g.draw(sail);
    int seams = 9 + random.nextInt(5);
    for (int i = 1; i < seams; i++) {
      double t = (double) i / seams;
      g.draw(
          new Line2D.Double(
              ax + (bx - ax) * t,
              ay + (by - ay) * t,
              ax + (cx - ax) * t,
              ay + (cy - ay) * t + random.nextInt(9)));
    }
    for (double t : new double[] {0.55, 0.7, 0.85}) {
      for (int i = 0; i < 14; i++) {
        double s = t * i / 14;
        g.draw(
            new Line2D.Double(
                ax + (bx - ax) * t + (cx - bx) * s,
                ay + (by - ay) * t + (cy - by) * s,
                ax + (bx - ax) * t + (cx - bx) * s + 5,
                ay + (by - ay) * t + (cy - by) * s + 26));
      }
    }
  }

  private static void arrangement(Graphics2D g, Random random) {
    for (int view = 0; view < 3; view++) {
      int y = 330 + 560 * view;
      g.draw(new CubicCurve2D.Double(150, y, 500, y - 120, 1200, y - 110, 1560, y - 40));
      g.draw(new CubicCurve2D.Double(150, y, 420, y + 190, 1250, y + 200, 1560, y - 40));
      int x = 330 + random.nextInt(90);
      for (int i = 0; i < 6; i++) {
        int w = 60 + random.nextInt(160);
        int h = 40 + random.nextInt(110);
        g.drawRect(x, y - h, w, h + random.nextInt(60));
        if (random.nextBoolean()) {
          for (int k = 0; k < w; k += 11) {
            g.drawLine(x + k, y, x + Math.min(w, k + 30), y - h);
          }
        } else {
          g.draw(new Ellipse2D.Double(x + 10, y - h + 8, w / 2.5, w / 2.5));
        }
        x += w + 8 + random.nextInt(40);
      }
      g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 17));
      for (int i = 0; i < 11; i++) {
        StringBuilder note = new StringBuilder((i + 1) + " ");
        for (int k = 0; k < 18 + random.nextInt(14); k++) {
          note.append((char) ('a' + random.nextInt(26)));
          if (random.nextInt(5) == 0) {
            note.append(' ');
          }
        }
        g.drawString(note.toString(), 170 + 720 * (i % 2), y + 215 + 24 * (i / 2));
      }
    }
  }

  private static void frames(Graphics2D g, Random random) {
    for (int group = 0; group < 2; group++) {
      int cx = 640 + 1120 * group;
      int top = 240 + random.nextInt(90);
      g.draw(new Line2D.Double(cx, top - 90, cx, top + 900));
      for (int i = 0; i < 10; i++) {
        double half = 470 - 38 * i - random.nextInt(20);
        double deep = 760 - 44 * i;
        g.draw(
            new CubicCurve2D.Double(
                cx,
                top + deep,
                cx + half * 0.5,
                top + deep * 0.97,
                cx + half * 1.05,
                top + deep * 0.5,
                cx + half,
                top - 6 * i));
        g.draw(
            new CubicCurve2D.Double(
                cx,
                top + deep,
                cx - half * 0.45,
                top + deep,
                cx - half,
                top + deep * 0.6,
                cx - half * 0.96,
                top - 5 * i));
      }
    }
    g.setFont(new Font(Font.MONOSPACED, Font.PLAIN, 19));
    for (int i = 0; i < 5; i++) {
      double x = 620 + 340 * i;
      double size = 190 + random.nextInt(60);
      g.draw(new Ellipse2D.Double(x, 1330, size, size));
      for (int k = 0; k < 7; k++) {
        g.draw(
            new Arc2D.Double(
                x + random.nextInt(60),
                1360 + random.nextInt(60),
                40 + random.nextInt(90),
                40 + random.nextInt(90),
                random.nextInt(360),
                60 + random.nextInt(200),
                Arc2D.OPEN));
      }
      g.drawString("detail " + (char) ('A' + random.nextInt(20)), (float) x + 40, 1622);
    }
  }
}

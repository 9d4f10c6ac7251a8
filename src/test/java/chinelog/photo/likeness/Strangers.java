package chinelog.photo.likeness;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Random;

/** Photographs that show no drawing, made up: what lies about in a workshop and around it. */
enum Strangers {
  PLANKS,
  BRICKS,
  CLOTH,
  TOOLS,
  LEAVES,
  LABELS,
  RULER,
  TILES;

  BufferedImage make(Random random) {
    int w = Tripod.W;
    int h = Tripod.H;
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(tone(random, 90, 190));
    g.fillRect(0, 0, w, h);
    g.rotate((random.nextDouble() - 0.5) * 0.8, w / 2.0, h / 2.0);
    switch (this) {
      case PLANKS -> planks(g, random);
      case BRICKS -> bricks(g, random, 150, 60, new Color(0x9A4A34), new Color(0xB8B0A4));
      case TILES -> bricks(g, random, 130, 130, new Color(0xE6E8EA), new Color(0x9AA0A6));
      case CLOTH -> cloth(g, random);
      case TOOLS -> tools(g, random);
      case LEAVES -> leaves(g, random);
      case LABELS -> labels(g, random);
      case RULER -> ruler(g, random);
    }
    g.dispose();
    return Tripod.grainy(
        Tripod.blurred(image, 0.5 + random.nextDouble()), 2 + 4 * random.nextDouble(), random);
  }

  private static Color tone(Random random, int from, int to) {
    return new Color(
        from + random.nextInt(to - from),
        from + random.nextInt(to - from),
        from + random.nextInt(to - from));
  }

  private static void planks(Graphics2D g, Random random) {
    for (int y = -600; y < 1800; ) {
      int wide = 40 + random.nextInt(160);
      int base = 120 + random.nextInt(90);
      g.setColor(new Color(base, (int) (base * 0.72), (int) (base * 0.45)));
      g.fillRect(-600, y, 2800, wide - 3);
      g.setColor(new Color((int) (base * 0.8), (int) (base * 0.55), (int) (base * 0.32)));
      for (int i = 0; i < 9; i++) {
        int at = y + random.nextInt(wide);
        g.drawLine(-600, at, 2200, at + random.nextInt(20) - 10);
      }
      y += wide;
    }
  }

  private static void bricks(Graphics2D g, Random random, int w, int h, Color brick, Color mortar) {
    g.setColor(mortar);
    g.fillRect(-900, -900, 3600, 3200);
    for (int row = -10; row < 2400 / h; row++) {
      for (int x = -900 + (row % 2) * w / 2; x < 2600; x += w) {
        double shade = 0.8 + 0.25 * random.nextDouble();
        g.setColor(
            new Color(
                (int) Math.min(255, brick.getRed() * shade),
                (int) Math.min(255, brick.getGreen() * shade),
                (int) Math.min(255, brick.getBlue() * shade)));
        g.fillRect(x, row * h, w - 6, h - 6);
      }
    }
  }

  private static void cloth(Graphics2D g, Random random) {
    int step = 9 + random.nextInt(14);
    Color one = tone(random, 120, 230);
    Color other = tone(random, 60, 160);
    for (int y = -900; y < 2200; y += step) {
      for (int x = -900; x < 2600; x += step) {
        g.setColor((x / step + y / step) % 2 == 0 ? one : other);
        g.fillRect(x, y, step - 1, step - 1);
      }
    }
  }

  private static void tools(Graphics2D g, Random random) {
    for (int i = 0; i < 25; i++) {
      g.setColor(tone(random, 20, 240));
      g.setStroke(new BasicStroke(6 + random.nextInt(60), BasicStroke.CAP_ROUND, 0));
      int x = random.nextInt(1600);
      int y = random.nextInt(1200);
      g.drawLine(x, y, x + random.nextInt(700) - 350, y + random.nextInt(700) - 350);
      g.fillOval(random.nextInt(1600), random.nextInt(1200), random.nextInt(260), 90);
    }
  }

  private static void leaves(Graphics2D g, Random random) {
    for (int i = 0; i < 2600; i++) {
      int v = 40 + random.nextInt(150);
      g.setColor(new Color(v / 2, v, v / 4));
      g.fillOval(
          random.nextInt(2400) - 400, random.nextInt(2000) - 400, 8 + random.nextInt(80), 14);
    }
  }

  /** Tins and boxes with a word or two in large letters. */
  private static void labels(Graphics2D g, Random random) {
    for (int i = 0; i < 8; i++) {
      int x = random.nextInt(1400);
      int y = random.nextInt(1000);
      g.setColor(tone(random, 30, 250));
      g.fillRoundRect(x, y, 260, 330, 30, 30);
      g.setColor(tone(random, 150, 255));
      g.fillRect(x, y + 90, 260, 130);
      g.setColor(tone(random, 0, 90));
      g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 48));
      StringBuilder word = new StringBuilder();
      for (int k = 0; k < 7; k++) {
        word.append((char) ('A' + random.nextInt(26)));
      }
      g.drawString(word.toString(), x + 10, y + 170);
    }
  }

  private static void ruler(Graphics2D g, Random random) {
    planks(g, random);
    for (int k = 0; k < 2; k++) {
      int y = 200 + random.nextInt(700);
      g.setColor(new Color(0xC9CCCE));
      g.fillRect(-500, y, 2700, 90);
      g.setColor(Color.DARK_GRAY);
      g.setStroke(new BasicStroke(2));
      g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 26));
      for (int i = 0; i < 270; i++) {
        g.drawLine(-500 + 10 * i, y, -500 + 10 * i, y + (i % 10 == 0 ? 40 : i % 5 == 0 ? 28 : 18));
        if (i % 10 == 0) {
          g.drawString(Integer.toString(i / 10), -495 + 10 * i, y + 70);
        }
      }
    }
  }
}

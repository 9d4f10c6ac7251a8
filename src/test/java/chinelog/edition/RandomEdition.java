package chinelog.edition;

import static chinelog.edition.SampleText.p;
import static chinelog.edition.SampleText.runs;

import chinelog.Like;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Line;
import chinelog.edition.Edition.Stage;
import chinelog.edition.Picture.Rendition;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;

/**
 * Editions of invented builds: entries of all lengths with plates of all shapes, lists, tables,
 * headings, notes and figures, in an order that a number decides.
 */
public final class RandomEdition {

  private static final List<String> NONE = List.of();

  private static final List<String> WORDS =
      List.of(
          "plank",
          "mould",
          "keelson",
          "the",
          "a",
          "of",
          "and",
          "with",
          "batten",
          "glue",
          "sheer",
          "stem",
          "transom",
          "was",
          "sanded",
          "faired",
          "until",
          "it",
          "lay",
          "true",
          "against",
          "every",
          "station",
          "in",
          "evening",
          "light",
          "two",
          "clamps",
          "held",
          "garboard",
          "while",
          "resin",
          "set",
          "slowly",
          "because",
          "workshop",
          "stayed",
          "cold",
          "again",
          "by",
          "noon");

  /** Width and height of a picture, in pixels; shapes are what matters here. */
  private static final int[][] SHAPES = {
    {1600, 1200}, {1600, 1200}, {1600, 1067}, {1200, 1600}, {1600, 900}, {1400, 1400}, {900, 1600}
  };

  private final Random random;
  private final List<Plate> plates = new ArrayList<>();

  private RandomEdition(long number) {
    this.random = new Random(number);
  }

  /** The same number gives the same edition. */
  public static Edition of(long number) {
    return new RandomEdition(number).edition();
  }

  private Edition edition() {
    int stageCount = 2 + random.nextInt(4);
    int day = 0;
    List<Stage> stages = new ArrayList<>();
    List<Entry> entries = new ArrayList<>();
    for (int i = 0; i < stageCount; i++) {
      String stage = "stage-" + i;
      List<String> own = new ArrayList<>();
      int count = 1 + random.nextInt(6);
      for (int k = 0; k < count; k++) {
        Entry entry = entry(stage, day++);
        entries.add(entry);
        own.add(entry.id());
      }
      stages.add(
          new Stage(
              stage,
              "Stage of " + word(),
              List.of(p(sentences(2))),
              "January to March 2026",
              Edition.Progress.DONE,
              own,
              List.of(new Line("Hours", (5 + random.nextInt(40)) + " h", "", null)),
              NONE));
    }
    return Edition.seal(
        Like.but(
            SampleEdition.bare(),
            "locale",
            Locale.UK,
            "paper",
            random.nextInt(4) == 0 ? Edition.Paper.LETTER : Edition.Paper.A4,
            "stages",
            stages,
            "entries",
            entries,
            "plates",
            plates));
  }

  private Entry entry(String stage, int day) {
    String id = "day-" + day;
    List<Text.Block> text = new ArrayList<>();
    int blocks = 2 + random.nextInt(9);
    for (int i = 0; i < blocks; i++) {
      int kind = random.nextInt(20);
      if (kind < 10) {
        text.add(p(sentences(1 + random.nextInt(7)) + note()));
      } else if (kind < 15) {
        int together = random.nextInt(6) == 0 ? 2 : 1;
        for (int k = 0; k < together; k++) {
          text.add(new Text.PlateHere(plate(stage, id), NONE));
        }
      } else if (kind == 15) {
        text.add(list());
      } else if (kind == 16 && i > 0) {
        text.add(new Text.Heading(1, id + "-h" + i, runs("On the " + word()), NONE));
        text.add(p(sentences(2)));
      } else if (kind == 17) {
        text.add(table());
      } else {
        text.add(p(sentences(2)));
      }
    }
    List<Plate> after = new ArrayList<>();
    for (int i = random.nextInt(3); i > 1; i--) {
      after.add(plate(stage, id));
    }
    return new Entry(
        id,
        LocalDate.of(2026, 1, 5).plusDays(day),
        stage,
        "What was done to the " + word(),
        text,
        after,
        lines(random.nextInt(3), "mm"),
        lines(random.nextInt(3), "g"),
        lines(random.nextInt(2), "h"),
        List.of(),
        NONE);
  }

  private List<Line> lines(int count, String unit) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      lines.add(new Line("The " + word(), (1 + random.nextInt(90)) + " " + unit, "", null));
    }
    return lines;
  }

  private Text.Block list() {
    List<List<Text.Block>> items = new ArrayList<>();
    for (int i = 2 + random.nextInt(5); i > 0; i--) {
      items.add(List.of(p(sentences(1))));
    }
    return new Text.Items(0, items, NONE);
  }

  private Text.Block table() {
    List<List<List<Text.Run>>> rows = new ArrayList<>();
    for (int i = 3 + random.nextInt(16); i > 0; i--) {
      rows.add(List.of(runs("Station " + i), runs(random.nextInt(400) + " mm"), runs(word())));
    }
    return new Text.Grid(
        List.of(runs("Station"), runs("Half-breadth"), runs("Taken from")),
        rows,
        List.of(false, true, false),
        NONE);
  }

  private String note() {
    return random.nextInt(8) == 0 ? "^[" + sentences(1) + "]" : "";
  }

  private String word() {
    return WORDS.get(random.nextInt(WORDS.size()));
  }

  private String sentences(int count) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < count; i++) {
      int length = 5 + random.nextInt(18);
      for (int k = 0; k < length; k++) {
        String word = word();
        text.append(k == 0 ? word.substring(0, 1).toUpperCase(Locale.ROOT) : word.substring(0, 1))
            .append(word.substring(1))
            .append(k == length - 1 ? ". " : " ");
      }
    }
    return text.toString().strip();
  }

  private Plate plate(String stage, String entry) {
    int number = plates.size() + 1;
    int[] shape = SHAPES[random.nextInt(SHAPES.length)];
    byte[] jpeg = painted(shape[0] / 25, shape[1] / 25);
    Picture picture =
        new Picture(
            "plate-%03d".formatted(number),
            List.of(
                new Rendition(shape[0] / 25, shape[1] / 25, () -> new ByteArrayInputStream(jpeg))),
            List.of());
    Plate plate =
        new Plate(
            number,
            picture,
            runs(sentences(1 + random.nextInt(3))),
            "A hull on a bench.",
            null,
            stage,
            entry,
            List.of(),
            NONE);
    plates.add(plate);
    return plate;
  }

  private static byte[] painted(int widthPx, int heightPx) {
    try {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ImageIO.write(new BufferedImage(widthPx, heightPx, BufferedImage.TYPE_INT_RGB), "jpeg", out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

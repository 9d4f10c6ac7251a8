package chinelog.edition;

import static chinelog.edition.SampleText.p;
import static chinelog.edition.SampleText.runs;

import chinelog.Like;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Stage;
import chinelog.edition.Picture.Rendition;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;

/** Editions of builds that went on for years, to see how long they take. */
public final class LongEdition {

  private static final List<String> NONE = List.of();
  private static final int STAGES = 8;
  private static final int WIDTH_PX = 1600;

  /** So many pictures are painted; each is the file of several plates. */
  private static final int PAINTED = 8;

  /** Strength of the grain that makes a JPEG of this size about 300 KB heavy. */
  private static final int GRAIN = 27;

  private LongEdition() {}

  /**
   * Entries in eight stages, and plates shared out among them.
   *
   * @param work an empty folder for the pictures, which are read when they are printed
   */
  public static Edition ofPlates(int entries, int plates, Path work) throws IOException {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < PAINTED; i++) {
      files.add(Files.write(work.resolve("painted-" + i + ".jpg"), painted(i)));
    }
    List<Entry> sample = SampleEdition.forPublic().contents().entries();
    List<Plate> all = new ArrayList<>();
    List<Entry> told = new ArrayList<>();
    for (int i = 0; i < entries; i++) {
      String id = "day-" + i;
      String stage = "stage-" + i * STAGES / entries;
      List<Text.Block> text = new ArrayList<>(prose(sample.get(i % sample.size())));
      while (all.size() < (long) plates * (i + 1) / entries) {
        Plate plate = plate(all.size() + 1, files, stage, id);
        all.add(plate);
        text.add(Math.min(text.size(), 1 + 2 * (all.size() % 3)), here(plate));
      }
      told.add(entry(id, stage, i, text));
    }
    return edition(told, all);
  }

  /** One entry with one table. */
  public static Edition ofRows(int rows) {
    List<List<List<Text.Run>>> cells = new ArrayList<>();
    for (int i = 1; i <= rows; i++) {
      cells.add(
          List.of(
              runs("Station " + i),
              runs(String.format(Locale.ROOT, "%.1f mm", 350 * Math.sin(i / 7.0))),
              runs("1 3/16 in"),
              runs("Sheer, taken with the long batten")));
    }
    Text.Block table =
        new Text.Grid(
            List.of(runs("Station"), runs("Half-breadth"), runs("Height"), runs("Taken from")),
            cells,
            List.of(false, true, true, false),
            NONE);
    return edition(
        List.of(entry("day-0", "stage-0", 0, List.of(p("The offsets."), table))), NONE_YET);
  }

  private static final List<Plate> NONE_YET = List.of();

  /** One entry of some blocks. */
  static Edition ofBlocks(List<Text.Block> text) {
    return edition(List.of(entry("day-0", "stage-0", 0, text)), List.of());
  }

  /** One entry of one paragraph. */
  public static Edition ofText(String text) {
    return edition(List.of(entry("day-0", "stage-0", 0, List.of(p(text)))), List.of());
  }

  private static List<Text.Block> prose(Entry entry) {
    return entry.text().stream()
        .filter(b -> b instanceof Text.Paragraph || b instanceof Text.Items)
        .toList();
  }

  private static Text.Block here(Plate plate) {
    return new Text.PlateHere(plate, NONE);
  }

  private static Entry entry(String id, String stage, int day, List<Text.Block> text) {
    return new Entry(
        id,
        LocalDate.of(2026, 1, 5).plusDays(day),
        stage,
        "What was done on day " + (day + 1),
        text,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        NONE);
  }

  private static Plate plate(int number, List<Path> files, String stage, String entry) {
    Path file = files.get(number % files.size());
    int height = number % PAINTED < PAINTED * 7 / 8 ? WIDTH_PX * 3 / 4 : WIDTH_PX * 4 / 3;
    Picture picture =
        new Picture(
            "plate-%03d".formatted(number),
            List.of(new Rendition(WIDTH_PX, height, () -> Files.newInputStream(file))),
            List.of());
    return new Plate(
        number,
        picture,
        runs("The hull as it stood in the evening, seen from the port quarter."),
        "A hull on a bench.",
        null,
        stage,
        entry,
        List.of(),
        NONE);
  }

  private static byte[] painted(int number) throws IOException {
    int height = number < PAINTED * 7 / 8 ? WIDTH_PX * 3 / 4 : WIDTH_PX * 4 / 3;
    BufferedImage image = new BufferedImage(WIDTH_PX, height, BufferedImage.TYPE_INT_RGB);
    Random grain = new Random(number);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < WIDTH_PX; x++) {
        int light = 60 + 120 * x / WIDTH_PX + grain.nextInt(GRAIN);
        image.setRGB(x, y, light << 16 | light << 8 | light - y * 40 / height);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", out);
    return out.toByteArray();
  }

  private static Edition edition(List<Entry> entries, List<Plate> plates) {
    Contents sample = SampleEdition.forPublic().contents();
    List<Stage> stages = new ArrayList<>();
    for (int i = 0; i < STAGES; i++) {
      Stage like = sample.stages().get(i % sample.stages().size());
      String id = "stage-" + i;
      List<String> own = entries.stream().filter(e -> e.stage().equals(id)).map(Entry::id).toList();
      stages.add(Like.but(like, "id", id, "entries", own, "under", NONE));
    }
    return Edition.seal(
        Like.but(SampleEdition.bare(), "stages", stages, "entries", entries, "plates", plates));
  }
}

package chinelog.publish;

import com.sun.management.OperatingSystemMXBean;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/**
 * Prints how long the publishing of a large log takes: the first time, again, with one note
 * changed, and with one photograph more, step by step.
 *
 * <p>Arguments: an empty folder to work in, a number of photographs such as 2000, and what the
 * readers get, such as {@code site} or {@code site,book}; and how many pixels wide photographs are,
 * 1200 if that is left out. There are two groups of readers, and one day of a hundred is under an
 * agreement.
 */
public final class PublishBenchmark {

  private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);
  private static final int DAYS = 100;
  private static final List<String> WORDS =
      List.of(
          ("a strip of lime was laid along the sheer and held with pins while glue took hold then"
                  + " faired by hand with the long board until no light showed under the batten at"
                  + " mould seven")
              .split(" "));

  private PublishBenchmark() {}

  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path log = Path.of(arguments[0]).toAbsolutePath();
    int photos = Integer.parseInt(arguments[1]);
    int widthPx = arguments.length > 3 ? Integer.parseInt(arguments[3]) : 1200;
    write(log, photos, DAYS, arguments[2], widthPx);
    publish(log, "first time");
    publish(log, "again");
    Path note = log.resolve("entries/" + FIRST.plusDays(3) + ".md");
    Files.writeString(note, Files.readString(note) + "\nA word more.\n");
    publish(log, "with one note changed");
    photo(log, photos, DAYS, widthPx);
    publish(log, "with one photograph more");
    Files.delete(log.resolve(name(photos, DAYS)));
    publish(log, "without it");
  }

  /** Lays down a log of a note a day, over which so many photographs are spread. */
  public static void write(Path log, int photos, int days, String outputs, int widthPx)
      throws IOException {
    Files.createDirectories(log.resolve("photos"));
    Files.createDirectories(log.resolve("entries"));
    Files.writeString(
        log.resolve("log.yaml"),
        """
        title: A long build
        subject: Merrow
        scale: 1:16
        agreements:
          lines: {with: Skerrick Yard, from: 2026-01-01}
        readers:
          public: {gets: [%1$s]}
          workshop: {gets: [%1$s], party-to: lines}
        """
            .formatted(outputs));
    Random random = new Random(1);
    for (int day = 0; day < days; day++) {
      StringBuilder text = new StringBuilder("---\ndate: " + FIRST.plusDays(day) + "\n");
      text.append("stage: ").append(day < days / 2 ? "planking" : "sheathing").append('\n');
      text.append(day == days / 2 ? "under: lines\n" : "").append("---\n# Day ").append(day);
      for (int i = 0; i < 240; i++) {
        text.append(i % 60 == 0 ? "\n\n" : " ").append(WORDS.get(random.nextInt(WORDS.size())));
      }
      Files.writeString(log.resolve("entries/" + FIRST.plusDays(day) + ".md"), text + ".\n");
    }
    IntStream.range(0, photos).parallel().forEach(i -> photo(log, i, days, widthPx));
  }

  private static String name(int photo, int days) {
    return "photos/%s_%04d.jpg".formatted(FIRST.plusDays(photo % days), photo);
  }

  /** Large and small patches of colour and some noise, unlike those of any other number. */
  private static void photo(Path log, int number, int days, int w) {
    Random random = new Random(number);
    int h = w * 3 / 4;
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    for (int size = w / 2; size > 8; size = size * 3 / 4) {
      for (int i = 0; i < 24; i++) {
        pen.setColor(new Color(random.nextInt(0x1000000)));
        pen.fillRect(random.nextInt(w) - size / 2, random.nextInt(h) - size / 2, size, size);
      }
    }
    pen.dispose();
    int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] ^= random.nextInt() & 0x070707;
    }
    try {
      ImageIO.write(image, "jpg", log.resolve(name(number, days)).toFile());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static void publish(Path log, String time) throws IOException, InterruptedException {
    // What was written a moment ago may still change unseen.
    Thread.sleep(3000);
    Steps steps = new Steps();
    LocalDate day = FIRST.plusDays(DAYS);
    Outcome outcome = new Publisher(log, day, day, ZoneOffset.UTC, steps).publish(List.of());
    steps.told("");
    steps.total(time + ", " + (outcome.hasErrors() ? outcome.problems() : "clean"));
  }

  /** Prints how long each step took. */
  private static final class Steps implements Progress {
    private static final OperatingSystemMXBean SYSTEM =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private final long startedNanos = System.nanoTime();
    private final long startedCpu = SYSTEM.getProcessCpuTime();
    private String step = "";
    private long stepNanos = startedNanos;

    @Override
    public void begin(Step next) {
      told(next.words(Locale.UK).replaceAll("\\d+", "n"));
    }

    private synchronized void told(String plain) {
      if (!plain.equals(step)) {
        long now = System.nanoTime();
        if (now - stepNanos > 50_000_000) {
          print("    %-50s %6.2f s", step, (now - stepNanos) / 1e9);
        }
        step = plain;
        stepNanos = now;
      }
    }

    void total(String what) {
      print(
          "%s: %.2f s, CPU %.2f s",
          what,
          (System.nanoTime() - startedNanos) / 1e9,
          (SYSTEM.getProcessCpuTime() - startedCpu) / 1e9);
    }

    private static void print(String line, Object... values) {
      System.out.println(String.format(Locale.ROOT, line, values));
    }
  }
}

package chinelog.photo.derivatives;

import chinelog.log.records.PhotoFile;
import chinelog.photo.Lanczos;
import chinelog.photo.Leftovers;
import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Ssim;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.Pixels;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Prints how long derivatives of a folder of photographs take, beside a general-purpose image
 * command that makes the same four sizes with both cores, one process for all photographs of a
 * size, and how like a careful reduction they are.
 *
 * <p>Arguments: a folder of JPEGs, an empty folder to work in, and how often each photograph is
 * taken (1).
 */
final class Benchmark {

  private static final String COMMAND =
      "cd %s && time (printf '%%s\\n' %s"
          + " | xargs -P 2 -I {} sh -c 'vipsthumbnail *.jpg -s {} -o ../vips-%%s-{}.jpg[Q=82,strip]')";

  private static final int ROUNDS = 3;

  private final Path work;
  private final Logs logs;

  private Benchmark(Path photos, Path work, int times) throws IOException {
    this.work = work;
    this.logs = new Logs(work);
    try (Stream<Path> files = Files.list(photos)) {
      for (Path file : files.sorted().toList()) {
        byte[] bytes = Files.readAllBytes(file);
        for (int i = 0; i < times; i++) {
          byte[] other = Arrays.copyOf(bytes, bytes.length + 4);
          other[bytes.length] = (byte) i;
          other[bytes.length + 1] = (byte) (i >> 8);
          logs.photo("photos/" + i + "-" + file.getFileName(), other);
        }
      }
    }
  }

  public static void main(String[] arguments) throws IOException, InterruptedException {
    Benchmark benchmark =
        new Benchmark(
            Path.of(arguments[0]),
            Path.of(arguments[1]).toAbsolutePath(),
            arguments.length > 2 ? Integer.parseInt(arguments[2]) : 1);
    benchmark.run();
  }

  /** In turn, so that what else the machine does falls on all; the first round is a cold start. */
  private void run() throws IOException, InterruptedException {
    for (int round = 1; round <= ROUNDS; round++) {
      say("round %d", round);
      Times ours = measure();
      Times command = command();
      if (command.wall > 0) {
        say("vipsthumbnail: %.2f s, CPU %.2f s", command.wall, command.cpu);
        say("ratios: wall %.2f, CPU %.2f", ours.wall / command.wall, ours.cpu / command.cpu);
      }
    }
    similarity(new Darkroom(work));
  }

  private record Times(double wall, double cpu) {}

  private Times measure() throws IOException {
    if (Files.exists(work.resolve(".chinelog"))) {
      Leftovers.delete(work.resolve(".chinelog"));
    }
    ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
    long wall = System.nanoTime();
    long cpu = cpu();
    Album album = logs.open();
    double opened = (System.nanoTime() - wall) / 1e9;
    List<Darkroom.Order> orders =
        album.photographs().stream().map(p -> new Darkroom.Order(p, List.of())).toList();
    Darkroom.Development made = new Darkroom(work).develop(orders, PhotoProgress.SILENT);
    Times times = new Times((System.nanoTime() - wall) / 1e9, (cpu() - cpu) / 1e9);
    say(
        "%d photographs, %d not printed, album %.2f s, in all %.2f s, CPU %.2f s, heap %d MiB",
        made.prints().size(), made.problems().size(), opened, times.wall, times.cpu, peakMiB());
    return times;
  }

  private static long cpu() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  private static long peakMiB() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == java.lang.management.MemoryType.HEAP)
            .map(MemoryPoolMXBean::getPeakUsage)
            .mapToLong(u -> u.getUsed())
            .sum()
        >> 20;
  }

  /**
   * Times of the command at its best, one process for all photographs of a size; noughts where it
   * is not installed.
   */
  private Times command() throws IOException, InterruptedException {
    String sizes = String.join(" ", Darkroom.LONG_EDGES_PX.stream().map(String::valueOf).toList());
    String command = String.format(Locale.ROOT, COMMAND, work.resolve("photos"), sizes);
    Process process = new ProcessBuilder("bash", "-c", command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0 || said.contains("not found")) {
      say("vipsthumbnail is not here to compare with");
      return new Times(0, 0);
    }
    return new Times(seconds(said, "real"), seconds(said, "user") + seconds(said, "sys"));
  }

  private static double seconds(String said, String what) {
    String[] parts = said.substring(said.lastIndexOf(what) + what.length()).strip().split("[ms]");
    return 60 * Double.parseDouble(parts[0]) + Double.parseDouble(parts[1]);
  }

  private record Nearness(double ssim, double most, String what) {}

  private void similarity(Darkroom darkroom) throws IOException {
    List<Nearness> all = new ArrayList<>();
    List<Photograph> photographs = logs.open().photographs();
    for (Photograph photograph : photographs.subList(0, Math.min(12, photographs.size()))) {
      PhotoFile file = photograph.file();
      byte[] bytes = Files.readAllBytes(work.resolve(file.path()));
      Pixels full =
          Decoder.decode(PhotoKind.JPEG, bytes).upright(Orientation.of(photograph.orientation()));
      for (Darkroom.Print print : darkroom.print(photograph, List.of()).prints()) {
        Pixels made = Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(print.jpeg()));
        byte[] careful = Lanczos.reduce(full, made.widthPx(), made.heightPx());
        double ssim = Ssim.of(careful, made.luma().bytes(), made.widthPx(), made.heightPx());
        double most = mostAtThisQuality(careful, made.widthPx(), made.heightPx());
        all.add(new Nearness(ssim, most, file.path() + " at " + made.widthPx()));
      }
    }
    all.sort(Comparator.comparing(Nearness::ssim));
    say(
        "SSIM to a Lanczos reduction: mean %.4f, median %.4f, worst %.4f (%s; the reduction"
            + " itself, encoded as this is: %.4f)",
        all.stream().mapToDouble(Nearness::ssim).average().orElse(0),
        all.get(all.size() / 2).ssim,
        all.get(0).ssim,
        all.get(0).what,
        all.get(0).most);
  }

  /** What the encoding alone costs. */
  private static double mostAtThisQuality(byte[] luma, int w, int h) throws IOException {
    byte[] bgr = new byte[3 * luma.length];
    for (int i = 0; i < bgr.length; i++) {
      bgr[i] = luma[i / 3];
    }
    byte[] jpeg = new Pixels(w, h, bgr).encoded();
    return Ssim.of(luma, Decoder.decode(PhotoKind.JPEG, jpeg).luma().bytes(), w, h);
  }

  private static void say(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}

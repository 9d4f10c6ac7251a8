package chinelog.photo.derivatives;

import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shots;
import chinelog.photo.album.Album;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints how time and memory grow with the number of photographs, first and second time.
 *
 * <p>Arguments: an empty folder to work in, and numbers of photographs such as 1000 3000 10000. Run
 * it with {@code -XX:MaxNewSize=256m} as the launcher does: without, Java lets more of what is used
 * up lie about where there is room.
 */
final class ScaleBenchmark {

  private ScaleBenchmark() {}

  public static void main(String[] arguments) throws IOException {
    byte[] shot =
        Shots.withExif(
            Shots.jpeg(Shots.scene(640, 480, 1), 0.9), 1, "T-20", "2026:04:01 10:00:00", "");
    for (String number : Arrays.asList(arguments).subList(1, arguments.length)) {
      int count = Integer.parseInt(number);
      Path folder = Path.of(arguments[0]).toAbsolutePath().resolve(number);
      Logs logs = new Logs(folder);
      for (int i = 0; i < count; i++) {
        byte[] other = Arrays.copyOf(shot, shot.length + 4);
        other[shot.length] = (byte) i;
        other[shot.length + 1] = (byte) (i >> 8);
        logs.photo(String.format(Locale.ROOT, "photos/%05d.jpg", i), other);
      }
      publish(logs, folder, "first");
      publish(logs, folder, "second");
    }
  }

  private static void publish(Logs logs, Path folder, String time) throws IOException {
    ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long wall = System.nanoTime();
    long cpu = system.getProcessCpuTime();
    Album album = logs.open();
    List<Darkroom.Order> orders =
        album.photographs().stream().map(p -> new Darkroom.Order(p, List.of())).toList();
    int made = new Darkroom(folder).develop(orders, PhotoProgress.SILENT).prints().size();
    long peak =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .mapToLong(p -> p.getPeakUsage().getUsed())
            .sum();
    System.out.println(
        String.format(
            Locale.ROOT,
            "%d photographs, %s time: %.2f s, CPU %.2f s, peak heap %d MiB",
            made,
            time,
            (System.nanoTime() - wall) / 1e9,
            (system.getProcessCpuTime() - cpu) / 1e9,
            peak >> 20));
  }
}

package chinelog.book;

import chinelog.edition.Edition;
import chinelog.edition.LongEdition;
import chinelog.markup.Theme;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Prints how long a build book of 300 pages with 400 plates of 300 KB each takes, and a table of
 * 4,000 rows, with the processor time and the most heap that was in use. To be run from the folder
 * of the checkout, once it is built:
 *
 * <pre>
 * mvn -q dependency:build-classpath -Dmdep.outputFile=target/classpath
 * java -Xmx512m -cp target/classes:target/test-classes:$(cat target/classpath) \
 *     chinelog.book.Benchmark table
 * </pre>
 *
 * <p>Arguments: {@code plates} or {@code table} (both), and an empty folder to work in (one that is
 * deleted afterwards).
 */
final class Benchmark {

  private static final int ENTRIES = 300;
  private static final int PLATES = 400;
  private static final int ROWS = 4000;

  private Benchmark() {}

  public static void main(String[] arguments) throws IOException {
    List<String> wanted = arguments.length > 0 ? List.of(arguments[0]) : List.of("plates", "table");
    Path work =
        arguments.length > 1 ? Path.of(arguments[1]) : Files.createTempDirectory("book-benchmark");
    Path pdf = work.resolve("book.pdf");
    if (wanted.contains("plates")) {
      measure("book", LongEdition.ofPlates(ENTRIES, PLATES, work), pdf);
    }
    if (wanted.contains("table")) {
      measure("table of " + ROWS + " rows", LongEdition.ofRows(ROWS), pdf);
    }
    if (arguments.length < 2) {
      try (var files = Files.list(work)) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
      }
      Files.delete(work);
    }
  }

  private static void measure(String what, Edition edition, Path pdf) throws IOException {
    heap().forEach(MemoryPoolMXBean::resetPeakUsage);
    long wall = System.nanoTime();
    long cpu = cpu();
    long own = ownCpu();
    Press.printBuildBook(
        edition, Theme.load(Theme.USUAL, null), Press.Options.of(edition, false), pdf);
    double wallSeconds = (System.nanoTime() - wall) / 1e9;
    double cpuSeconds = (cpu() - cpu) / 1e9;
    double ownSeconds = (ownCpu() - own) / 1e9;
    long peak = heap().stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() >> 20;
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      System.out.println(
          String.format(
              Locale.ROOT,
              "%s: %d pages, %d pictures, %.1f MB; wall %.1f s, CPU %.1f s (%.1f s of it printing, the rest is the JVM's compiler and collector), peak heap %d MiB of %d",
              what,
              document.getNumberOfPages(),
              pictures(document),
              Files.size(pdf) / 1e6,
              wallSeconds,
              cpuSeconds,
              ownSeconds,
              peak,
              Runtime.getRuntime().maxMemory() >> 20));
    }
  }

  private static int pictures(PDDocument document) {
    int count = 0;
    for (PDPage page : document.getPages()) {
      for (COSName name : page.getResources().getXObjectNames()) {
        count += page.getResources().isImageXObject(name) ? 1 : 0;
      }
    }
    return count;
  }

  private static List<MemoryPoolMXBean> heap() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(pool -> pool.getType() == MemoryType.HEAP)
        .toList();
  }

  private static long ownCpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static long cpu() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }
}

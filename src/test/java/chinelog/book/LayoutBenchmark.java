package chinelog.book;

import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.edition.RandomEdition;
import chinelog.markup.Theme;
import chinelog.publish.DemoEditions;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Prints for each build book how much of its pages has been left white, and the processor time: for
 * the readers of a log ({@code demo sample-log}; a copy of it, as photographs are prepared in the
 * folder), or for generated editions ({@code random 1 21}).
 *
 * <pre>
 * mvn -q dependency:build-classpath -Dmdep.outputFile=target/classpath
 * java -cp target/classes:target/test-classes:$(cat target/classpath) \
 *     chinelog.book.LayoutBenchmark random 1 21
 * </pre>
 */
final class LayoutBenchmark {

  private LayoutBenchmark() {}

  public static void main(String[] arguments) throws IOException {
    Path pdf = Files.createTempFile("layout-benchmark", ".pdf");
    try {
      double white = 0;
      double seconds = 0;
      for (Map.Entry<String, Edition> edition : editions(List.of(arguments)).entrySet()) {
        long cpu = cpu();
        Press.Options options = Press.Options.of(edition.getValue(), false);
        Press.printBuildBook(edition.getValue(), Theme.load(Theme.USUAL, null), options, pdf);
        double own = (cpu() - cpu) / 1e9;
        double ownWhite = white(pdf, Trim.ofBook(options.paper()));
        white += ownWhite;
        seconds += own;
        say("%s: white of %.1f pages, CPU %.1f s", edition.getKey(), ownWhite, own);
      }
      say("together: white of %.1f pages, CPU %.1f s", white, seconds);
    } finally {
      Files.delete(pdf);
    }
  }

  /** How many pages the white of all pages would fill. */
  private static double white(Path pdf, Trim trim) throws IOException {
    double white = 0;
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (PDPage page : document.getPages()) {
        double filled =
            PageMarks.filledMm(PageMarks.of(page), trim.margins.topMm(), trim.textHeightMm());
        white += 1 - filled / trim.textHeightMm();
      }
    }
    return white;
  }

  private static Map<String, Edition> editions(List<String> arguments) throws IOException {
    if (arguments.get(0).equals("demo")) {
      return DemoEditions.of(Path.of(arguments.get(1)));
    }
    Map<String, Edition> editions = new LinkedHashMap<>();
    int end = Integer.parseInt(arguments.get(2));
    for (int i = Integer.parseInt(arguments.get(1)); i < end; i++) {
      editions.put("random-" + i, RandomEdition.of(i));
    }
    return editions;
  }

  private static void say(String words, Object... values) {
    System.out.println(String.format(Locale.ROOT, words, values));
  }

  private static long cpu() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }
}

package chinelog.book;

import chinelog.book.page.PageSearch;
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

/**
 * Prints for each build book how often it was laid out until it was printed, how white its pages
 * have come out, and the processor time: for the readers of a log ({@code demo sample-log}; a copy
 * of it, as photographs are prepared in the folder), or for generated editions ({@code random 1
 * 21}).
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
        PageSearch.Printed printed =
            Press.buildBook(
                edition.getValue(),
                Theme.load(Theme.USUAL, null),
                Press.Options.of(edition.getValue(), false),
                pdf);
        double own = (cpu() - cpu) / 1e9;
        white += printed.white();
        seconds += own;
        say(
            "%s: %d layouts, white %.3f, CPU %.1f s",
            edition.getKey(), printed.layouts(), printed.white(), own);
      }
      say("together: white %.3f, CPU %.1f s", white, seconds);
    } finally {
      Files.delete(pdf);
    }
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

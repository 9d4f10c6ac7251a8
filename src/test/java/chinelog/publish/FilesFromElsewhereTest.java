package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures and drawings from elsewhere, as a log's own: refused clearly, or published clean. */
class FilesFromElsewhereTest {

  /** Every file with 1; by default one in so many, to keep the run short. */
  private static final int ONE_IN = Integer.getInteger("chinelog.corpus-one-in", 20);

  @TempDir Path temp;

  @Test
  void everyFileIsRefusedClearlyOrPublishedClean() throws IOException {
    Path corpus = Path.of(System.getProperty("chinelog.shared", "../shared")).resolve("corpus");
    assumeTrue(Files.isDirectory(corpus), corpus + " is not here, so this is not tried");
    List<Path> files;
    try (Stream<Path> all = Files.walk(corpus)) {
      files = all.filter(f -> folder(f) != null && Files.isRegularFile(f)).sorted().toList();
    }
    SortedMap<String, Integer> outcomes = new TreeMap<>();
    for (int i = 0; i < files.size(); i++) {
      // Those that carry scripts are few, and tried always.
      boolean scripts = files.get(i).getParent().getFileName().toString().matches("(08|15)-.*");
      if (i % ONE_IN != 0 && !scripts) {
        continue;
      }
      outcomes.merge(outcome(files.get(i), temp.resolve("log" + i)), 1, Integer::sum);
    }
    assertThat(outcomes.keySet()).as(outcomes::toString).isSubsetOf("published clean", "refused");
    System.getLogger(FilesFromElsewhereTest.class.getName())
        .log(System.Logger.Level.INFO, outcomes::toString);
  }

  private static String folder(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".pdf")) {
      return "sheets";
    }
    return name.matches(".*\\.(jpe?g|png|gif|webp|tiff?|bmp|svg|heic|mpo)") ? "photos" : null;
  }

  private static String outcome(Path file, Path log) throws IOException {
    String name = file.getFileName().toString();
    String ending = name.substring(name.lastIndexOf('.')).toLowerCase(Locale.ROOT);
    Path copy = log.resolve(folder(file)).resolve("a" + ending);
    Files.createDirectories(copy.getParent());
    Files.copy(file, copy);
    Files.createDirectories(log.resolve("entries"));
    Files.writeString(log.resolve("entries/2026-03-14-a.md"), "We set the moulds up.\n");
    String release =
        folder(file).equals("sheets")
            ? "releases:\n  - {sheet: sheets/a.pdf, under: sheets, by: the yard, on: 2026-03-01,"
                + " words: yes of course, for: [public]}\n"
            : "";
    Files.writeString(log.resolve("log.yaml"), "title: Building Merrow\n" + release);
    Outcome outcome =
        new Publisher(
                log, ByteTwinsTest.AS_OF, ByteTwinsTest.AS_OF, ZoneId.of("UTC"), Progress.SILENT)
            .publish(List.of("public"));
    if (outcome.hasErrors()) {
      return "refused";
    }
    return outcome.hasLeaks()
        ? file + " leaks: " + outcome.editions().get(0).findings()
        : "published clean";
  }
}

package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Well-marked logs to which somebody does what people do: nothing meant to be withheld is
 * published. The rate of each kind of slip is printed; none may be below 99 in 100.
 */
@Timeout(3000)
@Order(2)
class CarelessTest {

  /** How many logs; each is spoilt in the way that its turn brings. */
  private static final int LOGS = Integer.getInteger("chinelog.careless-logs", Slip.ALL.size());

  /** The first of them; another draws other logs and other slips. */
  private static final int FIRST = Integer.getInteger("chinelog.first-careless-log", 0);

  /** The kinds of slip that are tried. */
  private static final List<Slip> SLIPS =
      Slip.ALL.stream()
          .filter(s -> s.kind().matches(System.getProperty("chinelog.slips", ".*")))
          .toList();

  /** One sound log is made for so many careless ones. */
  private static final int SHARED = 8;

  private static final Pattern PLATES = Pattern.compile("For public:\\s+shown .*?(\\d+) plates?");

  @TempDir private Path folder;

  @Test
  void nothingMeantToBeWithheldIsPublished() throws IOException {
    Map<String, List<String>> outcomes = new TreeMap<>();
    CarelessLog sound = null;
    int plates = 0;
    for (int i = FIRST; i < FIRST + LOGS; i++) {
      if (sound == null || i % SHARED == 0) {
        sound = CarelessLog.in(folder.resolve("sound" + i), i);
        Said said = sound.log.run("publish", "--for", "public");
        // A slip counts as stopped only where the log would else be published.
        assertThat(said.status()).as("log %s: %s", i, said.err()).isEqualTo(Main.DONE);
        plates = plates(said);
      }
      Slip slip = SLIPS.get(i % SLIPS.size());
      CarelessLog careless = sound.copied(folder.resolve("careless" + i), 1000L + i);
      if (!slip.afterPublishing()) {
        forget(careless.log);
      }
      String out = outcome(slip, careless, plates);
      outcomes.computeIfAbsent(slip.kind(), k -> new ArrayList<>()).add(out);
    }
    StringBuilder table = new StringBuilder();
    outcomes.forEach(
        (kind, all) -> {
          long leaks = all.stream().filter(o -> o.startsWith("OUT")).count();
          table.append(
              String.format(
                  Locale.ROOT,
                  "%-50s %4d  stopped %4d  not shown %4d  held %5.1f %%%n",
                  kind,
                  all.size(),
                  all.stream().filter("stopped"::equals).count(),
                  all.stream().filter("not shown"::equals).count(),
                  100.0 * (all.size() - leaks) / all.size()));
        });
    outcomes.values().stream()
        .flatMap(List::stream)
        .filter(o -> o.startsWith("OUT"))
        .forEach(o -> table.append(o).append('\n'));
    System.out.print(table);
    outcomes.forEach(
        (kind, all) -> {
          List<String> leaks = all.stream().filter(o -> o.startsWith("OUT")).toList();
          assertThat(leaks.size() * 100).as(table + "\n" + leaks).isLessThanOrEqualTo(all.size());
        });
  }

  /** As if nothing had been published before. */
  private static void forget(TinyLog log) throws IOException {
    for (String part : List.of("records", "published")) {
      Path place = log.path(part);
      if (Files.exists(place)) {
        Files.move(place, log.folder().resolveSibling(log.folder().getFileName() + part));
      }
    }
  }

  private static String outcome(Slip slip, CarelessLog log, int plates) {
    String secret = slip.deed().apply(log);
    Said said = log.log.run("publish", "--for", "public");
    if (said.status() != Main.DONE) {
      return "stopped";
    }
    boolean out =
        secret.equals(Slip.PICTURE) ? plates(said) > plates : read(log.log).contains(fold(secret));
    return out
        ? "OUT "
            + log.log.folder().getFileName()
            + " "
            + CarelessLog.LANGUAGES.get(log.language)
            + " "
            + slip.kind()
            + ": "
            + secret
        : "not shown";
  }

  private static int plates(Said said) {
    Matcher m = PLATES.matcher(said.out().replace('\n', ' '));
    return m.find() ? Integer.parseInt(m.group(1)) : 0;
  }

  /** All that a reader reads on the site. */
  private static String read(TinyLog log) {
    StringBuilder text = new StringBuilder();
    log.everything()
        .forEach(
            (name, bytes) -> {
              if (name.startsWith("published/public") && name.endsWith(".html")) {
                var page =
                    Jsoup.parse(
                        new String(
                            bytes.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1),
                            java.nio.charset.StandardCharsets.UTF_8));
                text.append(page.text()).append('\n');
                page.select("[alt]").forEach(e -> text.append(e.attr("alt")).append('\n'));
              }
            });
    return fold(text.toString());
  }

  private static String fold(String text) {
    return text.replaceAll("[\\s\\u00a0\\u202f\\u2009]+", " ").replaceAll("[\u2019']", "'");
  }
}

package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is published of twins, two logs that differ only in what everybody may not see, to the byte;
 * {@link TwinsAbroadTest} publishes them in other surroundings.
 */
@Order(2)
class ByteTwinsTest {

  static final LocalDate AS_OF = LocalDate.of(2026, 3, 20);

  @TempDir Path temp;

  /** What was kept from before, made while other things were hidden, shows in nothing. */
  @Test
  void whatIsTakenOverFromAnEarlierEditionIsWhatWouldBeMade() throws IOException {
    Path warm = new SmallLog(4, 1).write(temp.resolve("warm"));
    publish(warm, "public");
    remove(warm.resolve("entries"));
    remove(warm.resolve("photos"));
    Path cold = new SmallLog(4, 2).write(temp.resolve("cold"));
    new SmallLog(4, 2).write(warm);
    assertThat(publish(warm, "public")).isEqualTo(publish(cold, "public"));
    assertThat(tree(warm, "public")).isEqualTo(tree(cold, "public"));

    for (Path log : List.of(warm, cold)) {
      Files.writeString(
          log.resolve("entries/2026-03-14-moulds.md"),
          "\nOne more sentence.\n",
          StandardOpenOption.APPEND);
    }
    remove(cold.resolve(".chinelog"));
    publish(warm, "public");
    publish(cold, "public");
    assertThat(tree(warm, "public")).isEqualTo(tree(cold, "public"));
    assertThat(warm.resolve("records/public/audit.txt")).content().contains("not searched again");
    assertThat(cold.resolve("records/public/audit.txt"))
        .content()
        .doesNotContain("not searched again");
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  @Test
  void twinsDifferForThoseWhoMaySeeAllAndAPublicChangeShows() throws IOException {
    Path one = new SmallLog(1, 1).write(temp.resolve("one"));
    Path other = new SmallLog(1, 2).write(temp.resolve("other"));
    Path changed = new SmallLog(2, 1).write(temp.resolve("changed"));
    publish(one, "public", "workshop");
    publish(other, "workshop");
    publish(changed, "public");

    assertThat(tree(other, "workshop")).isNotEqualTo(tree(one, "workshop"));
    assertThat(tree(changed, "public")).isNotEqualTo(tree(one, "public"));
  }

  @Test
  void fileTimesTellOnlyTheDayOfTheEdition() throws IOException {
    Path log = new SmallLog(3, 3).write(temp.resolve("log"));
    publish(log, "public");

    FileTime day = FileTime.from(AS_OF.atStartOfDay().toInstant(ZoneOffset.UTC));
    try (Stream<Path> all = Files.walk(log.resolve("published/public"))) {
      for (Path path : all.toList()) {
        assertThat(Files.getLastModifiedTime(path)).as(path.toString()).isEqualTo(day);
      }
    }
  }

  /** Publishes, and returns what the maker is told of it, without the log's own folder. */
  static String publish(Path log, String... readers) throws IOException {
    Outcome outcome =
        new Publisher(log, AS_OF, AS_OF, ZoneId.of("UTC"), Progress.SILENT)
            .publish(List.of(readers));
    assertThat(outcome.problems().stream().filter(p -> p.isError())).isEmpty();
    StringBuilder told = new StringBuilder();
    for (Outcome.Made made : outcome.editions()) {
      assertThat(made.findings()).isEmpty();
      told.append(log.relativize(made.folder())).append(made.files());
      told.append(' ').append(made.entries()).append(' ').append(made.plates());
      told.append(' ').append(made.figures()).append(' ').append(made.released()).append('\n');
    }
    return told.toString();
  }

  /** Every file and folder of an edition, with its time and its bytes. */
  static Map<String, String> tree(Path log, String readers) throws IOException {
    Path edition =
        log.resolve(readers.equals("workshop") ? "workshop" : "published").resolve(readers);
    Map<String, String> tree = new TreeMap<>();
    try (Stream<Path> all = Files.walk(edition)) {
      for (Path path : all.toList()) {
        String bytes =
            Files.isDirectory(path)
                ? ""
                : Arrays.hashCode(Files.readAllBytes(path))
                    + " "
                    + HexFormat.of().toHexDigits(Files.size(path));
        tree.put(
            edition.relativize(path).toString(), Files.getLastModifiedTime(path) + " " + bytes);
      }
    }
    return tree;
  }
}

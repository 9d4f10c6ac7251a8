package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole program, started afresh each time with another language, zone, character set, number of
 * processors and salt of its sets, on twins that differ only in what everybody may not see: the
 * edition is the same to the byte, and so is what is printed, but for the log's folder and the
 * number of things withheld, which only the maker reads.
 */
@Order(2)
class ManyMachinesTest {

  private static final int MACHINES = Integer.getInteger("chinelog.machines", 2);

  private static final List<List<String>> SURROUNDINGS =
      List.of(
          List.of("-Duser.language=en", "-Duser.timezone=UTC"),
          List.of(
              "-Duser.language=tr",
              "-Duser.country=TR",
              "-Duser.timezone=Etc/GMT+12",
              "-Dfile.encoding=ISO-8859-9",
              "-XX:ActiveProcessorCount=1"),
          List.of(
              "-Duser.language=ar",
              "-Duser.country=EG",
              "-Duser.timezone=Pacific/Kiritimati",
              "-Dfile.encoding=US-ASCII",
              "-XX:ActiveProcessorCount=16"),
          List.of(
              "-Duser.language=th",
              "-Duser.country=TH",
              "-Duser.variant=TH",
              "-Duser.timezone=Asia/Kathmandu",
              "-Dfile.encoding=TIS-620",
              "-XX:+UnlockExperimentalVMOptions",
              "-XX:hashCode=2"),
          List.of("-Duser.language=de", "-Dline.separator=\r\n", "-XX:ActiveProcessorCount=2"));

  @TempDir Path temp;

  @Test
  @Timeout(600)
  void everyMachineMakesTheSameEditionAndSaysTheSame() throws Exception {
    Map<String, String> trees = new TreeMap<>();
    Map<String, String> said = new TreeMap<>();
    for (int i = 0; i < MACHINES; i++) {
      Path place = Files.createDirectories(temp.resolve("place" + i + "/" + "x".repeat(9 * i)));
      Path temporary = Files.createDirectory(place.resolve("temporary"));
      Path log = new SmallLog(7, 70 + i).write(place.resolve("log" + "0".repeat(i)));
      List<String> options =
          Stream.concat(
                  SURROUNDINGS.get(i % SURROUNDINGS.size()).stream(),
                  Stream.of("-Djava.io.tmpdir=" + temporary, "-Duser.home=" + place))
              .toList();
      Process process =
          OtherJava.start(
              place,
              options,
              "chinelog.cli.Main",
              "publish",
              log.toString(),
              "--for",
              "public",
              "--as-of",
              ByteTwinsTest.AS_OF.toString());
      OtherJava.Said heard = OtherJava.end(process, place);
      assertThat(heard.status()).as(heard.err()).isZero();
      trees.merge(
          ByteTwinsTest.tree(log, "public").toString(), "machine " + i, (a, b) -> a + ", " + b);
      said.merge(withoutCounts(heard, log), "machine " + i, (a, b) -> a + ", " + b);
      assertThat(left(temporary)).as("what is left behind").isEmpty();
    }
    assertThat(trees.values()).hasSize(1);
    assertThat(said.keySet()).hasSize(1);
  }

  private static String withoutCounts(OtherJava.Said said, Path log) {
    return (said.out() + "--\n" + said.err())
        .replace(log.toString(), "LOG")
        .lines()
        .filter(line -> !line.startsWith("  withheld "))
        .collect(Collectors.joining("\n"));
  }

  private static List<Path> left(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(p -> !p.equals(folder)).toList();
    }
  }
}

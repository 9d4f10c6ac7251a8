package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.UserDefinedFileAttributeView;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What others do to a log's files, meanwhile or before, never reaches an edition. */
@Order(2)
class InterferenceTest {

  private static final String PHOTO = "photos/a-region.jpg";

  @TempDir Path temp;

  private static Outcome publish(Path log, Progress progress) throws IOException {
    return publish(log, "UTC", progress);
  }

  /** In a zone of which the log, which names its own, takes nothing. */
  private static Outcome publish(Path log, String zone, Progress progress) throws IOException {
    return new Publisher(log, ByteTwinsTest.AS_OF, ByteTwinsTest.AS_OF, ZoneId.of(zone), progress)
        .publish(List.of("public"));
  }

  @Test
  void aPhotographReplacedAtAnyStepStopsThePublishOrChangesNothing() throws Exception {
    Set<String> names = new LinkedHashSet<>();
    Path sound = new SmallLog(5, 5).write(temp.resolve("sound"));
    assertThat(publish(sound, step -> names.add(step.name())).hasErrors()).isFalse();
    Map<String, String> tree = ByteTwinsTest.tree(sound, "public");
    byte[] other =
        Files.readAllBytes(new SmallLog(6, 6).write(temp.resolve("other")).resolve(PHOTO));
    int stopped = 0;
    for (String name : names) {
      Path log = new SmallLog(5, 5).write(temp.resolve("log " + name));
      Set<String> seen = new HashSet<>();
      Outcome outcome =
          publish(
              log,
              step -> {
                if (step.name().equals(name) && seen.add(name)) {
                  replace(log.resolve(PHOTO), other);
                }
              });
      if (outcome.hasErrors()) {
        stopped++;
        assertThat(log.resolve("published")).as(name).doesNotExist();
      } else {
        assertThat(outcome.hasLeaks()).as(name).isFalse();
        assertThat(ByteTwinsTest.tree(log, "public")).as(name).isEqualTo(tree);
      }
    }
    assertThat(stopped).isBetween(1, names.size() - 1);
  }

  /** By another thread, as another program would. */
  private static void replace(Path file, byte[] bytes) {
    Thread thread =
        new Thread(
            () -> {
              try {
                Files.write(file, bytes);
              } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
              }
            });
    thread.start();
    try {
      thread.join();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aPictureSpoiltInTheCacheIsFoundOrMadeAgain() throws IOException {
    Path log = new SmallLog(5, 5).write(temp.resolve("log"));
    publish(log, Progress.SILENT);
    Map<String, String> tree = ByteTwinsTest.tree(log, "public");
    byte[] open = Files.readAllBytes(log.resolve(PHOTO));
    try (Stream<Path> all = Files.walk(log.resolve(".chinelog/prints"))) {
      for (Path print : all.filter(p -> p.toString().endsWith(".jpg")).toList()) {
        Files.write(print, Arrays.copyOf(open, (int) Files.size(print)));
      }
    }
    // Elsewhere, since here the edition would stand as it is.
    assertThat(publish(log, "Asia/Kathmandu", Progress.SILENT).hasLeaks()).isTrue();
    assertThat(ByteTwinsTest.tree(log, "public")).isEqualTo(tree);
  }

  @Test
  void whatTheSystemNotesOnAPhotographIsNotCarriedOn() throws IOException {
    Path log = new SmallLog(5, 5).write(temp.resolve("log"));
    UserDefinedFileAttributeView notes =
        Files.getFileAttributeView(log.resolve(PHOTO), UserDefinedFileAttributeView.class);
    org.junit.jupiter.api.Assumptions.assumeTrue(
        notes != null && Files.getFileStore(log).supportsFileAttributeView("user"),
        "this file system keeps no such notes");
    notes.write("xdg.origin.url", ByteBuffer.wrap("https://yard.example/".getBytes(UTF)));
    publish(log, Progress.SILENT);
    List<Path> files;
    try (Stream<Path> all = Files.walk(log.resolve("published"))) {
      files = all.toList();
    }
    assertThat(files).isNotEmpty();
    for (Path file : files) {
      assertThat(Files.getFileAttributeView(file, UserDefinedFileAttributeView.class).list())
          .as(file.toString())
          .isEmpty();
    }
  }

  private static final java.nio.charset.Charset UTF = StandardCharsets.UTF_8;

  @Test
  void nothingFromOutsideTheLogIsPublished() throws IOException {
    String outside = "Nobody outside may know that the teak came from Ottersby.";
    Path yard = Files.createDirectories(temp.resolve("yard"));
    Files.writeString(yard.resolve("note.md"), outside + "\n");
    Files.write(
        yard.resolve("photo.jpg"),
        Files.readAllBytes(new SmallLog(6, 6).write(temp.resolve("o")).resolve(PHOTO)));
    List<String> tricks =
        List.of(
            "link entries/2026-03-15-x.md note.md",
            "link photos/x.jpg photo.jpg",
            "link sheets/x.jpg photo.jpg",
            "link tables/x.csv note.md",
            "link photos/x ",
            "text ![x](../../yard/photo.jpg)",
            "text ![x](" + yard.resolve("photo.jpg") + ")",
            "text ![x](file://" + yard.resolve("photo.jpg") + ")",
            "text [x](../../yard/note.md)",
            "text ![x](/dev/zero)",
            "release sheets/../../yard/photo.jpg",
            "theme ../../yard");
    for (int i = 0; i < tricks.size(); i++) {
      String[] trick = tricks.get(i).split(" ", 3);
      Path log = temp.resolve("log" + i);
      SmallLog small = new SmallLog(5, 5);
      switch (trick[0]) {
        case "text" ->
            small.with("entries/2026-03-14-moulds.md", "\n" + tricks.get(i).substring(5) + "\n");
        case "release" -> small.with("log.yaml", "about: x\nhero: " + trick[1] + "\n");
        case "theme" -> small.with("log.yaml", "theme: " + trick[1] + "\n");
        default -> {}
      }
      small.write(log);
      if (trick[0].equals("link")) {
        Path link = log.resolve(trick[1]);
        Files.createDirectories(link.getParent());
        Files.createSymbolicLink(link, yard.resolve(trick[2]));
      }
      assertThat(publish(log, Progress.SILENT).hasErrors()).as(tricks.get(i)).isTrue();
      assertThat(log.resolve("published")).as(tricks.get(i)).doesNotExist();
    }
  }
}

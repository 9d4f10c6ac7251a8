package chinelog.desk.begin;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever begins a log chooses a folder instead of typing its path. */
class LikelyPlacesTest {

  private static void put(Path folder, String... names) throws IOException {
    Files.createDirectories(folder);
    for (String name : names) {
      Files.writeString(folder.resolve(name), "");
    }
  }

  @Test
  void foldersWithPhotographsAreOfferedTheLatestFirstAndLogsAsLogs(@TempDir Path home)
      throws IOException {
    Path card = home.resolve("card/DCIM/100");
    put(card, "P1.JPG", "P2.heic", "notes.txt");
    Path old = home.resolve("Pictures/2019");
    put(old, "a.jpeg");
    Files.setLastModifiedTime(old, FileTime.fromMillis(1));
    put(home.resolve("merrow/photos"), "kept.jpg");
    put(home.resolve("merrow"), "log.yaml");
    put(home.resolve(".hidden"), "x.jpg");
    LikelyPlaces places = LikelyPlaces.of(home, home.resolve("my-build"));
    assertThat(places.photographs())
        .containsSubsequence(
            new LikelyPlaces.Place(card.toString(), 2), new LikelyPlaces.Place(old.toString(), 1))
        .noneMatch(p -> p.path().contains("merrow") || p.path().contains(".hidden"));
    assertThat(places.logs()).contains(home.resolve("merrow").toString());
  }
}

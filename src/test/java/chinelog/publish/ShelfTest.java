package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.problem.Problem;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShelfTest {

  @TempDir private Path log;

  private Path standing() {
    return log.resolve("published/public");
  }

  private Shelf swapped(String file, String text) throws IOException {
    Shelf shelf = new Shelf(log);
    Path making = shelf.startMaking("public");
    Files.writeString(making.resolve(file), text);
    shelf.announce("public", Manifest.of(making));
    shelf.swap("public");
    return shelf;
  }

  @Test
  void anEditionTakesThePlaceOfTheOneBefore() throws IOException {
    swapped("index.html", "old");
    swapped("page.html", "new");
    assertThat(standing().resolve("index.html")).doesNotExist();
    assertThat(standing().resolve("page.html")).hasContent("new");
    assertThat(log.resolve(".chinelog/set-aside/public")).doesNotExist();
  }

  @Test
  void whatAnInterruptedSwapSetAsideIsPutBack() throws IOException {
    Shelf shelf = swapped("index.html", "old");
    Path aside = log.resolve(".chinelog/set-aside/public");
    Files.move(standing(), aside);
    shelf.recover("public");
    assertThat(standing().resolve("index.html")).hasContent("old");
    assertThat(aside).doesNotExist();
  }

  @Test
  void aNewEditionThatStandsIsKeptWhenTheOldOneIsStillSetAside() throws IOException {
    Shelf shelf = swapped("index.html", "new");
    Path aside = Files.createDirectories(log.resolve(".chinelog/set-aside/public"));
    Files.writeString(aside.resolve("index.html"), "old");
    shelf.recover("public");
    assertThat(standing().resolve("index.html")).hasContent("new");
    assertThat(aside).doesNotExist();
  }

  @Test
  void aStopBeforeTheSwapLeavesTheOldEditionAndItsManifest() throws IOException {
    Shelf shelf = swapped("index.html", "old");
    Path next = shelf.records("public").resolve("manifest.next.txt");
    Files.writeString(next, "0".repeat(64) + "  page.html\n");
    shelf.recover("public");
    assertThat(next).doesNotExist();
    assertThat(shelf.foreign("public")).isEmpty();
    assertThat(Manifest.read(shelf.manifest("public")).names()).containsExactly("index.html");
  }

  @Test
  void aStopAfterTheSwapLeavesTheNewEditionAndItsManifest() throws IOException {
    Shelf shelf = swapped("index.html", "old");
    Files.delete(standing().resolve("index.html"));
    Files.writeString(standing().resolve("page.html"), "new");
    Manifest.of(standing()).write(shelf.records("public").resolve("manifest.next.txt"));
    shelf.recover("public");
    assertThat(shelf.foreign("public")).isEmpty();
    assertThat(Manifest.read(shelf.manifest("public")).names()).containsExactly("page.html");
  }

  @Test
  void onlyOneRunAtATimeMayPublishALog() throws IOException {
    Shelf shelf = new Shelf(log);
    try (Closeable claim = shelf.claim()) {
      assertThatThrownBy(() -> new Shelf(log).claim()).hasMessageContaining("Another run");
    }
    shelf.claim().close();
  }

  @Test
  void filesOfOthersAreNamedAndNeverDeleted() throws IOException {
    Shelf shelf = swapped("index.html", "ours");
    Files.writeString(standing().resolve("notes.txt"), "mine");
    Files.createDirectories(standing().resolve(".git"));
    Files.writeString(standing().resolve(".git/HEAD"), "ref");
    assertThat(shelf.foreign("public"))
        .extracting(p -> p.place().toString())
        .containsExactly("published/public/.git/HEAD", "published/public/notes.txt");
    assertThat(standing().resolve("notes.txt")).hasContent("mine");
  }

  @Test
  void aFolderThatNobodyPublishedIsForeignAsAWhole() throws IOException {
    Files.createDirectories(standing());
    Files.writeString(standing().resolve("thesis.txt"), "mine");
    assertThat(new Shelf(log).foreign("public")).hasSize(1).allMatch(Problem::isError);
  }

  @Test
  void aLinkInThePlaceOfTheEditionIsRefused() throws IOException {
    Path elsewhere = Files.createDirectories(log.resolve("elsewhere"));
    Files.createDirectories(log.resolve("published"));
    Files.createSymbolicLink(standing(), elsewhere);
    assertThat(new Shelf(log).foreign("public"))
        .extracting(p -> p.place().toString())
        .containsExactly("published/public");
  }

  @Test
  void aLinkInThePlaceOfAllEditionsIsRefused() throws IOException {
    Path elsewhere = Files.createDirectories(log.resolve("elsewhere"));
    Files.createSymbolicLink(log.resolve("published"), elsewhere);
    assertThat(new Shelf(log).foreign("public"))
        .extracting(p -> p.place().toString())
        .contains("published");
  }
}

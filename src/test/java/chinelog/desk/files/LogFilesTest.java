package chinelog.desk.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever happens on the way, a file holds the old text or the new one, and can be had back. */
class LogFilesTest {

  private static final Path NOTE = Path.of("entries/2026-03-14-moulds.md");
  private static final String FIRST = "---\nstage: moulds\n---\nCut thirteen.\n";

  @TempDir Path temp;
  private Path log;

  @BeforeEach
  void write() throws IOException {
    log = temp.resolve("log");
    Files.createDirectories(log.resolve("entries"));
    Files.writeString(log.resolve(NOTE), FIRST);
    Files.writeString(log.resolve("log.yaml"), "title: Building Merrow\n");
  }

  @Test
  void writesAndTakesBackAcrossRestarts() throws IOException {
    LogFiles files = LogFiles.open(log);
    FileVersion seen = files.read(NOTE);
    assertThat(files.write(NOTE, seen.stamp(), "Second.\n", "Write the second"))
        .isInstanceOf(WriteOutcome.Written.class);
    Path made = Path.of("tables/offsets.csv");
    assertThat(files.write(made, FileVersion.NONE, "station\n", "Make a table"))
        .isInstanceOf(WriteOutcome.Written.class);
    files = LogFiles.open(log);
    assertThat(files.findUndo()).contains("Make a table");
    assertThat(files.undo()).get().isInstanceOf(WriteOutcome.Written.class);
    assertThat(log.resolve(made)).doesNotExist();
    files.undo();
    assertThat(log.resolve(NOTE)).hasContent(FIRST);
    assertThat(files.undo()).isEmpty();
    files = LogFiles.open(log);
    assertThat(files.findRedo()).contains("Write the second");
    files.redo();
    files.redo();
    assertThat(files.redo()).isEmpty();
    assertThat(log.resolve(made)).hasContent("station\n");
    assertThat(log.resolve(NOTE)).hasContent("Second.\n");
  }

  @Test
  void givesBothVersionsOfAFileThatWasChangedMeanwhile() throws IOException {
    LogFiles files = LogFiles.open(log);
    FileVersion seen = files.read(NOTE);
    Files.writeString(log.resolve(NOTE), "By another program.\n");
    WriteOutcome.Changed whole =
        (WriteOutcome.Changed) files.write(NOTE, seen.stamp(), "Mine.\n", "Write mine");
    assertThat(whole.wanted()).isEqualTo("Mine.\n");
    assertThat(whole.onDisk().text()).isEqualTo("By another program.\n");
    WriteOutcome.Changed spliced =
        (WriteOutcome.Changed)
            files.splice(NOTE, seen.stamp(), List.of(Splice.insert(0, "Mine.\n")), "Write mine");
    assertThat(spliced.wanted()).isEqualTo("Mine.\n" + FIRST);
    assertThat(log.resolve(NOTE)).hasContent("By another program.\n");
    assertThat(files.findUndo()).isEmpty();

    String stamp = files.read(NOTE).stamp();
    files.write(NOTE, stamp, "Mine.\n", "Write mine");
    Files.writeString(log.resolve(NOTE), "Again.\n");
    assertThat(files.undo()).get().isInstanceOf(WriteOutcome.Changed.class);
    assertThat(log.resolve(NOTE)).hasContent("Again.\n");
  }

  @Test
  void keepsDraftsUntilTheyAreWritten() throws IOException {
    LogFiles files = LogFiles.open(log);
    FileVersion seen = files.read(NOTE);
    assertThat(files.draft(NOTE, seen.stamp(), "Half a sen")).isEmpty();
    files.draft(NOTE, seen.stamp(), "Half a sentence.\nTwo\n");
    files = LogFiles.open(log);
    assertThat(files.drafts())
        .containsExactly(
            new TypedDraft(
                "entries/2026-03-14-moulds.md", seen.stamp(), "Half a sentence.\nTwo\n"));
    files.write(NOTE, seen.stamp(), "Half a sentence.\nTwo\n", "Write");
    assertThat(files.findDraft(NOTE)).isEmpty();
  }

  @Test
  void staysWithinTheLogAndFollowsNoLink() throws IOException {
    Path outside = Files.writeString(temp.resolve("outside.txt"), "outside");
    Files.createSymbolicLink(log.resolve("entries/link.md"), outside);
    Files.createSymbolicLink(log.resolve("linked"), temp);
    Files.createDirectories(log.resolve("published/public"));
    LogFiles files = LogFiles.open(log);
    for (String bad :
        List.of(
            "../outside.txt",
            "entries/../../outside.txt",
            outside.toString(),
            "entries/link.md",
            "linked/outside.txt",
            ".chinelog/desk/undo/steps",
            "published/public/a.html",
            "entries",
            "entries/.hidden",
            "")) {
      assertThat(files.write(Path.of(bad), FileVersion.NONE, "x", "Try"))
          .as(bad)
          .isInstanceOf(WriteOutcome.Refused.class);
    }
    assertThat(outside).hasContent("outside");
    assertThat(temp).isDirectoryNotContaining(p -> p.toString().endsWith("steps"));
  }

  @Test
  void opensWhatIsNoUtf8AndKeepsItsFormerBytes() throws IOException {
    byte[] western =
        "Planched \u2013 caf\u00e9\n".getBytes(java.nio.charset.Charset.forName("windows-1252"));
    Files.write(log.resolve(NOTE), western);
    LogFiles files = LogFiles.open(log);
    FileVersion seen = files.read(NOTE);
    assertThat(seen.utf8()).isFalse();
    assertThat(seen.text()).contains("caf\u00e9");
    assertThat(files.splice(NOTE, seen.stamp(), List.of(Splice.insert(0, "x")), "Try"))
        .isInstanceOf(WriteOutcome.Refused.class);
    files.write(NOTE, seen.stamp(), seen.text(), "Save as UTF-8");
    assertThat(log.resolve(NOTE)).hasContent("Planched \u2013 caf\u00e9\n");
    files.undo();
    assertThat(log.resolve(NOTE)).hasBinaryContent(western);
  }

  @Test
  void forgetsHistoryWithoutHarmWhenItIsDeleted() throws IOException {
    LogFiles files = LogFiles.open(log);
    files.write(NOTE, files.read(NOTE).stamp(), "Second.\n", "Write");
    try (Stream<Path> all = Files.walk(log.resolve(".chinelog"))) {
      for (Path file : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
    assertThat(files.undo()).get().isInstanceOf(WriteOutcome.Refused.class);
    assertThat(files.write(NOTE, files.read(NOTE).stamp(), "Third.\n", "Write"))
        .isInstanceOf(WriteOutcome.Written.class);
    files.undo();
    assertThat(log.resolve(NOTE)).hasContent("Second.\n");
    assertThat(LogFiles.open(log).findUndo()).isEmpty();
  }

  /** The disk is full at its first, second … write, half of which still goes through. */
  @Test
  void losesNothingOnAFullDisk() throws IOException {
    for (int at = 0; at < 14; at++) {
      write();
      FailingDisk disk = new FailingDisk();
      LogFiles files = LogFiles.open(log, disk);
      String before = files.read(NOTE).text();
      disk.failAt(at, false);
      WriteOutcome outcome =
          files.write(NOTE, files.read(NOTE).stamp(), "Second " + at + "\n", "Write");
      boolean refused = outcome instanceof WriteOutcome.Refused;
      String now = refused ? before : "Second " + at + "\n";
      assertThat(log.resolve(NOTE)).as("write %d", at).hasContent(now);
      assertThat(tree().keySet()).allMatch(p -> p.startsWith(".chinelog") || !p.contains("/."));
      disk.mend();
      files.undo();
      assertThat(log.resolve(NOTE)).as("write %d", at).hasContent(before);
      files.write(NOTE, files.read(NOTE).stamp(), "Third\n", "Write");
      files = LogFiles.open(log);
      while (files.findUndo().isPresent()) {
        assertThat(files.undo()).get().isInstanceOf(WriteOutcome.Written.class);
      }
      assertThat(log.resolve(NOTE)).as("write %d", at).hasContent(FIRST);
    }
  }

  /** The process is killed at its first, second … write. */
  @Test
  void losesNothingInAKill() throws IOException {
    int killed = 0;
    for (int at = 0; at < 60; at++) {
      write();
      FailingDisk disk = new FailingDisk();
      LogFiles files = LogFiles.open(log, disk);
      List<String> states = new ArrayList<>(List.of(FIRST));
      disk.failAt(at, true);
      try {
        for (int i = 0; i < 4; i++) {
          states.add("State " + i + "\n");
          files.draft(NOTE, "", "State " + i);
          files.write(NOTE, files.read(NOTE).stamp(), "State " + i + "\n", "Write");
          if (i == 1) {
            files.undo();
            files.redo();
          }
        }
      } catch (FailingDisk.Killed e) {
        killed++;
      }
      assertThat(Files.readString(log.resolve(NOTE))).as("write %d", at).isIn(states);
      LogFiles next = LogFiles.open(log, new FailingDisk());
      assertThat(tree().keySet()).allMatch(p -> p.startsWith(".chinelog") || !p.contains("/."));
      while (next.findUndo().isPresent()) {
        assertThat(next.undo()).get().as("write %d", at).isInstanceOf(WriteOutcome.Written.class);
      }
      assertThat(log.resolve(NOTE)).as("write %d", at).hasContent(FIRST);
      next.drafts().forEach(next1 -> assertThat(next1.text()).startsWith("State"));
    }
    assertThat(killed).isBetween(20, 59);
  }

  private Map<String, String> tree() throws IOException {
    Map<String, String> tree = new TreeMap<>();
    try (Stream<Path> all = Files.walk(log)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        tree.put(
            log.relativize(file).toString(),
            new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
      }
    }
    return tree;
  }
}

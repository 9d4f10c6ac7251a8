package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NewLogTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);

  @TempDir Path folder;

  @Test
  void aLogLaidDownReadsWithoutAnyProblem() throws IOException {
    NewLog.layDown(folder.resolve("merrow"), TODAY);
    LogReader.Reading reading = new LogReader(TODAY, ZoneOffset.UTC).read(folder.resolve("merrow"));
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.log().entries()).extracting(Entry::date).containsExactly(TODAY);
    assertThat(reading.log().stages()).hasSize(3);
    assertThat(reading.log().statements()).hasSize(2);
    assertThat(reading.log().stock()).hasSize(1);
  }

  @Test
  void everyRemarkThatTeachesAKeyReadsWithoutAnErrorOnceItsSignIsTakenAway() throws IOException {
    Path merrow = folder.resolve("merrow");
    NewLog.layDown(merrow, TODAY.plusMonths(3));
    Path log = merrow.resolve("log.yaml");
    String text = Files.readString(log);
    String used =
        text.replaceAll("(?m)^# (?=(  )*(\"?[\\w-]+\"?:|- \\{))", "")
            .replaceAll("(?m)^  # planking.*$", "");
    Files.writeString(log, used);
    LogReader.Reading reading = new LogReader(TODAY.plusMonths(3), ZoneOffset.UTC).read(merrow);
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.log().agreements()).containsOnlyKeys("lines");
    assertThat(reading.log().releases()).hasSize(1);
    assertThat(reading.log().head().budgets()).hasSize(3);
    assertThat(reading.log().head().clocks()).hasSize(1);
    assertThat(reading.log().limits()).hasSize(1);
  }

  @Test
  void aFolderWithAnythingInItIsLeftAlone() throws IOException {
    Files.writeString(folder.resolve(".keep"), "mine");
    assertThatThrownBy(() -> NewLog.layDown(folder, TODAY))
        .isInstanceOf(DirectoryNotEmptyException.class);
    assertThat(folder).isDirectoryContaining("glob:**/.keep");
    assertThat(folder.resolve("log.yaml")).doesNotExist();
  }

  @Test
  void aFileIsNotOverwritten() throws IOException {
    Path file = Files.writeString(folder.resolve("merrow"), "mine");
    assertThatThrownBy(() -> NewLog.layDown(file, TODAY))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("mine");
  }
}

package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.reckon.Reckoner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What reckonings came to is kept in the log's private cache, for one program. */
class ReckonedBeforeTest {

  @TempDir private Path folder;

  private Path cache() {
    return folder.resolve(".chinelog/reckoned");
  }

  /** Reckons, and tells whether anything had to be kept anew. */
  private boolean reckon() throws IOException {
    Log log = new LogReader(LocalDate.of(2026, 6, 30), ZoneOffset.UTC).read(folder).log();
    ReckonedBefore before = ReckonedBefore.of(folder);
    Reckoner.reckon(log, before.results());
    before.keep();
    return before.results().fresh().isPresent();
  }

  @Test
  void whatWasKeptIsReadAgainByTheSameProgramAlone() throws IOException {
    Files.writeString(folder.resolve("log.yaml"), "title: Building Merrow\nscale: 1:16\n");
    String facts = "water: {reckon: water, water: sea, temperature: 12 °C}\n";
    Files.writeString(folder.resolve("facts.yaml"), facts);
    assertThat(reckon()).isTrue();
    assertThat(cache()).as("where there is no cache, none is begun").doesNotExist();
    Files.createDirectory(folder.resolve(".chinelog"));
    assertThat(reckon()).isTrue();
    assertThat(reckon()).isFalse();
    List<String> lines = new ArrayList<>(CacheLines.read(cache()));
    assertThat(lines).hasSize(2);
    lines.set(0, "another program");
    CacheLines.write(cache(), lines);
    assertThat(reckon()).isTrue();
    Files.writeString(folder.resolve("facts.yaml"), facts.replace("12", "13"));
    assertThat(reckon()).isTrue();
    Files.writeString(cache(), "spoilt");
    assertThat(reckon()).isTrue();
    assertThat(reckon()).isFalse();
  }
}

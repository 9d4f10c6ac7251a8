package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.digest.Sha256;
import chinelog.log.LogReader;
import chinelog.log.records.PhotoFile;
import chinelog.photo.PhotoProgress;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.pixels.Box;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Regions in parts, per cent or pixels, and pinned by the next run where nobody did. */
class RegionPinsTest {

  private static final String REMARKS = "photos/photos.yaml";

  @TempDir private Path folder;

  /** The picture is 48 by 32 pixels. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "[0, 0.25, 0.5, 1]",
        "[0, 25 %, 50 %, 100 %]",
        "[0%, 25%, 50.0 %, 100 %]",
        "[0, 8 px, 24 px, 32 px]",
        "[0 px, 8px, 24px, 32 px]"
      })
  void theNextRunPinsARegionHoweverItIsCounted(String box) throws IOException {
    String remarks =
        "# The sheet.\nkeel.png:\n  regions:\n    - {box: " + box + ", under: lines} # so\n";
    TinyLog log = TinyLog.in(folder).write(REMARKS, remarks);
    TinyLog.Said said = log.run("check");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(said.err()).contains("The regions of photos/keel.png are pinned to it as it is now");
    String pin = Sha256.of(Files.readAllBytes(log.path(TinyLog.PHOTO)));
    assertThat(log.read(REMARKS)).isEqualTo(remarks + "  sha256: " + pin + "\n");
    Photograph photo = photograph();
    PhotoFile.Region region = photo.file().regions().get(0);
    assertThat(region.measure()).isEqualTo(PhotoFile.Measure.PARTS);
    assertThat(region.top()).isEqualTo(0.25);
    assertThat(region.right()).isEqualTo(0.5);
    assertThat(log.run("check").err()).doesNotContain("pinned");
  }

  @Test
  void aPinnedPhotographThatChangesStopsTheLog() {
    TinyLog log =
        TinyLog.in(folder)
            .write(REMARKS, "keel.png: {regions: [{box: [0, 0, 50 %, 50 %], under: lines}]}\n");
    assertThat(log.run("publish").status()).isEqualTo(Main.DONE);
    assertThat(log.read(REMARKS))
        .startsWith("keel.png: {regions: [{box: [0, 0, 50 %, 50 %], under: lines}], sha256: ");
    log.photo("photos/other.png").move("photos/other.png", "photos/keel.tmp");
    log.remove(TinyLog.PHOTO).move("photos/keel.tmp", TinyLog.PHOTO);
    TinyLog.Said said = log.run("check");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).contains("has changed since its regions were drawn");
  }

  /** What cannot be read or pinned for certain stops the log; nothing is written or shown. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "keel.png: {regions: [{box: [0, 25 %, 24 px, 100 %], under: lines}]}\n",
        "keel.png: {regions: [{box: [0, 0.25, 50 %, 1], under: lines}]}\n",
        "keel.png: {regions: [{box: [0, 8 px, 49 px, 32 px], under: lines}]}\n",
        "keel.png: {regions: [{box: [0, 8 px, 24 px, 33 px], under: lines}]}\n",
        "keel.png: {regions: [{box: [0, 25 %, 50 %, 101 %], under: lines}]}\n",
        "keel.png: {regions: [{box: [24 px, 8 px, 24 px, 32 px], under: lines}]}\n",
        "keel.png: {regions: [{box: [0, 8 pt, 24 pt, 32 pt], under: lines}]}\n",
        "keel.png: {regions: [{box: [0, 25 %, 50 %, 1], under: lines}], sha256: soon}\n",
        "keel.png: {regions: [{box: [0, 25 %, 50 %, 100 %], under: lines}], sha256: }\n",
        "kel.png: {regions: [{box: [0, 25 %, 50 %, 100 %], under: lines}]}\n"
      })
  void whatIsNotCertainStopsTheLog(String remarks) {
    TinyLog log = TinyLog.in(folder).write(REMARKS, remarks);
    assertThat(log.run("publish").status()).isEqualTo(Main.PROBLEMS);
    assertThat(log.path("published")).doesNotExist();
  }

  /** Until the picture is known, a region in pixels is all of it. */
  @Test
  void aRegionInPixelsIsTheWholePictureToWhoeverDoesNotKnowIt() throws IOException {
    TinyLog log =
        TinyLog.in(folder)
            .write(REMARKS, "keel.png: {regions: [{box: [0, 0, 1 px, 1 px], under: lines}]}\n");
    assertThat(log.run("check").status()).isEqualTo(Main.DONE);
    PhotoFile unknown = read().photos().get(0);
    assertThat(unknown.regions().get(0).measure()).isEqualTo(PhotoFile.Measure.PIXELS);
    Photograph p = photograph();
    Photograph large =
        new Photograph(p.file(), p.sha256(), 4000, 3000, 1, null, "", null, p.link(), p.written());
    assertThat(Darkroom.filled(large, unknown.regions()))
        .containsExactly(new Box(0, 0, 4000, 3000));
    assertThat(Darkroom.filled(large, p.file().regions()))
        .doesNotContain(new Box(0, 0, 4000, 3000));
  }

  private chinelog.log.records.Log read() throws IOException {
    return new LogReader(LocalDate.of(2026, 6, 1), ZoneOffset.UTC).read(folder).log();
  }

  private Photograph photograph() throws IOException {
    return Album.open(read(), PhotoProgress.SILENT).photographs().get(0);
  }
}

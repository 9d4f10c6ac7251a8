package chinelog.photo.album;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.digest.Sha256;
import chinelog.label.Label;
import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shots;
import chinelog.photo.album.Photograph.Link;
import chinelog.problem.Problem;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class AlbumTest {

  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);

  @TempDir Path folder;
  private Logs logs;

  @BeforeEach
  void begin() {
    logs = new Logs(folder);
  }

  @Test
  void aPhotographBelongsToTheFirstEntryThatShowsItWhateverItsDate() {
    logs.photo("photos/a.jpg", shot(1, "2026:01:01 10:00:00", ""))
        .entry("first", DAY, "", List.of())
        .entry("second", DAY, "", List.of(), "photos/a.jpg")
        .entry("third", DAY, "", List.of(), "photos/a.jpg");

    assertPlaced("second", Link.REFERENCED);
  }

  @Test
  void otherwiseItBelongsToTheEntryOfItsDay() {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 18:40:11", "+01:00"))
        .entry("eve", DAY.minusDays(1), "", List.of())
        .entry("day", DAY, "", List.of());

    assertPlaced("day", Link.BY_TIME);
  }

  @Test
  void ofSeveralEntriesOfADayTheStagesFolderDecides() {
    logs.photo("photos/planking/a.jpg", shot(1, "2026:04:01 09:30:00", ""))
        .entry("moulds", DAY, "moulds", List.of(9, 12))
        .entry("planking", DAY, "planking", List.of(14, 17));

    assertPlaced("planking", Link.BY_TIME);
  }

  @Test
  void thenTheHoursOfWorkNearestToItsTime() {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""))
        .entry("morning", DAY, "", List.of(9, 12))
        .entry("afternoon", DAY, "", List.of(14, 17));

    assertPlaced("afternoon", Link.BY_TIME);
  }

  @Test
  void hoursUnderAnAgreementOfTheirOwnDoNotShowInWhereAPhotographStands() {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""))
        .entry("morning", DAY, "", List.of(9, 12))
        .hoursUnder(Label.of("lines"))
        .entry("afternoon", DAY, "", List.of(14, 17));

    assertPlaced("morning", Link.BY_TIME);
  }

  @Test
  void thenTheFirst() {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""))
        .entry("one", DAY, "", List.of())
        .entry("two", DAY, "", List.of());

    assertPlaced("one", Link.BY_TIME);
  }

  @Test
  void aDayInTheNameServesWhereTheCameraToldNone() {
    logs.photo("photos/2026-04-01/scan.png", Shots.png(Shots.scene(40, 30, 1)))
        .entry("day", DAY, "", List.of());

    assertPlaced("day", Link.BY_TIME);
    assertThat(logs.open().photographs().get(0).taken()).isNull();
  }

  @Test
  void aDayWithPhotographsAndNoEntryIsARemark() {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""))
        .photo("photos/b.jpg", shot(2, "2026:04:01 13:41:00", ""))
        .photo("photos/c.jpg", shot(3, "", ""));

    assertThat(logs.open().problems())
        .noneMatch(Problem::isError)
        .extracting(p -> p.what().toString())
        .containsExactly(
            "2 photographs were taken on 2026-04-01, and no entry has that date: photos/a.jpg,"
                + " photos/b.jpg.",
            "Nothing tells on which day this photograph was taken.");
  }

  @Test
  void aDayWithWorkAndNoPhotographIsARemark() {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""))
        .entry("day", DAY.minusDays(1), "", List.of(9, 12))
        .entry("other", DAY, "", List.of(9, 12));

    assertThat(logs.open().problems())
        .extracting(Problem::toString)
        .singleElement()
        .asString()
        .startsWith("entries/day.md: reminder: No photograph belongs to this entry.");
  }

  @Test
  void manyDaysWithoutPhotographsAreOneRemarkAndALogWithoutAnyHearsNoneOfIt() {
    for (int day = 1; day <= 6; day++) {
      logs.entry("day" + day, DAY.minusDays(day), "", List.of(9, 12));
    }
    assertThat(logs.open().problems()).isEmpty();

    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""))
        .entry("day", DAY, "", List.of(9, 12));

    assertThat(logs.open().problems())
        .singleElement()
        .satisfies(
            p ->
                assertThat(p.what())
                    .startsWith("No photograph belongs to 6 entries: ")
                    .endsWith(" and 2 more."));
  }

  @Test
  void aCameraClockIsPutRight() {
    logs.photo("photos/a.jpg", shot(1, "2026:05:16 11:28:04", "+01:00"))
        .clock("T-20", Duration.ofMinutes(72));

    assertThat(logs.open().photographs().get(0).taken())
        .isEqualTo(LocalDateTime.of(2026, 5, 16, 10, 16, 4));
  }

  /**
   * CIPA DC-008 (EXIF 2.31), OffsetTimeOriginal; London is on UTC in February, on UTC+1 in July.
   */
  @Test
  void anOffsetMakesAnInstantAndItsLackDoesNot() {
    logs.photo("photos/a.jpg", shot(1, "2022:02:16 12:55:41", "+01:00"))
        .photo("photos/b.jpg", shot(2, "2022:07:16 12:55:41", "-05:00"))
        .photo("photos/c.jpg", shot(3, "2008:05:30 15:56:01", ""));

    assertThat(logs.open().photographs())
        .extracting(Photograph::taken)
        .containsExactly(
            LocalDateTime.of(2008, 5, 30, 15, 56, 1),
            LocalDateTime.of(2022, 2, 16, 11, 55, 41),
            LocalDateTime.of(2022, 7, 16, 18, 55, 41));
  }

  @Test
  void sizesAreThoseOfTheUprightPictureAndAStrayOrientationMeansAsStored() {
    byte[] jpeg = Shots.jpeg(Shots.scene(40, 30, 1), 0.9);
    logs.photo("photos/a.jpg", Shots.withExif(jpeg, 6, "T-20", "", ""))
        .photo("photos/b.jpg", Shots.withExif(jpeg, 9, "T-20", "", ""));

    assertThat(logs.open().photographs())
        .extracting(p -> p.widthPx() + "x" + p.heightPx() + " " + p.orientation())
        .containsExactly("30x40 6", "40x30 1");
  }

  @Test
  void ofEqualFilesOneIsLeftOutAndBothAreNamed() {
    byte[] shot = shot(1, "2026:04:01 13:40:00", "");
    logs.photo("photos/a (1).jpg", shot)
        .photo("photos/a.jpg", shot)
        .entry("day", DAY, "", List.of());

    Album album = logs.open();

    assertThat(album.photographs())
        .extracting(p -> p.file().path() + " " + p.link())
        .containsExactly("photos/a (1).jpg LEFT_OUT", "photos/a.jpg BY_TIME");
    assertThat(album.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.isError()).isFalse())
        .satisfies(p -> assertThat(p.toString()).contains("photos/a (1).jpg", "photos/a.jpg,"));
  }

  @Test
  void equalFilesThatAreNotUnderTheSameAgreementsStopThePublishing() {
    byte[] shot = shot(1, "2026:04:01 13:40:00", "");
    logs.photo(Logs.file("photos/a.jpg", Label.of("lines"), List.of(), null), shot)
        .photo("photos/b.jpg", shot);

    assertThat(logs.open().problems())
        .anyMatch(p -> p.isError() && p.what().toString().contains("the same picture"));
  }

  @Test
  void regionsNeedTheHashOfTheFileTheyWereDrawnOn() {
    byte[] shot = shot(1, "", "");
    String hash = Sha256.of(shot);
    String other = "0".repeat(64);
    for (String pinned : Arrays.asList(null, other, hash)) {
      List<Problem> errors =
          new Logs(folder)
                  .photo(
                      Logs.file(
                          "photos/a.jpg", Label.NONE, List.of(Logs.region(0, 0, 0.5, 0.5)), pinned),
                      shot)
                  .open()
                  .problems()
                  .stream()
                  .filter(Problem::isError)
                  .toList();

      if (hash.equals(pinned)) {
        assertThat(errors).isEmpty();
      } else {
        assertThat(errors)
            .singleElement()
            .satisfies(p -> assertThat(p.remedy()).contains("sha256: " + hash));
      }
    }
  }

  @Test
  void regionsOnAPictureThatDoesNotSayWhichSideIsUpStopThePublishing() {
    byte[] shot = Shots.withExif(Shots.jpeg(Shots.scene(40, 30, 1), 0.9), 9, "", "", "");
    logs.photo(
        Logs.file(
            "photos/a.jpg", Label.NONE, List.of(Logs.region(0, 0, 0.5, 0.5)), Sha256.of(shot)),
        shot);

    assertThat(logs.open().problems())
        .anyMatch(p -> p.isError() && p.what().toString().contains("which side is up"));
  }

  @Test
  void filesThatAreNoPicturesCostAMessageEachAndNotTheRun() throws IOException {
    byte[] shot = shot(1, "2026:04:01 13:40:00", "");
    logs.photo("photos/cut.jpg", Arrays.copyOf(shot, shot.length * 2 / 3))
        .photo("photos/empty.jpg", new byte[0])
        .photo("photos/endless.jpg", Arrays.copyOf(shot, shot.length - 2))
        .photo("photos/film.mp4", "....ftypmp42 and more".getBytes())
        .photo("photos/huge.png", hugePng())
        .photo("photos/raw.nef", new byte[] {'M', 'M', 0, 42, 0, 0, 0, 8, 0, 0, 0, 0, 0, 0})
        .photo("photos/really.jpg", Shots.png(Shots.scene(40, 30, 7)))
        .entry("day", DAY, "", List.of(), "photos/really.jpg");

    Album album = logs.open();

    assertThat(album.photographs())
        .extracting(p -> p.file().path())
        .containsExactly("photos/endless.jpg", "photos/really.jpg");
    assertThat(album.problems())
        .filteredOn(Problem::isError)
        .extracting(p -> p.place() + " " + p.what())
        .containsExactly(
            "photos/cut.jpg The picture is damaged: part of it is missing or garbled.",
            "photos/empty.jpg The file is empty.",
            "photos/film.mp4 This is not a picture of a kind that can be shown.",
            "photos/huge.png The file says it is 65000 × 65000 pixels, which is more than any"
                + " photograph has.",
            "photos/raw.nef This is a raw camera file (.nef), which cannot be shown as it is.");
  }

  @Test
  void aLinkOutOfTheLogIsRefused(@TempDir Path elsewhere) throws IOException {
    Path secret = Files.write(elsewhere.resolve("a.jpg"), shot(1, "", ""));
    Files.createDirectories(folder.resolve("photos"));
    logs.photo("photos/a.jpg", new byte[1]);
    Files.delete(folder.resolve("photos/a.jpg"));
    Files.createSymbolicLink(folder.resolve("photos/a.jpg"), secret);

    assertThat(logs.open().problems())
        .singleElement()
        .matches(
            p -> p.isError() && p.what().toString().contains("not a file that lies in the log"));
  }

  @Test
  void anUnchangedFileIsNotReadAgainAndAChangedOneIs() throws IOException {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""));
    Path photo = folder.resolve("photos/a.jpg");
    Album first = logs.open();
    Path index = folder.resolve(".chinelog/photos.index");
    // As if the index had been written long after the photograph.
    Files.setLastModifiedTime(index, FileTime.from(Instant.parse("2099-01-01T00:00:00Z")));

    Files.writeString(index, Files.readString(index));
    Files.setLastModifiedTime(index, FileTime.from(Instant.parse("2099-01-01T00:00:00Z")));
    Counting unread = new Counting();
    assertThat(Album.open(logs.log(), unread)).isEqualTo(first);
    assertThat(unread.of).isZero();

    FileTime time = Files.getLastModifiedTime(photo);
    byte[] other = shot(1, "2026:04:02 13:40:00", "");
    Files.write(photo, other);
    Files.setLastModifiedTime(photo, time);
    assertThat(Album.open(logs.log(), unread).photographs().get(0).sha256())
        .as("same size and time of change, other content")
        .isEqualTo(Sha256.of(other));
  }

  @Test
  void aDamagedIndexCountsForNothing() throws IOException {
    logs.photo("photos/a.jpg", shot(1, "2026:04:01 13:40:00", ""));
    Album first = logs.open();
    Path index = folder.resolve(".chinelog/photos.index");
    String text = Files.readString(index);
    for (String damaged :
        List.of("", "x", text.substring(1), text.replace("T-20", "T-21"), text + "\n")) {
      Files.writeString(index, damaged);
      Files.setLastModifiedTime(index, FileTime.from(Instant.parse("2099-01-01T00:00:00Z")));

      assertThat(logs.open()).isEqualTo(first);
    }
  }

  private static final class Counting implements PhotoProgress {
    private int of;

    @Override
    public void done(int done, int all) {
      of = all;
    }
  }

  private void assertPlaced(String entry, Link link) {
    assertThat(logs.open().photographs())
        .singleElement()
        .satisfies(p -> assertThat(p.entry()).isEqualTo(entry))
        .satisfies(p -> assertThat(p.link()).isEqualTo(link));
  }

  private static byte[] shot(long seed, String time, String offset) {
    return Shots.withExif(Shots.jpeg(Shots.scene(60, 40, seed), 0.9), 1, "T-20", time, offset);
  }

  private static byte[] hugePng() throws IOException {
    byte[] png = Shots.png(Shots.scene(8, 8, 1));
    ByteArrayOutputStream ihdr = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(ihdr);
    out.writeInt(65000);
    out.writeInt(65000);
    System.arraycopy(ihdr.toByteArray(), 0, png, 16, 8);
    java.util.zip.CRC32 sum = new java.util.zip.CRC32();
    sum.update(png, 12, 17);
    for (int i = 0; i < 4; i++) {
      png[29 + i] = (byte) (sum.getValue() >> (24 - 8 * i));
    }
    return png;
  }
}

package chinelog.photo.gathering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.digest.Sha256;
import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shared;
import chinelog.photo.Shots;
import chinelog.photo.gathering.Gatherer.ClockPhoto;
import chinelog.photo.gathering.Gatherer.Fate;
import chinelog.photo.gathering.Gatherer.Outcome;
import chinelog.photo.gathering.Gatherer.Request;
import chinelog.photo.gathering.Gatherer.Step;
import chinelog.photo.pixels.PhotoLoader;
import chinelog.problem.ProblemException;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GathererTest {

  @TempDir Path folder;
  private Path card;
  private Path log;

  @BeforeEach
  void begin() throws IOException {
    card = Files.createDirectories(folder.resolve("card"));
    log = Files.createDirectories(folder.resolve("log"));
  }

  @Test
  void picturesGoIntoTheFolderOfTheirDayAndTheCardStaysAsItWas() throws IOException {
    onCard("DCIM/100/A.JPG", shot(1, "2026:03:14 23:30:00", "-05:00"));
    onCard("DCIM/100/B.JPG", shot(2, "2026:03:14 09:30:00", ""));
    onCard("DCIM/20260317_scan.png", Shots.png(Shots.scene(20, 20, 3)));
    onCard("screen.png", Shots.png(Shots.scene(20, 20, 4)));
    SortedMap<String, String> before = tree(card);

    Outcome outcome = gather(false);

    assertThat(tree(log.resolve("photos")).keySet())
        .containsExactly(
            "2026-03-14/B.JPG",
            "2026-03-15/A.JPG",
            "2026-03-17/20260317_scan.png",
            "undated/screen.png");
    assertThat(tree(log.resolve("photos")).values())
        .containsExactlyInAnyOrderElementsOf(before.values());
    assertThat(tree(card)).isEqualTo(before);
    assertThat(outcome.count(Fate.BROUGHT_IN)).isEqualTo(4);
    assertThat(Files.readAllLines(log.resolve("records/gathered.csv")))
        .hasSize(5)
        .contains(
            "2026-05-20,\"DCIM/100/B.JPG\",\"photos/2026-03-14/B.JPG\",\""
                + Sha256.of(shot(2, "2026:03:14 09:30:00", ""))
                + "\",\"T-20\",\"2026-03-14T09:30\"");
  }

  @Test
  void aPictureThatBreaksOffComesInWithAReminder() throws IOException {
    byte[] whole = shot(1, "2026:03:14 09:30:00", "");
    onCard("A.JPG", Arrays.copyOf(whole, whole.length * 2 / 3));
    onCard("B.JPG", shot(2, "2026:03:14 09:31:00", ""));

    Outcome outcome = gather(false);

    assertThat(outcome.count(Fate.BROUGHT_IN)).isEqualTo(2);
    assertThat(outcome.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.isError()).isFalse())
        .satisfies(p -> assertThat(p.toString()).contains("A.JPG").contains("damaged"));
  }

  /** A folder where the record should be stops the run just after the file was placed. */
  @Test
  void aRunThatStopsBetweenPlacingAFileAndNotingItIsNotedByTheNext() throws IOException {
    Path record = log.resolve("records/gathered.csv");
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    onCard("B.JPG", shot(2, "2026:03:15 09:30:00", ""));
    Files.createDirectories(record);
    assertThatThrownBy(() -> gather(false)).isInstanceOf(IOException.class);
    assertThat(tree(log.resolve("photos"))).containsOnlyKeys("2026-03-14/A.JPG");
    Files.delete(record);

    gather(false);
    gather(false);

    assertThat(Files.readAllLines(record)).hasSize(3);
    assertThat(Files.readString(record))
        .startsWith("day,source,path,sha256,camera,taken\n2026-05-20,\"A.JPG\",\"photos/2026-03")
        .contains("\n2026-05-20,\"B.JPG\",\"photos/2026-03-15/B.JPG\",\"");
    assertThat(tree(log.resolve(".chinelog"))).isEmpty();
  }

  @Test
  void aLineThatWasHalfWrittenIsCompleted() throws IOException {
    Path record = log.resolve("records/gathered.csv");
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    Files.createDirectories(record);
    assertThatThrownBy(() -> gather(false)).isInstanceOf(IOException.class);
    Files.delete(record);
    Files.writeString(record, "day,source,path,sha256,camera,taken\n2026-05-20,\"A.J");

    gather(false);

    assertThat(Files.readAllLines(record))
        .hasSize(2)
        .last()
        .asString()
        .startsWith("2026-05-20,\"A.JPG\",\"photos/2026-03-14/A.JPG\",\"")
        .endsWith("\"2026-03-14T09:30\"");
  }

  /** A file where the day's folder should be stops the run just before the file is placed. */
  @Test
  void aRunThatStopsBeforePlacingAFileNotesNothingOfIt() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    Path inTheWay = log.resolve("photos/2026-03-14");
    Files.createDirectories(inTheWay.getParent());
    Files.writeString(inTheWay, "");
    assertThatThrownBy(() -> gather(false)).isInstanceOf(IOException.class);
    Files.delete(inTheWay);
    Files.delete(card.resolve("A.JPG"));

    gather(false);

    assertThat(log.resolve("records/gathered.csv")).doesNotExist();
    assertThat(tree(log.resolve(".chinelog"))).isEmpty();
  }

  @Test
  void runningItAgainBringsInNothingTwice() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    onCard("copy/A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    gather(false);
    SortedMap<String, String> first = tree(log);

    Outcome again = gather(false);

    assertThat(again.count(Fate.ALREADY_THERE)).isEqualTo(2);
    assertThat(tree(log)).isEqualTo(first);
    assertThat(tree(log.resolve("photos"))).hasSize(1);
  }

  @Test
  void aRunThatWasCutShortIsFinishedByTheNext() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    onCard("B.JPG", shot(2, "2026:03:14 09:30:00", ""));
    PhotoProgress pullTheCard =
        (done, of) -> {
          throw new IllegalStateException("pulled");
        };
    assertThatThrownBy(() -> Gatherer.gather(request(Map.of(), null, false), pullTheCard))
        .hasMessage("pulled");
    Path parts = Files.createDirectories(log.resolve(".chinelog/gather"));
    Files.write(parts.resolve("photo1.part"), new byte[10]);

    Outcome outcome = gather(false);

    assertThat(outcome.steps())
        .extracting(Step::fate)
        .containsExactly(Fate.ALREADY_THERE, Fate.BROUGHT_IN);
    assertThat(tree(log.resolve("photos"))).hasSize(2);
    assertThat(parts).isEmptyDirectory();
    assertThat(Files.readAllLines(log.resolve("records/gathered.csv"))).hasSize(3);
  }

  @Test
  void otherPicturesOfTheSameNameAreKeptApart() throws IOException {
    onCard("100/A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    onCard("101/A.JPG", shot(2, "2026:03:14 10:30:00", ""));
    onCard("102/a.jpg", shot(3, "2026:03:14 11:30:00", ""));

    gather(false);

    assertThat(tree(log.resolve("photos")).keySet())
        .containsExactly("2026-03-14/A-2.JPG", "2026-03-14/A.JPG", "2026-03-14/a-3.jpg");
  }

  @Test
  void aDryRunSaysTheSameAndWritesNothing() throws IOException {
    onCard("100/A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    onCard("101/A.JPG", shot(2, "2026:03:14 10:30:00", ""));

    Outcome dry = gather(true);

    assertThat(tree(log)).isEmpty();
    assertThat(gather(false)).isEqualTo(dry);
  }

  @Test
  void aCameraClockThatIsGivenMovesItsPicturesToTheRightDay() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:15 00:30:00", ""));

    Outcome outcome =
        Gatherer.gather(
            request(Map.of("T-20", Duration.ofMinutes(72)), null, false), PhotoProgress.SILENT);

    assertThat(outcome.steps()).extracting(Step::path).containsExactly("photos/2026-03-14/A.JPG");
  }

  @Test
  void aPhotographOfAClockTellsHowFarTheCamerasIsFast() throws IOException {
    onCard("DCIM/A.JPG", shot(1, "2026:03:15 00:30:00", ""));
    onCard("DCIM/CLOCK.JPG", shot(2, "2026:05:16 11:28:04", "+01:00"));
    ClockPhoto clock = new ClockPhoto("CLOCK.JPG", LocalDateTime.of(2026, 5, 16, 10, 16, 4));

    Outcome outcome = Gatherer.gather(request(Map.of(), clock, false), PhotoProgress.SILENT);

    assertThat(outcome.problems())
        .singleElement()
        .satisfies(
            p ->
                assertThat(p.what())
                    .hasToString("The clock of the camera T-20 is 1 h 12 min fast."))
        .satisfies(p -> assertThat(p.remedy()).endsWith("\"T-20\": 1 h 12 min"));
    assertThat(outcome.steps().get(0).path()).isEqualTo("photos/2026-03-14/A.JPG");
  }

  @Test
  void aClockPhotographThatTellsNothingStopsBeforeAnythingIsCopied() throws IOException {
    onCard("A.JPG", shot(1, "", ""));
    for (String name : List.of("A.JPG", "B.JPG")) {
      ClockPhoto clock = new ClockPhoto(name, LocalDateTime.of(2026, 5, 16, 10, 16));

      Outcome outcome = Gatherer.gather(request(Map.of(), clock, false), PhotoProgress.SILENT);

      assertThat(outcome.problems()).singleElement().matches(p -> p.isError());
      assertThat(outcome.steps()).isEmpty();
    }
    assertThat(tree(log)).isEmpty();
  }

  @Test
  void whatIsNoPictureIsPassedOverByName() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    onCard("film.mp4", "....ftypmp42".getBytes(StandardCharsets.US_ASCII));
    onCard("film2.mp4", "....ftypisom".getBytes(StandardCharsets.US_ASCII));
    onCard("empty.jpg", new byte[0]);
    onCard(".Trashes/B.JPG", shot(2, "2026:03:14 09:30:00", ""));
    Files.createSymbolicLink(card.resolve("link.jpg"), folder.resolve("elsewhere.jpg"));

    Outcome outcome = gather(false);

    assertThat(outcome.steps())
        .extracting(s -> s.source() + " " + s.fate())
        .containsExactly(
            "A.JPG BROUGHT_IN",
            "empty.jpg PASSED_OVER",
            "film.mp4 PASSED_OVER",
            "film2.mp4 PASSED_OVER");
    assertThat(outcome.problems())
        .extracting(p -> p.place() + ": " + p.what())
        .containsExactlyInAnyOrder(
            "empty.jpg: The file is empty. It was passed over.",
            "film.mp4: This is not a picture of a kind that can be shown. It was passed over, like"
                + " film2.mp4.");
  }

  @Test
  void aZipGivesItsPicturesAndItsNamesLeadNowhereElse() throws IOException {
    card = folder.resolve("card.zip");
    try (OutputStream out = Files.newOutputStream(card);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (String name :
          List.of("../../up.jpg", "/etc/abs.jpg", "a\\b\\CON.jpg", "__MACOSX/._c.jpg")) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(shot(name.hashCode(), "2026:03:14 09:30:00", ""));
      }
    }

    gather(false);

    assertThat(tree(log.resolve("photos")).keySet())
        .containsExactly("2026-03-14/_CON.jpg", "2026-03-14/abs.jpg", "2026-03-14/up.jpg");
    assertThat(tree(folder).keySet()).allMatch(p -> p.startsWith("log/") || p.equals("card.zip"));
  }

  @Test
  void hostileZipsFromElsewhereBringInNothing() throws IOException {
    for (Path file : Shared.files("corpus/14-archives-paths")) {
      if (file.toString().endsWith(".zip")) {
        card = file;
        assertThat(gather(false).count(Fate.BROUGHT_IN)).isZero();
      }
    }
    assertThat(log.resolve("photos")).doesNotExist();
  }

  @Test
  void aFolderOfTheLogItselfIsRefused() throws IOException {
    card = Files.createDirectories(log.resolve("photos"));

    assertThat(gather(false).problems()).singleElement().matches(p -> p.isError());
  }

  @Test
  void aLogThatLiesInTheSourceIsNotBroughtIntoItself() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    gather(false);
    card = folder;

    assertThat(gather(false).steps()).extracting(Step::source).containsExactly("card/A.JPG");
  }

  @ParameterizedTest
  @CsvSource({
    "IMG_1.JPG, IMG_1.JPG",
    "../x/IMG.jpg, IMG.jpg",
    "a:b*c.jpg, a_b_c.jpg",
    "nul.jpg, _nul.jpg",
    "..., photo",
    ".hidden.jpg, hidden.jpg",
    "com¹.jpg, _com¹.jpg",
    "aux .jpg, _aux .jpg",
    "CONIN$, _CONIN$",
    "'IMG_1.JPG. ', IMG_1.JPG",
    "'a\nb\tc.jpg', a_b_c.jpg",
    "a\\b\\IMG.jpg, IMG.jpg"
  })
  void namesAreMadeSafeForEverySystem(String name, String safe) {
    assertThat(PhotoFolders.safe(name)).isEqualTo(safe);
  }

  /** Most file systems allow 255 bytes, which are 85 letters of some alphabets. */
  @Test
  void aLongNameLosesItsBeginningAndKeepsItsEnding() {
    for (String letter : List.of("x", "\u00e9", "\u9577", "\ud83d\udea2")) {
      String safe = PhotoFolders.safe(letter.repeat(300) + ".jpg");
      assertThat(safe.getBytes(StandardCharsets.UTF_8).length).isBetween(190, 200);
      assertThat(safe).endsWith(letter + ".jpg").doesNotContain("\ufffd");
      assertThat(safe.codePoints().distinct()).hasSize(5);
    }
  }

  @Test
  void aPictureWithoutAnEndingGetsThatOfItsKindSoThatTheLogReadsIt() throws IOException {
    onCard("noext", shot(1, "2026:03:14 09:30:00", ""));
    onCard("dot.jpg.", shot(2, "2026:03:14 09:31:00", ""));
    onCard("b.jfif", shot(3, "2026:03:14 09:32:00", ""));
    onCard("c", Shots.png(Shots.scene(20, 20, 4)));

    gather(false);

    assertThat(tree(log.resolve("photos")).keySet())
        .containsExactly(
            "2026-03-14/b.jfif.jpg", "2026-03-14/dot.jpg", "2026-03-14/noext.jpg", "undated/c.png");
  }

  @Test
  void aBackslashInANameIsPartOfItWhereItMayBe() throws IOException {
    assumeTrue(File.separatorChar == '/', "here a \\ stands between folders");
    onCard("DCIM/lit\\back.jpg", shot(1, "2026:03:14 09:30:00", ""));

    assertThat(gather(false).count(Fate.BROUGHT_IN)).isOne();
    assertThat(tree(log.resolve("photos"))).containsOnlyKeys("2026-03-14/back.jpg");
  }

  @Test
  void aZipOfAPhoneGivesEveryPictureOfItUnderANameOfItsOwn() throws IOException {
    List<String> names =
        List.of(
            "DCIM/a.jpg",
            "DCIM/A.JPG",
            "C:\\win\\w.jpg",
            "x.jpg.",
            "nul",
            "..",
            "n\nl.jpg",
            "a:b.jpg");
    zip(names, name -> shot(name.hashCode(), "2026:03:14 09:30:00", ""));

    gather(false);

    assertThat(tree(log.resolve("photos")).keySet())
        .containsExactly(
            "2026-03-14/A.JPG",
            "2026-03-14/_nul.jpg",
            "2026-03-14/a-2.jpg",
            "2026-03-14/a_b.jpg",
            "2026-03-14/n_l.jpg",
            "2026-03-14/photo.jpg",
            "2026-03-14/w.jpg",
            "2026-03-14/x.jpg");
  }

  @Test
  void aZipInAZipAndFilmsAreNamedWithWhatToDo() throws IOException {
    zip(
        List.of("inner.zip", "film.MOV", "A.JPG"),
        name ->
            name.equals("A.JPG")
                ? shot(1, "2026:03:14 09:30:00", "")
                : ("PK\u0003\u0004" + name).getBytes(StandardCharsets.US_ASCII));

    Outcome outcome = gather(false);

    assertThat(outcome.count(Fate.BROUGHT_IN)).isOne();
    assertThat(outcome.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.isError()).isFalse())
        .satisfies(p -> assertThat(p.toString()).contains("film.MOV", "inner.zip"));
  }

  /** What expands to more than any photograph is left alone before it fills the memory. */
  @Test
  void aZipThatSwellsIsPassedOver() throws IOException {
    card = folder.resolve("card.zip");
    byte[] nothing = new byte[1 << 20];
    try (OutputStream out = Files.newOutputStream(card);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.putNextEntry(new ZipEntry("bomb.jpg"));
      for (long size = 0; size <= PhotoLoader.MOST_BYTES; size += nothing.length) {
        zip.write(nothing);
      }
    }

    Outcome outcome = gather(false);

    assertThat(outcome.steps()).extracting(Step::fate).containsExactly(Fate.PASSED_OVER);
    assertThat(outcome.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.what()).startsWith("The file is larger than any photograph."));
  }

  /** APPNOTE.TXT 6.3.10, 4.4.4: bit 0 of the general purpose flag says that a file is encrypted. */
  @Test
  void aLockedZipIsSaidToBeLockedAndABrokenOneToBeBroken() throws IOException {
    zip(List.of("A.JPG"), name -> shot(1, "2026:03:14 09:30:00", ""));
    byte[] bytes = Files.readAllBytes(card);
    Files.write(card, Arrays.copyOf(bytes, bytes.length / 2));
    assertThatThrownBy(() -> gather(false)).hasMessageContaining("neither a folder nor a zip");
    for (int i = 0; i + 9 < bytes.length; i++) {
      if (bytes[i] == 'P' && bytes[i + 1] == 'K' && bytes[i + 2] == 1 && bytes[i + 3] == 2) {
        bytes[i + 8] |= 1;
      }
    }
    Files.write(card, bytes);

    assertThatThrownBy(() -> gather(false))
        .isInstanceOf(ProblemException.class)
        .hasMessageContaining("locked with a password")
        .hasMessageContaining("Unpack it");
    assertThat(log.resolve("photos")).doesNotExist();
  }

  @Test
  void aFolderWithNothingInItIsNamed() throws IOException {
    assertThat(gather(false).problems())
        .singleElement()
        .satisfies(p -> assertThat(p.what()).hasToString("No file lies in here."))
        .satisfies(p -> assertThat(p.remedy()).contains("DCIM"));
  }

  @Test
  void linksOutOfTheCardOrRoundInItAreNotFollowed() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:14 09:30:00", ""));
    Files.write(folder.resolve("private.jpg"), shot(2, "2026:03:14 09:30:00", ""));
    Files.createSymbolicLink(card.resolve("B.JPG"), folder.resolve("private.jpg"));
    Files.createSymbolicLink(card.resolve("loop"), card);

    assertThat(gather(false).steps()).extracting(Step::source).containsExactly("A.JPG");
  }

  @Test
  void twoCamerasAreEachPutRightByTheirOwnClock() throws IOException {
    onCard("A.JPG", shot(1, "2026:03:15 00:30:00", ""));
    onCard(
        "B.JPG",
        Shots.withExif(
            Shots.jpeg(Shots.scene(30, 20, 2), 0.9), 1, "DSV-1", "2026:03:14 23:50:00", ""));

    Outcome outcome =
        Gatherer.gather(
            request(
                Map.of("T-20", Duration.ofMinutes(72), "DSV-1", Duration.ofMinutes(-15)),
                null,
                false),
            PhotoProgress.SILENT);

    assertThat(outcome.steps())
        .extracting(Step::path)
        .containsExactly("photos/2026-03-14/A.JPG", "photos/2026-03-15/B.JPG");
  }

  private void zip(List<String> names, Function<String, byte[]> content) throws IOException {
    card = folder.resolve("card.zip");
    try (OutputStream out = Files.newOutputStream(card);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (String name : names) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(content.apply(name));
      }
    }
  }

  private Outcome gather(boolean dry) throws IOException {
    return Gatherer.gather(request(Map.of(), null, dry), PhotoProgress.SILENT);
  }

  private Request request(Map<String, Duration> clocks, ClockPhoto clock, boolean dry) {
    return new Request(
        card, log, Logs.ZONE, new TreeMap<>(clocks), clock, LocalDate.of(2026, 5, 20), dry);
  }

  private void onCard(String name, byte[] bytes) throws IOException {
    Files.createDirectories(card.resolve(name).getParent());
    Files.write(card.resolve(name), bytes);
  }

  private static byte[] shot(long seed, String time, String offset) {
    return Shots.withExif(Shots.jpeg(Shots.scene(30, 20, seed), 0.9), 1, "T-20", time, offset);
  }

  /** Hashes of all files below a folder, by path. */
  private static SortedMap<String, String> tree(Path folder) throws IOException {
    SortedMap<String, String> tree = new TreeMap<>();
    if (Files.isDirectory(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          tree.put(folder.relativize(file).toString(), Sha256.of(Files.readAllBytes(file)));
        }
      }
    }
    return tree;
  }
}

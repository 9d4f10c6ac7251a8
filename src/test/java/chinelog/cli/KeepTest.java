package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.cli.TinyLog.Said;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class KeepTest {

  @TempDir private Path folder;

  private TinyLog log = TinyLog.empty(Path.of(""));

  @BeforeEach
  void layDown() {
    log = TinyLog.in(folder.resolve("merrow"));
    log.write("entries/100 %\u00e9.md", "---\ndate: 2026-03-26\n---\nWords.\n");
    log.write("own/plan of the week.txt", "mine");
    log.write(".chinelog/cache", "made again");
    log.write("published/public/site/index.html", "made again");
    log.write("records/gathered.csv", "cannot be made again");
  }

  private Said keep(String into) {
    return log.run("keep", "--into", folder.resolve(into).toString());
  }

  private static String check(TinyLog any) {
    Said said = any.run("check");
    return said.toString().replace(any.folder().toString(), "LOG");
  }

  private Said verify(String copy) {
    return TinyLog.say("keep", "--check", folder.resolve(copy).toString());
  }

  private SortedMap<String, String> dear() {
    SortedMap<String, String> dear = new TreeMap<>(log.everything());
    dear.keySet().removeIf(n -> n.startsWith(".chinelog/") || n.startsWith("published/"));
    return dear;
  }

  @Test
  void aFolderHoldsAllThatCannotBeMadeAgainAndCopyingItRestoresTheLog() throws IOException {
    Said said = keep("copies/one");
    assertThat(said.status()).isZero();
    assertThat(said.out())
        .contains("Left out, since it is made again: .chinelog (1 file), published (1 file).");
    assertThat(said.err()).startsWith("PRIVATE: ").contains("the agreements with Skerrick Yard.");
    Path copy = folder.resolve("copies/one");
    TinyLog data = TinyLog.empty(copy.resolve("data"));
    assertThat(data.everything()).isEqualTo(dear());
    assertThat(Files.getLastModifiedTime(data.path(TinyLog.PHOTO)))
        .isEqualTo(Files.getLastModifiedTime(log.path(TinyLog.PHOTO)));
    assertThat(Files.readString(copy.resolve("READ-ME.txt"))).startsWith("PRIVATE. ");
    assertThat(Files.readString(copy.resolve("bag-info.txt")))
        .contains("Bagging-Date: 2026-06-01\n", "Bag-Software-Agent: chinelog ");
    assertThat(verify("copies/one").out()).startsWith("The copy of 2026-06-01 is whole: ");
    Files.move(data.folder(), folder.resolve("restored"));
    TinyLog restored = TinyLog.empty(folder.resolve("restored"));
    // Of what it did not write and finds in its place, the program would tell.
    log.remove("published/public/site/index.html");
    log.remove("published/public/site");
    log.remove("published/public");
    assertThat(check(restored)).isEqualTo(check(log));
    assertThat(restored.run("publish", "--for", "public").status()).isZero();
  }

  @Test
  void anotherReaderOfBagsFindsTheCopyCompleteAndValid() throws Exception {
    // That reader knows an earlier draft of BagIt, which left "%" as it is.
    log.move("entries/100 %\u00e9.md", "entries/100 \u00e9.md");
    keep("one");
    try (BagVerifier verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(folder.resolve("one")), false);
    }
    keep("two.zip");
    unzip("two.zip");
    assertThat(TinyLog.empty(folder.resolve("two/data")).everything()).isEqualTo(dear());
    try (BagVerifier verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(folder.resolve("two")), false);
    }
    assertThat(verify("two.zip").out()).startsWith("The copy of 2026-06-01 is whole: ");
  }

  private void unzip(String zip) throws IOException {
    try (var in = new java.util.zip.ZipInputStream(Files.newInputStream(folder.resolve(zip)))) {
      for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        Path file = folder.resolve(entry.getName());
        Files.createDirectories(file.getParent());
        Files.write(file, in.readAllBytes());
        assertThat(entry.getLastModifiedTime()).isNotNull();
      }
    }
  }

  @Test
  void theSameLogOnTheSameDayGivesTheSameBytes() throws IOException {
    keep("a/copy.zip");
    keep("b/copy.zip");
    assertThat(folder.resolve("a/copy.zip")).hasSameBinaryContentAs(folder.resolve("b/copy.zip"));
    keep("a/copy");
    keep("b/copy");
    assertThat(TinyLog.empty(folder.resolve("a/copy")).everything())
        .isEqualTo(TinyLog.empty(folder.resolve("b/copy")).everything());
  }

  @Test
  void whatTheQuietAreToldIsThatTheCopyIsPrivate() {
    Said said = log.run("keep", "-q", "--into", folder.resolve("one").toString());
    assertThat(said.out()).isEmpty();
    assertThat(said.err()).startsWith("PRIVATE: ");
    assertThat(TinyLog.say("keep", "-q", "--check", folder.resolve("one").toString()))
        .isEqualTo(new Said(0, "", ""));
  }

  @Test
  void aPlaceInTheLogItselfIsRefused() throws IOException {
    SortedMap<String, String> before = log.everything();
    Files.createSymbolicLink(folder.resolve("link"), log.path("own"));
    for (String into : new String[] {"merrow/copy", "merrow/own/x.zip", "merrow", "link/deep/x"}) {
      Said said = keep(into);
      assertThat(said.status()).isEqualTo(Main.PROBLEMS);
      assertThat(said.err())
          .isEqualTo(
              folder.resolve(into)
                  + ": error: This lies in the log itself, and would be lost with it."
                  + " Name a place outside of it, best on another disk.\n");
    }
    assertThat(log.everything()).isEqualTo(before);
  }

  @Test
  void whatStandsInThePlaceIsNeverOverwritten() throws IOException {
    TinyLog mine = TinyLog.empty(folder.resolve("mine"));
    mine.write("folder/letter.txt", "dear").write("file", "dear").write("x.zip", "dear");
    mine.write("y.zip.part", "dear");
    SortedMap<String, String> before = mine.everything();
    for (String into : new String[] {"folder", "file", "x.zip", "y.zip"}) {
      Said said = keep("mine/" + into);
      assertThat(said.status()).isEqualTo(Main.PROBLEMS);
      assertThat(said.err())
          .contains("error: This is there already, and nothing of yours is overwritten. Name a new")
          .contains("merrow-2026-06-01");
    }
    assertThat(mine.everything()).isEqualTo(before);
    keep("mine/copy");
    before = mine.everything();
    assertThat(keep("mine/copy").status()).isEqualTo(Main.PROBLEMS);
    assertThat(mine.everything()).isEqualTo(before);
  }

  @Test
  void aCopyThatWasChangedSinceIsTold() throws IOException {
    keep("one");
    TinyLog copy = TinyLog.empty(folder.resolve("one"));
    copy.replace("data/" + TinyLog.NOTE, "straight", "crooked");
    copy.remove("data/" + TinyLog.PHOTO);
    copy.write("data/entries/new.md", "new");
    copy.write("data/photos/.DS_Store", "x");
    copy.replace("bag-info.txt", "2026-06-01", "2026-06-02");
    Said said = verify("one");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err().lines())
        .satisfiesExactly(
            l -> assertThat(l).contains("/bag-info.txt: error: This file was changed since"),
            l -> assertThat(l).contains("/data/" + TinyLog.NOTE + ": error: This file was changed"),
            l -> assertThat(l).contains("/data/entries/new.md: error: This file was added since"),
            l -> assertThat(l).contains("/data/" + TinyLog.PHOTO + ": error: This file is missing"),
            l -> assertThat(l).contains("/data/photos/.DS_Store: reminder: "),
            l -> assertThat(l).isEqualTo("4 errors, 1 reminder"),
            l -> assertThat(l).isEqualTo("This copy is not what it was."));
    copy.write("manifest-sha256.txt", "garbage\n" + "0".repeat(64) + "  data/../../etc/x\n");
    assertThat(verify("one").err())
        .contains("/manifest-sha256.txt:1:1: error: This line names no file of the copy.")
        .contains("/manifest-sha256.txt:2:1: error: This line names no file of the copy.");
  }

  @Test
  void aZipThatWasChangedOrCutShortIsTold() throws IOException {
    keep("one.zip");
    Path zip = folder.resolve("one.zip");
    byte[] whole = Files.readAllBytes(zip);
    String text = new String(whole, java.nio.charset.StandardCharsets.ISO_8859_1);
    byte[] changed = whole.clone();
    changed[text.indexOf("lies straight")] = 'L';
    Files.write(zip, changed);
    assertThat(verify("one.zip").err())
        .contains("one.zip/data/" + TinyLog.NOTE + ": error: This file");
    for (int length : new int[] {0, 100, whole.length / 2, whole.length - 1}) {
      Files.write(zip, java.util.Arrays.copyOf(whole, length));
      Said said = verify("one.zip");
      assertThat(said.status()).isEqualTo(Main.PROBLEMS);
      assertThat(said.err()).startsWith(zip + ": error: This is no whole zip");
    }
  }

  @Test
  void aFolderThatWasInterruptedIsToldAndFinishedByTheSameCommand() throws IOException {
    keep("whole");
    keep("one");
    TinyLog copy = TinyLog.empty(folder.resolve("one"));
    copy.write("unfinished.txt", "x").remove("bagit.txt").remove("data/log.yaml");
    copy.write("data/" + TinyLog.PHOTO, "half");
    assertThat(verify("one").err())
        .isEqualTo(
            copy.folder()
                + ": error: This copy was interrupted, and is not whole."
                + " Run keep again with the same folder; it goes on where it stopped.\n");
    assertThat(keep("one").status()).isZero();
    assertThat(copy.everything()).isEqualTo(TinyLog.empty(folder.resolve("whole")).everything());
  }

  @Test
  void aZipThatWasInterruptedHasNotItsNameAndIsMadeByTheSameCommand() throws IOException {
    keep("one.zip");
    Path zip = folder.resolve("one.zip");
    byte[] whole = Files.readAllBytes(zip);
    Files.delete(zip);
    Path part = folder.resolve("one.zip.part");
    Files.write(part, java.util.Arrays.copyOf(whole, whole.length / 2));
    assertThat(verify("one.zip").err())
        .contains("There is no such copy, but one beside it that was never finished.");
    assertThat(keep("one.zip").status()).isZero();
    assertThat(zip).hasBinaryContent(whole);
    assertThat(part).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"size=16k", "size=4m,nr_inodes=6"})
  void aDiskThatIsFullIsToldAndTheSameCommandFinishesOnceThereIsRoom(String options)
      throws Exception {
    log.write("photos/large.bin", new byte[40_000]);
    Path disk = Files.createDirectories(folder.resolve("disk"));
    assumeTrue(
        run("mount", "-t", "tmpfs", "-o", options, "tmpfs", "" + disk),
        "small disks can be made only by root on Linux");
    try {
      for (String into : new String[] {"disk/one", "disk/one.zip"}) {
        if (options.contains("nr_inodes") && into.endsWith("zip")) {
          continue;
        }
        Said said = keep(into);
        assertThat(said.status()).isEqualTo(Main.PROBLEMS);
        assertThat(said.err()).contains(": error: The disk is full").contains("Make room on it");
        assertThat(verify(into).status()).isEqualTo(Main.PROBLEMS);
      }
      assertThat(disk.resolve("one.zip.part")).doesNotExist();
      assertThat(run("mount", "-o", "remount,size=4m,nr_inodes=1000", "" + disk)).isTrue();
      assertThat(keep("disk/one").status()).isZero();
      assertThat(verify("disk/one").status()).isZero();
    } finally {
      run("umount", "" + disk);
    }
  }

  private static boolean run(String... command) throws InterruptedException {
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void whatHasChangedInTheLogSinceIsTold() throws IOException {
    keep("one");
    String one = folder.resolve("one").toString();
    assertThat(log.run("keep", "--into", one, "--check").out()).contains("The log is as it was");
    log.replace(TinyLog.NOTE, "straight", "crooked").remove("facts.yaml").write("own/new", "x");
    log.write(".chinelog/other", "x");
    Said said = log.run("keep", "--into", one, "--check");
    assertThat(said.status()).isZero();
    assertThat(said.out())
        .endsWith("Changed in the log since: " + TinyLog.NOTE + ", facts.yaml, own/new.\n");
  }

  @Test
  void aLogWithErrorsIsCopiedButNotOneWithALinkNorAFolderThatIsNone() throws IOException {
    log.replace("log.yaml", "scale: 1:16", "scael: 1:16");
    assertThat(keep("one").status()).isZero();
    Files.createSymbolicLink(log.path("photos/link.jpg"), log.path(TinyLog.PHOTO));
    assertThat(keep("two").err()).contains("photos/link.jpg: error: This is a link");
    assertThat(folder.resolve("two")).doesNotExist();
    Path other = Files.createDirectories(folder.resolve("other"));
    Files.writeString(other.resolve("letter.txt"), "x", StandardOpenOption.CREATE);
    assertThat(TinyLog.say("keep", other.toString(), "--into", folder + "/three").err())
        .contains("This folder holds no log");
    assertThat(verify("nowhere.zip").err()).contains("nowhere.zip: error: There is no such copy.");
    assertThat(verify("other").err()).contains("other: error: This is no copy that keep has made");
  }
}

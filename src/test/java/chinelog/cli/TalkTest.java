package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.cli.TinyLog.Said;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The filmed series as published, in the files that come out. */
@Timeout(120)
@ExtendWith(OncePerRun.class)
class TalkTest {

  private static final String FIRST = "talk/01-the-keel-goes-down/";
  private static final String MARKS = "talk/public/01-the-keel-goes-down.csv";

  @TempDir private Path folder;

  private static TinyLog log(Path place) {
    return TinyLog.in(place)
        .replace("log.yaml", "party-to: [], gets: [site]", "party-to: [], gets: [talk]")
        .write(
            "entries/2026-03-28-planks.md",
            """
            ---
            title: Planks
            stage: planking
            measured: {hull.beam: 190 mm ± 1 mm}
            ---
            Three planks a side, each 3/16 in thick.
            """);
  }

  /** Such a log, published for the public. */
  static final class Told implements AutoCloseable {

    private final Path folder;
    private final TinyLog log;

    Told() throws IOException {
      folder = Files.createTempDirectory("talk");
      log = published(TalkTest.log(folder.resolve("merrow")));
    }

    @Override
    public void close() throws IOException {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }

  private static TinyLog published(TinyLog log) {
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err() + said.out()).isZero();
    return log;
  }

  private static SortedMap<String, byte[]> files(TinyLog log) throws IOException {
    Path of = log.path("published/public");
    SortedMap<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(of)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(of.relativize(file).toString().replace('\\', '/'), Files.readAllBytes(file));
      }
    }
    return files;
  }

  private static String text(SortedMap<String, byte[]> files, String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }

  @Test
  void eachInstalmentHasWhatIsWantedToFilmIt(Told told) throws IOException {
    SortedMap<String, byte[]> files = files(told.log);
    assertThat(files.keySet())
        .contains(
            FIRST + "script.html",
            FIRST + "script.pdf",
            FIRST + "captions.vtt",
            FIRST + "captions.srt",
            FIRST + "chapters.vtt",
            FIRST + "chapters.txt",
            FIRST + "description.txt",
            FIRST + "frames/001.jpg",
            "talk/02-planks/frames/004.jpg")
        .allMatch(name -> name.startsWith("talk/"));
    assertThat(text(files, "talk/02-planks/script.html"))
        .contains("each three sixteenths of an inch thick.")
        .contains("Hull beam: one hundred and ninety</span>");
    assertThat(text(files, "talk/02-planks/captions.vtt")).contains("190\u202fmm");
    assertThat(text(files, FIRST + "chapters.txt")).matches("(?s)0:00 Opening\n.*Next time\n");
    assertThat(text(files, "talk/02-planks/captions.srt"))
        .contains("Last time: The keel goes down.");
    assertThat(text(files, FIRST + "description.txt")).contains("Cedar strip");
  }

  /** The picture is three by two; the theme's paper is #faf6ee. */
  @Test
  void aFrameIsOfItsSizeToThePixel(Told told) throws IOException {
    SortedMap<String, byte[]> files = files(told.log);
    int shots = 0;
    for (String name : files.keySet()) {
      if (!name.endsWith(".jpg")) {
        continue;
      }
      byte[] bytes = files.get(name);
      BufferedImage frame = ImageIO.read(new ByteArrayInputStream(bytes));
      assertThat(List.of(frame.getWidth(), frame.getHeight())).containsExactly(1920, 1080);
      assertThat(ground(frame, 0, 0) && ground(frame, 140, 1079) && ground(frame, 1779, 500))
          .isTrue();
      shots += ground(frame, 160, 540) && ground(frame, 1760, 540) ? 0 : 1;
      // Nothing but the header of JFIF, tables and the picture itself.
      for (int at = 2; (bytes[at + 1] & 0xFF) != 0xDA; at += 2 + length(bytes, at)) {
        assertThat(bytes[at + 1] & 0xFF).isIn(0xE0, 0xDB, 0xC0, 0xC4);
      }
    }
    assertThat(shots).isEqualTo(1);
  }

  private static int length(byte[] bytes, int at) {
    return (bytes[at + 2] & 0xFF) << 8 | bytes[at + 3] & 0xFF;
  }

  private static boolean ground(BufferedImage frame, int x, int y) {
    int rgb = frame.getRGB(x, y);
    return Math.abs((rgb >> 16 & 0xFF) - 0xfa) <= 2
        && Math.abs((rgb >> 8 & 0xFF) - 0xf6) <= 2
        && Math.abs((rgb & 0xFF) - 0xee) <= 2;
  }

  @Test
  void whatStandsIsAuditedAgainAndKeptAsItIs(Told told) throws IOException {
    Said again = told.log.run("audit", "--for", "public");
    assertThat(again.status()).as(again.err()).isZero();
    assertThat(again.out()).contains("public: clean");
  }

  /** How long an instalment takes must not tell of what it leaves out without a trace. */
  @Test
  void anEntryThatLeavesNoTraceLeavesNoneInTheTalk(Told told) throws IOException {
    TinyLog other = log(folder.resolve("other"));
    other.write(
        "log.yaml",
        other
            .read("log.yaml")
            .replace(
                "from: 2026-03-02}",
                "from: 2026-03-02}\n  quiet: {with: Ottersby Timber, covers: all of it, from: 2026-03-02, presence: nothing}"));
    other.write(
        "entries/2026-03-26-ropewalk.md",
        """
        ---
        title: What the ropewalk had left
        stage: planking
        under: quiet
        ---
        Quillfeather elm offcuts, laminated for the stem knee and steamed for an hour.
        """);
    SortedMap<String, byte[]> files = files(published(other));
    SortedMap<String, byte[]> first = files(told.log);
    assertThat(files).containsOnlyKeys(first.keySet());
    first.forEach((name, bytes) -> assertThat(files.get(name)).as(name).isEqualTo(bytes));
  }

  @Test
  void marksOfARecordingTimeCaptionsAndChapters() throws IOException {
    TinyLog log = log(folder.resolve("marked"));
    String script = script(log, 1);
    StringBuilder marks = new StringBuilder("frame,begins\n");
    for (int i = 1; i <= 3; i++) {
      marks
          .append(i)
          .append(",0:")
          .append(String.format("%02d.5", i * 7 - 7).replace("00.5", "00"));
      marks.append('\n');
    }
    log.write(MARKS, marks + "end,0:59\nscript," + script + "\n");
    SortedMap<String, byte[]> files = files(published(log));
    assertThat(text(files, FIRST + "chapters.txt"))
        .contains("0:07 The keel goes down\n", "0:14 Next time\n");
    assertThat(text(files, FIRST + "script.html")).contains("0:59, as recorded.");
    assertThat(log.run("talk").out()).contains("0:59  01-the-keel-goes-down (as recorded)");
    log.replace(MARKS, script, "0123456789");
    assertThat(log.run("check").err())
        .contains(MARKS + ": reminder: The words or the frames of this instalment have changed")
        .contains("\"script," + script + "\"");
  }

  private static String script(TinyLog log, int post) {
    String said = log.run("talk", "--post", String.valueOf(post)).out();
    return said.substring(said.indexOf("script,") + 7).strip();
  }

  @Test
  void marksThatCannotBeAreToldWithPlaceAndRemedy() {
    TinyLog log = log(folder.resolve("bad"));
    String script = "script,0123456789\n";
    check(
        log, "1,0:00\n2,0:09\n3,0:07\nend,0:20\n" + script, ":3:1: error: Frame 3 begins at 0:07");
    check(log, "1,0:00\n2,0:09\nend,0:05\n" + script, ":3:1: error: The recording is shorter than");
    check(log, "1,0:00\n3,0:09\nend,0:15\n" + script, ":2:1: error: \"3\" stands where frame 2");
    check(log, "1,0:00\n2,nine\nend,0:15\n" + script, ":2:3: error: \"nine\" is not a time");
    check(
        log, "1,0:03\nend,0:15\n" + script, ":1:1: error: The first frame does not begin at 0:00");
    check(log, "1,0:00\n" + script, ": error: It is not said when the recording ends");
    check(log, "1,0:00\nend,0:15\n", ": error: It is not said which words were read");
    check(log, "end,0:15\n", ": error: This file marks no frame");
    log.remove(MARKS).write("talk/public/07-nothing.csv", "1,0:00\nend,0:15\n" + script);
    assertThat(log.run("check").err())
        .contains("These readers are told no instalment of this name");
  }

  private static void check(TinyLog log, String marks, String told) {
    log.write(MARKS, marks);
    Said said = log.run("check");
    assertThat(said.status()).isEqualTo(1);
    assertThat(said.err()).contains(MARKS + told);
  }

  @Test
  void keysThatCannotBeAreToldWithPlaceAndRemedy() {
    TinyLog log = log(folder.resolve("keys"));
    String whole = log.read("log.yaml");
    for (String[] wrong :
        new String[][] {
          {"{frame: 800x600}", "\"800x600\" is not the size of a frame."},
          {"{words-a-minute: 9000}", "Write a whole number from 60 to 240, such as 140."},
          {"{minutes: -3}", "Write a whole number from 1 to 120, such as 8."},
          {"{minutes: 5, latitude: 50}", "Write a whole number from 0 to 5"},
          {"{words: 140}", "\"words\" is not a key here."},
          {"aloud", "where a group of keys belongs"}
        }) {
      log.write("log.yaml", whole + "talk: " + wrong[0] + "\n");
      assertThat(log.run("check").err()).contains("log.yaml:", wrong[1]);
    }
  }

  @Test
  void anInstalmentThatIsTooLongIsToldWithItsBreak() {
    TinyLog log = log(folder.resolve("long"));
    String story = "We planed the planks by eye and held them up to the lamp. ".repeat(40);
    for (int day = 10; day < 14; day++) {
      log.write(
          "entries/2026-04-" + day + "-day.md",
          "---\ntitle: Day " + day + "\nstage: planking\n---\n" + story + "\n");
    }
    log.write(
        "log.yaml",
        log.read("log.yaml")
            + "posts:\n  - title: All of April\n    entries: [2026-04-10-day, 2026-04-11-day,"
            + " 2026-04-12-day, 2026-04-13-day]\n"
            + "talk: {minutes: 7, latitude: 1}\n");
    assertThat(log.run("check").err())
        .containsPattern(
            "log.yaml:\\d+:\\d+: reminder: For public, the instalment \u201cAll of April\u201d takes"
                + " 1\\d:\\d\\d to tell; 7 minutes are wanted, give or take 1. Let another post begin"
                + " with \u201cDay 12\u201d");
  }

  @Test
  void aRecordingGivesMarksThatAreWrittenOnlyWhenAsked() throws IOException {
    TinyLog log = log(folder.resolve("recorded"));
    Path wav = recording();
    Said asked = log.run("talk", "--for", "public", "--recording", wav.toString());
    assertThat(asked.status()).isEqualTo(2);
    assertThat(asked.err()).contains("name it with --post");
    Said told = log.run("talk", "--post", "1", "--recording", wav.toString());
    assertThat(told.out()).contains("0:20 recorded", "Nothing is written.");
    assertThat(log.path("talk")).doesNotExist();
    Said written = log.run("talk", "--post", "1", "--recording", wav.toString(), "--write");
    assertThat(written.out()).contains("Written to " + MARKS);
    Said again = log.run("talk", "--post", "1", "--recording", wav.toString(), "--write");
    assertThat(again.status()).isEqualTo(1);
    assertThat(again.err()).contains(MARKS, "This instalment has marks already.");
    assertThat(log.run("check").status()).isZero();
    Said none = log.run("talk", "--post", "1", "--recording", log.path("log.yaml").toString());
    assertThat(none.err()).contains("This is not a recording that can be read.");
    assertThat(log.run("talk", "--for", "workshop").err())
        .contains("These readers get no talk: workshop.");
    assertThat(log.run("talk", "--for", "pubic").err())
        .contains("names no readers \u201cpubic\u201d");
    assertThat(log.run("talk", "--write").err()).contains("--write wants a recording");
    assertThat(log.run("talk", "--post", "9", "--recording", wav.toString()).err())
        .contains("There is no instalment 9; these readers are told 2.");
  }

  private Path recording() throws IOException {
    int rate = 8000;
    byte[] bytes = new byte[20 * rate * 2];
    Random noise = new Random(3);
    for (int i = 0; i < bytes.length / 2; i++) {
      double second = i / (double) rate % 4;
      int sample =
          noise.nextInt(40) + (second > 0.4 && second < 3.2 ? (int) (9000 * Math.sin(i * 0.4)) : 0);
      bytes[2 * i] = (byte) sample;
      bytes[2 * i + 1] = (byte) (sample >> 8);
    }
    Path wav = folder.resolve("voice.wav");
    AudioSystem.write(
        new AudioInputStream(
            new ByteArrayInputStream(bytes),
            new AudioFormat(rate, 16, 1, true, false),
            bytes.length / 2),
        AudioFileFormat.Type.WAVE,
        wav.toFile());
    return wav;
  }
}

package chinelog.desk.files;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogReader;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.NotePart;
import chinelog.log.records.PhotoFile;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Random walks over random logs: after every step the log reads and says what was meant, and taking
 * all back gives the first bytes.
 */
class EditingWalkTest {

  private static final int STEPS = 500;
  private static final List<String> AGREEMENTS = List.of("lines", "client");
  private static final String[] WORDS = {
    "A hull",
    "The yard's sheet: half",
    "no",
    "a #1 mould",
    "Größe – 😀",
    "two, three",
    "'quoted'",
    "[bracketed] words",
    "1:16",
    "- dash",
    "\"so\"",
    "x".repeat(150)
  };
  private static final Path PHOTOS = Path.of("photos/photos.yaml");

  @TempDir Path temp;

  private Random random = new Random();
  private Path log = Path.of("");
  private LogFiles files;
  private Map<String, byte[]> first = new LinkedHashMap<>();

  @ParameterizedTest
  @ValueSource(longs = 3)
  void readsAndSaysWhatWasMeantAfterEveryStep(long seed) throws IOException {
    random = new Random(seed);
    log = temp.resolve("log");
    write();
    files = LogFiles.open(log, new FailingDisk());
    int done = 0;
    int refused = 0;
    for (int i = 0; i < STEPS; i++) {
      Step step = step();
      FileVersion before = files.read(step.file);
      WriteOutcome outcome = files.edit(step.file, step.edit, "Step " + i);
      if (outcome instanceof WriteOutcome.Refused) {
        refused++;
        assertThat(files.read(step.file)).isEqualTo(before);
      } else {
        done++;
        LogReader.Reading reading = read();
        assertThat(reading.problems().stream().filter(Problem::isError)).as("step %d", i).isEmpty();
        assertThat(step.meant.test(reading.log()))
            .as("step %d: from %s to %s", i, before.text(), files.read(step.file).text())
            .isTrue();
      }
      switch (random.nextInt(25)) {
        case 0 -> outsideEdit(before);
        case 1 -> files = LogFiles.open(log, new FailingDisk());
        case 2 -> {
          files.undo();
          files.undo();
          files.redo();
        }
        default -> {}
      }
    }
    assertThat(done).as("refused %d", refused).isGreaterThan(STEPS * 3 / 4);
    files = LogFiles.open(log);
    while (files.findUndo().isPresent()) {
      assertThat(files.undo()).get().isInstanceOf(WriteOutcome.Written.class);
    }
    for (Map.Entry<String, byte[]> file : first.entrySet()) {
      assertThat(log.resolve(file.getKey())).hasBinaryContent(file.getValue());
    }
  }

  private record Step(Path file, LogFiles.Edit edit, Predicate<Log> meant) {}

  /** Another program writes, this one comes too late, and the other takes its own back. */
  private void outsideEdit(FileVersion seen) throws IOException {
    Path file = log.resolve(seen.path());
    byte[] now = Files.readAllBytes(file);
    Files.writeString(file, "# by another program\n" + seen.text());
    assertThat(files.write(Path.of(seen.path()), seen.stamp(), "x", "Too late"))
        .isInstanceOf(WriteOutcome.Changed.class);
    Files.write(file, now);
  }

  private Step step() throws IOException {
    String photo = "p" + random.nextInt(6) + ".jpg";
    String words = WORDS[random.nextInt(WORDS.length)];
    String agreement = AGREEMENTS.get(random.nextInt(2));
    Path note = Path.of("entries/2026-03-1" + random.nextInt(4) + "-note.md");
    NoteText text = NoteText.of(files.read(note));
    int at = text.bodyFrom() + random.nextInt(text.text().length() - text.bodyFrom());
    int to = Math.min(text.text().length(), at + 1 + random.nextInt(30));
    return switch (random.nextInt(14)) {
      case 0 ->
          photo(
              y -> y.with(List.of(photo, "alt"), YamlValue.text(words)),
              l -> photo(l, photo).alt().equals(words));
      case 1 -> photo(y -> y.without(List.of(photo, "alt")), l -> photo(l, photo).alt().isEmpty());
      case 2 ->
          photo(
              y -> y.with(List.of(photo, "under"), YamlValue.under(AGREEMENTS)),
              l -> photo(l, photo).label().agreements().containsAll(AGREEMENTS));
      case 3 ->
          photo(y -> y.without(List.of(photo, "under")), l -> photo(l, photo).label().isNone());
      case 4 ->
          photo(
              y -> y.with(List.of(photo, "leave-out"), YamlValue.bare("true")),
              l -> photo(l, photo).leaveOut());
      case 5 -> {
        int before = regions(photo);
        yield photo(
            y ->
                y.plus(List.of(photo, "regions"), region(agreement))
                    .with(List.of(photo, "sha256"), YamlValue.text(hash(photo))),
            l -> photo(l, photo).regions().size() == before + 1);
      }
      case 6 -> {
        int before = regions(photo);
        yield photo(
            y ->
                before == 0
                    ? y
                    : before > 1
                        ? y.without(
                            List.of(photo, "regions", Integer.toString(random.nextInt(before))))
                        : y.without(List.of(photo, "regions")).without(List.of(photo, "sha256")),
            l -> photo(l, photo).regions().size() == Math.max(0, before - 1));
      }
      case 7 -> {
        String chosen = text.text().substring(at, to).strip();
        yield new Step(
            note,
            v -> NoteText.of(v).under(at, to, List.of(agreement)).text(),
            l -> chosen.isEmpty() || entry(l, note).text().toString().contains(agreement));
      }
      case 8 -> {
        long before = marks(entry(read().log(), note));
        boolean isNew =
            text.parts().stream()
                .filter(p -> p.from() <= at && at <= p.to())
                .filter(p -> p.kind() != NotePart.Kind.PHRASE)
                .findFirst()
                .map(p -> p.marks().isEmpty())
                .orElse(false);
        yield new Step(
            note,
            v -> NoteText.of(v).paragraphUnder(at, List.of(agreement)).text(),
            l -> !isNew || marks(entry(l, note)) >= before);
      }
      case 9 ->
          new Step(
              note,
              v -> NoteText.of(v).sectionUnder(at, List.of(agreement)).text(),
              l ->
                  entry(l, note).text().stream()
                      .anyMatch(
                          b ->
                              b instanceof Block.Heading h
                                  && h.label().agreements().contains(agreement)));
      case 10 -> {
        long before = parts(text);
        yield new Step(
            note,
            v -> parts(text) == 0 ? v.text() : NoteText.of(v).notUnder(at).text(),
            l -> before == 0 || parts(reread(note)) == before - 1);
      }
      case 11 -> {
        boolean on = random.nextBoolean();
        yield new Step(
            note,
            v -> NoteText.of(v).noteUnder(on ? List.of(agreement) : List.of()).text(),
            l -> entry(l, note).label().agreements().equals(on ? labels(agreement) : labels()));
      }
      case 12 -> insertion(note, text, at, photo, words);
      default ->
          new Step(
              Path.of("log.yaml"),
              v ->
                  YamlText.of(v)
                      .with(List.of("agreements", agreement, "covers"), YamlValue.text(words))
                      .text(),
              l -> l.agreements().get(agreement) != null);
    };
  }

  private Step insertion(Path note, NoteText text, int at, String photo, String words) {
    int end = text.text().length();
    long before = images(text);
    return switch (random.nextInt(3)) {
      case 0 ->
          new Step(
              note,
              v -> NoteText.of(v).withPicture(at, "photos/" + photo, words).text(),
              l -> images(reread(note)) == before + 1);
      case 1 ->
          new Step(
              note,
              v -> NoteText.of(v).withFact(lastWord(text), "hull.loa").text(),
              l ->
                  Block.runs(entry(l, note).text())
                      .anyMatch(
                          i -> i instanceof Inline.FactLink f && f.fact().equals("hull.loa")));
      default ->
          new Step(
              note,
              v -> NoteText.of(v).withTable(end, 2, 3).text(),
              l -> entry(l, note).text().stream().anyMatch(Block.Grid.class::isInstance));
    };
  }

  /** After the first paragraph's first letter, where surely text stands. */
  private static int lastWord(NoteText text) {
    return text.text().indexOf("Cut ") + 4;
  }

  private static java.util.SortedSet<String> labels(String... agreements) {
    return new java.util.TreeSet<>(List.of(agreements));
  }

  private NoteText reread(Path note) {
    try {
      return NoteText.of(files.read(note));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static long parts(NoteText text) {
    return text.parts().stream().filter(p -> !p.marks().isEmpty()).count();
  }

  private static long images(NoteText text) {
    return text.parts().stream().filter(p -> p.kind() == NotePart.Kind.PICTURE).count();
  }

  private static long marks(Entry entry) {
    return Block.runs(entry.text()).filter(Inline.Phrase.class::isInstance).count()
        + entry.text().stream().filter(b -> !b.label().isNone()).count();
  }

  private interface YamlEdit {
    YamlText apply(YamlText yaml) throws ProblemException;
  }

  private static Step photo(YamlEdit edit, Predicate<Log> meant) {
    return new Step(PHOTOS, v -> edit.apply(YamlText.of(v)).text(), meant);
  }

  private int regions(String photo) throws IOException {
    return YamlText.of(files.read(PHOTOS)).size(List.of(photo, "regions"));
  }

  private YamlValue region(String agreement) {
    double left = random.nextInt(50) / 100.0;
    double top = random.nextInt(50) / 100.0;
    Map<String, YamlValue> keys = new LinkedHashMap<>();
    keys.put(
        "box",
        new YamlValue.Items(
            List.of(
                YamlValue.bare(Double.toString(left)),
                YamlValue.bare(Double.toString(top)),
                YamlValue.bare("0.75"),
                YamlValue.bare("1")),
            true));
    keys.put("under", YamlValue.text(agreement));
    return new YamlValue.Keys(keys, true);
  }

  private static PhotoFile photo(Log log, String name) {
    return log.photos().stream()
        .filter(p -> p.path().equals("photos/" + name))
        .findFirst()
        .orElseThrow();
  }

  private static Entry entry(Log log, Path note) {
    return log.entries().stream()
        .filter(e -> note.toString().equals("entries/" + e.id() + ".md"))
        .findFirst()
        .orElseThrow();
  }

  private LogReader.Reading read() throws IOException {
    return new LogReader(LocalDate.of(2026, 6, 1), ZoneOffset.UTC).read(log);
  }

  private String hash(String photo) {
    return chinelog.digest.Sha256.of(first.get("photos/" + photo));
  }

  private void write() throws IOException {
    String end = random.nextBoolean() ? "\r\n" : "\n";
    String mark = random.nextBoolean() ? "\ufeff" : "";
    text(
        "log.yaml",
        """
        # Invented.
        title: Building Merrow
        agreements:
          lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02, until: never} # one
          client:
            with: Ravel Sound Pilotage Office
            covers: >-
              who ordered her,
              and what she costs
            from: 2026-02-27
            until: never
        """,
        mark,
        end);
    text("facts.yaml", "hull.loa: {is: 700 mm, title: Length over all}\n", "", end);
    text(
        "photos/photos.yaml",
        """
        # What is seen.

        p0.jpg:
          alt: A hull  # short

        # Twice.
        p1.jpg: {alt: "A stem", under: client}
        p2.jpg:
          caption: >-
            Folded over
            two lines.
          leave-out: false
        """,
        mark,
        end);
    for (int i = 0; i < 6; i++) {
      first.put("photos/p" + i + ".jpg", ("no picture " + i).getBytes(StandardCharsets.UTF_8));
    }
    for (int i = 0; i < 4; i++) {
      String head = i == 0 ? "" : i == 1 ? "---\n---\n" : "---\nstage: moulds # so\n---\n";
      text(
          "entries/2026-03-1" + i + "-note.md",
          head
              + """
              # Note

              Cut the moulds; *the beam is
              190 mm*, they say.

              ## What the sheet says

              - one item
              - another [with a link](https://merrow.example/) in it

              ![A mould](../photos/p0.jpg)

              > Quoted words, `code` too.

              Last words.
              """,
          i == 2 ? mark : "",
          end);
    }
    for (Map.Entry<String, byte[]> file : first.entrySet()) {
      Path path = log.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
  }

  private void text(String name, String text, String mark, String end) {
    UnaryOperator<String> ends = t -> mark + t.replace("\n", end);
    first.put(name, ends.apply(text).getBytes(StandardCharsets.UTF_8));
  }
}

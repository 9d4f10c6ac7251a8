package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.reading.Inventory;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.records.Entry;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever one slip of the finger makes of a mark: the log stops, or the words stay withheld. */
class MisspeltMarkTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
  private static final String PATH = "entries/2026-03-14-a.md";
  private static final String SECRET = "Kittiwake";
  private static final String MARK = "{under=lines}";
  private static final String KEY = "under: lines";
  private static final String LOG =
      "title: Building Merrow\nagreements:\n  lines: {with: Skerrick Yard}\n";
  private static final List<String> LETTERS =
      List.of(
          "a", "U", " ", "\n", "\t", "{", "}", "[", "]", "(", ")", "=", ":", "_", "-", ",", "\"",
          "`", "*", "<", "\\", "&", "#", "|", "!", "\u200b", "｛");

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "heading @ # Frames Kittiwake M||Text Kittiwake.||# After||Text.",
        "title @ # Frames Kittiwake M||# After||Text.",
        "underlined heading @ Before.||Frames Kittiwake M|===||Text Kittiwake.||# After",
        "paragraph @ Before.||Text Kittiwake. M||After.",
        "paragraph without space @ Before.||Text Kittiwake.M||After.",
        "line of its own @ Before.||Text Kittiwake.|M||After.",
        "end of the note @ Before.||Text Kittiwake. M",
        "picture @ Before ![Kittiwake](../photos/Kittiwake.jpg)M after.",
        "picture alone @ Before.||![Kittiwake](../photos/Kittiwake.jpg)M||After.",
        "phrase @ Before [text Kittiwake]M after.",
        "phrase at the end @ Before [text Kittiwake]M",
        "phrase with a fact @ Before [text [Kittiwake](fact:hull.loa) in it]M after.",
        "emphasized phrase @ Before *[text Kittiwake]M after*.",
        "link @ Before [text Kittiwake](https://merrow.example/)M after.",
        "link by reference @ Before [Kittiwake]M after.||[kittiwake]: https://merrow.example/",
        "item @ - one|- text Kittiwake M|- three",
        "quote @ > Before.|>|> Text Kittiwake. M||After.",
        "phrase in a cell @ ! a ! b !|!---!---!|! c ! [Kittiwake]M !|! e ! f !",
        "footnote @ Called.[^1]||[^1]: Text Kittiwake. M||After.",
        "footnote of a section @ Called.[^1]||# Frames M||[^1]: Text Kittiwake.||# After",
        "phrase in a caption @ ![a [Kittiwake]M b](../photos/x.jpg)"
      })
  @Timeout(120)
  void noSlipInAMarkShowsWhatItWasToWithhold(String place, String pattern) {
    String note = pattern.replace("||", "\n\n").replace('|', '\n').replace('!', bar(pattern));
    Problems none = new Problems();
    Entry well = entry(note.replace("M", MARK) + "\n", none);
    assertThat(none.list()).as(place).isEmpty();
    assertThat(PublicWords.of(well)).as(place).doesNotContain(SECRET);
    assertThat(PublicWords.of(entry(note.replace("M", "") + "\n", new Problems())))
        .as(place)
        .contains(SECRET);
    for (String slip : slips(MARK)) {
      Problems problems = new Problems();
      Entry entry = entry(note.replace("M", slip) + "\n", problems);
      if (!problems.hasErrors()) {
        assertThat(PublicWords.of(entry)).as("%s with %s", place, slip).doesNotContain(SECRET);
      }
    }
  }

  private Entry entry(String note, Problems problems) {
    SortedMap<String, Path> none = new TreeMap<>();
    SortedMap<String, Path> photos =
        new TreeMap<>(Map.of("photos/Kittiwake.jpg", folder, "photos/x.jpg", folder));
    SortedMap<String, Path> entries = new TreeMap<>(Map.of(PATH, folder));
    Inventory inventory =
        new Inventory(
            folder, none, entries, photos, none, none, none, none, new java.util.TreeMap<>());
    Scope scope =
        new Scope(inventory, TODAY, ZoneOffset.UTC, "GBP", List.of("lines"), false, problems);
    Source source = Source.ofFile(PATH, note);
    return new EntryReader(scope, null, null)
        .read(PATH, source, text -> new FallbackDate(TODAY, "never asked"))
        .get(0);
  }

  /** In the table the bars are part of the text; elsewhere {@code !} begins a picture. */
  private static char bar(String pattern) {
    return pattern.contains("!---!") ? '|' : '!';
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "entry @ entries/2026-03-14-a.md @ ---|stage: drawings|K|---||Text Kittiwake.|",
        "entry, first @ entries/2026-03-14-a.md @ ---|K|stage: drawings|---||Text Kittiwake.|",
        "photograph @ photos/photos.yaml @ x.jpg:|  alt: Kittiwake|  K|",
        "fact @ facts.yaml @ hull.loa: {is: Kittiwake, K}|",
        "client @ log.yaml @ L|client: {value: Kittiwake, K}|"
      })
  @Timeout(120)
  void noSlipInAKeyShowsWhatItWasToWithhold(String place, String file, String pattern)
      throws IOException {
    String text = pattern.replace('|', '\n').replace("L", LOG);
    write("log.yaml", LOG);
    write("photos/x.jpg", "x");
    write(file, text.replace("K\n", KEY + "\n").replace("K}", KEY + "}"));
    assertThat(read().problems()).as(place).isEmpty();
    assertThat(PublicWords.of(read().log())).as(place).doesNotContain(SECRET);
    for (String slip : slips(KEY)) {
      write(file, text.replace("K\n", slip + "\n").replace("K}", slip + "}"));
      assertStopsOrWithholds(place, slip);
    }
  }

  private void assertStopsOrWithholds(String place, String slip) throws IOException {
    LogReader.Reading reading = read();
    if (reading.problems().stream().noneMatch(Problem::isError)) {
      assertThat(PublicWords.of(reading.log()))
          .as("%s with %s", place, slip)
          .doesNotContain(SECRET);
    }
  }

  private static Set<String> slips(String word) {
    Set<String> slips = new LinkedHashSet<>();
    for (int i = 0; i <= word.length(); i++) {
      String before = word.substring(0, i);
      List<String> letters = new ArrayList<>(LETTERS);
      letters.add(word.substring(Math.min(i, word.length() - 1)).substring(0, 1));
      for (String letter : letters) {
        slips.add(before + letter + word.substring(i));
        if (i < word.length()) {
          slips.add(before + letter + word.substring(i + 1));
        }
      }
      if (i < word.length()) {
        slips.add(before + word.substring(i + 1));
      }
      if (i + 1 < word.length()) {
        slips.add(before + word.charAt(i + 1) + word.charAt(i) + word.substring(i + 2));
      }
    }
    slips.remove(word);
    return slips;
  }

  private LogReader.Reading read() throws IOException {
    return new LogReader(TODAY, ZoneOffset.UTC).read(folder);
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }
}

package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import chinelog.log.markdown.MarkdownReader;
import chinelog.log.markdown.Targets;
import chinelog.log.reading.Inventory;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Yaml;
import chinelog.log.reading.YamlParser;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Text that nobody here made, some of it hostile, where a collection of it is at hand. */
class FilesFromElsewhereTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

  /** Examples that Flexmark 0.64.8 reads by an earlier version of the specification. */
  private static final int KNOWN_DIFFERENCES = 12;

  @TempDir Path folder;

  /** yaml-test-suite, commit ccfa74e5: cases marked "fail: true" are no YAML. */
  @Test
  @Timeout(60)
  void whatIsNoYamlIsRefusedAndNothingElseThrows() throws IOException {
    int refused = 0;
    for (Path file : files("13-yaml")) {
      for (Yaml.Mapping one : cases(file)) {
        String text = text(one, "yaml").replace('␣', ' ').replace('⇔', '\ufeff').replace("∎\n", "");
        text = text.replaceAll("—*»", "\t").replace("←", "\r").replace("↵", "");
        Problems problems = new Problems();
        YamlParser.parse(Source.ofFile("log.yaml", text), problems);
        if (text(one, "fail").equals("true")) {
          assertThat(problems.hasErrors()).as(file.getFileName() + "\n" + text).isTrue();
          refused++;
        }
      }
    }
    assertThat(refused).isPositive();
  }

  @Test
  @Timeout(120)
  void anyYamlInThePlaceOfAnyFileOfALogIsToldOfAndNeverThrows() throws IOException {
    for (Path file : files("13-yaml")) {
      byte[] bytes = Files.readAllBytes(file);
      for (String name : List.of("log.yaml", "facts.yaml", "stock.yaml", "photos/photos.yaml")) {
        Path log = Files.createTempDirectory(folder, "log");
        Files.createDirectories(log.resolve("photos"));
        Files.writeString(log.resolve("log.yaml"), "title: Building Merrow\n");
        Files.write(log.resolve(name), bytes);
        assertThat(new LogReader(TODAY, ZoneOffset.UTC).read(log).problems())
            .as(name + " of " + file.getFileName())
            .anyMatch(Problem::isError);
      }
    }
  }

  /** CommonMark 0.31.2, its examples: our tree holds the words that the specified HTML shows. */
  @Test
  @Timeout(120)
  void theWordsOfEveryCommonMarkExampleAreKept() throws IOException {
    int compared = 0;
    List<String> different = new ArrayList<>();
    for (String[] example : examples()) {
      Problems problems = new Problems();
      List<Block> blocks = reader(example[0], problems).blocks(chinelog.label.Label.NONE);
      if (problems.list().isEmpty()) {
        compared++;
        Document html = Jsoup.parseBodyFragment(example[1]);
        if (!squeezed(words(blocks)).equals(squeezed(html.body().wholeText()))) {
          different.add(example[0] + "\n=> " + words(blocks));
        }
      }
    }
    assertThat(compared).isGreaterThan(400);
    assertThat(different).hasSizeLessThanOrEqualTo(KNOWN_DIFFERENCES);
  }

  @Test
  @Timeout(300)
  void aMarkAtAnyPlaceOfAnyCommonMarkExampleIsNeverShown() throws IOException {
    int tried = 0;
    for (String[] example : examples()) {
      String text = example[0];
      for (int at = 0; at <= Math.min(text.length(), 200); at += 3) {
        String marked = text.substring(0, at) + "{under=lines}" + text.substring(at);
        Problems problems = new Problems();
        List<Block> blocks = reader(marked, problems).blocks(chinelog.label.Label.NONE);
        if (!problems.hasErrors()) {
          tried++;
          assertThat(PublicWords.blocks(blocks)).as(marked).doesNotContain("under", "lines}");
        }
      }
    }
    assertThat(tried).isGreaterThan(300);
  }

  @Test
  @Timeout(120)
  void scriptInTextBecomesNeitherALinkNorHtml() throws IOException {
    for (Path file : files("12-markdown-html-vectors")) {
      String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
      Problems problems = new Problems();
      List<Block> blocks = reader(text, problems).blocks(chinelog.label.Label.NONE);
      assertThat(Block.runs(blocks).filter(Inline.Link.class::isInstance))
          .as(file.getFileName().toString())
          .allMatch(link -> ((Inline.Link) link).target().matches("(?is)(https?://|mailto:|#).*"));
    }
  }

  @Test
  @Timeout(120)
  void naughtyStringsAreReadOrRefusedWhereverTheyStand() throws IOException {
    String json = Files.readString(file("12-markdown-html-vectors", "blns.json"));
    Matcher m = Pattern.compile("(?m)^  (\"(?:[^\"\\\\]|\\\\.)*\")").matcher(json);
    int tried = 0;
    while (m.find()) {
      String quoted = m.group(1);
      Problems problems = new Problems();
      reader(quoted.substring(1, quoted.length() - 1), problems).blocks(chinelog.label.Label.NONE);
      YamlParser.parse(Source.ofFile("log.yaml", "title: " + quoted + "\n"), problems);
      YamlParser.parse(Source.ofFile("log.yaml", quoted.substring(1)), problems);
      tried++;
    }
    assertThat(tried).isGreaterThan(400);
  }

  @Test
  @Timeout(120)
  void noPathThatClimbsOutOfTheLogLeadsAnywhere() throws IOException {
    List<String> paths = Files.readAllLines(file("14-archives-paths", "directory_traversal.txt"));
    for (String path : paths) {
      Problems problems = new Problems();
      assertThat(targets(problems).photo(path, chinelog.problem.Place.of("a.md"))).isNull();
      assertThat(problems.hasErrors()).as(path).isTrue();
    }
    assertThat(paths).isNotEmpty();
  }

  private static Targets targets(Problems problems) {
    return new Targets(scope(problems), "entries");
  }

  private static MarkdownReader reader(String text, Problems problems) {
    return new MarkdownReader(Source.ofFile("entries/a.md", text), "entries", scope(problems));
  }

  private static Scope scope(Problems problems) {
    SortedMap<String, Path> none = new TreeMap<>();
    Path file = Path.of("x");
    SortedMap<String, Path> photos = new TreeMap<>(Map.of("photos/x.jpg", file));
    Inventory inventory =
        new Inventory(file, none, none, photos, none, none, none, none, new java.util.TreeMap<>());
    return new Scope(inventory, TODAY, ZoneOffset.UTC, "GBP", List.of("lines"), false, problems);
  }

  private static String words(List<Block> blocks) {
    return PublicWords.blocks(blocks).replaceAll("(?i) <(https?:|mailto:|#)[^>]*> ", "");
  }

  private static String squeezed(String text) {
    return text.replaceAll("[\\s\u00a0]+", "");
  }

  private static List<String[]> examples() throws IOException {
    String spec = Files.readString(file("12-markdown-html-vectors", "spec.txt"));
    Matcher m = Pattern.compile("(?ms)^`{32} example\n(.*?)^\\.\n(.*?)^`{32}$").matcher(spec);
    List<String[]> examples = new ArrayList<>();
    while (m.find()) {
      examples.add(new String[] {m.group(1).replace('→', '\t'), m.group(2).replace('→', '\t')});
    }
    assertThat(examples).hasSizeGreaterThan(600);
    return examples;
  }

  private static List<Yaml.Mapping> cases(Path file) throws IOException {
    Yaml root = YamlParser.parse(Source.ofFile("case", Files.readString(file)), new Problems());
    List<Yaml.Mapping> cases = new ArrayList<>();
    if (root instanceof Yaml.Sequence sequence) {
      for (Yaml item : sequence.items()) {
        if (item instanceof Yaml.Mapping mapping) {
          cases.add(mapping);
        }
      }
    }
    return cases;
  }

  private static String text(Yaml.Mapping mapping, String key) {
    return mapping.pairs().stream()
        .filter(p -> p.key().text().equals(key))
        .map(p -> ((Yaml.Scalar) p.value()).text())
        .findFirst()
        .orElse("");
  }

  private static Path file(String kind, String ending) throws IOException {
    return files(kind).stream()
        .filter(f -> f.getFileName().toString().endsWith(ending))
        .findFirst()
        .orElseThrow();
  }

  private static List<Path> files(String kind) throws IOException {
    String given = System.getProperty("chinelog.shared");
    Path shared = given == null ? Path.of("..", "shared") : Path.of(given);
    if (given == null && !Files.isDirectory(shared)) {
      shared = Path.of("..", "..", "shared");
    }
    Path corpus = shared.resolve("corpus").resolve(kind);
    assumeThat(corpus).as("the collection of files from elsewhere").isDirectory();
    try (Stream<Path> all = Files.list(corpus)) {
      return all.sorted().toList();
    }
  }
}

package chinelog.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.publish.Outcome;
import chinelog.publish.Progress;
import chinelog.publish.Publisher;
import chinelog.publish.Workshop;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Scripts from elsewhere, each as the title and as the text of a note, and in every other place
 * that takes a text: refused with its place, or mere words on page and paper. The audit finds no
 * script, in a browser nothing runs or is fetched, and in the PDFs nothing acts.
 */
@Timeout(600)
@InBrowser
class ScriptVectorsTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 20);
  private static final int LONGEST = 400;

  /** Every vector in every place with 1; by default one in so many, to keep the run short. */
  private static final int ONE_IN = Integer.getInteger("chinelog.corpus-one-in", 24);

  /** The same for titles and texts alone, which cost less. */
  private static final int NOTE_IN = Math.min(ONE_IN, 6);

  private static final List<String> SOURCES =
      List.of(
          "h5sc__vectors.txt",
          "cheatsheetseries__XSS_Filter_Evasion_Cheat_Sheet.md",
          "big-list-of-naughty-strings__blns.json");

  /** Tells of everything that a script of a note might do first. */
  private static final String WATCH =
      """
      window.ran = [];
      for (const deed of ['alert', 'confirm', 'prompt', 'print', 'open', 'fetch'])
        window[deed] = () => window.ran.push(deed);
      window.addEventListener('error', e => window.ran.push('error ' + e.message));
      """;

  private static final String WHAT_IS_THERE =
      """
      JSON.stringify([
        ...window.ran,
        ...[...document.querySelectorAll('*')].flatMap(e => [...e.attributes]
          .filter(a => /^on/i.test(a.name)
            || /(href|src|action)$/i.test(a.name) && /^\\s*(javascript|vbscript|data):(?!,)/i.test(a.value))
          .map(a => e.tagName + ' ' + a.name)),
        ...[...document.querySelectorAll('iframe, object, embed, base, applet, frame, math')]
          .map(e => e.tagName),
        ...performance.getEntriesByType('resource').map(r => r.name)
          .filter(n => !n.startsWith('file:'))])
      """;

  @TempDir Path temp;

  @Test
  void everyVectorIsRefusedOrInert(Browser browser) throws Exception {
    List<String> vectors = vectors(corpus());
    assertThat(vectors).hasSizeGreaterThan(500);
    Path log = Files.createDirectories(temp.resolve("log"));
    List<String> some = oneIn(NOTE_IN, vectors);
    Set<Integer> wordless = write(log, some);
    Outcome outcome =
        new Publisher(log, DAY, DAY, ZoneId.of("UTC"), Progress.SILENT).publish(List.of("public"));
    assertThat(outcome.problems().stream().filter(p -> p.isError())).isEmpty();
    assertThat(outcome.editions().get(0).findings()).isEmpty();
    assertThat(wordless.size())
        .as("refused as texts")
        .isBetween(some.size() / 7, some.size() * 2 / 3);
    lookAt(log.resolve("published/public/site"), browser);
  }

  @Test
  void everyVectorIsInertInEveryPlace(Browser browser) throws Exception {
    List<String> vectors = vectors(corpus());
    List<String> some = oneIn(ONE_IN, vectors);
    Path log = Files.createDirectories(temp.resolve("log"));
    Set<String> told = VectorLog.write(log, vectors, some);
    assertThat(told).hasSize(some.size());
    Outcome outcome =
        new Publisher(log, DAY, DAY, ZoneId.of("UTC"), Progress.SILENT)
            .publish(List.of("workshop"));
    assertThat(outcome.problems().stream().filter(p -> p.isError())).isEmpty();
    assertThat(outcome.editions().get(0).findings()).isEmpty();
    Path edition = log.resolve("workshop/workshop");
    String text =
        bare(read(edition.resolve("build-book.pdf")) + read(edition.resolve("handover.pdf")));
    // The fonts have these letters.
    assertThat(told.stream().filter(t -> t.chars().allMatch(c -> c < 0x7F)))
        .hasSizeGreaterThan(some.size() * 2 / 3)
        .allSatisfy(t -> assertThat(text).contains(bare(t)));
    lookAt(edition.resolve("site"), browser);
  }

  private static List<String> oneIn(int few, List<String> all) {
    return IntStream.range(0, all.size()).filter(i -> i % few == 0).mapToObj(all::get).toList();
  }

  /** The text of a document in which nothing is done but to lead to a place or to a web page. */
  private static String read(Path file) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
      for (COSObjectKey key : pdf.getDocument().getXrefTable().keySet()) {
        if (pdf.getDocument().getObjectFromPool(key).getObject() instanceof COSDictionary d) {
          assertThat(d.keySet())
              .extracting(COSName::getName)
              .doesNotContain("JS", "AA", "OpenAction", "EmbeddedFiles", "RichMedia");
          // What a structure element has under A are attributes, and O tells whose.
          if (d.getDictionaryObject(COSName.A) instanceof COSDictionary action
              && !action.containsKey(COSName.O)) {
            assertThat(action.getNameAsString(COSName.S)).isIn("URI", "GoTo");
            assertThat(action.getString(COSName.URI, "https:")).matches("(https?|mailto):.*");
          }
        }
      }
      return new PDFTextStripper().getText(pdf);
    }
  }

  /** Without what lines are broken and words are divided with. */
  private static String bare(String text) {
    return text.replaceAll("[\\s\\u00ad-]", "");
  }

  private static Path corpus() {
    Path corpus =
        Path.of(System.getProperty("chinelog.shared", "../shared"))
            .resolve("corpus/12-markdown-html-vectors");
    assumeTrue(Files.isDirectory(corpus), corpus + " is not here, so this is not tried");
    return corpus;
  }

  private static List<String> vectors(Path corpus) throws IOException {
    Set<String> all = new LinkedHashSet<>();
    for (String source : SOURCES) {
      for (String line :
          new String(Files.readAllBytes(corpus.resolve(source)), StandardCharsets.UTF_8)
              .lines()
              .toList()) {
        String vector =
            line.strip()
                .chars()
                .filter(c -> c >= ' ' && c != 0x7F)
                .limit(LONGEST)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        if (vector.matches(".*[<:(&].*")) {
          all.add(vector);
        }
      }
    }
    return List.copyOf(all);
  }

  /** Writes a note for each; of those that are refused, the text or the whole is taken out. */
  private static Set<Integer> write(Path log, List<String> vectors) throws IOException {
    Files.createDirectories(log.resolve("entries"));
    Files.writeString(
        log.resolve("log.yaml"),
        "title: Building Merrow\nreaders:\n  public: {party-to: [], gets: [site]}\n");
    for (int i = 0; i < vectors.size(); i++) {
      note(log, i, vectors.get(i), vectors.get(i));
    }
    Set<Integer> wordless = refused(log);
    for (int i : wordless) {
      note(log, i, vectors.get(i), "The planks lie fair.");
    }
    for (int i : refused(log)) {
      note(log, i, "A note", "The planks lie fair.");
    }
    return wordless;
  }

  private static void note(Path log, int number, String title, String text) throws IOException {
    Files.writeString(
        log.resolve("entries/2026-03-14-note-" + number + ".md"),
        "---\ntitle: '" + title.replace("'", "''") + "'\n---\n" + text + "\n");
  }

  /** Numbers of the notes that have errors, each of which names its file and line. */
  private static Set<Integer> refused(Path log) throws IOException {
    return Workshop.open(log, DAY, DAY, ZoneId.of("UTC"), Progress.SILENT).problems().stream()
        .filter(p -> p.isError())
        .map(p -> p.place().toString())
        .peek(place -> assertThat(place).startsWith("entries/2026-03-14-note-"))
        .map(place -> place.replaceAll(".*-note-(\\d+)\\.md.*", "$1"))
        .map(Integer::valueOf)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static void lookAt(Path site, Browser browser) throws Exception {
    browser.fresh();
    browser.prepare(WATCH);
    List<String> found = new ArrayList<>();
    for (Path page : pages(site)) {
      browser.open(page.toUri());
      String there = browser.text(WHAT_IS_THERE);
      if (!there.equals("[]")) {
        found.add(page.getFileName() + " " + there);
      }
    }
    assertThat(found).isEmpty();
    // The watch is awake.
    browser.evaluate("alert(1)");
    assertThat(browser.text(WHAT_IS_THERE)).isEqualTo("[\"alert\"]");
  }

  private static List<Path> pages(Path site) throws IOException {
    try (Stream<Path> all = Files.walk(site)) {
      return all.filter(p -> p.toString().endsWith(".html")).sorted().limit(40).toList();
    }
  }
}

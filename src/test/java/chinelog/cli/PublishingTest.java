package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** All or nothing: what goes wrong on the way leaves the edition that stood before. */
@Timeout(60)
@Order(2)
class PublishingTest {

  private static final String NOTHING_PUBLISHED =
      "Nothing was published; what stood before still stands.";

  @TempDir private Path folder;

  /**
   * @param error how the one error begins
   */
  record Case(String name, Consumer<TinyLog> spoil, String error) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Consumer<TinyLog> ownTheme(String file, String text) {
    return log ->
        log.write("themes/mine/" + file, text)
            .replace("log.yaml", "currency: GBP", "currency: GBP\ntheme: mine");
  }

  private static Consumer<TinyLog> release(String sheet) {
    return log ->
        log.write("sheets/lines.pdf", sheet)
            .write(
                "log.yaml",
                log.read("log.yaml")
                    + """
                    releases:
                      - sheet: sheets/lines.pdf
                        under: lines
                        by: Ada Skerrick
                        on: 2026-04-02
                        words: Show it.
                        for: [public]
                    """);
  }

  @Test
  void aReleasedFigureDoesNotTellTheFiguresInItsFormula() throws IOException {
    TinyLog log = TinyLog.in(folder.resolve("merrow"));
    log.write(
        "facts.yaml",
        log.read("facts.yaml")
            + "deck.area: {is: 712 mm * 187 mm, title: Area of the deck, under: lines}\n");
    log.write(
        "log.yaml",
        log.read("log.yaml")
            + """
            releases:
              - fact: deck.area
                under: lines
                by: Ada Skerrick
                on: 2026-04-02
                words: You may give the area.
                for: [public]
            """);

    Said said = log.run("publish", "--for", "public");

    assertThat(said.status()).as(said.err()).isZero();
    assertThat(log.read("published/public/site/figures.html"))
        .contains("Area of the deck", "1331")
        .doesNotContain("712", "187");
  }

  static Stream<Case> mistakes() {
    return Stream.of(
        new Case(
            "a note",
            log -> log.replace(TinyLog.NOTE, "planking", "plonking"),
            TinyLog.NOTE + ":3:8: error: \"plonking\" is not a stage"),
        new Case(
            "a log.yaml that cannot be read",
            log -> log.write("log.yaml", "title: [\n"),
            "log.yaml:2:1: error: This is not written as YAML can be read."),
        new Case(
            "a theme without its values",
            ownTheme("book.css", "p { color: var(--nothing) }"),
            "themes/mine/book.css: error: It names var(--nothing)"),
        new Case(
            "a theme with a stray backslash",
            ownTheme("values.properties", "accent = \\u12\n"),
            "themes/mine/values.properties: error: A \\u in this file"),
        new Case(
            "a template that ends too early",
            log -> log.write("site-template/home.ftlh", "<#if x>"),
            "site-template/home.ftlh:1:"),
        new Case(
            "a template that asks for what is not there",
            log -> log.write("site-template/post.ftlh", "<p>\n${nothing.here}\n"),
            "site-template/post.ftlh:2:3: error: The template is wrong: The following has evaluated to null or missing"),
        new Case(
            "a template in another coding",
            log -> log.write("site-template/home.ftlh", new byte[] {(byte) 0xE4, 'x'}),
            "site-template/home.ftlh: error: This is not UTF-8 text."),
        new Case(
            "a released sheet that is no drawing",
            release("not a drawing"),
            "sheets/lines.pdf: error: This sheet is neither a PDF nor a picture"),
        new Case(
            "a released sheet that is damaged",
            release("%PDF-1.7 and nothing"),
            "sheets/lines.pdf: error: The sheet cannot be drawn; it is damaged or locked."),
        new Case(
            "a file of somebody else's among the edition's",
            log -> log.write("published/public/notes.txt", "mine"),
            "published/public/notes.txt: error: This was not written by chinelog"),
        new Case(
            "an empty folder of somebody else's among the edition's",
            log -> log.with(() -> Files.createDirectory(log.path("published/public/mine"))),
            "published/public/mine: error: This was not written by chinelog"),
        new Case(
            "a lost list of what is ours",
            log -> log.remove("records/public/manifest.txt"),
            "published/public: error: No list tells which files here chinelog wrote"),
        new Case(
            "a list of what is ours that is garbage",
            log -> log.write("records/public/manifest.txt", new byte[] {(byte) 0xFF, 0}),
            "published/public: error: No list tells which files here chinelog wrote"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void mistakes(Case wrong) {
    TinyLog log = TinyLog.in(folder);
    assertThat(log.run("publish").status()).isZero();
    wrong.spoil().accept(log);
    SortedMap<String, String> before = log.everything();
    Said said = log.run("publish");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.out()).isEmpty();
    assertThat(said.err().lines().filter(l -> l.contains(": error: ")))
        .singleElement()
        .asString()
        .startsWith(wrong.error());
    assertThat(said.err()).endsWith(NOTHING_PUBLISHED + "\n").doesNotContain("Exception");
    assertThat(withoutCache(log)).isEqualTo(withoutCache(before));
  }

  static Stream<Case> places() {
    return Stream.of(
        new Case(
            "a file called published",
            log -> log.write("published", "mine"),
            "published: error: This is a file"),
        new Case(
            "a file called records",
            log -> log.write("records", "mine"),
            "records: error: This is a file"),
        new Case(
            "a file in the place of a readers' records",
            log -> log.write("records/public", "mine"),
            "records/public: error: This is a file"),
        new Case(
            "a file called .chinelog",
            log -> log.write(".chinelog", "mine"),
            ".chinelog: error: This is a file"),
        new Case(
            "a file in the place of an edition",
            log -> log.write("published/public", "mine"),
            "published/public: error: No list tells"),
        new Case(
            "a file in the place where editions are made",
            log -> log.write(".chinelog/making", "mine"),
            "%s/.chinelog/making/public: error: A file cannot be read or written: "),
        new Case(
            "a published that leads elsewhere",
            log -> link(log, "published"),
            "published: error: This folder is a link"),
        new Case(
            "records that lead elsewhere",
            log -> link(log, "records"),
            "records: error: This folder is a link"),
        new Case(
            "a .chinelog that leads elsewhere",
            log -> link(log, ".chinelog"),
            ".chinelog: error: This folder is a link"));
  }

  private static void link(TinyLog log, String name) {
    log.write("../elsewhere/mine.txt", "mine")
        .with(
            () ->
                Files.createSymbolicLink(
                    log.path(name), log.folder().resolveSibling("elsewhere").toAbsolutePath()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void places(Case wrong) {
    TinyLog log = TinyLog.in(folder.resolve("log"));
    wrong.spoil().accept(log);
    SortedMap<String, String> before = TinyLog.empty(folder).everything();
    Said said = log.run("publish");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).startsWith(wrong.error().formatted(log.folder()));
    assertThat(said.err()).endsWith(NOTHING_PUBLISHED + "\n").doesNotContain("Exception");
    assertThat(withoutCache(TinyLog.empty(folder)).keySet())
        .isEqualTo(withoutCache(before).keySet());
    assertThat(withoutCache(TinyLog.empty(folder))).isEqualTo(withoutCache(before));
  }

  @Test
  void aFullDiskBeforeTheSwapLeavesTheEditionAndTheNextPublishingGoesOn() {
    TinyLog log = TinyLog.in(folder);
    assertThat(log.run("publish").status()).isZero();
    Map<String, String> standing = published(log);
    log.replace(TinyLog.NOTE, "lies straight", "lies crooked");
    // A folder in the way stands for the full disk: this file, the last, cannot be written.
    log.remove("records/workshop/published.txt");
    log.with(() -> Files.createDirectory(log.path("records/workshop/published.txt")));
    Said said = log.run("publish");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).endsWith(NOTHING_PUBLISHED + "\n");
    assertThat(published(log)).isEqualTo(standing);
    log.remove("records/workshop/published.txt");
    assertThat(log.run("publish").status()).isZero();
    assertThat(String.join("", published(log).values())).contains("lies crooked");
  }

  @Test
  void aDamagedEditionIsMadeWholeByPublishingAgain() {
    TinyLog log = TinyLog.in(folder);
    log.run("publish");
    Map<String, String> whole = published(log);
    log.remove("published/public/site/index.html").write("published/public/site/about.html", "");
    assertThat(log.run("audit", "--for", "public").status()).isEqualTo(Main.LEAK);
    // Whether an emptied file is damage or somebody's wish, only the maker knows.
    assertThat(log.run("publish").status()).isEqualTo(Main.PROBLEMS);
    log.remove("published/public/site/about.html");
    assertThat(log.run("publish").status()).isZero();
    assertThat(published(log)).isEqualTo(whole);
  }

  @ParameterizedTest
  @CsvSource({"note, true", "nothing, false"})
  void aPhotographWithARegionShowsOnlyWhereSomethingMayShow(String presence, boolean shown)
      throws Exception {
    TinyLog log = TinyLog.in(folder);
    String sha256 =
        HexFormat.of()
            .formatHex(
                MessageDigest.getInstance("SHA-256")
                    .digest(Files.readAllBytes(log.path(TinyLog.PHOTO))));
    log.replace("log.yaml", "from: 2026-03-02", "from: 2026-03-02, presence: " + presence)
        .write(
            "photos/photos.yaml",
            "keel.png:\n  alt: The board by the window\n  sha256: "
                + sha256
                + "\n  regions:\n    - {box: [0, 0, 0.5, 0.5], under: lines}\n");
    assertThat(log.run("publish").err()).doesNotContain("error");
    assertThat(everyPage(log, "public").contains("The board by the window")).isEqualTo(shown);
    assertThat(everyPage(log, "workshop")).contains("The board by the window");
  }

  private static String place(String readers) {
    return (readers.equals("workshop") ? "workshop/" : "published/") + readers;
  }

  private static String everyPage(TinyLog log, String readers) {
    return published(log).entrySet().stream()
        .filter(e -> e.getKey().startsWith(place(readers)))
        .map(Map.Entry::getValue)
        .collect(Collectors.joining());
  }

  static SortedMap<String, String> published(TinyLog log) {
    SortedMap<String, String> files = new TreeMap<>(log.everything());
    files
        .keySet()
        .removeIf(file -> !file.startsWith("published/") && !file.startsWith("workshop/"));
    assertThat(files).isNotEmpty();
    return files;
  }

  private static Map<String, String> withoutCache(TinyLog log) {
    return withoutCache(log.everything());
  }

  private static Map<String, String> withoutCache(Map<String, String> all) {
    Map<String, String> files = new TreeMap<>(all);
    files
        .keySet()
        .removeIf(
            file -> file.matches("(.*/)?\\.chinelog/(photos|prints|claimed|standing|features).*"));
    return files;
  }

  @Test
  void wordsOfALanguageThatIsNotKnownAreEnglishAndMarkedSo() {
    TinyLog log =
        TinyLog.in(folder.resolve("fi")).replace("log.yaml", "language: en-GB", "language: fi");
    assertThat(log.run("publish", "--for", "public").status()).isZero();
    // WCAG 2.2, 3.1.2: the language of each passage can be told by a program.
    assertThat(log.read("published/public/site/stages.html"))
        .contains("<html lang=\"fi\"", "<h1 lang=\"en\" dir=\"ltr\">Stages</h1>")
        .contains("<nav aria-label=\"Pages\" lang=\"en\" dir=\"ltr\">");
    log.replace("log.yaml", "language: fi", "language: nl");
    assertThat(log.run("publish", "--for", "public").status()).isZero();
    assertThat(log.read("published/public/site/stages.html"))
        .contains("<html lang=\"nl\"", "<h1>Bouwfasen</h1>");
  }

  @ParameterizedTest
  @CsvSource({"letter, 216 x 279, 140 x 216, 279 x 216", "a4, 210 x 297, 148 x 210, 296 x 210"})
  void bookBookletAndSheetsAreOnThePaperThatTheLogNames(
      String paper, String book, String booklet, String sheets) throws IOException {
    TinyLog log =
        TinyLog.in(folder)
            .replace("log.yaml", "currency: GBP", "currency: GBP\npaper: " + paper)
            .replace(
                "log.yaml",
                "party-to: [], gets: [site]",
                "party-to: [], gets: [book, handover, handover-sheets, print-ready]");
    assertThat(log.run("publish", "--for", "public").status()).isZero();
    Path made = folder.resolve("published/public");
    assertThat(size(made.resolve("build-book.pdf"))).isEqualTo(book);
    assertThat(size(made.resolve("build-book-print-ready.pdf"))).isEqualTo(book);
    assertThat(size(made.resolve("handover.pdf"))).isEqualTo(booklet);
    assertThat(size(made.resolve("handover-sheets.pdf"))).isEqualTo(sheets);
  }

  /** Of a page once cut, in whole millimetres. */
  private static String size(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      PDRectangle trim = document.getPage(0).getTrimBox();
      return "%.0f x %.0f".formatted(trim.getWidth() / 72 * 25.4, trim.getHeight() / 72 * 25.4);
    }
  }

  @Test
  void aPhotographThatALaterNoteAloneShowsIsNotInAnEarlierDaysEdition() {
    for (String front : new String[] {"stage: planking", "stage: planking\nunder: lines"}) {
      TinyLog log = TinyLog.in(folder.resolve(front.replaceAll("\\W", "")));
      assertThat(log.run("publish", "--as-of", "2026-05-20").status()).isZero();
      SortedMap<String, String> before = log.everything();
      log.photo("photos/rig.png");
      log.write(
          "entries/2026-05-30-rig.md",
          "---\n" + front + "\n---\nThe mast.\n\n![The mast](../photos/rig.png)\n");
      assertThat(log.run("publish", "--as-of", "2026-05-20").status()).isZero();
      for (String readers : new String[] {"public", "workshop"}) {
        assertThat(published(log.everything(), readers)).isEqualTo(published(before, readers));
      }
      assertThat(log.run("publish", "--for", "workshop").status()).isZero();
      assertThat(published(log.everything(), "workshop"))
          .isNotEqualTo(published(before, "workshop"));
    }
  }

  private static SortedMap<String, String> published(
      SortedMap<String, String> files, String readers) {
    SortedMap<String, String> own = new TreeMap<>(files);
    own.keySet().removeIf(f -> !f.startsWith(place(readers) + "/"));
    return own;
  }

  @Test
  void whatTheBookCannotPrintIsToldByThePublishingThatPrintsIt() {
    TinyLog log = TinyLog.in(folder);
    log.write(TinyLog.NOTE, log.read(TinyLog.NOTE) + "\nThe yard's mark is \u6f22.\n");
    assertThat(log.run("publish", "--for", "workshop").err()).doesNotContain("U+6F22");
    log.replace("log.yaml", "party-to: all, gets: [site]", "party-to: all, gets: [book]");
    Said said = log.run("publish", "--for", "workshop");
    assertThat(said.status()).isZero();
    assertThat(said.err()).contains("themes/fonts: reminder:").contains("U+6F22");
  }
}

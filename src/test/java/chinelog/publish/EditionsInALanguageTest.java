package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.edition.Figure;
import chinelog.log.records.Readers;
import chinelog.log.records.Statement;
import chinelog.markup.Theme;
import chinelog.photo.album.Photograph;
import chinelog.site.FreshSite;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.TextNode;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo's log in another language: what chinelog itself says is said in it. */
@Order(2)
@ExtendWith(OncePerRun.class)
class EditionsInALanguageTest {

  /** The same in both languages. */
  private static final String SAME = "Material: ";

  private static final boolean FOR_EVERYBODY = Boolean.getBoolean("chinelog.every-state");

  @TempDir static Path place;

  private static Demo demo;
  private static Path germanLog;
  private static Workshop.Opened german;

  @TempDir Path folder;

  @BeforeAll
  static void translate(Demo english) throws IOException {
    demo = english;
    germanLog = place.resolve("de");
    german = open("de", germanLog);
  }

  @Test
  void noEnglishTitleIsLeftInTheEditionOfAGermanLog() throws IOException {
    Workshop.Opened english = demo.opened();
    Map<String, String> before = figures(demo.edition("workshop"));
    Map<String, String> after = figures(edition(german));
    // What the author named is the author's.
    Set<String> own =
        english.log().statements().stream()
            .map(Statement::name)
            .collect(Collectors.toCollection(TreeSet::new));
    english.log().entries().forEach(e -> e.measured().forEach(m -> own.add(m.fact())));
    Set<String> left = new TreeSet<>();
    after.forEach(
        (name, title) -> {
          boolean isOwn = own.stream().anyMatch(o -> name.equals(o) || name.startsWith(o + "."));
          if (!isOwn && title.equals(before.get(name)) && !title.startsWith(SAME)) {
            left.add(name + ": " + title);
          }
        });
    assertThat(after).hasSizeGreaterThan(80);
    assertThat(left).isEmpty();
    assertThat(after)
        .containsEntry("form.cb", "Blockkoeffizient")
        .containsEntry("hours.total", "Stunden insgesamt");
    assertThat(edition(german).contents().handover())
        .extracting(Edition.HandoverSection::title)
        .containsExactly(
            "Auf einer Seite",
            "Was es ist",
            "Was im Kasten liegt",
            "Aufbauen",
            "Abbauen",
            "Anfassen und Tragen",
            "Fahren",
            "Fernsteuerung und Ladegerät",
            "Pflege",
            "Anstriche",
            "Ersatzteile",
            "Wenn etwas schiefgeht");
  }

  @Test
  void anAuthorsTitleIsNeverTranslated() throws IOException {
    Path log = folder.resolve("own");
    copy("de", log);
    Files.writeString(
        log.resolve("facts.yaml"),
        """

        deck.left: {is: 12 mm, title: "Deck: left"}
        deck.area: {is: 40 cm², title: Area}
        deck.speed: {is: 2 * deck.left, title: "Trial, mass on 2026-04-18"}
        """,
        StandardOpenOption.APPEND);
    assertThat(figures(edition(open(log))))
        .containsEntry("deck.left", "Deck: left")
        .containsEntry("deck.area", "Area")
        .containsEntry("deck.speed", "Trial, mass on 2026-04-18");
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "nl", "fr", "es"})
  void noEnglishSentenceOfTheProgramsIsLeftInSiteBookOrBooklet(String language) throws IOException {
    boolean isGerman = language.equals("de");
    Path log = isGerman ? germanLog : folder.resolve(language);
    Workshop.Opened opened = isGerman ? german : open(language, log);
    Edition edition = edition(opened);
    Theme theme = Theme.load("slipway", null);
    Path to = Files.createDirectories(folder.resolve("made"));
    FreshSite.write(edition, theme, null, Files.createDirectory(to.resolve("site")));
    Press.Options paper = new Press.Options(Edition.Paper.A4, false);
    if (isGerman) {
      // The layout of a book is searched for long; its own words stand in tables like the site's.
      Press.printBuildBook(edition, theme, paper, to.resolve("build-book.pdf"));
    }
    Press.printHandover(edition, theme, paper, to.resolve("handover.pdf"));
    if (isGerman || FOR_EVERYBODY) {
      // What is said in the place of the withheld; all else the workshop reads, too.
      Edition everybodys = edition(opened, "public");
      FreshSite.write(everybodys, theme, null, Files.createDirectory(to.resolve("public")));
    }
    EnglishLeft english = EnglishLeft.besides(authorsOwn(log, opened));
    Set<String> left = new TreeSet<>();
    int read = 0;
    try (Stream<Path> all = Files.walk(to)) {
      for (Path file : all.sorted().toList()) {
        String text = text(file);
        read += text.length();
        english.in(text).forEach(found -> left.add(to.relativize(file) + ": " + found));
      }
    }
    assertThat(read).isGreaterThan(100_000);
    assertThat(left).isEmpty();
  }

  private static String text(Path file) throws IOException {
    String name = file.getFileName().toString();
    if (name.endsWith(".pdf")) {
      try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
        PDFTextStripper stripper = new PDFTextStripper();
        // In the order of the page: what is set in italics is drawn by itself.
        stripper.setSortByPosition(true);
        return stripper.getText(pdf);
      }
    }
    if (!name.endsWith(".html")) {
      return "";
    }
    Document page = Jsoup.parse(Files.readString(file));
    StringBuilder text = new StringBuilder();
    page.traverse(
        (node, depth) -> {
          if (node instanceof TextNode words) {
            text.append(words.text()).append(' ');
          }
        });
    for (String attribute : List.of("alt", "title", "aria-label", "content", "placeholder")) {
      page.getElementsByAttribute(attribute)
          .forEach(e -> text.append("\n").append(e.attr(attribute)));
    }
    return text.toString();
  }

  /** Every word that the author wrote, in the log's files and inside the photographs. */
  private static String authorsOwn(Path log, Workshop.Opened opened) throws IOException {
    StringBuilder text = new StringBuilder();
    try (Stream<Path> all = Files.walk(log)) {
      for (Path file : all.sorted().toList()) {
        if (file.toString().matches(".*\\.(md|yaml|csv)")) {
          text.append(Files.readString(file)).append("\n");
        }
      }
    }
    opened.album().photographs().stream()
        .map(Photograph::written)
        .forEach(w -> text.append(w.caption()).append("\n").append(w.alt()).append("\n"));
    return text.toString();
  }

  private static Workshop.Opened open(String language, Path to) throws IOException {
    copy(language, to);
    return open(to);
  }

  private static Workshop.Opened open(Path log) throws IOException {
    return Workshop.open(log, DemoPrints.DAY, DemoPrints.DAY, ZoneOffset.UTC, Progress.SILENT);
  }

  private static void copy(String language, Path to) throws IOException {
    demo.copy(to);
    Path head = to.resolve("log.yaml");
    String text = Files.readString(head);
    Files.writeString(head, text.replace("language: en-GB", "language: " + language));
  }

  private static Edition edition(Workshop.Opened opened) throws IOException {
    return edition(opened, "workshop");
  }

  private static Edition edition(Workshop.Opened opened, String readers) throws IOException {
    for (Readers group : opened.log().readers()) {
      if (group.id().equals(readers)) {
        return DemoPrints.edition(opened, group);
      }
    }
    throw new IllegalStateException("no readers " + readers);
  }

  private static Map<String, String> figures(Edition edition) {
    return edition.contents().figures().stream()
        .collect(Collectors.toMap(Figure::name, Figure::title));
  }
}

package chinelog.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.Like;
import chinelog.edition.Edition;
import chinelog.edition.SampleEdition;
import chinelog.markup.Theme;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class SiteWriterTest {

  @TempDir static Path folder;
  private static WrittenSite everybodys;
  private static WrittenSite workshops;

  @BeforeAll
  static void write() throws Exception {
    everybodys = WrittenSite.write(SampleEdition.forPublic(), null, fresh("public"));
    workshops = WrittenSite.write(SampleEdition.forWorkshop(), null, fresh("workshop"));
  }

  private static Path fresh(String name) throws IOException {
    return Files.createDirectories(folder.resolve(name));
  }

  @Test
  void theSameEditionGivesTheSameBytes() throws Exception {
    Path again = fresh("again");
    WrittenSite.write(SampleEdition.forPublic(), null, again);
    assertThat(WrittenSite.bytes(again)).isEqualTo(WrittenSite.bytes(everybodys.folder()));
  }

  @Test
  void everyLinkAndEveryAnchorLeadsSomewhere() {
    for (WrittenSite site : List.of(everybodys, workshops)) {
      assertThat(site.brokenAddresses()).isEmpty();
    }
  }

  @Test
  void noFileIsWrittenThatNoPageUses() throws IOException {
    Set<String> used = new HashSet<>();
    everybodys
        .pages()
        .forEach(
            (path, page) ->
                WrittenSite.addresses(page).stream()
                    .map(a -> a.replaceAll("^/|#.*", ""))
                    .map(a -> Path.of(path).resolveSibling(a).normalize())
                    .forEach(p -> used.add(p.toString().replace('\\', '/'))));
    assertThat(WrittenSite.files(everybodys.folder()))
        .filteredOn(f -> !f.startsWith("assets/fonts/") && !f.equals("404.html"))
        .filteredOn(f -> !f.equals("sitemap.xml"))
        .allMatch(used::contains);
  }

  @Test
  void noPageHoldsScriptOrStyleOfItsOwn() {
    everybodys
        .pages()
        .forEach(
            (path, page) -> {
              assertThat(WrittenSite.elements(page, "style")).as(path).isEmpty();
              for (Element script : WrittenSite.elements(page, "script")) {
                assertThat(
                        script.hasAttribute("src")
                            || script.getAttribute("type").equals("application/ld+json"))
                    .as(path)
                    .isTrue();
              }
              for (Element e : WrittenSite.elements(page, "*")) {
                for (int i = 0; i < e.getAttributes().getLength(); i++) {
                  String name = e.getAttributes().item(i).getNodeName();
                  assertThat(name).as(path).isNotEqualTo("style").doesNotStartWith("on");
                }
              }
            });
  }

  @Test
  void everyPageForbidsWhatIsNotItsOwn() {
    everybodys
        .pages()
        .forEach(
            (path, page) ->
                assertThat(WrittenSite.elements(page, "meta"))
                    .as(path)
                    .anyMatch(
                        m ->
                            m.getAttribute("http-equiv").equals("Content-Security-Policy")
                                && m.getAttribute("content").startsWith("default-src 'none';")));
  }

  @Test
  void noStyleSheetOrScriptAsksAnythingOfTheOutside() throws IOException {
    for (String file : WrittenSite.files(everybodys.folder())) {
      if (file.endsWith(".css") || file.endsWith(".js")) {
        assertThat(everybodys.text(file)).as(file).doesNotContain("http:", "https:", "@import");
      }
    }
  }

  @Test
  void picturesKeepTheirPlaceWhileTheyLoad() {
    everybodys
        .pages()
        .forEach(
            (path, page) ->
                assertThat(WrittenSite.elements(page, "img"))
                    .as(path)
                    .allMatch(i -> i.hasAttribute("width") && i.hasAttribute("height"))
                    .allMatch(i -> !i.getAttribute("alt").isBlank()));
  }

  @Test
  void theFeedIsWrittenOnlyWhenTheSiteHasAnAddress() throws Exception {
    assertThat(workshops.folder().resolve("feed.xml")).doesNotExist();
    assertThat(workshops.folder().resolve("sitemap.xml")).doesNotExist();
    assertThat(workshops.text("index.html")).doesNotContain("canonical", "og:url");
    assertThat(everybodys.text("index.html"))
        .contains("<link rel=\"canonical\" href=\"https://merrow.example/\" />");
  }

  /**
   * RFC 4287, 4.1.1 and 4.1.2: a feed and each entry have id, title and updated; a feed an author.
   */
  @Test
  void theFeedHasWhatAtomAsksFor() throws Exception {
    Document feed = WrittenSite.parsed(everybodys.text("feed.xml"));
    assertThat(feed.getDocumentElement().getAttribute("xmlns"))
        .isEqualTo("http://www.w3.org/2005/Atom");
    assertThat(WrittenSite.elements(feed, "author")).hasSize(1);
    for (String name : List.of("id", "title", "updated")) {
      assertThat(WrittenSite.elements(feed, name)).as(name).hasSize(7);
    }
    assertThat(WrittenSite.elements(feed, "updated"))
        .allSatisfy(u -> OffsetDateTime.parse(u.getTextContent()));
    assertThat(WrittenSite.elements(feed, "id").stream().map(Element::getTextContent).distinct())
        .hasSize(7);
  }

  @Test
  void whatIsWithheldIsToldInFixedWords() throws IOException {
    String post = everybodys.text("posts/01-a-launch-for-a-small-harbour.html");
    assertThat(post)
        .contains("<p class=\"withheld\">Something here is withheld under an agreement.</p>")
        .contains(
            "The yard&#39;s own waterline is <span class=\"gap\">[withheld]</span>,"
                .replace("&#39;", "'"))
        .doesNotContain("10.47");
    assertThat(everybodys.text("index.html")).doesNotContain("seal", "Skerrick");
  }

  @Test
  void theWorkshopSeesWhatIsUnderAnAgreementAndThatItIs() throws IOException {
    String post = workshops.text("posts/01-a-launch-for-a-small-harbour.html");
    assertThat(post)
        .contains("<span class=\"under-phrase\">10.47\u00a0m at her marks")
        .contains("<a class=\"seal\" href=\"#agreement-1\" title=\"Under agreement 1\"")
        .contains("<div id=\"agreement-1\">")
        .contains("with Skerrick Yard: the lines plan")
        .contains("<meta name=\"robots\" content=\"noindex\" />");
  }

  @Test
  void aPlateThatOpensAPostIsNotShownTwice() throws IOException {
    String post = everybodys.text("posts/02-thirteen-moulds.html");
    assertThat(post.split("href=\"../plates/003.html\"", -1)).hasSize(2);
  }

  @Test
  void anEntryThatNoPostTellsHasAPageOfItsOwn() throws Exception {
    Edition.Contents all = SampleEdition.forPublic().contents();
    Edition withoutPosts =
        Edition.seal(
            Like.but(
                SampleEdition.bare(),
                "subject",
                "",
                "kind",
                "",
                "maker",
                "",
                "client",
                "",
                "licence",
                "",
                "scale",
                "",
                "hero",
                null,
                "stages",
                all.stages(),
                "entries",
                all.entries(),
                "plates",
                all.plates(),
                "limits",
                List.of(),
                "materials",
                List.of(),
                "materialsCost",
                "",
                "hours",
                List.of(),
                "totals",
                List.of(),
                "charts",
                List.of(),
                "drawings",
                List.of(),
                "cautions",
                List.of()));
    WrittenSite site = WrittenSite.write(withoutPosts, null, fresh("without-posts"));
    assertThat(site.pages()).containsKey("entries/2026-03-17-six-moulds.html");
    assertThat(site.text("stages.html")).contains("entries/2026-03-17-six-moulds.html");
    assertThat(site.brokenAddresses()).isEmpty();
  }

  /** Ten times as much takes under 15 s on an idle machine; this one may be busy. */
  @Test
  @Timeout(15)
  void aLongBuildIsWrittenInReasonableTime() throws Exception {
    Path large = fresh("large");
    FreshSite.write(SampleEdition.large(30, 10), Theme.load("", null), null, large);
    assertThat(WrittenSite.files(large).stream().filter(f -> f.startsWith("plates/"))).hasSize(300);
  }

  @Test
  void theSearchFindsEntriesWhereTheyStand() throws IOException {
    assertThat(everybodys.text("assets/search-pages.js"))
        .startsWith("window.pagesToSearch = [")
        .contains(
            "\"at\": \"posts/02-thirteen-moulds.html#2026-03-17-six-moulds\","
                + " \"title\": \"Six moulds\"")
        .contains("Snap the centre line with a thread")
        .doesNotContain("<", "10.47");
  }

  @Test
  void aLogsOwnTemplateTakesThePlaceOfItsNamesake() throws Exception {
    Path templates = fresh("templates");
    Files.writeString(
        templates.resolve("404.ftlh"),
        "<html lang=\"en\"><p>${edition.title} &amp; gone</p></html>");
    WrittenSite site =
        WrittenSite.write(SampleEdition.forPublic(), templates, fresh("own-template"));
    assertThat(site.text("404.html"))
        .isEqualTo("<html lang=\"en\"><p>Building Merrow &amp; gone</p></html>");
    assertThat(site.text("index.html")).isEqualTo(everybodys.text("index.html"));
  }

  @Test
  void aWrongTemplateIsNamedWithItsLine() throws Exception {
    Path templates = fresh("wrong-templates");
    Path wrong = templates.resolve("about.ftlh");
    Files.writeString(wrong, "<p>\n${edition.nosuch}</p>");
    assertThatThrownBy(
            () -> WrittenSite.write(SampleEdition.forPublic(), templates, fresh("wrong-1")))
        .isInstanceOfSatisfying(
            ProblemException.class,
            e ->
                assertThat(e.problem().place())
                    .returns("site-template/about.ftlh", Place::file)
                    .returns(2, Place::line));
    Files.writeString(wrong, "<p>\n\n<#if page.title></p>");
    assertThatThrownBy(
            () -> WrittenSite.write(SampleEdition.forPublic(), templates, fresh("wrong-2")))
        .isInstanceOfSatisfying(
            ProblemException.class,
            e ->
                assertThat(e.problem().place())
                    .returns("site-template/about.ftlh", Place::file)
                    .returns(3, Place::line));
  }
}

package chinelog.site;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.publish.Demo;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The published demo as its files are. */
@ExtendWith(OncePerRun.class)
class DemoSiteTest {

  @TempDir Path folder;

  @Test
  void everyLinkAndEveryAnchorLeadsSomewhere(Demo demo) throws Exception {
    for (String readers : List.of("public", "workshop")) {
      WrittenSite site = WrittenSite.read(demo.site("chartroom", readers));
      assertThat(site.brokenAddresses()).as(readers).isEmpty();
    }
  }

  @Test
  void figuresWorkedOutAlikeTellTheirOwnNumbers(Demo demo) throws Exception {
    Document page = Jsoup.parse(demo.site("slipway", "workshop").resolve("figures.html").toFile());
    List<Element> told = page.select(".ways .alike li");
    assertThat(told.size()).isGreaterThan(20);
    for (Element one : told) {
      String title = one.text().substring(0, one.text().indexOf(':'));
      Element cell =
          page.select("td[data-find]").stream()
              .filter(c -> c.attr("data-find").equals(title))
              .findFirst()
              .orElseThrow(() -> new AssertionError(title));
      assertThat(one.text()).contains("= " + cell.ownText());
    }
  }

  @Test
  void theHtmlCheckerFindsNoErrors(Demo demo) throws Exception {
    List<Path> files = new ArrayList<>();
    for (String readers : List.of("public", "workshop")) {
      Path site = demo.site("slipway", readers);
      DemoInBrowserTest.kinds(site).forEach(p -> files.add(site.resolve(p)));
    }
    Path spoilt = folder.resolve("spoilt.html");
    Files.writeString(
        spoilt, Files.readString(files.get(0)).replaceFirst("<h1", "<h1 href='#' colour='x'"));
    files.add(spoilt);
    // The last one shows that the checker is awake.
    assertThat(HtmlChecker.errors(files))
        .hasSize(2)
        .allMatch(error -> error.contains("spoilt.html") && error.contains("error: Attribute"));
  }
}

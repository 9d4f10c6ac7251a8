package chinelog.site;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.publish.Demo;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
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
    Map<String, String> numbers = new TreeMap<>();
    for (Element cell : page.select(".matrix td[data-find]")) {
      String number = cell.ownText().replaceAll("±.*|[\u00a0\u2007]", "").strip();
      numbers.put(cell.attr("data-find").toLowerCase(Locale.ROOT), number);
    }
    int told = 0;
    for (Element line : page.select(".ways .alike li")) {
      String example = line.closest("dd").previousElementSibling().text();
      String aspect = example.substring(example.indexOf(','));
      for (String part : line.selectFirst("b").text().split(", (?=[A-Z])")) {
        String title = part.contains(",") ? part : part + aspect;
        assertThat(numbers).containsKey(title.toLowerCase(Locale.ROOT));
        assertThat(line.text()).contains("= " + numbers.get(title.toLowerCase(Locale.ROOT)));
        told++;
      }
    }
    for (Element row : page.select(".sheet tbody tr:has(td)")) {
      String aspect = row.parent().selectFirst("[scope=rowgroup]").text();
      String title = row.selectFirst("th").text() + ", " + aspect;
      assertThat(row.select("td").last().text().replaceAll("[\u00a0\u2007]", ""))
          .as(title)
          .isEqualTo(numbers.get(title.toLowerCase(Locale.ROOT)));
      told++;
    }
    assertThat(told).isGreaterThan(120);
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

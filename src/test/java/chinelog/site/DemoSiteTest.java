package chinelog.site;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.publish.Demo;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

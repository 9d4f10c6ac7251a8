package chinelog.publish;

import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.site.FreshSite;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;

/**
 * The sites of a log's editions as publishing writes them, in a theme of one's choosing: {@code
 * DemoSites sample-log FOLDER slipway chartroom}.
 */
public final class DemoSites {

  private DemoSites() {}

  public static void main(String[] arguments) throws IOException {
    for (String theme : List.of(arguments).subList(2, arguments.length)) {
      write(
          Path.of(arguments[0]),
          List.of("public", "workshop"),
          theme,
          Path.of(arguments[1], theme));
    }
  }

  /** Writes the site of each of the readers into a folder of their name. */
  public static void write(Path log, List<String> readers, String theme, Path to)
      throws IOException {
    Workshop.Opened opened =
        Workshop.open(log, DemoPrints.DAY, DemoPrints.DAY, ZoneOffset.UTC, Progress.SILENT);
    for (Readers group : opened.log().readers()) {
      if (readers.contains(group.id())) {
        Edition edition = DemoPrints.edition(opened, group);
        Path site = Files.createDirectories(to.resolve(group.id()));
        FreshSite.write(edition, Theme.load(theme, null), null, site);
      }
    }
  }
}

package chinelog.publish;

import chinelog.edition.Edition;
import chinelog.log.records.Readers;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;

/** The editions of a log as publishing makes them, for measuring what is made of them. */
public final class DemoEditions {

  private DemoEditions() {}

  /** By the readers' id, in the order of the log. */
  public static Map<String, Edition> of(Path log) throws IOException {
    Workshop.Opened opened =
        Workshop.open(log, DemoPrints.DAY, DemoPrints.DAY, ZoneOffset.UTC, Progress.SILENT);
    Map<String, Edition> editions = new LinkedHashMap<>();
    for (Readers group : opened.log().readers()) {
      editions.put(group.id(), DemoPrints.edition(opened, group));
    }
    return editions;
  }
}

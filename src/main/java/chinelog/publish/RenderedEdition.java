package chinelog.publish;

import chinelog.audit.AuditReport;
import chinelog.edition.Edition;
import chinelog.label.Agreement;
import chinelog.log.records.Readers;
import chinelog.withhold.Withholder;
import java.util.Collection;
import java.util.SortedMap;
import java.util.TreeMap;

/** An edition that was rendered and audited but not yet put in its place. */
record RenderedEdition(
    Readers group,
    Collection<Agreement> agreements,
    Withholder.Withheld withheld,
    Manifest manifest,
    AuditReport report) {

  /** What there is to tell of it. */
  Outcome.Made made(Shelf shelf) {
    Edition.Contents contents = withheld.edition().contents();
    SortedMap<String, Integer> things = new TreeMap<>();
    withheld
        .register()
        .withheld()
        .forEach(line -> things.merge(line.label().toString(), 1, Integer::sum));
    return new Outcome.Made(
        group.id(),
        shelf.published(group.id()),
        manifest.topFiles(),
        contents.entries().size(),
        contents.plates().size(),
        contents.figures().size(),
        things,
        withheld.register().released().size(),
        report.findings().stream()
            .map(f -> new Outcome.Finding(f.file(), f.where(), f.what()))
            .toList());
  }
}

package chinelog.publish;

import chinelog.audit.AuditReport;
import chinelog.label.Agreement;
import chinelog.log.records.Readers;
import chinelog.withhold.Withholder;
import java.util.Collection;

/** An edition that was rendered and audited but not yet put in its place. */
record RenderedEdition(
    Readers group,
    Collection<Agreement> agreements,
    Withholder.Withheld withheld,
    Manifest manifest,
    AuditReport report) {}

package chinelog.withhold.question;

import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import java.time.LocalDate;

/** What one group of readers may see on a day. */
final class Eyes {

  private final Log log;
  private final Readers readers;
  private final LocalDate asOf;
  private final Clearance clearance;

  Eyes(Log log, Readers readers, LocalDate asOf) {
    this.log = log;
    this.readers = readers;
    this.asOf = asOf;
    this.clearance = Clearance.of(readers.partyTo(), log.agreements().values(), asOf);
  }

  String readers() {
    return readers.id();
  }

  boolean see(Label label) {
    return clearance.allows(label);
  }

  /** Whether they see a thing of that name that is under {@code label} but for releases. */
  boolean see(Release.Kind kind, String name, Label label) {
    return see(afterReleases(kind, name, label));
  }

  /** What is left of a label once the releases that name the thing are taken off. */
  Label afterReleases(Release.Kind kind, String name, Label label) {
    Label rest = label;
    for (Release release : log.releases()) {
      if (release.kind() == kind
          && release.name().equals(name)
          && release.readers().contains(readers.id())
          && !release.on().isAfter(asOf)) {
        rest = rest.without(release.agreement());
      }
    }
    return rest;
  }
}

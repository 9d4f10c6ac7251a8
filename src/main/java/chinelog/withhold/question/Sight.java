package chinelog.withhold.question;

import chinelog.label.Agreement;
import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import java.time.LocalDate;
import java.util.List;

/** What one group of readers may see on a day. */
public final class Sight {

  private final Log log;
  private final Readers readers;
  private final LocalDate asOf;
  private final Clearance clearance;

  public Sight(Log log, Readers readers, LocalDate asOf) {
    this.log = log;
    this.readers = readers;
    this.asOf = asOf;
    this.clearance = Clearance.of(readers.partyTo(), log.agreements().values(), asOf);
  }

  public Clearance clearance() {
    return clearance;
  }

  /** Id of the readers. */
  public String readers() {
    return readers.id();
  }

  public LocalDate asOf() {
    return asOf;
  }

  /** Whether the readers may see what is under a label. */
  public boolean allows(Label label) {
    return clearance.allows(label);
  }

  /** Whether they see a thing of that name that is under {@code label} but for releases. */
  boolean allows(Release.Kind kind, String name, Label label) {
    return allows(afterReleases(kind, name, label));
  }

  /**
   * What is left of a label once the releases that name the thing for these readers are taken off.
   */
  public Label afterReleases(Release.Kind kind, String name, Label label) {
    Label rest = label;
    for (Release release : releases(kind, name, label)) {
      rest = rest.without(release.agreement());
    }
    return rest;
  }

  /** The releases of this very thing for these readers, from agreements that it is under. */
  public List<Release> releases(Release.Kind kind, String name, Label label) {
    return log.releases().stream()
        .filter(r -> r.kind() == kind && r.name().equals(name))
        .filter(r -> label.agreements().contains(r.agreement()))
        .filter(r -> r.readers().contains(readers.id()) && !r.on().isAfter(asOf))
        .toList();
  }

  /**
   * What these readers see in the place of something under {@code label}, which they may not see.
   */
  public Presence presence(Label label) {
    boolean hidden =
        label.agreements().stream()
            .filter(id -> !clearance.agreements().contains(id))
            .map(id -> log.agreements().get(id))
            .anyMatch(a -> a == null || a.presence() == Presence.NOTHING);
    return hidden ? Presence.NOTHING : Presence.NOTE;
  }

  /**
   * The agreements to name beside a thing that these readers see because they are party to them.
   * Agreements that have ended freely, or from which the thing was released, are not told, nor is
   * what the workshop would have kept to itself.
   */
  public List<String> under(Label label) {
    return label.agreements().stream()
        .filter(readers.partyTo()::contains)
        .filter(id -> !Agreement.isOwn(id))
        .filter(
            id -> {
              Agreement agreement = log.agreements().get(id);
              return agreement == null || !agreement.isFreeOn(asOf);
            })
        .toList();
  }
}

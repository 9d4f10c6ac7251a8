package chinelog.withhold;

import chinelog.label.Agreement;
import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.Log;
import chinelog.log.Readers;
import chinelog.log.Release;
import chinelog.problem.Place;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What one group of readers may see on a day, and the account of what they may not. */
final class Sight {

  private final Log log;
  private final Readers readers;
  private final LocalDate asOf;
  private final Clearance clearance;
  private final List<Register.Line> withheld = new ArrayList<>();
  private final List<Register.Line> released = new ArrayList<>();
  private boolean noteDue;

  Sight(Log log, Readers readers, LocalDate asOf) {
    this.log = log;
    this.readers = readers;
    this.asOf = asOf;
    this.clearance = Clearance.of(readers.partyTo(), log.agreements().values(), asOf);
  }

  Clearance clearance() {
    return clearance;
  }

  LocalDate asOf() {
    return asOf;
  }

  /** Whether the readers may see a thing; if not, the register says so. */
  boolean sees(Label label, Place place, String what) {
    if (clearance.allows(label)) {
      return true;
    }
    withheld.add(new Register.Line(what, place, label, "under " + label));
    noteDue |= presence(label) == Presence.NOTE;
    return false;
  }

  /** Like {@link #sees(Label, Place, String)}, for a thing that a release may name. */
  boolean sees(Release.Kind kind, String name, Label label, Place place, String what) {
    return sees(afterReleases(kind, name, label), place, what);
  }

  /** Whether the readers may see a thing, without a line in the register. */
  boolean allows(Label label) {
    return clearance.allows(label);
  }

  /**
   * What is left of a label once the releases that name the thing for these readers are taken off.
   */
  Label afterReleases(Release.Kind kind, String name, Label label) {
    Label rest = label;
    for (Release release : log.releases()) {
      if (release.kind() == kind
          && release.name().equals(name)
          && release.readers().contains(readers.id())
          && !release.on().isAfter(asOf)
          && rest.agreements().contains(release.agreement())) {
        rest = rest.without(release.agreement());
        released.add(
            new Register.Line(
                kind.name().toLowerCase(java.util.Locale.ROOT) + " " + name,
                release.place(),
                label,
                "released from "
                    + release.agreement()
                    + " by "
                    + release.by()
                    + " on "
                    + release.on()
                    + ": \u201c"
                    + release.words()
                    + "\u201d"));
      }
    }
    return rest;
  }

  /** A release of this very thing for these readers, from an agreement that it is under. */
  Optional<Release> findRelease(Release.Kind kind, String name, Label label) {
    return log.releases().stream()
        .filter(r -> r.kind() == kind && r.name().equals(name))
        .filter(r -> label.agreements().contains(r.agreement()))
        .filter(r -> r.readers().contains(readers.id()) && !r.on().isAfter(asOf))
        .findFirst();
  }

  /**
   * What these readers see in the place of something under {@code label}, which they may not see.
   */
  Presence presence(Label label) {
    boolean hidden =
        label.agreements().stream()
            .filter(id -> !clearance.agreements().contains(id))
            .map(id -> log.agreements().get(id))
            .anyMatch(a -> a == null || a.presence() == Presence.NOTHING);
    return hidden ? Presence.NOTHING : Presence.NOTE;
  }

  /**
   * The agreements to name beside a thing that these readers see because they are party to them.
   * Agreements that have ended freely, or from which the thing was released, are not told.
   */
  List<String> under(Label label) {
    return label.agreements().stream()
        .filter(readers.partyTo()::contains)
        .filter(
            id -> {
              Agreement agreement = log.agreements().get(id);
              return agreement == null || !agreement.isFreeOn(asOf);
            })
        .toList();
  }

  boolean noteDue() {
    return noteDue;
  }

  Register register() {
    return new Register(withheld, released);
  }
}

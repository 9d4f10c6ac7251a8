package chinelog.withhold;

import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import chinelog.withhold.question.Sight;
import java.util.ArrayList;
import java.util.List;

/**
 * Asks what readers may see, and puts into the register what they may not and what was released to
 * them. {@link Sight} answers the same without keeping account.
 */
final class Account {

  private final Sight sight;
  private final List<Register.Withheld> withheld = new ArrayList<>();
  private final List<Register.Released> released = new ArrayList<>();
  private boolean noteDue;

  Account(Sight sight) {
    this.sight = sight;
  }

  Sight sight() {
    return sight;
  }

  /** Whether the readers may see a thing; if not, the register says so. */
  boolean sees(Label label, Place place, Register.Kind kind, String name) {
    if (sight.allows(label)) {
      return true;
    }
    withheld.add(new Register.Withheld(new Register.Thing(kind, name), place, label));
    noteDue |= sight.presence(label) == Presence.NOTE;
    return false;
  }

  /**
   * What is left of a label once the releases that name the thing for these readers are taken off;
   * the register names these releases.
   */
  Label afterReleases(Release.Kind kind, String name, Label label) {
    sight
        .releases(kind, name, label)
        .forEach(release -> released.add(new Register.Released(release, label)));
    return sight.afterReleases(kind, name, label);
  }

  /** Whether something was withheld of which the readers are told that it is. */
  boolean noteDue() {
    return noteDue;
  }

  Register register() {
    return new Register(withheld, released);
  }
}

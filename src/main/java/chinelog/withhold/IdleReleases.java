package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.reckon.Facts;
import chinelog.withhold.question.Sight;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds releases that free nothing: most likely they name the wrong thing or agreement. */
public final class IdleReleases {

  private final Log log;
  private final Facts facts;
  private final PhotoUses uses;

  private IdleReleases(Log log, Facts facts) {
    this.log = log;
    this.facts = facts;
    this.uses = new PhotoUses(new WholeLog(log, facts));
  }

  /** A reminder of each. */
  public static List<Problem> find(Log log, Facts facts, LocalDate asOf) {
    IdleReleases idle = new IdleReleases(log, facts);
    List<Problem> reminders = new ArrayList<>();
    for (Release release : log.releases()) {
      idle.label(release).ifPresent(label -> idle.look(release, label, asOf, reminders));
    }
    return reminders;
  }

  private void look(Release release, Label label, LocalDate asOf, List<Problem> reminders) {
    if (!label.agreements().contains(release.agreement())) {
      reminders.add(
          Problem.reminder(
              release.place(),
              Sentence.of(
                  label.isNone()
                      ? "This release frees nothing: \u201c{0}\u201d is under no agreement."
                      : "This release frees nothing: \u201c{0}\u201d is under {1}.",
                  release.name(),
                  label.inWords()),
              "Take it out, or correct what it names."));
      return;
    }
    for (Readers group : log.readers()) {
      if (release.readers().contains(group.id())) {
        Sight sight = new Sight(log, group, asOf);
        Label left = sight.afterReleases(release.kind(), release.name(), label);
        if (!sight.allows(left) && !release.on().isAfter(asOf)) {
          reminders.add(
              Problem.reminder(
                  release.place(),
                  Sentence.of(
                      "This release alone frees nothing for {0}: \u201c{1}\u201d is under {2} as"
                          + " well.",
                      group.id(), release.name(), left),
                  "Record a release of that, too, or take this one out."));
        }
      }
    }
  }

  /** What the thing that a release names is under; empty if there is no such thing. */
  private Optional<Label> label(Release release) {
    String name = release.name();
    return switch (release.kind()) {
      case FACT -> facts.find(name).map(f -> f.label());
      case ENTRY ->
          log.entries().stream().filter(e -> e.id().equals(name)).map(Entry::label).findFirst();
      case PHOTO ->
          log.photos().stream().filter(p -> p.path().equals(name)).map(this::label).findFirst();
      case SHEET ->
          log.sheets().stream()
              .filter(s -> s.path().equals(name.replaceFirst("#.*", "")))
              .map(s -> s.label(name))
              .findFirst();
    };
  }

  /** A photograph is under what its places are under, and the entries of its day. */
  private Label label(PhotoFile photo) {
    Label label = photo.label().join(uses.labelOf(photo.path()));
    for (PhotoFile.Region region : photo.regions()) {
      label = label.join(region.label());
    }
    return label;
  }
}

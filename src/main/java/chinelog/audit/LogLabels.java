package chinelog.audit;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import java.util.function.Predicate;

/** The labels of what stands in a log, less what was released to the readers. */
final class LogLabels {

  private final Log log;
  private final String readers;
  private final FactLabels facts;

  LogLabels(Log log, String readers) {
    this.log = log;
    this.readers = readers;
    this.facts = FactLabels.of(log, readers);
  }

  FactLabels facts() {
    return facts;
  }

  Label entry(Entry entry) {
    return released(Release.Kind.ENTRY, entry.id()::equals, entry.label());
  }

  Label photo(PhotoFile photo) {
    return released(Release.Kind.PHOTO, photo.path()::equals, photo.label());
  }

  /** Of the photograph at that path; of none that is not there. */
  Label photo(String path) {
    return log.photos().stream()
        .filter(p -> p.path().equals(path))
        .findFirst()
        .map(this::photo)
        .orElse(Label.NONE);
  }

  /** A release of one of its pages frees a sheet's title, too. */
  Label sheet(Sheet sheet) {
    return released(
        Release.Kind.SHEET, r -> r.replaceFirst("#.*", "").equals(sheet.path()), sheet.label());
  }

  /** The label of one writing of a fact: a release of the fact frees it. */
  Label fact(String name, Label written) {
    return facts.isReleased(name) ? facts.of(name) : written;
  }

  private Label released(Release.Kind kind, Predicate<String> name, Label label) {
    Label left = label;
    for (Release release : log.releases()) {
      if (release.kind() == kind
          && name.test(release.name())
          && release.readers().contains(readers)) {
        left = left.without(release.agreement());
      }
    }
    return left;
  }
}

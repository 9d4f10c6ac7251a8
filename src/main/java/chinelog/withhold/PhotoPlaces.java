package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.photo.album.Album;
import chinelog.photo.album.Belonging;
import chinelog.photo.album.Matching;
import chinelog.photo.album.Photograph;
import chinelog.withhold.question.PhotoWatch;
import chinelog.withhold.question.Sight;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;

/**
 * The photographs of a log, and what those that no note shows belong to for some readers.
 *
 * <p>One that may belong to a withheld note is withheld with it. Once the maker has said that it
 * may be shown, it goes where it would if there were no such note: neither its day nor its hours
 * show.
 */
final class PhotoPlaces {

  private final SortedMap<String, Label> doubts;
  private final Set<String> mayShow;
  private final List<Photograph> photographs = new ArrayList<>();

  /**
   * @param mayShow paths of photographs of which the maker said so
   */
  PhotoPlaces(Log log, Album album, Readers readers, LocalDate asOf, Set<String> mayShow) {
    this.doubts = PhotoWatch.doubts(log, album, readers, asOf);
    this.mayShow = mayShow;
    Sight sight = new Sight(log, readers, asOf);
    Matching open =
        new Matching(
            log.entries().stream()
                .filter(
                    e -> sight.allows(sight.afterReleases(Release.Kind.ENTRY, e.id(), e.label())))
                .toList());
    for (Photograph photograph : album.photographs()) {
      boolean placed =
          doubts.containsKey(photograph.file().path()) && Belonging.isGuessed(photograph);
      photographs.add(placed ? again(photograph, open) : photograph);
    }
  }

  private static Photograph again(Photograph photograph, Matching open) {
    String path = photograph.file().path();
    LocalDateTime taken = photograph.taken();
    LocalDate day = taken == null ? Matching.dayInName(path) : taken.toLocalDate();
    String entry = day == null ? null : open.byDay(photograph.file(), day, taken);
    return photograph.in(entry);
  }

  /** All of them, in the album's order. */
  List<Photograph> all() {
    return photographs;
  }

  /** What a photograph may be under because of what it may belong to. */
  Label doubt(String path) {
    return mayShow.contains(path) ? Label.NONE : doubts.getOrDefault(path, Label.NONE);
  }
}

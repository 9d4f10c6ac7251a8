package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.log.text.Block;
import chinelog.photo.album.Album;
import chinelog.photo.album.Belonging;
import chinelog.photo.album.Photograph;
import chinelog.problem.Sentence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Looks for photographs that no note shows and that may belong to a note of which something is
 * withheld. Until the maker has answered, they are withheld with it.
 */
public final class PhotoWatch {

  private final Log log;
  private final Sight sight;
  private final List<Entry> hidden;
  private final List<Section> sections;

  private PhotoWatch(Log log, Sight sight) {
    this.log = log;
    this.sight = sight;
    this.hidden =
        log.entries().stream()
            .filter(e -> !sight.allows(Release.Kind.ENTRY, e.id(), e.label()))
            .toList();
    this.sections =
        log.entries().stream()
            .filter(e -> !hidden.contains(e))
            .flatMap(e -> section(e).stream().map(d -> new Section(e, d)))
            .toList();
  }

  /** The first section of an open note that is withheld. */
  private record Section(Entry of, Doubt doubt) {}

  /** A question for each, by the photograph's path. */
  static SortedMap<String, Question> find(Log log, Album album, Sight sight) {
    PhotoWatch watch = new PhotoWatch(log, sight);
    SortedMap<String, Question> questions = new TreeMap<>();
    for (Photograph photograph : album.photographs()) {
      watch
          .doubt(photograph)
          .ifPresent(d -> questions.put(photograph.file().path(), d.question(log, photograph)));
    }
    return questions;
  }

  /** What each such photograph may be under, by its path. */
  public static SortedMap<String, Label> doubts(
      Log log, Album album, Readers readers, LocalDate asOf) {
    PhotoWatch watch = new PhotoWatch(log, new Sight(log, readers, asOf));
    SortedMap<String, Label> doubts = new TreeMap<>();
    for (Photograph photograph : album.photographs()) {
      watch.doubt(photograph).ifPresent(d -> doubts.put(photograph.file().path(), d.label));
    }
    return doubts;
  }

  /**
   * What a photograph may belong to.
   *
   * @param what the note, or a section of it
   */
  private record Doubt(CharSequence what, Label label) {

    Question question(Log log, Photograph photograph) {
      return Question.of(
          Question.Kind.PICTURE,
          log,
          photograph.file().place(),
          Sentence.of("the photograph {0}", photograph.file().path()),
          photograph.sha256(),
          Sentence.of("{0}, which it may belong to by its day or folder", Sentence.of(what)),
          label);
    }
  }

  private Optional<Doubt> doubt(Photograph photograph) {
    String path = photograph.file().path();
    boolean isOfHidden =
        hidden.stream().anyMatch(e -> e.id().equals(photograph.entry()) && isAlone(e));
    if (!Belonging.isGuessed(photograph)
        || isOfHidden
        || !sight.allows(Release.Kind.PHOTO, path, photograph.file().label())) {
      return Optional.empty();
    }
    Optional<Doubt> whole =
        hidden.stream()
            .filter(e -> Belonging.isPossible(photograph, e))
            .map(e -> new Doubt(Sentence.of("the note {0}", e.id()), e.label()))
            .findFirst();
    return whole.or(
        () ->
            hasBeenLookedAt(photograph)
                ? Optional.empty()
                : sections.stream()
                    .filter(s -> Belonging.isPossible(photograph, s.of))
                    .map(Section::doubt)
                    .findFirst());
  }

  /** Whether the maker has drawn a region in it or said what it shows. */
  private static boolean hasBeenLookedAt(Photograph photograph) {
    PhotoFile file = photograph.file();
    return !file.regions().isEmpty()
        || !file.caption().isEmpty()
        || !file.alt().isBlank()
        || photograph.sha256().equals(file.lookedAt());
  }

  /** The first section of an open note that these readers do not see. */
  private Optional<Doubt> section(Entry entry) {
    return headings(entry.text()).stream()
        .filter(h -> !sight.allows(h.label()))
        .map(h -> new Doubt(Sentence.of("a section of the note {0}", entry.id()), h.label()))
        .findFirst();
  }

  private static List<Block.Heading> headings(List<Block> text) {
    List<Block.Heading> headings = new ArrayList<>();
    for (Block block : text) {
      if (block instanceof Block.Heading heading) {
        headings.add(heading);
      }
    }
    return headings;
  }

  /**
   * Whether no open note is of the day of a withheld one: else the hours of the two decide where a
   * photograph goes, and would show in whether it does.
   */
  private boolean isAlone(Entry entry) {
    return log.entries().stream()
        .noneMatch(e -> e.date().equals(entry.date()) && !hidden.contains(e));
  }
}

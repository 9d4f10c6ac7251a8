package chinelog.log;

import chinelog.log.reading.Scope;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.PhotoFile;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Dates the notes on which no date is written. */
final class MissingDate {

  private final Scope scope;
  private final PhotoDays photoDays;
  private final SortedMap<String, PhotoFile> photos = new TreeMap<>();
  private final Head head;

  MissingDate(Scope scope, PhotoDays photoDays, List<PhotoFile> photos, Head head) {
    this.scope = scope;
    this.photoDays = photoDays;
    this.head = head;
    photos.forEach(photo -> this.photos.put(photo.path(), photo));
  }

  /**
   * The day of the first photograph that the note shows; where there is no log.yaml also that of
   * the note before it, else of its file. Null if there is none.
   */
  @Nullable FallbackDate find(Path file, List<Block> text, List<Entry> before) {
    for (Inline.Image image : text.stream().flatMap(MissingDate::open).toList()) {
      PhotoFile photo = photos.get(image.path());
      LocalDate day = photo == null ? null : day(photo);
      if (day != null) {
        return new FallbackDate(day, "the day its photograph " + image.path() + " was taken");
      }
    }
    if (!scope.loose()) {
      return null;
    }
    if (!before.isEmpty()) {
      return new FallbackDate(
          before.get(before.size() - 1).date(), "the date of the note before it");
    }
    return new FallbackDate(changed(file), "the day the file was last changed");
  }

  private @Nullable LocalDate day(PhotoFile photo) {
    if (!photo.label().isNone() || photo.leaveOut()) {
      return null;
    }
    LocalDate day = photoDays.find(scope.inventory().folder(), photo, head);
    return day == null || day.isAfter(scope.today()) ? null : day;
  }

  /** Photographs that all may see who see the note: the day of any other would be told by it. */
  private static Stream<Inline.Image> open(Block block) {
    List<Inline> runs = Block.runs(List.of(block)).toList();
    boolean plain =
        block.label().isNone()
            && !(block instanceof Block.Items || block instanceof Block.Quote)
            && runs.stream().noneMatch(run -> run instanceof Inline.Phrase);
    return runs.stream()
        .filter(run -> plain && run instanceof Inline.Image)
        .map(Inline.Image.class::cast)
        .filter(image -> image.label().isNone());
  }

  private LocalDate changed(Path file) {
    LocalDate changed = scope.today();
    try {
      changed = Files.getLastModifiedTime(file).toInstant().atZone(scope.zone()).toLocalDate();
    } catch (IOException e) {
      // It was read a moment ago; today is as good.
    }
    return changed.isAfter(scope.today()) ? scope.today() : changed;
  }
}

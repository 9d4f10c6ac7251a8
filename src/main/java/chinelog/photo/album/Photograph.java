package chinelog.photo.album;

import chinelog.log.records.PhotoFile;
import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * A photograph that could be read, with what its file tells.
 *
 * @param sha256 of the whole file, 64 hex digits
 * @param widthPx of the upright picture
 * @param heightPx of the upright picture
 * @param orientation EXIF 2.32 tag 274, from 1 to 8; 1 where absent or out of range
 * @param taken in the log's zone, the camera's clock put right; null where unknown
 * @param camera model name; empty where unknown
 * @param entry id of the entry it belongs to; null if it is unplaced
 * @param written into the file by its maker; under whatever the photograph is under
 */
public record Photograph(
    PhotoFile file,
    String sha256,
    int widthPx,
    int heightPx,
    int orientation,
    @Nullable LocalDateTime taken,
    String camera,
    @Nullable String entry,
    Link link,
    Written written) {

  /** This, as belonging to another entry by its day, or to none. */
  public Photograph in(@Nullable String otherEntry) {
    return new Photograph(
        file,
        sha256,
        widthPx,
        heightPx,
        orientation,
        taken,
        camera,
        otherEntry,
        otherEntry == null ? Link.UNPLACED : Link.BY_TIME,
        written);
  }

  /** Why a photograph belongs where it stands. */
  public enum Link {
    /** An entry shows it. */
    REFERENCED,
    /** Taken on the day of an entry. */
    BY_TIME,
    /** Belongs to no entry. */
    UNPLACED,
    /** A byte-for-byte copy of another, or left out by the maker. */
    LEFT_OUT
  }
}

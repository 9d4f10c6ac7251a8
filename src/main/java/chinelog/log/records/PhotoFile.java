package chinelog.log.records;

import chinelog.label.Label;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A photograph's file and what photos.yaml says of it.
 *
 * @param path below the log's folder, such as {@code photos/T20_0412.jpg}
 * @param caption may be empty; a caption in an entry's text goes before it
 * @param alt may be empty
 * @param parts what is named in it, by numbers drawn on it
 * @param regions to be filled for readers who may not see them
 * @param leaveOut whether it is kept out of every edition
 * @param taken overrides the camera's time, in the log's zone
 * @param pinnedSha256 of the file when its regions were drawn, 64 hex digits
 * @param lookedAt SHA-256 of the file when the maker looked at it and found that it shows nothing
 *     of a withheld photograph that it looks like, 64 hex digits
 * @param place in photos.yaml, else the file itself
 */
public record PhotoFile(
    String path,
    List<Inline> caption,
    String alt,
    List<Part> parts,
    List<Region> regions,
    boolean leaveOut,
    @Nullable LocalDateTime taken,
    @Nullable String pinnedSha256,
    @Nullable String lookedAt,
    Label label,
    Place place) {

  /** The same under more agreements, and left out if it was or is now. */
  PhotoFile with(Label more, boolean out) {
    return new PhotoFile(
        path,
        caption,
        alt,
        parts,
        regions,
        leaveOut || out,
        taken,
        pinnedSha256,
        lookedAt,
        label.join(more),
        place);
  }

  /** The same with other regions. */
  public PhotoFile withRegions(List<Region> otherRegions) {
    return new PhotoFile(
        path,
        caption,
        alt,
        parts,
        otherRegions,
        leaveOut,
        taken,
        pinnedSha256,
        lookedAt,
        label,
        place);
  }

  /**
   * A thing that is named in a photograph.
   *
   * @param x where it is, as a fraction (0 to 1) of the upright picture's width from its left side
   * @param y the same of its height, from its top
   */
  public record Part(double x, double y, String name, Place place) {}

  /** What the sides of a region count. */
  public enum Measure {
    /** Fractions (0 to 1) of the picture's width and height. */
    PARTS,
    /** Pixels; turned into parts by whoever knows the picture, and until then the whole of it. */
    PIXELS
  }

  /** A part of a photograph under an agreement, of the upright picture from its left top corner. */
  public record Region(
      double left,
      double top,
      double right,
      double bottom,
      Measure measure,
      Label label,
      Place place) {

    /** In parts of the picture's width and height. */
    public Region(double left, double top, double right, double bottom, Label label, Place place) {
      this(left, top, right, bottom, Measure.PARTS, label, place);
    }
  }
}

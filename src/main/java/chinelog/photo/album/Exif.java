package chinelog.photo.album;

import chinelog.log.records.Head;
import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.PhotoLoader;
import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The few metadata that a log needs: EXIF fields (EXIF 2.32; tags 274, 272, 306, 36867, 36868 and
 * the offsets 36880 to 36882), and a caption. Fields of the wrong type or without sense are as good
 * as absent.
 *
 * @param orientationDoubtful whether the file gives no or no single meaning for its orientation, so
 *     that another program may show another side up
 * @param clock what the camera's clock showed
 * @param offset of that clock from UTC, where the file tells it (EXIF 2.31 and later)
 * @param camera model; empty where unknown
 * @param written by its maker
 */
public record Exif(
    Orientation orientation,
    boolean orientationDoubtful,
    @Nullable LocalDateTime clock,
    @Nullable ZoneOffset offset,
    String camera,
    Written written) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private static final int LONGEST_NAME = 80;

  /** A time's tag and that of its offset, the best first. */
  private static final List<int[]> TIMES =
      List.of(
          new int[] {
            ExifDirectoryBase.TAG_DATETIME_ORIGINAL, ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL
          },
          new int[] {
            ExifDirectoryBase.TAG_DATETIME_DIGITIZED, ExifDirectoryBase.TAG_TIME_ZONE_DIGITIZED
          },
          new int[] {ExifDirectoryBase.TAG_DATETIME, ExifDirectoryBase.TAG_TIME_ZONE});

  /** What the camera wrote into a file; what was HEIC has been turned upright already. */
  public static Exif of(PhotoLoader.Loaded file) {
    Exif exif = read(file.file());
    return file.kind() == PhotoKind.HEIF ? exif.asStored() : exif;
  }

  public static Exif read(byte[] bytes) {
    Metadata metadata;
    try {
      metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
    } catch (ImageProcessingException | IOException | RuntimeException | StackOverflowError e) {
      return new Exif(Orientation.AS_STORED, true, null, null, "", Written.NONE);
    }
    TreeSet<Integer> tags = new TreeSet<>();
    boolean odd = false;
    String camera = "";
    for (ExifIFD0Directory first : metadata.getDirectoriesOfType(ExifIFD0Directory.class)) {
      if (first.containsTag(ExifDirectoryBase.TAG_ORIENTATION)) {
        try {
          tags.add(first.getInt(ExifDirectoryBase.TAG_ORIENTATION));
        } catch (MetadataException e) {
          odd = true;
        }
      }
      odd |= first.hasErrors();
      camera = camera.isEmpty() ? name(first) : camera;
    }
    Exif timeless =
        new Exif(
            tags.isEmpty() ? Orientation.AS_STORED : Orientation.of(tags.first()),
            odd || tags.size() > 1 || tags.stream().anyMatch(t -> t < 1 || t > 8),
            null,
            null,
            camera,
            Written.read(metadata));
    return timeless.withTime(metadata);
  }

  /**
   * The time on the wall of {@code zone}; a clock without an offset is taken to have been set to it
   * and is never made an instant.
   */
  public @Nullable LocalDateTime taken(ZoneId zone) {
    return clock == null || offset == null
        ? clock
        : clock.atOffset(offset).atZoneSameInstant(zone).toLocalDateTime();
  }

  /** The time on the wall of the workshop, put right where the log says that the clock is fast. */
  @Nullable LocalDateTime taken(Head head) {
    LocalDateTime taken = taken(head.zone());
    return taken == null ? null : taken.minus(head.clocks().getOrDefault(camera, Duration.ZERO));
  }

  /** The same of a picture that was turned upright already. */
  Exif asStored() {
    return new Exif(Orientation.AS_STORED, orientationDoubtful, clock, offset, camera, written);
  }

  private Exif withTime(Metadata metadata) {
    for (int[] tags : TIMES) {
      for (Directory directory : metadata.getDirectories()) {
        boolean main =
            directory instanceof ExifSubIFDDirectory || directory instanceof ExifIFD0Directory;
        LocalDateTime time = main ? time(directory.getString(tags[0])) : null;
        if (time != null) {
          ZoneOffset zone = null;
          for (ExifSubIFDDirectory sub : metadata.getDirectoriesOfType(ExifSubIFDDirectory.class)) {
            zone = zone == null ? offset(sub.getString(tags[1])) : zone;
          }
          return new Exif(orientation, orientationDoubtful, time, zone, camera, written);
        }
      }
    }
    return this;
  }

  private static String name(Directory directory) {
    String text = directory.getString(ExifDirectoryBase.TAG_MODEL);
    if (text == null) {
      return "";
    }
    String clean = text.replaceAll("\\p{Cntrl}+", " ").strip();
    return clean.length() > LONGEST_NAME ? clean.substring(0, LONGEST_NAME) : clean;
  }

  private static @Nullable LocalDateTime time(@Nullable String text) {
    if (text == null) {
      return null;
    }
    try {
      return LocalDateTime.parse(text.strip(), TIME);
    } catch (DateTimeException e) {
      return null;
    }
  }

  private static @Nullable ZoneOffset offset(@Nullable String text) {
    if (text == null) {
      return null;
    }
    try {
      return ZoneOffset.of(text.strip());
    } catch (DateTimeException e) {
      return null;
    }
  }
}

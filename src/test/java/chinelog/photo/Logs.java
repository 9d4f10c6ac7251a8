package chinelog.photo;

import chinelog.label.Label;
import chinelog.log.records.BookChapters;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.LetterPlan;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Paper;
import chinelog.log.records.PatternSheets;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.TalkPlan;
import chinelog.log.records.Valuation;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.photo.album.Album;
import chinelog.problem.Place;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/** Puts together the part of a log that photographs have to do with. */
public final class Logs {

  public static final ZoneId ZONE = ZoneId.of("Europe/London");

  private final Path folder;
  private final List<PhotoFile> photos = new ArrayList<>();
  private final List<Entry> entries = new ArrayList<>();
  private final SortedMap<String, Duration> clocks = new TreeMap<>();

  private Label hoursUnder = Label.NONE;

  public Logs(Path folder) {
    this.folder = folder;
  }

  public Logs photo(String path, byte[] bytes) {
    return photo(file(path), bytes);
  }

  public Logs photo(PhotoFile file, byte[] bytes) {
    try {
      Files.createDirectories(folder.resolve(file.path()).getParent());
      Files.write(folder.resolve(file.path()), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    photos.add(file);
    return this;
  }

  public Logs clock(String camera, Duration fast) {
    clocks.put(camera, fast);
    return this;
  }

  /** Puts the hours of the entries that follow under agreements. */
  public Logs hoursUnder(Label label) {
    hoursUnder = label;
    return this;
  }

  /** An entry of a day whose hours, such as 9 to 12, may be empty, and the photographs it shows. */
  public Logs entry(String id, LocalDate date, String stage, List<Integer> hours, String... shown) {
    Place place = Place.of("entries/" + id + ".md");
    List<Block> text = new ArrayList<>();
    for (String path : shown) {
      text.add(
          new Block.Paragraph(
              List.of(
                  new Inline.Emphasis(
                      List.of(
                          new Inline.Image(
                              path, List.of(), Label.NONE, Inline.Image.Layout.BY_SHAPE, place)))),
              Label.NONE,
              place));
    }
    List<Entry.Worked> worked = new ArrayList<>();
    if (!hours.isEmpty()) {
      worked.add(
          new Entry.Worked(
              date.atTime(LocalTime.of(hours.get(0), 0)).atZone(ZONE),
              date.atTime(LocalTime.of(hours.get(1), 0)).atZone(ZONE),
              Duration.ofHours(hours.get(1) - hours.get(0)),
              hoursUnder,
              place));
    }
    entries.add(
        new Entry(
            id,
            marked(id),
            date,
            stage,
            text,
            worked,
            List.of(),
            List.of(),
            List.of(),
            Label.NONE,
            place));
    return this;
  }

  public Log log() {
    Head head =
        new Head(
            marked("Building Merrow"),
            marked("Merrow"),
            null,
            List.of(),
            null,
            Locale.UK,
            ZONE,
            null,
            null,
            "GBP",
            64,
            new BigDecimal("0.05"),
            null,
            new TreeMap<>(),
            null,
            null,
            "plain",
            Paper.A4,
            0.12,
            BookChapters.STAGES,
            clocks,
            null,
            false,
            Valuation.FIFO,
            PatternSheets.USUAL,
            TalkPlan.USUAL,
            null,
            LetterPlan.NONE,
            List.of());
    return new Log(
        folder,
        head,
        List.of(),
        new TreeMap<>(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        entries,
        photos,
        List.of());
  }

  public Album open() {
    return Album.open(log(), PhotoProgress.SILENT);
  }

  public static PhotoFile file(String path) {
    return file(path, Label.NONE, List.of(), null);
  }

  public static PhotoFile file(
      String path, Label label, List<PhotoFile.Region> regions, String pinnedSha256) {
    return new PhotoFile(
        path,
        List.of(),
        "",
        List.of(),
        regions,
        false,
        null,
        pinnedSha256,
        null,
        label,
        Place.of("photos/photos.yaml", 3, 1));
  }

  public static PhotoFile.Region region(double left, double top, double right, double bottom) {
    return new PhotoFile.Region(
        left, top, right, bottom, Label.of("lines"), Place.of("photos/photos.yaml", 4, 5));
  }

  private static Marked<String> marked(String text) {
    return new Marked<>(text, Label.NONE, Place.of("log.yaml"));
  }
}

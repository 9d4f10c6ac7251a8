package chinelog.desk.photographs;

import chinelog.desk.bench.Snapshot;
import chinelog.log.records.Entry;
import chinelog.log.text.Inline;
import chinelog.photo.album.Photograph;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The photographs of a log as its pages show them. */
final class Shown {

  private Shown() {}

  /**
   * One photograph.
   *
   * @param name of its file, without folders
   * @param time of day it was taken, such as {@code 10:16}; empty where unknown
   * @param note title of the note it belongs to; empty if to none
   * @param under agreements that the whole photograph is under
   * @param regions how many it has
   */
  public record Photo(
      String path,
      String name,
      String sha256,
      int widthPx,
      int heightPx,
      String day,
      String time,
      String note,
      String alt,
      String caption,
      List<String> under,
      int regions,
      boolean leftOut,
      boolean unplaced) {}

  static Photo of(Photograph photograph, Map<String, Entry> entries) {
    LocalDateTime taken = photograph.taken();
    String path = photograph.file().path();
    String id = photograph.entry();
    Entry entry = id == null ? null : entries.get(id);
    return new Photo(
        path,
        path.substring(path.lastIndexOf('/') + 1),
        photograph.sha256(),
        photograph.widthPx(),
        photograph.heightPx(),
        taken == null ? "" : taken.toLocalDate().toString(),
        taken == null ? "" : taken.toLocalTime().toString().substring(0, 5),
        entry == null ? "" : entry.title().value(),
        photograph.file().alt(),
        Inline.plainText(photograph.file().caption()),
        List.copyOf(photograph.file().label().agreements()),
        photograph.file().regions().size(),
        photograph.link() == Photograph.Link.LEFT_OUT,
        photograph.link() == Photograph.Link.UNPLACED);
  }

  /** All of them, in the album's order. */
  static List<Photo> all(Snapshot now) {
    Map<String, Entry> entries = entries(now);
    return now.opened().album().photographs().stream().map(p -> of(p, entries)).toList();
  }

  static Map<String, Entry> entries(Snapshot now) {
    Map<String, Entry> entries = new HashMap<>();
    now.log().entries().forEach(e -> entries.put(e.id(), e));
    return entries;
  }

  static Optional<Photograph> find(Snapshot now, String path) {
    return now.opened().album().photographs().stream()
        .filter(p -> p.file().path().equals(path))
        .findFirst();
  }
}

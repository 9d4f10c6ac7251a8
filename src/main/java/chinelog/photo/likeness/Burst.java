package chinelog.photo.likeness;

import chinelog.photo.PhotoProgress;
import chinelog.photo.Workers;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.Signature;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Photographs that one camera took in a row and that look alike, of which one would do.
 *
 * @param photographs at least three, by time taken
 * @param sharpest of them
 */
public record Burst(List<Photograph> photographs, Photograph sharpest) {

  /** Two are a second try, and no trouble. */
  private static final int LEAST = 3;

  /** Common practice, no source: who turns to something else takes longer. */
  private static final Duration PAUSE = Duration.ofMinutes(1);

  public Burst {
    photographs = List.copyOf(photographs);
  }

  /**
   * The bursts of an album, by time. Only photographs that follow one another within a minute are
   * looked at; what the log leaves out, and what cannot be decoded, is passed over.
   *
   * @throws IOException if the cache cannot be written
   */
  public static List<Burst> find(Album album, Darkroom darkroom, PhotoProgress progress)
      throws IOException {
    List<Shot> shots = rows(album).stream().flatMap(List::stream).toList();
    List<List<Signature>> looks = Workers.all(shots, s -> darkroom.look(s.photograph), progress);
    List<Burst> bursts = new ArrayList<>();
    List<Seen> alike = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      for (Signature look : looks.get(i)) {
        Seen next = new Seen(shots.get(i), look);
        if (!alike.isEmpty() && !alike.get(alike.size() - 1).isLike(next)) {
          close(alike, bursts);
        }
        alike.add(next);
      }
    }
    close(alike, bursts);
    Comparator<Burst> byTime = Comparator.comparing(b -> String.valueOf(b.sharpest.taken()));
    bursts.sort(byTime.thenComparing(b -> b.sharpest.file().path()));
    return List.copyOf(bursts);
  }

  /** A photograph whose time is known. */
  private record Shot(Photograph photograph, LocalDateTime taken) {

    boolean isSoonBefore(Shot next) {
      return photograph.camera().equals(next.photograph.camera())
          && Duration.between(taken, next.taken).compareTo(PAUSE) <= 0;
    }
  }

  private record Seen(Shot shot, Signature look) {

    boolean isLike(Seen next) {
      return shot.isSoonBefore(next.shot)
          && Likeness.areAlike(
              shot.photograph, next.shot.photograph, look.view().likeness(next.look.view()));
    }
  }

  /** What follows upon one another closely, camera by camera, where it is enough for a burst. */
  private static List<List<Shot>> rows(Album album) {
    SortedMap<String, List<Shot>> cameras = new TreeMap<>();
    for (Photograph photograph : album.photographs()) {
      LocalDateTime taken = photograph.taken();
      if (taken != null && photograph.link() != Photograph.Link.LEFT_OUT) {
        cameras
            .computeIfAbsent(photograph.camera(), c -> new ArrayList<>())
            .add(new Shot(photograph, taken));
      }
    }
    List<List<Shot>> rows = new ArrayList<>();
    for (List<Shot> shots : cameras.values()) {
      int from = 0;
      for (int i = 1; i <= shots.size(); i++) {
        if (i == shots.size() || !shots.get(i - 1).isSoonBefore(shots.get(i))) {
          if (i - from >= LEAST) {
            rows.add(shots.subList(from, i));
          }
          from = i;
        }
      }
    }
    return rows;
  }

  private static void close(List<Seen> alike, List<Burst> bursts) {
    if (alike.size() >= LEAST) {
      Photograph sharpest =
          alike.stream()
              .max(Comparator.comparingDouble(s -> s.look.sharpness()))
              .orElseThrow()
              .shot
              .photograph;
      bursts.add(new Burst(alike.stream().map(s -> s.shot.photograph).toList(), sharpest));
    }
    alike.clear();
  }

  /** For the maker, as {@code check} tells it. */
  public Problem reminder() {
    return Problem.reminder(
        Place.of(photographs.get(0).file().path()),
        Sentence.of(
            "{0} photographs taken in a row look alike, up to {1}; the sharpest is {2}.",
            photographs.size(),
            photographs.get(photographs.size() - 1).file().path(),
            sharpest.file().path()),
        "If one is enough, write leave-out: true for the others in photos.yaml.");
  }
}

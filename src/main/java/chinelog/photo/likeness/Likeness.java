package chinelog.photo.likeness;

import chinelog.photo.PhotoProgress;
import chinelog.photo.Workers;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.Signature;
import chinelog.photo.derivatives.View;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Two photographs that look alike, one of which is withheld and the other not: a burst's next
 * picture, the same saved again, or a crop of it.
 *
 * @param open the one that is not withheld
 * @param withheld the one that is
 * @param degree from 0 for strangers to 1 for the same picture
 */
public record Likeness(Photograph open, Photograph withheld, double degree) {

  /**
   * Chosen after measuring, no source: crops that keep 90 % of each side stay above 0.97, pictures
   * of one hull from one place at two stages below 0.90.
   */
  private static final double ALIKE = 0.925;

  /** Two pictures of one moment are of one subject, so less will do. */
  private static final double ALIKE_IN_A_BURST = 0.75;

  private static final Duration BURST = Duration.ofSeconds(10);

  /**
   * Photographs not in {@code withheld} that look like one that is, each beside the one it is most
   * like, in the album's order. What the log leaves out, and what cannot be decoded, is passed
   * over.
   *
   * <p>All pictures of the album are looked at once and then remembered.
   *
   * @param withheld paths such as {@code photos/T20_0415.jpg}
   * @throws IOException if the cache cannot be written
   */
  public static List<Likeness> find(
      Album album, Darkroom darkroom, Set<String> withheld, PhotoProgress progress)
      throws IOException {
    List<Photograph> closed = new ArrayList<>();
    List<Photograph> open = new ArrayList<>();
    for (Photograph photograph : album.photographs()) {
      if (withheld.contains(photograph.file().path())) {
        closed.add(photograph);
      } else if (photograph.link() != Photograph.Link.LEFT_OUT) {
        open.add(photograph);
      }
    }
    if (closed.isEmpty()) {
      return List.of();
    }
    Verdicts verdicts = new Verdicts(darkroom.folder(), closed);
    Map<String, Optional<Verdicts.Verdict>> known = new HashMap<>(verdicts.load());
    List<Photograph> fresh =
        open.stream().filter(p -> !known.containsKey(Verdicts.key(p))).toList();
    if (!fresh.isEmpty()) {
      known.putAll(compare(closed, fresh, darkroom, progress));
      known.keySet().retainAll(open.stream().map(Verdicts::key).collect(Collectors.toSet()));
      verdicts.save(known);
    }
    return likenesses(known, closed, open);
  }

  /**
   * Those of some photographs that look like one, the most alike first; what cannot be decoded is
   * passed over.
   *
   * @throws IOException if the cache cannot be written
   */
  public static List<Photograph> alike(
      Photograph to, List<Photograph> among, Darkroom darkroom, PhotoProgress progress)
      throws IOException {
    List<Seen> seen = new ArrayList<>();
    for (Signature look : darkroom.look(to)) {
      seen.add(Seen.of(to, look.view()));
    }
    List<List<View>> views =
        Workers.all(among, p -> darkroom.look(p).stream().map(Signature::view).toList(), progress);
    List<Likeness> found = new ArrayList<>();
    for (int i = 0; i < among.size(); i++) {
      found.addAll(most(among.get(i), views.get(i), seen));
    }
    return found.stream()
        .sorted(Comparator.comparingDouble(Likeness::degree).reversed())
        .map(Likeness::open)
        .toList();
  }

  /** Whether the maker has looked at this very file and found that it shows nothing withheld. */
  public boolean isSettled() {
    return open.sha256().equals(open.file().lookedAt());
  }

  /** What was found, a full sentence. */
  public Sentence what() {
    return Sentence.of(
        "The photograph {0} looks like {1}, which is withheld, or in part.",
        open.file().path(), withheld.file().path());
  }

  private static List<Likeness> likenesses(
      Map<String, Optional<Verdicts.Verdict>> known,
      List<Photograph> closed,
      List<Photograph> open) {
    Map<String, Photograph> byHash = new HashMap<>();
    closed.forEach(p -> byHash.putIfAbsent(p.sha256(), p));
    List<Likeness> alike = new ArrayList<>();
    for (Photograph photograph : open) {
      known
          .getOrDefault(Verdicts.key(photograph), Optional.empty())
          .ifPresent(
              v ->
                  alike.add(
                      new Likeness(
                          photograph,
                          Objects.requireNonNull(byHash.get(v.withheld())),
                          v.degree())));
    }
    return List.copyOf(alike);
  }

  private static Map<String, Optional<Verdicts.Verdict>> compare(
      List<Photograph> closed, List<Photograph> open, Darkroom darkroom, PhotoProgress progress)
      throws IOException {
    List<Photograph> all = new ArrayList<>(closed);
    all.addAll(open);
    List<List<View>> views =
        Workers.all(all, p -> darkroom.look(p).stream().map(Signature::view).toList(), progress);
    List<Seen> seen = new ArrayList<>();
    for (int i = 0; i < closed.size(); i++) {
      for (View view : views.get(i)) {
        seen.add(Seen.of(closed.get(i), view));
      }
    }
    List<Integer> numbers = new ArrayList<>();
    for (int i = closed.size(); i < all.size(); i++) {
      numbers.add(i);
    }
    List<List<Likeness>> found =
        Workers.all(numbers, i -> most(all.get(i), views.get(i), seen), PhotoProgress.SILENT);
    Map<String, Optional<Verdicts.Verdict>> verdicts = new HashMap<>();
    for (int i = 0; i < open.size(); i++) {
      verdicts.put(
          Verdicts.key(open.get(i)),
          found.get(i).stream()
              .findFirst()
              .map(l -> new Verdicts.Verdict(l.withheld.sha256(), l.degree)));
    }
    return verdicts;
  }

  /** The withheld photograph most like this one, if any is like it at all. */
  private static List<Likeness> most(Photograph open, List<View> views, List<Seen> seen) {
    Likeness most = null;
    for (View view : views) {
      for (Seen withheld : seen) {
        double degree = withheld.likeness(view);
        if (areAlike(open, withheld.photograph, degree) && (most == null || degree > most.degree)) {
          most = new Likeness(open, withheld.photograph, degree);
        }
      }
    }
    return most == null ? List.of() : List.of(most);
  }

  /** Whether a likeness of this degree means that two photographs show the same. */
  static boolean areAlike(Photograph a, Photograph b, double degree) {
    return degree >= (areOfOneMoment(a, b) ? ALIKE_IN_A_BURST : ALIKE);
  }

  private static boolean areOfOneMoment(Photograph a, Photograph b) {
    LocalDateTime one = a.taken();
    LocalDateTime other = b.taken();
    return one != null
        && other != null
        && a.camera().equals(b.camera())
        && Duration.between(one, other).abs().compareTo(BURST) <= 0;
  }

  /** A withheld photograph as stored, and turned in case somebody turned a copy. */
  private record Seen(Photograph photograph, View view, List<View> turned) {

    static Seen of(Photograph photograph, View view) {
      View right = view.turned();
      View over = right.turned();
      return new Seen(photograph, view, List.of(right, over, over.turned()));
    }

    double likeness(View other) {
      double most = view.likeness(other);
      for (View turn : turned) {
        most = Math.max(most, turn.likenessOfWholes(other));
      }
      return most;
    }
  }
}

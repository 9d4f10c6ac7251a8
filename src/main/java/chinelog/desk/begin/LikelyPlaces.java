package chinelog.desk.begin;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Folders on this machine in which photographs or logs lie, near where people keep them: their own
 * folder and the cards that are put in. Only so many are looked at, and nothing in them is opened.
 */
final class LikelyPlaces {

  private static final int MOST_LOOKED_AT = 600;
  private static final int MOST_TOLD = 6;

  /** Below the home folder: Pictures, Pictures/2026, Pictures/2026/merrow. */
  private static final int DEEPEST = 3;

  /** Where systems show what is put in. */
  private static final List<String> MOUNTS = List.of("/media", "/run/media", "/Volumes");

  private static final Set<String> PICTURES = Set.of("jpg", "jpeg", "heic", "heif");

  /**
   * A folder.
   *
   * @param photographs how many lie in it
   */
  public record Place(String path, int photographs) {}

  private final List<Found> photographs = new ArrayList<>();
  private final List<String> logs = new ArrayList<>();
  private int looked;

  private record Found(Place place, long changed) {}

  private record Folder(Path path, int depth) {}

  private LikelyPlaces() {}

  /**
   * Looks.
   *
   * @param suggested where a new log may lie; others may lie beside it
   */
  static LikelyPlaces of(Path home, Path suggested) {
    LikelyPlaces places = new LikelyPlaces();
    MOUNTS.forEach(m -> places.look(Path.of(m)));
    Path beside = suggested.toAbsolutePath().getParent();
    if (beside != null && !beside.startsWith(home)) {
      places.look(beside);
    }
    places.look(home);
    return places;
  }

  /** Those with photographs, the latest changed first. */
  List<Place> photographs() {
    return photographs.stream()
        .sorted(Comparator.comparingLong(Found::changed).reversed())
        .map(Found::place)
        .limit(MOST_TOLD)
        .toList();
  }

  /** Those that hold a log. */
  List<String> logs() {
    return logs.stream().distinct().limit(MOST_TOLD).toList();
  }

  /** In breadth, so that what lies near is found before there is an end. */
  private void look(Path top) {
    Deque<Folder> waiting = new ArrayDeque<>(List.of(new Folder(top, 0)));
    while (!waiting.isEmpty() && looked < MOST_LOOKED_AT) {
      Folder folder = waiting.remove();
      looked++;
      int pictures = 0;
      try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder.path())) {
        if (Files.isRegularFile(folder.path().resolve("log.yaml"))) {
          logs.add(folder.path().toString());
          continue;
        }
        for (Path file : inside) {
          String name = file.getFileName().toString();
          if (PICTURES.contains(
              name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT))) {
            pictures++;
          } else if (folder.depth() < DEEPEST
              && !name.startsWith(".")
              && Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
            waiting.add(new Folder(file, folder.depth() + 1));
          }
        }
        if (pictures > 0) {
          long changed = Files.getLastModifiedTime(folder.path()).toMillis();
          photographs.add(new Found(new Place(folder.path().toString(), pictures), changed));
        }
      } catch (IOException e) {
        // What may not be looked at is not offered.
      }
    }
  }
}

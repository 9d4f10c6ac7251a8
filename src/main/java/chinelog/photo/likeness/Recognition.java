package chinelog.photo.likeness;

import chinelog.photo.PhotoProgress;
import chinelog.photo.Workers;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Searches the photographs that are to be shown, as they are to be shown, for what their readers
 * may not see: pages of drawings and withheld photographs, whole or in part, turned, mirrored,
 * tilted, or lying about in another picture.
 *
 * <p>What was found in a picture is remembered in the log's private cache by the hash of the
 * picture and of all that was searched for.
 */
public final class Recognition {

  /** What a line names that tells whether a photograph looks like any drawing. */
  private static final String A_DRAWING = "a drawing";

  private Recognition() {}

  /**
   * Something found in a photograph.
   *
   * @param photograph in which it was found
   * @param kind of what was found
   * @param original what it shows: {@code sheets/lines.pdf#1} or {@code photos/a.jpg}; empty for
   *     what only looks like a drawing
   * @param mirrored whether it is seen mirrored
   * @param area of the photograph where most of its details were found; more of it may lie around
   */
  public record Finding(
      Photograph photograph, Kind kind, String original, boolean mirrored, Area area) {}

  /**
   * A part of an upright picture, in fractions of its width and height from its left top corner.
   */
  public record Area(double left, double top, double right, double bottom) {

    static final Area WHOLE = new Area(0, 0, 1, 1);

    /** Such as {@code [0.10, 0.35, 0.48, 1.00]}, as regions are written in photos.yaml. */
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "[%.2f, %.2f, %.2f, %.2f]", left, top, right, bottom);
    }
  }

  /** What may be found. */
  public enum Kind {
    /** A page of a sheet. */
    SHEET,
    /** A withheld photograph, or the part of one that is withheld. */
    PHOTOGRAPH,
    /** Thin dark lines on a light sheet, of no drawing that is known. */
    DRAWING
  }

  /**
   * Everything found, in the order of the photographs.
   *
   * @param shown photographs with the regions that are filled in them
   * @param originals what must not be found in them
   * @param drawings whether whatever looks like a drawing is to be told, too
   * @throws IOException if a picture cannot be read or the cache cannot be written
   */
  public static List<Finding> search(
      Darkroom darkroom,
      List<Darkroom.Order> shown,
      List<Original> originals,
      boolean drawings,
      PhotoProgress progress)
      throws IOException {
    KnownFindings known = KnownFindings.of(darkroom, originals);
    List<Darkroom.Order> fresh =
        shown.stream().filter(o -> known.find(KnownFindings.key(darkroom, o)) == null).toList();
    if (!fresh.isEmpty()) {
      FeatureStore store = new FeatureStore(darkroom.folder());
      List<Sought> sought = Workers.all(originals, o -> Sought.of(o, store), PhotoProgress.SILENT);
      List<KnownFindings.Seen> seen =
          Workers.all(fresh, o -> see(darkroom, o, sought, store), progress);
      Map<String, KnownFindings.Seen> byKey = new TreeMap<>();
      for (int i = 0; i < fresh.size(); i++) {
        byKey.put(KnownFindings.key(darkroom, fresh.get(i)), seen.get(i));
      }
      known.addAll(byKey);
    }
    List<Finding> findings = new ArrayList<>();
    for (Darkroom.Order order : shown) {
      KnownFindings.Seen seen = known.find(KnownFindings.key(darkroom, order));
      Kind kind = seen == null ? null : seen.kind();
      if (seen != null && kind != null && (drawings || kind != Kind.DRAWING)) {
        findings.add(
            new Finding(order.photograph(), kind, seen.original(), seen.mirrored(), seen.area()));
      }
    }
    return List.copyOf(findings);
  }

  /** What is seen first: a sheet before a photograph, and any before what may be a drawing. */
  private static KnownFindings.Seen see(
      Darkroom darkroom, Darkroom.Order order, List<Sought> sought, FeatureStore store)
      throws IOException {
    KnownFindings known = KnownFindings.of(darkroom, order);
    Map<String, KnownFindings.Seen> fresh = new TreeMap<>();
    KnownFindings.Seen first = KnownFindings.Seen.NOTHING;
    Scene scene = null;
    for (int i = 0; i <= sought.size() && first.isNothing(); i++) {
      Sought one = i < sought.size() ? sought.get(i) : null;
      String key = one == null ? A_DRAWING : KnownFindings.key(one.original());
      KnownFindings.Seen seen = known.find(key);
      if (seen == null) {
        scene = scene == null ? Scene.of(darkroom, order, store) : scene;
        if (scene == null) {
          return KnownFindings.Seen.NOTHING;
        }
        seen = one == null ? scene.drawing() : scene.find(one);
        fresh.put(key, seen);
      }
      first = seen;
    }
    if (!fresh.isEmpty()) {
      known.addAll(fresh);
    }
    return first;
  }
}

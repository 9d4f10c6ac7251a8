package chinelog.photo.derivatives;

import chinelog.digest.Sha256;
import chinelog.log.records.PhotoFile;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Workers;
import chinelog.photo.album.Credit;
import chinelog.photo.album.Photograph;
import chinelog.photo.pixels.Box;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.PhotoLoader;
import chinelog.photo.pixels.Pixels;
import chinelog.photo.pixels.UnusablePhoto;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;

/**
 * Makes derivatives: upright, sRGB, with no metadata but the credit asked for, regions filled
 * before any scaling; each is made once and kept in the log's private cache.
 *
 * <p>May be used from several threads. The derivatives' bytes depend on the pixels outside of the
 * filled regions, the credit, and nothing else; the paths they are kept under do not, and must not
 * be shown.
 */
public final class Darkroom {

  /** Long edges of the derivatives, in pixels; none is larger than its source. */
  public static final List<Integer> LONG_EDGES_PX = List.of(320, 800, 1600, 2400);

  /** The one colour that regions are filled with, as red, green and blue bytes. */
  public static final int FILL_RGB = Pixels.FILL;

  /** To be raised with every change that alters a derivative's bytes. */
  private static final String RECIPE = "4";

  private static final int BYTES_PER_MIB = 1 << 20;

  private final Path folder;
  private final PrintStore store;

  /** MiB that pictures being worked on may take, so that many cores do not exhaust the memory. */
  private final Semaphore memory;

  private final int memoryMiB;

  private final Credit credit;

  /**
   * @param folder the log's folder
   */
  public Darkroom(Path folder) {
    this(folder, Credit.NONE);
  }

  /**
   * @param folder the log's folder
   * @param credit to be written into derivatives of photographs
   */
  public Darkroom(Path folder, Credit credit) {
    this.folder = folder;
    this.credit = credit;
    this.store = new PrintStore(folder);
    this.memoryMiB = (int) Math.max(1, Runtime.getRuntime().maxMemory() / BYTES_PER_MIB * 6 / 10);
    this.memory = new Semaphore(memoryMiB, true);
  }

  /**
   * The derivatives of a photograph with regions filled, from the smallest to the largest.
   *
   * @throws IOException if the photograph cannot be decoded whole or the cache cannot be written
   */
  public Prints print(Photograph photograph, List<PhotoFile.Region> filled) throws IOException {
    PrintStore.Kept plain = kept(photograph, filled);
    if (credit.isNone()) {
      return plain.prints();
    }
    String key = key(credit.xmp() + "\n" + keyOf(photograph, Mask.of(photograph, filled)));
    PrintStore.Kept found = store.find(key);
    return (found != null ? found : store.keep(key, plain.with(credit))).prints();
  }

  /** Makes many at once, on all cores; what cannot be made is a problem, and the rest goes on. */
  public Development develop(List<Order> orders, PhotoProgress progress) throws IOException {
    List<Result> results = Workers.all(orders, this::result, progress);
    Map<Order, Prints> prints = new LinkedHashMap<>();
    List<Problem> problems = new ArrayList<>();
    for (Result result : results) {
      if (result.made.isEmpty()) {
        problems.add(result.problems.get(0));
      } else {
        prints.put(result.order, result.made.get(0));
      }
    }
    return new Development(prints, problems.stream().distinct().sorted().toList());
  }

  private record Result(Order order, List<Prints> made, List<Problem> problems) {}

  private Result result(Order order) throws IOException {
    try {
      return new Result(order, List.of(print(order.photograph(), order.filled())), List.of());
    } catch (UnusablePhoto e) {
      Place place = Place.of(order.photograph().file().path());
      return new Result(order, List.of(), List.of(e.at(place)));
    }
  }

  /** How the whole photograph looks, nothing filled; empty if it cannot be decoded. */
  public List<Signature> look(Photograph photograph) throws IOException {
    try {
      return List.of(kept(photograph, List.of()).signature());
    } catch (UnusablePhoto e) {
      return List.of();
    }
  }

  /** The log's folder. */
  public Path folder() {
    return folder;
  }

  private PrintStore.Kept kept(Photograph photograph, List<PhotoFile.Region> filled)
      throws IOException {
    List<Box> mask = Mask.of(photograph, filled);
    String key = keyOf(photograph, mask);
    PrintStore.Kept found = store.find(key);
    return found != null ? found : store.keep(key, derive(photograph, mask));
  }

  /**
   * What will be filled so that nothing of some regions remains, in pixels of the upright picture:
   * more than was drawn, see {@link Mask}.
   */
  public static List<Box> filled(Photograph photograph, List<PhotoFile.Region> regions) {
    Orientation orientation = Orientation.of(photograph.orientation());
    return Mask.of(photograph, regions).stream()
        .map(box -> orientation.upright(box, photograph.widthPx(), photograph.heightPx()))
        .toList();
  }

  /** Tells a photograph with these regions filled from all other pictures. */
  public String key(Photograph photograph, List<PhotoFile.Region> filled) {
    return keyOf(photograph, Mask.of(photograph, filled));
  }

  private String keyOf(Photograph photograph, List<Box> mask) {
    return key(photograph.sha256() + "\n" + photograph.orientation() + "\n" + mask);
  }

  public static String key(String source) {
    return Sha256.of((RECIPE + "\n" + source));
  }

  private Derivatives derive(Photograph photograph, List<Box> mask) throws IOException {
    Path file = PhotoLoader.inside(folder, photograph.file().path());
    long pixels = (long) photograph.widthPx() * photograph.heightPx();
    int needMiB = (int) Math.min(memoryMiB, (5 * pixels + Files.size(file)) / BYTES_PER_MIB + 64);
    memory.acquireUninterruptibly(needMiB);
    try {
      PhotoLoader.Loaded loaded = PhotoLoader.load(folder, photograph.file().path());
      check(photograph, loaded, mask);
      Orientation orientation = Orientation.of(photograph.orientation());
      boolean swapped = orientation.swapsSides();
      int w = swapped ? photograph.heightPx() : photograph.widthPx();
      int h = swapped ? photograph.widthPx() : photograph.heightPx();
      Pixels stored = Decoder.decode(loaded.decodable(), loaded.bytes());
      if (stored.widthPx() != w || stored.heightPx() != h) {
        throw UnusablePhoto.damaged("its size is not what its header says");
      }
      mask.forEach(stored::fill);
      return Derivatives.of(stored, orientation);
    } finally {
      memory.release(needMiB);
    }
  }

  private static void check(Photograph photograph, PhotoLoader.Loaded loaded, List<Box> mask)
      throws UnusablePhoto {
    if (!loaded.sha256().equals(photograph.sha256())) {
      throw new UnusablePhoto(
          "The photograph changed while it was being worked on.", "Run the command again.");
    }
    if (!mask.isEmpty() && !loaded.kind().keepsRegionsApart()) {
      throw new UnusablePhoto(
          Sentence.of("Regions of a {0} file cannot be filled for certain.", loaded.kind().word()),
          "Put the whole photograph under the agreement, or save it as PNG and draw the regions"
              + " on that.");
    }
  }

  /**
   * A photograph to be printed.
   *
   * @param filled regions whose readers may not see them
   */
  public record Order(Photograph photograph, List<PhotoFile.Region> filled) {

    public Order {
      filled = List.copyOf(filled);
    }
  }

  /**
   * What became of many orders.
   *
   * @param prints in the order asked for; those that could not be made are missing
   * @param problems one for each photograph that could not be printed
   */
  public record Development(Map<Order, Prints> prints, List<Problem> problems) {

    public Development {
      prints = Collections.unmodifiableMap(new LinkedHashMap<>(prints));
      problems = List.copyOf(problems);
    }
  }

  /**
   * Derivatives of one picture.
   *
   * @param prints from the smallest to the largest
   */
  public record Prints(List<Print> prints) {

    public Prints {
      prints = List.copyOf(prints);
    }
  }

  /** One derivative, a JPEG file in the cache. */
  public record Print(int widthPx, int heightPx, Path jpeg) {}
}

package chinelog.photo.likeness;

import chinelog.log.records.PhotoFile;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.SheetPrinter;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.Pixels;
import chinelog.photo.pixels.UnusablePhoto;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What some readers may not see and what is therefore searched for in the pictures that they get.
 *
 * @param name such as {@code sheets/lines.pdf#1} or {@code photos/a.jpg}
 * @param key tells this very picture, and these parts of it, from all others
 * @param parts of the picture that are withheld; the whole of it if none is named
 * @param prints of the picture
 */
public record Original(
    Recognition.Kind kind,
    String name,
    String key,
    List<PhotoFile.Region> parts,
    Darkroom.Prints prints) {

  /** The smallest derivative that shows as much as is looked at. */
  private static final int LEAST_PX = 1200;

  public Original {
    parts = List.copyOf(parts);
  }

  /**
   * A page of a sheet.
   *
   * @param page from 1
   * @throws IOException if it cannot be read
   */
  public static Original page(SheetPrinter printer, String sheet, int page) throws IOException {
    Darkroom.Prints prints = printer.print(sheet, page);
    return new Original(
        Recognition.Kind.SHEET, sheet + "#" + page, keyOf(prints), List.of(), prints);
  }

  /**
   * A photograph, or the parts of it that are withheld; empty for one that cannot be decoded, for
   * which no picture can be compared.
   *
   * @param parts none for the whole
   * @throws IOException if it cannot be read
   */
  public static Optional<Original> findPhotograph(
      Darkroom darkroom, Photograph photograph, List<PhotoFile.Region> parts) throws IOException {
    Darkroom.Prints prints;
    try {
      prints = darkroom.print(photograph, List.of());
    } catch (UnusablePhoto e) {
      return Optional.empty();
    }
    StringBuilder key = new StringBuilder(keyOf(prints));
    for (PhotoFile.Region r : parts) {
      key.append(' ').append(List.of(r.left(), r.top(), r.right(), r.bottom()));
    }
    return Optional.of(
        new Original(
            Recognition.Kind.PHOTOGRAPH, photograph.file().path(), key.toString(), parts, prints));
  }

  /** Prints lie in a folder that is named by a hash of what they show. */
  static String keyOf(Darkroom.Prints prints) {
    Path jpeg = prints.prints().get(0).jpeg();
    int names = jpeg.getNameCount();
    return jpeg.subpath(names - 3, names - 1).toString();
  }

  /** Tells it from all other pictures, and from the same one by another name. */
  String identity() {
    return name + " " + key;
  }

  /** The pictures of what is withheld. */
  List<Pixels> pictures() throws IOException {
    Pixels whole = picture(prints);
    List<Pixels> pictures = new ArrayList<>();
    for (PhotoFile.Region part : parts) {
      pictures.add(whole.part(part.left(), part.top(), part.right(), part.bottom()));
    }
    return pictures.isEmpty() ? List.of(whole) : List.copyOf(pictures);
  }

  static Pixels picture(Darkroom.Prints prints) throws IOException {
    Darkroom.Print print =
        prints.prints().stream()
            .filter(p -> Math.max(p.widthPx(), p.heightPx()) >= LEAST_PX)
            .findFirst()
            .orElse(prints.prints().get(prints.prints().size() - 1));
    return Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(print.jpeg()));
  }
}

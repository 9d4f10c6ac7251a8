package chinelog.photo.derivatives;

import chinelog.digest.Sha256;
import chinelog.photo.Leftovers;
import chinelog.photo.album.Credit;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;

/**
 * Keeps derivatives in the log's private cache: a folder for each key, with the pictures and a text
 * file that lists them. A folder comes into being whole, by one rename; one that is not as its list
 * says is made again.
 */
final class PrintStore {

  private static final String LIST = "prints.txt";
  private static final String NEW = "new";

  private final Path folder;
  private final AtomicBoolean cleared = new AtomicBoolean();

  PrintStore(Path log) {
    this.folder = log.resolve(".chinelog").resolve("prints");
  }

  /** Derivatives kept. */
  record Kept(Darkroom.Prints prints, Signature signature) {

    /** The same pictures, each with a credit. */
    Derivatives with(Credit credit) throws IOException {
      List<Derivatives.Jpg> jpegs = new ArrayList<>();
      for (Darkroom.Print print : prints.prints()) {
        byte[] jpeg = credit.into(Files.readAllBytes(print.jpeg()));
        jpegs.add(new Derivatives.Jpg(print.widthPx(), print.heightPx(), jpeg));
      }
      return new Derivatives(jpegs, signature);
    }
  }

  @Nullable Kept find(String key) {
    Path place = place(key);
    try {
      List<String> lines = Files.readString(place.resolve(LIST)).lines().toList();
      String[] first = lines.get(0).split(" ", -1);
      List<Darkroom.Print> prints = new ArrayList<>();
      for (String line : lines.subList(1, lines.size() - 1)) {
        String[] cells = line.split(" ", -1);
        Path jpeg = place.resolve(cells[0]);
        if (Files.size(jpeg) != Long.parseLong(cells[3])) {
          return null;
        }
        prints.add(
            new Darkroom.Print(Integer.parseInt(cells[1]), Integer.parseInt(cells[2]), jpeg));
      }
      if (!lines.get(lines.size() - 1).equals(sum(lines.subList(0, lines.size() - 1)))) {
        return null;
      }
      return new Kept(
          new Darkroom.Prints(prints),
          new Signature(
              Double.parseDouble(first[0]), new View(Base64.getDecoder().decode(first[1]))));
    } catch (IOException | RuntimeException e) {
      // Absent or damaged: all the same to a cache.
      return null;
    }
  }

  Kept keep(String key, Derivatives derivatives) throws IOException {
    Path place = place(key);
    Files.createDirectories(place.getParent());
    Path fresh = Files.createTempDirectory(folder, NEW);
    if (!cleared.getAndSet(true)) {
      Leftovers.clear(fresh, NEW, "");
    }
    Signature signature = derivatives.signature();
    List<String> lines = new ArrayList<>();
    lines.add(
        String.join(
            " ",
            Double.toString(signature.sharpness()),
            Base64.getEncoder().encodeToString(signature.view().luma())));
    for (Derivatives.Jpg jpg : derivatives.jpegs()) {
      String name = jpg.widthPx() + "x" + jpg.heightPx() + ".jpg";
      // Never over an old file: its longer end would stay behind the new picture.
      Files.write(fresh.resolve(name), jpg.bytes(), StandardOpenOption.CREATE_NEW);
      lines.add(name + " " + jpg.widthPx() + " " + jpg.heightPx() + " " + jpg.bytes().length);
    }
    lines.add(sum(lines));
    Files.write(fresh.resolve(LIST), lines, StandardOpenOption.CREATE_NEW);
    moveInto(fresh, place, key);
    Kept kept = find(key);
    if (kept == null) {
      throw new IOException("derivatives vanished while they were kept: " + place);
    }
    return kept;
  }

  private void moveInto(Path fresh, Path place, String key) throws IOException {
    if (Files.exists(place) && find(key) == null) {
      Leftovers.delete(place);
    }
    try {
      Files.move(fresh, place, StandardCopyOption.ATOMIC_MOVE);
    } catch (FileSystemException e) {
      // Systems tell in several ways that there is such a folder.
      if (!Files.exists(place)) {
        throw e;
      }
      // Another thread was first, with the same bytes.
      Leftovers.delete(fresh);
    }
  }

  private Path place(String key) {
    return folder.resolve(key.substring(0, 2)).resolve(key.substring(2));
  }

  private static String sum(List<String> lines) {
    return Sha256.of(String.join("\n", lines));
  }
}

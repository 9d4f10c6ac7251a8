package chinelog.photo.likeness;

import chinelog.digest.Sha256;
import chinelog.photo.Leftovers;
import chinelog.photo.derivatives.Darkroom;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Keeps features of pictures in the log's private cache, a file for each picture. */
final class FeatureStore {

  /** To be raised with every change that alters features. */
  private static final String RECIPE = "features 2 ";

  private static final int HASH_BYTES = 32;

  private final Path folder;

  FeatureStore(Path log) {
    this.folder = log.resolve(".chinelog").resolve("features");
  }

  /**
   * @param views of the picture
   */
  record Entry(Look look, List<Features> views) {

    Entry {
      views = List.copyOf(views);
    }
  }

  /** Null where nothing whole is kept. */
  @Nullable Entry find(String name) {
    try {
      byte[] all = Files.readAllBytes(file(name));
      byte[] body = Arrays.copyOf(all, all.length - HASH_BYTES);
      byte[] sum = Arrays.copyOfRange(all, body.length, all.length);
      if (!HexFormat.of().formatHex(sum).equals(Sha256.of(body))) {
        return null;
      }
      ByteBuffer bytes = ByteBuffer.wrap(body);
      Look look = Look.values()[bytes.get()];
      List<Features> views = new ArrayList<>();
      for (int n = bytes.get(); n > 0; n--) {
        views.add(Features.read(bytes));
      }
      return new Entry(look, views);
    } catch (IOException | RuntimeException e) {
      // Absent or damaged: all the same to a cache.
      return null;
    }
  }

  void keep(String name, Entry entry) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(entry.look.ordinal());
    out.write(entry.views.size());
    entry.views.forEach(v -> out.writeBytes(v.bytes()));
    out.writeBytes(HexFormat.of().parseHex(Sha256.of(out.toByteArray())));
    Path file = file(name);
    Files.createDirectories(file.getParent());
    Path fresh = Files.createTempFile(file.getParent(), "new", ".bin");
    Leftovers.clear(fresh, "new", ".bin");
    Files.write(fresh, out.toByteArray());
    Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
  }

  private Path file(String name) {
    String key = Darkroom.key(RECIPE + name);
    return folder.resolve(key.substring(0, 2)).resolve(key.substring(2));
  }
}

package chinelog.site;

import chinelog.digest.ContentHash;
import chinelog.digest.Sha256;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.markup.Theme;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Writes sites as if none had stood before. */
public final class FreshSite implements Earlier {

  private final ContentHash hashes =
      new ContentHash(value -> value instanceof Picture.Bytes jpeg ? read(jpeg) : null);

  private FreshSite() {}

  public static void write(Edition edition, Theme theme, @Nullable Path templates, Path folder)
      throws IOException {
    SiteWriter.write(edition, theme, templates, folder, new FreshSite(), "");
  }

  private static String read(Picture.Bytes jpeg) {
    try (InputStream in = jpeg.open()) {
      return Sha256.of(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public @Nullable String find(String path) {
    return null;
  }

  @Override
  public boolean keep(String path) {
    return false;
  }

  @Override
  public void note(String path, String made) {}

  @Override
  public ContentHash hashes() {
    return hashes;
  }
}

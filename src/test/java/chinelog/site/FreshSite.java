package chinelog.site;

import chinelog.digest.ContentHash;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.markup.Theme;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Writes sites as if none had stood before. */
public final class FreshSite implements Earlier {

  /** There is no page to compare with, so that what pictures hold need not be read. */
  private final ContentHash hashes =
      new ContentHash(value -> value instanceof Picture.Bytes ? "a picture" : null);

  private FreshSite() {}

  public static void write(Edition edition, Theme theme, @Nullable Path templates, Path folder)
      throws IOException {
    SiteWriter.write(edition, theme, templates, folder, new FreshSite(), "");
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

package chinelog.site;

import chinelog.digest.ContentHash;
import chinelog.edition.Edition;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.markup.Theme;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * An edition's site without a folder: every page and picture is made, by the same code as the
 * published ones, when it is looked at. What leads to other places in the site works.
 */
public final class SiteView {

  private final Contents contents;
  private final Theme theme;
  private final Templates templates;
  private final PageFiller filler;
  private final Map<String, Picture.Rendition> pictures = new TreeMap<>();

  /**
   * @param templates a log's own {@code site-template} folder; null for those that come with
   *     chinelog
   * @throws IOException if that folder cannot be read
   */
  public SiteView(Edition edition, Theme theme, @Nullable Path templates) throws IOException {
    this.contents = edition.contents();
    this.theme = theme;
    this.templates = new Templates(templates);
    // Nobody compares what pages are made of here: any text that tells values apart will do.
    ContentHash hashes =
        new ContentHash(v -> v instanceof Picture.Bytes ? String.valueOf(v.hashCode()) : null);
    this.filler = new PageFiller(contents, theme, this.templates, hashes);
    for (Plate plate : contents.plates()) {
      for (Picture.Rendition rendition : plate.picture().renditions()) {
        pictures.put(Addresses.picture(plate.picture(), rendition), rendition);
      }
    }
  }

  /** All its pages: their titles by their paths, in the order of the site. */
  public Map<String, String> pages() {
    Map<String, String> titles = new LinkedHashMap<>();
    for (Page page : filler.pages()) {
      titles.put(page.path(), page.title().isEmpty() ? contents.title() : page.title());
    }
    return titles;
  }

  /** A page's markup, such as that of {@code posts/01-keel.html}. */
  public Optional<String> findPage(String path) throws IOException {
    for (Page page : filler.pages()) {
      if (page.path().equals(path)) {
        return Optional.of(fill(page));
      }
    }
    return Optional.empty();
  }

  /** The markup of a page that tells one entry alone, as of one that no post tells. */
  public Optional<String> findEntry(String id) throws IOException {
    for (Edition.Entry entry : contents.entries()) {
      if (entry.id().equals(id)) {
        return Optional.of(
            fill(
                new Page(
                    Addresses.entryPage(entry),
                    "entry.ftlh",
                    entry.title(),
                    "",
                    null,
                    Map.of("note", entry),
                    false)));
      }
    }
    return Optional.empty();
  }

  /** One after the other: what is remembered of an edition's parts is not for several threads. */
  private synchronized String fill(Page page) throws IOException {
    return filler.fill(page, filler.about(page), new Uses(filler.source()));
  }

  /** A picture's bytes, such as those of {@code pictures/5f3a-480.jpg}. */
  public Optional<byte[]> findPicture(String path) throws IOException {
    Picture.Rendition rendition = pictures.get(path);
    if (rendition == null) {
      return Optional.empty();
    }
    try (InputStream in = rendition.jpeg().open()) {
      return Optional.of(in.readAllBytes());
    }
  }

  /** A style sheet, typeface or script, such as {@code assets/site.css}. */
  public Optional<byte[]> findAsset(String path) throws IOException {
    if (path.equals("assets/site.css")) {
      return Optional.of(theme.siteCss().getBytes(StandardCharsets.UTF_8));
    }
    for (Theme.Font font : theme.siteFonts()) {
      if (path.equals("assets/fonts/" + font.file())) {
        return Optional.of(font.bytes());
      }
    }
    return path.equals("assets/mark.svg")
        ? Optional.of(templates.file("mark.svg"))
        : Optional.empty();
  }
}

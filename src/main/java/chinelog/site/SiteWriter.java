package chinelog.site;

import chinelog.digest.Sha256;
import chinelog.edition.Edition;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.markup.Theme;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Writes an edition as a static web site that works from a folder or any address. */
public final class SiteWriter {

  private static final List<String> FILES = List.of("search.js", "plates.js", "mark.svg");

  private final Contents contents;
  private final Theme theme;
  private final Templates templates;
  private final Path folder;
  private final Earlier earlier;
  private final String foundations;

  private SiteWriter(
      Contents contents,
      Theme theme,
      Templates templates,
      Path folder,
      Earlier earlier,
      String foundations) {
    this.contents = contents;
    this.theme = theme;
    this.templates = templates;
    this.folder = folder;
    this.earlier = earlier;
    this.foundations = foundations;
  }

  /**
   * Writes the site into an empty folder.
   *
   * @param templates a log's own {@code site-template} folder; null for those that come with
   *     chinelog
   * @param folder exists and is empty
   * @param earlier the site that stood before
   * @param foundations whatever else pages are made of: a digest of the program, the theme and the
   *     templates
   * @throws IOException if a file cannot be written or a template is wrong (naming template and
   *     line)
   */
  public static void write(
      Edition edition,
      Theme theme,
      @Nullable Path templates,
      Path folder,
      Earlier earlier,
      String foundations)
      throws IOException {
    new SiteWriter(
            edition.contents(), theme, new Templates(templates), folder, earlier, foundations)
        .write();
  }

  /**
   * A digest of the log's own templates.
   *
   * @param templates their folder; null if the log has none
   * @throws IOException if one cannot be read
   */
  public static String digest(@Nullable Path templates) throws IOException {
    if (templates == null) {
      return "";
    }
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.walk(templates)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        all.append(templates.relativize(file)).append('\n');
        all.append(Sha256.of(Files.readAllBytes(file))).append('\n');
      }
    }
    return Sha256.of(all.toString());
  }

  private void write() throws IOException {
    PageFiller filler = new PageFiller(contents, theme, templates, earlier.hashes());
    List<Page> pages = filler.pages();
    SearchIndex search = new SearchIndex();
    for (Page page : pages) {
      String html = page(page, filler);
      if (page.isSearched()) {
        search.add(page.path(), page.title(), html);
      }
    }
    writeText("assets/search-pages.js", search.script());
    writeAssets();
    writePictures();
    URI address = contents.address();
    if (address != null) {
      writeText("feed.xml", Outside.feed(contents, address));
      writeText("sitemap.xml", Outside.sitemap(pages, address));
    }
  }

  /** Writes a page, or leaves it as it stood, and returns its markup. */
  private String page(Page page, PageFiller filler) throws IOException {
    Map<String, Object> about = filler.about(page);
    String digest = earlier.hashes().of(List.of(foundations, page, about));
    String told = earlier.find(page.path());
    if (told != null && Uses.areSame(told, digest, filler.source()) && earlier.keep(page.path())) {
      earlier.note(page.path(), told);
      return page.isSearched() ? Files.readString(folder.resolve(page.path())) : "";
    }
    Uses uses = new Uses(filler.source());
    String html = filler.fill(page, about, uses);
    write(page.path(), html.getBytes(StandardCharsets.UTF_8));
    String tells = uses.told(digest);
    if (tells != null) {
      earlier.note(page.path(), tells);
    }
    return html;
  }

  private void writeAssets() throws IOException {
    writeText("assets/site.css", theme.siteCss());
    for (Theme.Font font : theme.siteFonts()) {
      write("assets/fonts/" + font.file(), font.bytes());
    }
    for (String file : FILES) {
      write("assets/" + file, templates.file(file));
    }
  }

  private void writePictures() throws IOException {
    Map<String, Picture.Rendition> files = new TreeMap<>();
    for (Plate plate : contents.plates()) {
      Picture picture = plate.picture();
      picture.renditions().forEach(r -> files.put(Addresses.picture(picture, r), r));
    }
    Map<String, Picture.Rendition> fresh = new TreeMap<>(files);
    fresh.entrySet().removeIf(file -> isKept(file.getKey(), file.getValue()));
    for (Map.Entry<String, Picture.Rendition> file : fresh.entrySet()) {
      try (InputStream in = file.getValue().jpeg().open()) {
        Files.copy(in, prepared(file.getKey()));
      }
    }
  }

  private boolean isKept(String path, Picture.Rendition rendition) {
    String made = earlier.hashes().of(rendition.jpeg());
    earlier.note(path, made);
    return made.equals(earlier.find(path)) && earlier.keep(path);
  }

  private void writeText(String path, String text) throws IOException {
    write(path, text.getBytes(StandardCharsets.UTF_8));
  }

  private void write(String path, byte[] bytes) throws IOException {
    Files.write(prepared(path), bytes, StandardOpenOption.CREATE_NEW);
  }

  private Path prepared(String path) throws IOException {
    Path file = folder.resolve(path);
    Files.createDirectories(file.getParent());
    return file;
  }
}

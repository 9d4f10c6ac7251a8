package chinelog.site;

import chinelog.digest.ContentHash;
import chinelog.digest.Sha256;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Picture;
import chinelog.markup.Theme;
import chinelog.markup.Wording;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Makes the markup of a site's pages. */
final class PageFiller {

  private final Contents contents;
  private final Theme theme;
  private final Templates templates;
  private final Wording wording;
  private final TemplateFunctions functions;
  private final Uses.Source source;
  private final List<Page> pages;
  private final List<String> menu;

  PageFiller(Contents contents, Theme theme, Templates templates, ContentHash hashes) {
    this.contents = contents;
    this.theme = theme;
    this.templates = templates;
    this.wording = Wording.of(contents.locale());
    Addresses addresses = new Addresses(contents);
    this.functions = new TemplateFunctions(theme, wording);
    this.source = new Uses.Source(contents, addresses, hashes);
    this.pages = SitePlan.of(contents, addresses, wording);
    this.menu = pages.stream().map(Page::path).filter(p -> !p.contains("/")).toList();
  }

  /** All pages, in the order in which they are written. */
  List<Page> pages() {
    return pages;
  }

  /** What pages take from. */
  Uses.Source source() {
    return source;
  }

  /**
   * The markup of a page.
   *
   * @param about what {@link #about} told of it
   * @param uses notes what it takes
   */
  String fill(Page page, Map<String, Object> about, Uses uses) throws IOException {
    Map<String, Object> values = new TreeMap<>(functions.forPage(root(page), uses));
    values.putAll(page.values());
    values.put("edition", templates.watched(uses));
    values.put("page", about);
    return templates.fill(page.template(), values);
  }

  /** What templates are told of the page at hand. */
  Map<String, Object> about(Page page) {
    Map<String, Object> about = new TreeMap<>();
    about.put("path", page.path());
    about.put("menu", menu);
    about.put("title", page.title());
    about.put("description", page.description());
    about.put("language", contents.locale().toLanguageTag());
    if (!contents.locale().getLanguage().equals(wording.language())) {
      about.put("wordsLanguage", wording.language());
    }
    about.put("direction", wording.direction());
    about.put("description_data", Describing.page(contents, page));
    about.put("schemeLight", theme.value("paper"));
    about.put("schemeDark", theme.value("dark.paper"));
    URI address = contents.address();
    if (address != null) {
      about.put("address", Outside.address(address, page.path()));
      about.put("home", Outside.address(address, Addresses.HOME));
      Picture picture = page.picture();
      if (picture != null) {
        String file = Addresses.picture(picture, picture.largest());
        about.put("picture", Outside.address(address, file));
      }
    }
    if (address == null && page.path().equals(Addresses.MISSING)) {
      String style = theme.plainCss().replace("\r", "").replace("</", "<\\/");
      about.put("style", style);
      about.put("styleHash", "sha256-" + sha256(style));
    }
    return about;
  }

  /**
   * The page for wrong addresses is shown at any of them, so it names all from the top; where the
   * top is not known, it brings its style along, and has no menu.
   */
  private String root(Page page) {
    URI address = contents.address();
    return address != null && page.path().equals(Addresses.MISSING)
        ? Outside.path(address)
        : page.root();
  }

  /** As Content Security Policy Level 3, 2.3.1, allows one style by its hash. */
  private static String sha256(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return Base64.getEncoder().encodeToString(Sha256.digest().digest(bytes));
  }
}

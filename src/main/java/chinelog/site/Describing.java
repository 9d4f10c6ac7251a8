package chinelog.site;

import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Post;
import chinelog.json.Json;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a page is, in the terms of schema.org, as JSON-LD. */
final class Describing {

  private Describing() {}

  static String page(Contents contents, Page page) {
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("@context", "https://schema.org");
    boolean isHome = page.path().equals(Addresses.HOME);
    if (page.values().get("post") instanceof Post post) {
      is.put("@type", "BlogPosting");
      is.put("headline", post.title());
      is.put("datePublished", post.date().toString());
      is.put("position", post.number());
    } else {
      is.put("@type", isHome ? "WebSite" : "WebPage");
      is.put("name", isHome ? contents.title() : page.title());
    }
    if (!page.description().isEmpty()) {
      is.put("description", page.description());
    }
    is.put("inLanguage", contents.locale().toLanguageTag());
    if (!contents.maker().isEmpty()) {
      is.put("author", named("Organization", contents.maker()));
    }
    if (!contents.subject().isEmpty()) {
      is.put("about", named("Thing", contents.subject()));
    }
    if (contents.address() != null) {
      is.put("url", Outside.address(contents.address(), page.path()));
      if (page.picture() != null) {
        is.put(
            "image",
            List.of(
                Outside.address(
                    contents.address(),
                    Addresses.picture(page.picture(), page.picture().largest()))));
      }
    }
    return Json.of(is);
  }

  private static Map<String, Object> named(String type, String name) {
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("@type", type);
    is.put("name", name);
    return is;
  }
}

package chinelog.site;

import chinelog.edition.Picture;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A page to be written.
 *
 * @param path from the site's root, such as {@code posts/01-keel.html}
 * @param template such as {@code post.ftlh}
 * @param title of the page; empty for the home page
 * @param description a sentence about it for search engines and previews; may be empty
 * @param picture for previews
 * @param values what this page's template gets besides, by name
 * @param inSitemap whether search engines should be told of it
 */
record Page(
    String path,
    String template,
    String title,
    String description,
    @Nullable Picture picture,
    Map<String, Object> values,
    boolean inSitemap) {

  private static final Set<String> OVERVIEWS = Set.of("home.ftlh", "series.ftlh", "terms.ftlh");

  Page {
    values = new TreeMap<>(values);
  }

  /** Whether it tells something of its own, and not only what other pages tell. */
  boolean isSearched() {
    return inSitemap && !OVERVIEWS.contains(template);
  }

  /** What leads from this page to the site's root: empty or {@code ../}. */
  String root() {
    return path.contains("/") ? "../" : "";
  }
}

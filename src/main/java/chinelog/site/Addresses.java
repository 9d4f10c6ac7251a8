package chinelog.site;

import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Post;
import chinelog.edition.Figure;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Where everything stands, as paths from the site's root, such as {@code posts/01-keel.html#note}.
 */
final class Addresses {

  static final String HOME = "index.html";
  static final String MISSING = "404.html";

  private final Map<String, String> entries = new HashMap<>();
  private final Set<String> figures = new HashSet<>();

  Addresses(Contents contents) {
    for (Post post : contents.posts()) {
      for (String entry : post.entries()) {
        entries.putIfAbsent(entry, post(post) + "#" + entry);
      }
    }
    for (Entry entry : contents.entries()) {
      entries.putIfAbsent(entry.id(), entryPage(entry));
    }
    contents.figures().stream().map(Figure::name).forEach(figures::add);
  }

  static String post(Post post) {
    return "posts/" + post.slug() + ".html";
  }

  /** The page of an entry that no post tells. */
  static String entryPage(Entry entry) {
    return "entries/" + entry.id() + ".html";
  }

  static String plate(Plate plate) {
    return String.format(Locale.ROOT, "plates/%03d.html", plate.number());
  }

  static String picture(Picture picture, Picture.Rendition rendition) {
    return "pictures/" + picture.id() + "-" + rendition.widthPx() + ".jpg";
  }

  static String anchor(String figure) {
    return "fig-" + figure;
  }

  @Nullable String figure(String name) {
    return figures.contains(name) ? "figures.html#" + anchor(name) : null;
  }

  @Nullable String entry(String id) {
    return entries.get(id);
  }

  /** The entries that no post tells: each has a page of its own. */
  static List<Entry> untold(Contents contents) {
    Set<String> told = new HashSet<>();
    contents.posts().forEach(p -> told.addAll(p.entries()));
    return contents.entries().stream().filter(e -> !told.contains(e.id())).toList();
  }
}

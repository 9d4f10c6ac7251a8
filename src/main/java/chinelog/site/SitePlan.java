package chinelog.site;

import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Post;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.markup.TextMarkup;
import chinelog.markup.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The pages of a site, in the order in which they are written. */
final class SitePlan {

  private final Contents contents;
  private final Wording wording;
  private final List<Page> pages = new ArrayList<>();

  private SitePlan(Contents contents, Wording wording) {
    this.contents = contents;
    this.wording = wording;
  }

  static List<Page> of(Contents contents, Addresses addresses, Wording wording) {
    SitePlan plan = new SitePlan(contents, wording);
    plan.fixedPages(TermIndex.of(contents, addresses, wording));
    plan.posts();
    plan.entries();
    plan.plates();
    return List.copyOf(plan.pages);
  }

  private void fixedPages(List<Map<String, Object>> letters) {
    add(Addresses.HOME, "home.ftlh", "", homeDescription(), picture(contents.hero()), Map.of());
    if (!contents.posts().isEmpty()) {
      named("series.html", "series.ftlh", "nav.posts", Map.of());
    }
    if (!contents.stages().isEmpty()) {
      named("stages.html", "stages.ftlh", "nav.stages", Map.of());
    }
    if (!contents.figures().isEmpty() || !contents.limits().isEmpty()) {
      named("figures.html", "figures.ftlh", "nav.figures", Map.of());
    }
    if (!contents.materials().isEmpty()
        || !contents.hours().isEmpty()
        || !contents.charts().isEmpty()) {
      named("materials.html", "materials.ftlh", "nav.materials", Map.of());
    }
    if (!contents.plates().isEmpty()) {
      named("plates.html", "plates.ftlh", "nav.plates", Map.of());
    }
    if (!letters.isEmpty()) {
      named("terms.html", "terms.ftlh", "nav.terms", Map.of("letters", letters));
    }
    named("about.html", "about.ftlh", "nav.about", Map.of());
    apart("search.html", "search.ftlh", "nav.search", description("search.html"));
    apart(Addresses.MISSING, "404.ftlh", "missing.title", "");
  }

  private String homeDescription() {
    List<String> parts = new ArrayList<>();
    List.of(contents.subject(), contents.kind(), contents.scale()).stream()
        .filter(s -> !s.isEmpty())
        .forEach(parts::add);
    return String.join(", ", parts);
  }

  private void posts() {
    List<Post> posts = contents.posts();
    for (int i = 0; i < posts.size(); i++) {
      Post post = posts.get(i);
      Map<String, Object> values = new TreeMap<>();
      values.put("post", post);
      putNeighbours(values, posts, i);
      add(
          Addresses.post(post),
          "post.ftlh",
          post.title(),
          post.standfirst(),
          picture(post.opening()),
          values);
    }
  }

  private void entries() {
    List<Entry> untold = Addresses.untold(contents);
    for (int i = 0; i < untold.size(); i++) {
      Entry entry = untold.get(i);
      Map<String, Object> values = new TreeMap<>();
      values.put("note", entry);
      putNeighbours(values, untold, i);
      add(Addresses.entryPage(entry), "entry.ftlh", entry.title(), "", null, values);
    }
  }

  private void plates() {
    List<Plate> plates = contents.plates();
    for (int i = 0; i < plates.size(); i++) {
      Plate plate = plates.get(i);
      Map<String, Object> values = new TreeMap<>();
      values.put("plate", plate);
      putNeighbours(values, plates, i);
      pages.add(
          new Page(
              Addresses.plate(plate),
              "plate.ftlh",
              wording.text("plate.number", wording.number(plate.number())),
              TextMarkup.plain(plate.caption(), wording),
              plate.picture(),
              values,
              false));
    }
  }

  private static <T> void putNeighbours(Map<String, Object> values, List<T> all, int index) {
    if (index > 0) {
      values.put("previous", all.get(index - 1));
    }
    if (index + 1 < all.size()) {
      values.put("next", all.get(index + 1));
    }
  }

  private static @Nullable Picture picture(@Nullable Plate plate) {
    return plate == null ? null : plate.picture();
  }

  private void named(String path, String template, String title, Map<String, Object> values) {
    add(path, template, wording.text(title), description(path), null, values);
  }

  private void apart(String path, String template, String title, String description) {
    pages.add(new Page(path, template, wording.text(title), description, null, Map.of(), false));
  }

  /** What a page that every site has is about, such as {@code figures.html}. */
  private String description(String path) {
    return wording.text("describe." + path.substring(0, path.indexOf('.')));
  }

  private void add(
      String path,
      String template,
      String title,
      String description,
      @Nullable Picture picture,
      Map<String, Object> values) {
    pages.add(new Page(path, template, title, description, picture, values, true));
  }
}

package chinelog.site;

import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Post;
import chinelog.markup.HtmlWriter;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Writes the files that exist only where the log gives the site's address: the feed and the
 * sitemap.
 */
final class Outside {

  private static final String DECLARATION = "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n";

  private Outside() {}

  /** The full address of a page, such as {@code https://merrow.example/posts/01.html}. */
  static String address(URI site, String path) {
    String base = site.toString();
    return (base.endsWith("/") ? base : base + "/") + (path.equals(Addresses.HOME) ? "" : path);
  }

  /** The path of the site on its host, such as {@code /merrow/}. */
  static String path(URI site) {
    String path = site.getRawPath();
    return path.endsWith("/") ? path : path + "/";
  }

  /** An Atom feed (RFC 4287) of the posts, the latest first. */
  static String feed(Contents contents, URI site) {
    List<Post> latestFirst = new ArrayList<>(contents.posts());
    Collections.reverse(latestFirst);
    LocalDate updated =
        latestFirst.stream().map(Post::date).max(LocalDate::compareTo).orElse(contents.asOf());
    HtmlWriter xml = new HtmlWriter().raw(DECLARATION);
    xml.open(
        "feed",
        "xmlns",
        "http://www.w3.org/2005/Atom",
        "xml:lang",
        contents.locale().toLanguageTag());
    xml.element("title", contents.title()).element("id", address(site, Addresses.HOME));
    xml.element("updated", moment(updated));
    xml.empty("link", "rel", "self", "href", address(site, "feed.xml"));
    xml.empty("link", "href", address(site, Addresses.HOME));
    // RFC 4287, 4.1.1: a feed must have an author unless every entry has one.
    String maker = contents.maker().isEmpty() ? contents.title() : contents.maker();
    xml.open("author").element("name", maker).close("author");
    if (!contents.licence().isEmpty()) {
      xml.element("rights", contents.licence());
    }
    for (Post post : latestFirst) {
      String at = address(site, Addresses.post(post));
      xml.raw("\n").open("entry").element("title", post.title()).element("id", at);
      xml.empty("link", "href", at).element("updated", moment(post.date()));
      xml.element("summary", post.standfirst()).close("entry");
    }
    return xml.close("feed").raw("\n").toString();
  }

  /** A date as RFC 3339 wants it; what hour it was is not told. */
  private static String moment(LocalDate date) {
    return date + "T00:00:00Z";
  }

  static String sitemap(List<Page> pages, URI site) {
    HtmlWriter xml = new HtmlWriter().raw(DECLARATION);
    xml.open("urlset", "xmlns", "http://www.sitemaps.org/schemas/sitemap/0.9");
    pages.stream()
        .filter(Page::inSitemap)
        .forEach(
            p -> xml.raw("\n").open("url").element("loc", address(site, p.path())).close("url"));
    return xml.close("urlset").raw("\n").toString();
  }
}

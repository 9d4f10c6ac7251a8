package chinelog.audit;

import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The addresses that an edition may name: its own files, the web addresses that texts the readers
 * may see link to, and where the site will stand.
 *
 * @param files of the edition, by path below its folder
 * @param links as written in the log
 * @param site where the site will stand; null if the log does not say
 */
record KnownAddresses(Set<String> files, Set<String> links, @Nullable URI site) {

  /** Where an edition's site is, and what stands for a folder of it. */
  private static final String SITE = "site/";

  private static final String INDEX = "index.html";

  private static final Pattern WEB = Pattern.compile("(?i)(https?:|//).*");

  private static final Set<String> VOCABULARIES =
      Set.of(
          "https://schema.org",
          "https://schema.org/",
          "http://www.w3.org/2000/svg",
          "http://www.w3.org/1999/xlink",
          "http://www.w3.org/1999/xhtml",
          "http://www.w3.org/2005/Atom",
          "http://www.sitemaps.org/schemas/sitemap/0.9");

  boolean isWeb(String address) {
    return WEB.matcher(address).matches();
  }

  /** Whether a web address may be followed from this edition. */
  boolean allowsLink(String address) {
    return links.contains(address) || isOwn(address);
  }

  boolean isVocabulary(String address) {
    return VOCABULARIES.contains(address);
  }

  private boolean isOwn(String address) {
    URI own = site;
    if (own == null) {
      return false;
    }
    String base = own.toString().replaceFirst("/+$", "");
    if (!address.equals(base) && !address.startsWith(base + "/")) {
      return false;
    }
    String path =
        address.substring(base.length()).replaceFirst("^/", "").replaceFirst("[#?].*", "");
    // Where the site stands may be told in a book whose readers get no site of their own.
    return path.isEmpty() || files.contains(SITE + path) || files.contains(SITE + path + INDEX);
  }

  /**
   * Where on its host the site will stand, such as {@code /merrow/}; null if the log does not say.
   */
  private @Nullable String root() {
    URI own = site;
    return own == null ? null : own.getPath().replaceFirst("/*$", "/");
  }

  /** The edition's file that a relative address in {@code from} names, or null if there is none. */
  @Nullable String resolve(String from, String address) {
    String path = address.replaceFirst("[#?].*", "");
    if (path.isEmpty()) {
      return from;
    }
    String root = root();
    if (root != null && path.startsWith(root) && from.contains("/")) {
      // From the root of the host, which is known where the log gives the site's address.
      String site = from.substring(0, from.indexOf('/') + 1);
      String rest = path.substring(root.length());
      return resolve(site + INDEX, rest.isEmpty() ? INDEX : rest);
    }
    if (path.startsWith("/") || path.contains("\\")) {
      return null;
    }
    try {
      path = URLDecoder.decode(path.replace("+", "%2B"), StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return null;
    }
    String folder = from.substring(0, from.lastIndexOf('/') + 1);
    StringBuilder whole = new StringBuilder();
    for (String part : (folder + path).split("/")) {
      if (part.equals("..")) {
        int cut = whole.lastIndexOf("/", whole.length() - 2);
        if (whole.isEmpty()) {
          return null;
        }
        whole.setLength(cut + 1);
      } else if (!part.equals(".") && !part.isEmpty()) {
        whole.append(part).append('/');
      }
    }
    if (!whole.isEmpty()) {
      whole.setLength(whole.length() - 1);
    }
    String file = whole.toString();
    if (files.contains(file)) {
      return file;
    }
    String index = file.isEmpty() ? INDEX : file + "/" + INDEX;
    return files.contains(index) ? index : null;
  }
}

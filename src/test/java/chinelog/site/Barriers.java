package chinelog.site;

import java.io.IOException;
import java.util.List;

/**
 * What shuts somebody out of a page, by the rules of WCAG 2.2, levels A and AA, and the checker's
 * own good practice.
 */
public final class Barriers {

  private static final boolean IN_EVERY_STATE = Boolean.getBoolean("chinelog.every-state");

  /** Rules on what is seen: the same wherever the same styles hold. They take most of the time. */
  private static final List<String> OF_COLOUR = List.of("color-contrast", "link-in-text-block");

  /**
   * Up to three of all elements that bear words and agree, up to the root, in name, class, and the
   * names of their attributes: what decides how they look.
   */
  private static final String OF_EACH_KIND =
      """
      (() => {
        const known = new Map();
        const kind = (e) => e === null ? "" : e.tagName + "." + e.getAttribute("class") + " "
          + e.getAttributeNames().sort() + " " + kind(e.parentElement);
        return [...document.body.querySelectorAll("*")].filter((e) => {
          const bears = e.matches("input, select, textarea")
            || [...e.childNodes].some((n) => n.nodeType === Node.TEXT_NODE && n.data.trim());
          if (!bears) return false;
          const so = kind(e);
          known.set(so, (known.get(so) ?? 0) + 1);
          return known.get(so) <= 3;
        });
      })()""";

  private Barriers() {}

  /** Whatever there is; empty if nothing. */
  public static String of(Browser page) throws IOException {
    return run(page, "document", "");
  }

  /**
   * What these rules find, in another state of a page that was looked at as a whole. Rules on
   * colours are tried on some elements of each kind; on all with {@code chinelog.every-state}.
   */
  public static String of(Browser page, List<String> rules) throws IOException {
    if (IN_EVERY_STATE) {
      return run(page, "document", only(rules));
    }
    List<String> colour = rules.stream().filter(OF_COLOUR::contains).toList();
    List<String> others = rules.stream().filter(r -> !OF_COLOUR.contains(r)).toList();
    return (colour.isEmpty() ? "" : run(page, "{include: " + OF_EACH_KIND + "}", only(colour)))
        + (others.isEmpty() ? "" : run(page, "document", only(others)));
  }

  private static String only(List<String> rules) {
    return ", runOnly: ['" + String.join("', '", rules) + "']";
  }

  private static String run(Browser page, String of, String options) throws IOException {
    if (!page.text("typeof axe").equals("object")) {
      page.run("axe.min.js");
    }
    return page.text(
        "axe.run("
            + of
            + ", {resultTypes: ['violations'], preload: false, iframes: false"
            + options
            + "}).then(r => r.violations.map(v => v.id + ': '"
            + " + v.nodes.map(n => n.html.slice(0, 120)).join(' | ')).join('\\n'))");
  }
}

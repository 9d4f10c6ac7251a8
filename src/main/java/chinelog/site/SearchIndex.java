package chinelog.site;

import chinelog.json.Json;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the search looks through, made from the pages as they are written, so that it knows no more
 * than they show.
 *
 * <p>Templates mark each findable part with {@code data-find="its title"} and an {@code id}; the
 * part reaches to the next such mark or to the end of {@code main}.
 */
final class SearchIndex {

  private static final Pattern MAIN = Pattern.compile("(?s)<main\\b[^>]*>(.*?)</main>");
  private static final Pattern PART =
      Pattern.compile("<[a-z][a-z0-9]* id=\"([^\"]+)\"[^>]*? data-find=\"([^\"]*)\"[^>]*>");
  private static final Pattern TAG = Pattern.compile("<[^>]*>");
  private static final Pattern SPACE = Pattern.compile("[\\s\\u00a0\\u202f]+");

  /** A findable part of a page. */
  private record Part(String at, String title, String text) {
    Map<String, Object> told() {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("at", at);
      told.put("title", title);
      told.put("text", text);
      return told;
    }
  }

  private final List<Part> parts = new ArrayList<>();

  void add(String path, String title, String html) {
    Matcher main = MAIN.matcher(html);
    if (!main.find()) {
      return;
    }
    String body = main.group(1);
    Matcher part = PART.matcher(body);
    String at = path;
    String called = title;
    int from = 0;
    while (part.find()) {
      part(at, called, body.substring(from, part.start()));
      at = path + "#" + part.group(1);
      called = unescaped(part.group(2));
      from = part.start();
    }
    part(at, called, body.substring(from));
  }

  private void part(String at, String title, String markup) {
    String words =
        SPACE.matcher(unescaped(TAG.matcher(markup).replaceAll(" "))).replaceAll(" ").strip();
    if (!words.isEmpty()) {
      parts.add(new Part(at, title, words));
    }
  }

  /** A script that gives the parts to {@code search.js}: a script can be read from a folder too. */
  String script() {
    // Among equal finds, the story comes before the lists.
    parts.sort(Comparator.comparing(p -> !p.at().matches("(posts|entries)/.*")));
    return "window.pagesToSearch = " + Json.of(parts.stream().map(Part::told).toList()) + ";\n";
  }

  private static String unescaped(String text) {
    return text.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }
}

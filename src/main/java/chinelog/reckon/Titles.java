package chinelog.reckon;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The titles that facts are given here, in the language of the log: "Hours: Planking" in a German
 * log is "Stunden: Planking". A title in an author's own words stays as it is.
 */
final class Titles {

  private static final String TABLE = "chinelog.reckon.titles";

  private static final String PLANNED = "as.planned";

  private static final Pattern PART = Pattern.compile("\\{[0-9]}");

  private final Map<String, String> whole = new HashMap<>();
  private final List<Template> templates = new ArrayList<>();
  private final String planned;

  /** A title with parts that are filled in, such as "{0}: used". */
  private record Template(Pattern english, int length, String shown) {}

  Titles(Locale locale) {
    ResourceBundle english = table(Locale.ROOT);
    ResourceBundle own = table(locale);
    planned = PART.matcher(own.getString(PLANNED)).replaceAll("");
    if (own.getLocale().equals(english.getLocale())) {
      return;
    }
    for (String key : Collections.list(english.getKeys())) {
      String title = english.getString(key);
      if (PART.matcher(title).find()) {
        templates.add(template(title, own.getString(key)));
      } else {
        whole.put(title, own.getString(key));
      }
    }
    // "{0}, mass on {1}" says more than "{0}, mass".
    templates.sort(
        Comparator.comparing(Template::length).reversed().thenComparing(Template::shown));
  }

  private static ResourceBundle table(Locale locale) {
    return ResourceBundle.getBundle(
        TABLE,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private static Template template(String english, String shown) {
    // Within an author's own title, "on" need not stand before a date.
    String last = english.endsWith(" on {1}") ? "([0-9]{4}-[0-9]{2}-[0-9]{2})" : "(.+)";
    String pattern =
        "\\Q"
            + PART.matcher(english)
                .replaceAll(
                    part ->
                        Matcher.quoteReplacement(
                            "\\E" + (part.group().equals("{1}") ? last : "(.+)") + "\\Q"))
            + "\\E";
    return new Template(Pattern.compile(pattern), english.length(), shown);
  }

  /** The title as the log's readers are to see it. */
  String shown(String title) {
    String known = whole.get(title);
    if (known != null) {
      return known;
    }
    for (Template template : templates) {
      Matcher parts = template.english.matcher(title);
      if (parts.matches()) {
        return PART.matcher(template.shown)
            .replaceAll(part -> Matcher.quoteReplacement(parts.group(number(part.group()))));
      }
    }
    return title;
  }

  private static int number(String part) {
    return part.charAt(1) - '0' + 1;
  }

  /** The title of what was planned, without saying that it was. */
  String withoutPlanned(String title) {
    return title.endsWith(planned) ? title.substring(0, title.length() - planned.length()) : title;
  }
}

package chinelog.withhold;

import chinelog.wording.Accents;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/** Makes names fit for addresses from titles as shown, such as {@code the-drawings-come-out}. */
final class Slugs {

  private static final int LONGEST = 60;

  private final Set<String> taken = new HashSet<>();

  /** A name not given before: letters a to z, digits and hyphens, which every host serves alike. */
  String make(String title) {
    String plain =
        Accents.off(title)
            .toLowerCase(Locale.ROOT)
            .replaceAll("['\u2019]", "")
            .replace("ß", "ss")
            .replace("æ", "ae")
            .replace("œ", "oe")
            .replace("ø", "o")
            .replace("ł", "l")
            .replace("đ", "d")
            .replace("þ", "th")
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-|-$", "");
    if (plain.length() > LONGEST) {
      int cut = plain.lastIndexOf('-', LONGEST);
      plain = plain.substring(0, cut > 20 ? cut : LONGEST);
    }
    String base = plain.isEmpty() ? "page" : plain;
    String slug = base;
    for (int n = 2; !taken.add(slug); n++) {
      slug = base + "-" + n;
    }
    return slug;
  }
}

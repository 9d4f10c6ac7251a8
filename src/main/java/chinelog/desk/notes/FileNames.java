package chinelog.desk.notes;

import chinelog.wording.Accents;
import java.time.LocalDate;
import java.util.Locale;
import java.util.function.Predicate;

/** Names for the files of new notes, such as {@code entries/2026-03-14-drawings.md}. */
final class FileNames {

  private static final int LONGEST = 50;

  private FileNames() {}

  /**
   * A name that no file has.
   *
   * @param title may be empty
   * @param taken tells whether there is such a file
   */
  static String of(LocalDate day, String title, Predicate<String> taken) {
    String words =
        Accents.off(title.toLowerCase(Locale.ROOT))
            .replace("ß", "ss")
            .replaceAll("['\u2019]", "")
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-|-$", "");
    String cut = words.length() > LONGEST ? words.substring(0, LONGEST) : words;
    String base = "entries/" + day + (cut.isEmpty() ? "" : "-" + cut.replaceAll("-$", ""));
    String name = base + ".md";
    for (int n = 2; taken.test(name); n++) {
      name = base + "-" + n + ".md";
    }
    return name;
  }
}

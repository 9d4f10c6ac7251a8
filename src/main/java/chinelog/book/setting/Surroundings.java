package chinelog.book.setting;

import java.awt.Font;
import java.util.Locale;

/**
 * What the libraries take from the whole process, set for as long as any book is being printed. All
 * that books share is here and in {@link Faces}.
 *
 * <ul>
 *   <li>The layout makes small letters of roman numerals by the default locale, and in Turkish
 *       those have no dots.
 *   <li>PDFBox may list the fonts of the machine in the user's home. So does the JDK with its first
 *       font, in ".java", unless there is no home; it finds the same fonts either way.
 * </ul>
 */
public final class Surroundings implements AutoCloseable {

  private static final String NO_FOLDER = "/dev/null";

  /** How many are open. */
  private static int open;

  private static Locale usual = Locale.ROOT;

  /** Open until closed; the last to be closed puts back what there was. */
  public Surroundings() {
    enter();
  }

  private static synchronized void enter() {
    if (open++ == 0) {
      usual = Locale.getDefault();
      Locale.setDefault(Locale.ROOT);
      keepOutOfTheHomeFolder();
    }
  }

  private static void keepOutOfTheHomeFolder() {
    if (System.getProperty("pdfbox.fontcache") == null) {
      System.setProperty("pdfbox.fontcache", System.getProperty("java.io.tmpdir"));
    }
    String home = System.getProperty("user.home");
    System.setProperty("user.home", NO_FOLDER);
    try {
      new Font(Font.SANS_SERIF, Font.PLAIN, 1).getFamily();
    } finally {
      System.setProperty("user.home", home);
    }
  }

  private static synchronized void leave() {
    if (--open == 0) {
      Locale.setDefault(usual);
    }
  }

  @Override
  public void close() {
    leave();
  }
}

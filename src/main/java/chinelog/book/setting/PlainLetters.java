package chinelog.book.setting;

import java.util.Locale;

/**
 * Keeps the computer's own language out of the layout until it is closed: the library makes small
 * letters of roman numerals by the default locale, and in Turkish those have no dots.
 */
public final class PlainLetters implements AutoCloseable {

  private final Locale usual = Locale.getDefault();

  public PlainLetters() {
    Locale.setDefault(Locale.ROOT);
  }

  @Override
  public void close() {
    Locale.setDefault(usual);
  }
}

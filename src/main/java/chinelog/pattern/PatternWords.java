package chinelog.pattern;

import java.util.Locale;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;

/** What is said on sheets besides the parts' own lettering, in the language of the log. */
final class PatternWords {

  private final ResourceBundle texts;

  private PatternWords(ResourceBundle texts) {
    this.texts = texts;
  }

  static PatternWords of(Locale locale) {
    // Without the fallback to the language of the machine: it would make editions differ by it.
    Control control = Control.getNoFallbackControl(Control.FORMAT_PROPERTIES);
    return new PatternWords(ResourceBundle.getBundle("chinelog.pattern.words", locale, control));
  }

  /** Such as {@code say("sheet", 3, 20)} for "Sheet 3 of 20". */
  String say(String key, Object... arguments) {
    String words = texts.getString(key);
    for (int i = 0; i < arguments.length; i++) {
      words = words.replace("{" + i + "}", String.valueOf(arguments[i]));
    }
    return words;
  }
}

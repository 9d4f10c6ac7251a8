package chinelog.log;

import chinelog.log.reading.Fields;
import chinelog.log.reading.Yaml;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;

/** Titles of what every log has and few name, in the language of the log; English without one. */
final class GivenTitles {

  private final ResourceBundle titles;

  private GivenTitles(ResourceBundle titles) {
    this.titles = titles;
  }

  /** Of a log whose language may be misspelt, which is told elsewhere. */
  static GivenTitles of(Fields log) {
    Locale locale =
        log.find("language") instanceof Yaml.Scalar tag
            ? Locale.forLanguageTag(tag.text())
            : Locale.ENGLISH;
    // Without the fallback to the language of the machine: it would make editions differ by it.
    Control control = Control.getNoFallbackControl(Control.FORMAT_PROPERTIES);
    return new GivenTitles(ResourceBundle.getBundle("chinelog.log.titles", locale, control));
  }

  /** Of a section of the handover booklet. */
  String handover(String id) {
    return titles.getString("handover." + id);
  }

  /** Of the readers that every log has: public or workshop. */
  String readers(String id) {
    return titles.getString("readers." + id);
  }
}

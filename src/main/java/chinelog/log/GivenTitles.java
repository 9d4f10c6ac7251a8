package chinelog.log;

import chinelog.log.reading.Fields;
import chinelog.log.reading.Yaml;
import chinelog.wording.Catalogue;
import java.util.Locale;

/** Titles of what every log has and few name, in the language of the log; English without one. */
final class GivenTitles {

  private GivenTitles() {}

  /** Of a log whose language may be misspelt, which is told elsewhere. */
  static Catalogue of(Fields log) {
    Locale locale =
        log.find("language") instanceof Yaml.Scalar tag
            ? Locale.forLanguageTag(tag.text())
            : Locale.ENGLISH;
    return Catalogue.of("chinelog.log.titles", locale);
  }
}

package chinelog.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;

/** The known sections of the handover booklet, with their titles in the language of the log. */
final class HandoverTitles {

  private static final String TABLE = "chinelog.log.handover";

  private static final List<String> SECTIONS =
      List.of(
          "what-it-is",
          "setting-up",
          "taking-down",
          "handling",
          "running",
          "care",
          "finishes",
          "spares",
          "mishaps");

  private HandoverTitles() {}

  /** By the word for the section, in the usual order. */
  static Map<String, String> in(Locale locale) {
    ResourceBundle table =
        ResourceBundle.getBundle(
            TABLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    Map<String, String> titles = new LinkedHashMap<>();
    SECTIONS.forEach(section -> titles.put(section, table.getString(section)));
    return titles;
  }
}

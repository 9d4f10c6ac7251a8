package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The maker's private list of what an edition withholds, and of what was released into it.
 *
 * @param withheld by place
 * @param released by place
 */
public record Register(List<Withheld> withheld, List<Released> released) {

  public Register {
    withheld =
        withheld.stream()
            .distinct()
            .sorted(Comparator.comparing(Withheld::place).thenComparing(w -> w.thing().words()))
            .toList();
    released =
        released.stream()
            .distinct()
            .sorted(
                Comparator.comparing((Released r) -> r.release().place())
                    .thenComparing(r -> r.release().kind())
                    .thenComparing(r -> r.release().name()))
            .toList();
  }

  /**
   * Something that the readers do not see.
   *
   * @param label the agreements it is under
   */
  public record Withheld(Thing thing, Place place, Label label) {}

  /**
   * A release that was made use of.
   *
   * @param label the agreements that the thing is under
   */
  public record Released(Release release, Label label) {}

  /**
   * A thing of the log, such as the photograph {@code photos/T20_0415.jpg}.
   *
   * @param name what the log calls it; empty for what has no name
   */
  public record Thing(Kind kind, String name) {

    /** Such as "photograph photos/T20_0415.jpg". */
    public String words() {
      String words = kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
      return name.isEmpty() ? words : words + " " + name;
    }
  }

  /** What sort of thing of the log. */
  public enum Kind {
    TITLE,
    SUBJECT,
    KIND,
    MAKER,
    CLIENT,
    LICENCE,
    HERO,
    ENTRY,
    TITLE_OF_ENTRY,
    HOURS_OF_ENTRY,
    MATERIAL_OF_ENTRY,
    READING,
    TEXT,
    PHRASE,
    FOOTNOTE,
    FIGURE,
    RECKONING,
    PATTERNS_OF,
    /** What a reckoning draws to be looked at. */
    DRAWINGS_OF,
    LIMIT,
    STAGE,
    POST,
    HANDOVER_SECTION,
    PHOTOGRAPH,
    REGION_OF_PHOTOGRAPH,
    SHEET,
    LOT_OF,
    PRICE_OF,
    TABLE,
    COLUMN_OF_TABLE,
    ROW_OF_TABLE
  }
}

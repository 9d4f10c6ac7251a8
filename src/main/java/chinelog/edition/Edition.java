package chinelog.edition;

import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What one group of readers may see, complete: a renderer needs nothing else and gets nothing else.
 *
 * <p>It holds no path, name, hash or count that comes from what is withheld. Only {@code withhold}
 * makes one; a test of the architecture holds this.
 */
public final class Edition {

  private final Contents contents;

  private Edition(Contents contents) {
    this.contents = contents;
  }

  /** For {@code withhold} alone. */
  public static Edition seal(Contents contents) {
    return new Edition(contents);
  }

  public Contents contents() {
    return contents;
  }

  /**
   * The parts of an edition.
   *
   * @param readers id of the readers, such as {@code public}
   * @param readersTitle in words
   * @param asOf the day for which it was made; every date shown is on or before it
   * @param address where the site will stand; null if the log does not say
   * @param theme name of the theme
   * @param paper of the build book; the booklet has half of it
   * @param leafMm how thick a leaf of the build book is
   * @param chapters what the chapters of the build book follow
   * @param maker empty if not told
   * @param client empty if not told
   * @param licence empty if not told
   * @param scale as shown, such as {@code 1:16}; empty if not told
   * @param hero plate for the cover and the home page
   * @param sameView plates from nearly one viewpoint, by day; empty or at least three
   * @param stages in the order of the plan
   * @param posts in the order told
   * @param entries by date
   * @param plates by number, all of them
   * @param unplaced plates that belong to no entry, by day
   * @param figures by group, in the order shown
   * @param materials in the order shown
   * @param hours by stage
   * @param totals a few figures for the home page and the cover, such as hours and entries
   * @param drawings to look at, in the order shown
   * @param cautions for the materials used
   * @param handover sections of the booklet, all of them, empty ones too
   * @param hasWithheld whether a note is due that something is withheld
   * @param agreements legends of the agreements, for editions whose readers see them all
   * @param patterns to cut by
   * @param talk how the series is told aloud
   * @param letters that they get
   */
  public record Contents(
      String readers,
      String readersTitle,
      LocalDate asOf,
      Locale locale,
      @Nullable URI address,
      String theme,
      Paper paper,
      double leafMm,
      Chapters chapters,
      String title,
      String subject,
      String kind,
      String maker,
      String client,
      String licence,
      String scale,
      List<Text.Block> about,
      @Nullable Plate hero,
      List<Plate> sameView,
      List<Stage> stages,
      List<Post> posts,
      List<Entry> entries,
      List<Plate> plates,
      List<Day> unplaced,
      List<Figure> figures,
      List<LimitLine> limits,
      List<MaterialLine> materials,
      String materialsCost,
      List<HoursLine> hours,
      List<Line> totals,
      List<Chart> charts,
      List<Drawing> drawings,
      List<Caution> cautions,
      List<HandoverSection> handover,
      boolean hasWithheld,
      List<AgreementLegend> agreements,
      Patterns patterns,
      Talk talk,
      List<Letter> letters) {}

  /**
   * A stage.
   *
   * @param id unique, fit for an address
   * @param dates as shown, such as "28 March to 8 April 2026"; empty if nothing is dated
   * @param entries ids
   */
  public record Stage(
      String id,
      String title,
      List<Text.Block> about,
      String dates,
      Progress progress,
      List<String> entries,
      List<Line> totals,
      List<String> under) {}

  /** The paper of the printed matter. */
  public enum Paper {
    A4,
    /** US Letter. */
    LETTER
  }

  /** What the chapters of the build book follow. */
  public enum Chapters {
    STAGES,
    POSTS
  }

  /** How far a stage has come. */
  public enum Progress {
    AHEAD,
    UNDER_WAY,
    DONE
  }

  /**
   * An instalment of the series.
   *
   * @param slug unique, fit for an address
   * @param date of its last entry
   * @param words of its entries, footnotes and captions left out
   * @param readingMinutes at least 1
   */
  public record Post(
      String slug,
      int number,
      String title,
      String standfirst,
      LocalDate date,
      @Nullable Plate opening,
      List<String> entries,
      int words,
      int readingMinutes,
      List<String> under) {}

  /**
   * An entry.
   *
   * @param id unique, fit for an address; made from date and title as shown, not from a file's name
   * @param text with its plates in place
   * @param plates of this entry that the text does not show
   * @param facts for the margin: measured, weighed and reckoned on the day
   * @param materials used on the day
   * @param hours of the day and so far; of several, the last is of all so far
   * @param drawings of what was done up to then
   */
  public record Entry(
      String id,
      LocalDate date,
      String stage,
      String title,
      List<Text.Block> text,
      List<Plate> plates,
      List<Line> facts,
      List<Line> materials,
      List<Line> hours,
      List<Drawing> drawings,
      List<String> under) {}

  /**
   * A name with its figure.
   *
   * @param shown as printed
   * @param note more about it, such as the full-size counterpart; may be empty
   * @param figure name of the edition's figure; null where there is none
   */
  public record Line(String title, String shown, String note, @Nullable String figure) {}

  /** Plates of one day that belong to no entry. */
  public record Day(@Nullable LocalDate date, List<Plate> plates) {}

  /**
   * A limit.
   *
   * @param verdict in words
   * @param kept whether it is kept, tolerance apart
   */
  public record LimitLine(
      String title,
      String value,
      String bound,
      String margin,
      String verdict,
      boolean kept,
      List<String> under) {}

  /**
   * A material; any cell may be empty.
   *
   * @param repair what its owner would mend with it
   */
  public record MaterialLine(
      String title,
      String bought,
      String used,
      String left,
      String cost,
      String repair,
      List<String> under) {}

  /** A stage's hours; any cell may be empty. */
  public record HoursLine(String stage, String title, String planned, String worked) {}

  /** The usual cautions for a kind of material. */
  public record Caution(String title, String text) {}

  /**
   * A section of the handover booklet.
   *
   * @param text empty where the maker left it so
   */
  public record HandoverSection(
      String id, String title, List<Text.Block> text, List<String> under) {}

  /** What an agreement is, for editions whose readers see what is under it. */
  public record AgreementLegend(String id, String with, String covers) {}
}

package chinelog.log.records;

import chinelog.label.Label;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One dated note.
 *
 * @param id path below {@code entries} without its ending, such as {@code 2026-03-14-drawings}; of
 *     one day among several in a loose note also {@code #} and the day
 * @param stage id of its stage; empty where the log has none
 * @param text what the maker wrote; labels of the text itself are on its parts
 * @param label agreements that the whole entry is under
 */
public record Entry(
    String id,
    Marked<String> title,
    LocalDate date,
    String stage,
    List<Block> text,
    List<Worked> worked,
    List<Use> used,
    List<Measurement> measured,
    List<Weighing> weighed,
    Label label,
    Place place) {

  /** The file of a log that holds hours which no note tells of. */
  public static final String HOURS_FILE = "hours.csv";

  private static final Pattern NOTE = Pattern.compile("(?i)(.*)\\.(?:md|txt)");

  /** Whether a file of this name is read as a note where notes stand. */
  public static boolean isNoteFile(String path) {
    return NOTE.matcher(path).matches();
  }

  /** The path of a note's file without its ending. */
  public static String withoutEnding(String path) {
    return NOTE.matcher(path).replaceFirst("$1");
  }

  /** Whether a note tells of it; else it only counts, as hours of a day that has no note. */
  public boolean isTold() {
    return !place.file().equals(HOURS_FILE);
  }

  public Entry withWorked(List<Worked> otherWorked) {
    return new Entry(
        id, title, date, stage, text, otherWorked, used, measured, weighed, label, place);
  }

  public Entry withStage(String otherStage) {
    return new Entry(
        id, title, date, otherStage, text, worked, used, measured, weighed, label, place);
  }

  public Entry withText(List<Block> otherText) {
    return new Entry(
        id, title, date, stage, otherText, worked, used, measured, weighed, label, place);
  }

  public Entry withUsed(List<Use> otherUsed) {
    return new Entry(
        id, title, date, stage, text, worked, otherUsed, measured, weighed, label, place);
  }

  /** This with other figures. */
  public Entry withFigures(
      List<Worked> otherWorked,
      List<Use> otherUsed,
      List<Measurement> otherMeasured,
      List<Weighing> otherWeighed) {
    return new Entry(
        id,
        title,
        date,
        stage,
        text,
        otherWorked,
        otherUsed,
        otherMeasured,
        otherWeighed,
        label,
        place);
  }

  /** The photographs that the text shows, in the order written, those in footnotes included. */
  public List<Inline.Image> images() {
    return Block.runs(text)
        .filter(Inline.Image.class::isInstance)
        .map(Inline.Image.class::cast)
        .toList();
  }

  /**
   * Time at work.
   *
   * @param from null where only a duration was written
   */
  public record Worked(
      @Nullable ZonedDateTime from,
      @Nullable ZonedDateTime to,
      Duration duration,
      Label label,
      Place place) {}

  /**
   * Material used up.
   *
   * @param material a word of stock.yaml
   * @param where what it went into; empty if not said
   */
  public record Use(String material, Quantity amount, String where, Label label, Place place) {}

  /** A fact measured on the model or taken from a sheet, such as {@code hull.loa: 700 mm}. */
  public record Measurement(String fact, Quantity value, String title, Label label, Place place) {}

  /**
   * A part put on the balance.
   *
   * @param part such as {@code hull}; the fact's name is {@code mass.} and this
   * @param x centre forward of station 0; null where not taken
   * @param z centre above the keel; null where not taken
   */
  public record Weighing(
      String part,
      Quantity mass,
      String title,
      @Nullable Quantity x,
      @Nullable Quantity z,
      Label label,
      Place place) {}
}

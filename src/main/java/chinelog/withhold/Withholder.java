package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.edition.Plate;
import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Readers;
import chinelog.photo.album.Album;
import chinelog.problem.Problem;
import chinelog.reckon.Facts;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;

/** Makes the edition of one group of readers: what they may see, and nothing else. */
public final class Withholder {

  private Withholder() {}

  /**
   * The edition for some readers on a day, before it is asked what its figures give away: that
   * depends on what other readers are given, whose editions can be prepared meanwhile.
   *
   * @param log the full log
   * @param facts reckoned from it
   * @param album its photographs
   * @param pictures makes the pictures
   * @param readers one of the log's
   * @param asOf agreements are in force, releases are given and entries are told as on this day
   * @param mayShow paths of photographs that no note shows and of which the maker has said that
   *     they may be shown, although they could belong to a withheld note
   * @param correspondence what letters are made of besides
   * @throws IOException if a picture cannot be made
   */
  public static Prepared prepare(
      Log log,
      Facts facts,
      Album album,
      PictureSource pictures,
      Readers readers,
      LocalDate asOf,
      Set<String> mayShow,
      Correspondence correspondence)
      throws IOException {
    EditionMaker maker =
        new EditionMaker(
            new WholeLog(log, facts), album, pictures, readers, asOf, mayShow, correspondence);
    return new Prepared(maker, maker.edition());
  }

  /** An edition that was made and not yet held against what readers know. */
  public static final class Prepared {

    private final EditionMaker maker;
    private final Edition edition;

    private Prepared(EditionMaker maker, Edition edition) {
      this.maker = maker;
      this.edition = edition;
    }

    /** What its readers would see: not to be given to them before it is {@link #against} all. */
    public Edition edition() {
      return edition;
    }

    /** Its ids of the entries that it tells, by those of the log. For the maker alone. */
    public Map<String, String> entryIds() {
      return maker.entryIds();
    }

    /** The figures that it shows, as printed. */
    public List<PrintedFigure> printed() {
      return maker.printed();
    }

    /**
     * The plates that it shows, by the photograph's path, or a sheet's with its page, such as
     * {@code sheets/lines.pdf#1}. For the maker alone.
     */
    public Map<String, Plate> plates() {
      return maker.plates();
    }

    /** What it withholds and was released into it. */
    public Register register() {
      return maker.register();
    }

    /**
     * The edition with its account.
     *
     * @param known figures that readers were given before, these readers and others
     */
    public Withheld against(List<PrintedFigure> known) {
      return maker.account(edition, known);
    }
  }

  /**
   * An edition with the private account of how it came about.
   *
   * @param hiddenFacts names of the facts that its readers may not see
   * @param writtenFigures figures that the maker wrote out in texts that its readers see
   * @param printed the figures that it shows, as printed
   * @param keptBack paths of the photographs that its readers do not see, or not whole
   * @param filled regions filled in its pictures
   * @param problems why it must not be published, if there are errors among them
   * @param waysOut what would mend those of the problems that are figures to be worked out
   */
  public record Withheld(
      Edition edition,
      Clearance clearance,
      Register register,
      SortedSet<String> hiddenFacts,
      SortedSet<String> writtenFigures,
      List<PrintedFigure> printed,
      SortedSet<String> keptBack,
      List<FilledRegions> filled,
      List<Problem> problems,
      List<WayOut> waysOut) {}

  /**
   * What keeps a withheld figure from being worked out.
   *
   * @param problem that it mends
   * @param secrets names of the withheld facts, the one that is told of first
   * @param label that it is under
   * @param withhold facts to be withheld as well: any one of these sets will do
   */
  public record WayOut(
      Problem problem, List<String> secrets, Label label, List<Set<String>> withhold) {}

  /**
   * Regions that were filled in a picture.
   *
   * @param picture id of the edition's picture
   */
  public record FilledRegions(String picture, List<PhotoFile.Region> regions) {}
}

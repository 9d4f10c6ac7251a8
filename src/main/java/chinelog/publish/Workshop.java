package chinelog.publish;

import chinelog.label.Clearance;
import chinelog.log.LogReader;
import chinelog.log.PriceReader;
import chinelog.log.records.Answer;
import chinelog.log.records.Log;
import chinelog.log.records.PricePlan;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.photo.album.Album;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.reckon.Facts;
import chinelog.reckon.NextBuild;
import chinelog.reckon.Reckoner;
import chinelog.withhold.Correspondence;
import chinelog.withhold.IdleGroups;
import chinelog.withhold.IdleReleases;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads and reckons a log: all that has to be known before any edition is made. */
public final class Workshop {

  private Workshop() {}

  /** What chinelog itself made in a log's folder, such as {@code published}. */
  public static List<String> made(Path log) throws IOException {
    return Shelf.made(log);
  }

  /**
   * The log with its facts and photographs as on a day.
   *
   * @param today the real date: a note dated after it is a problem
   * @param asOf entries dated after it are left aside
   * @param zone for a log that names none
   */
  public static Opened open(
      Path folder, LocalDate today, LocalDate asOf, ZoneId zone, Progress progress)
      throws IOException {
    return open(folder, new TreeMap<>(), today, asOf, zone, progress);
  }

  /**
   * The same as if some files held other texts.
   *
   * @param unsaved these texts, by path below the folder
   */
  public static Opened open(
      Path folder,
      SortedMap<String, String> unsaved,
      LocalDate today,
      LocalDate asOf,
      ZoneId zone,
      Progress progress)
      throws IOException {
    Shelf.requireOwnCache(folder);
    progress.begin(Step.of(Step.Kind.READING));
    LogReader.Reading reading = new LogReader(today, zone, Album::day).read(folder, unsaved);
    Log log = reading.log().until(asOf);
    Problems problems = new Problems();
    problems.addAll(reading.problems());
    boolean settled = reading.settled();
    if (settled) {
      problems.addAll(themeProblems(log));
    }
    Step looking = Step.of(Step.Kind.LOOKING_AT_PHOTOGRAPHS);
    progress.begin(looking);
    Album album = Album.open(log, (done, of) -> progress.count(looking, done, of));
    if (settled) {
      problems.addAll(album.problems());
    }
    progress.begin(Step.of(Step.Kind.RECKONING));
    Reckoner.Reckoning reckoning = reckoned(log, unsaved.isEmpty());
    if (settled) {
      problems.addAll(reckoning.problems());
      problems.addAll(IdleReleases.find(log, reckoning.facts(), asOf));
      problems.addAll(IdleGroups.find(log, reckoning.facts()));
    }
    NextBuild.Priced priced = settled ? priced(log, reckoning.facts(), today, problems) : null;
    return new Opened(log, album, reckoning.facts(), reading.answers(), priced, problems.list());
  }

  /**
   * @param saved whether the log is as its files say, so that what it comes to is worth keeping
   */
  private static Reckoner.Reckoning reckoned(Log log, boolean saved) throws IOException {
    if (!saved) {
      return Reckoner.reckon(log);
    }
    ReckonedBefore before = ReckonedBefore.of(log.folder());
    Reckoner.Reckoning reckoning = Reckoner.reckon(log, before.results());
    before.keep();
    return reckoning;
  }

  /** The price of the next build where readers are to be told it; null where it cannot be. */
  private static NextBuild.@Nullable Priced priced(
      Log log, Facts facts, LocalDate today, Problems problems) {
    boolean wanted =
        log.readers().stream().anyMatch(r -> r.outputs().contains(Readers.Output.QUOTATION));
    Path file = log.folder().resolve("quotation.yaml");
    if (!wanted || !Files.isRegularFile(file)) {
      return null;
    }
    PriceReader.Reading reading = PriceReader.read(file, log, today);
    problems.addAll(reading.problems());
    PricePlan plan = reading.plan();
    if (plan == null) {
      return null;
    }
    NextBuild.Priced priced = NextBuild.price(plan, log, facts);
    problems.addAll(priced.problems());
    return priced.quotation() == null ? null : priced;
  }

  private static List<Problem> themeProblems(Log log) throws IOException {
    try {
      theme(log.folder(), log.head().theme()).bookCss();
      return List.of();
    } catch (ProblemException e) {
      return List.of(e.problem());
    }
  }

  /** A theme of the log's own, or one that comes with chinelog. */
  public static Theme theme(Path folder, String name) throws IOException {
    Path own = folder.resolve("themes");
    return Theme.load(name, Files.isDirectory(own) ? own : null);
  }

  /**
   * Everything read and reckoned, and all problems found, worst first.
   *
   * @param priced the next build; null where nobody is to be told its price
   */
  public record Opened(
      Log log,
      Album album,
      Facts facts,
      List<Answer> answers,
      NextBuild.@Nullable Priced priced,
      List<Problem> problems) {

    /** What is asked before editions for these readers may be made, as on a day. */
    public Questions.Asked ask(Collection<Readers> readers, LocalDate asOf) {
      Shelf shelf = new Shelf(log.folder());
      return Questions.ask(
          log, facts, album, readers, answers, asOf, group -> shelf.keptBack(group.id()));
    }

    /** What is kept back from some readers, for the next time that something is asked. */
    SortedMap<String, String> keptBack(Readers readers, LocalDate asOf) {
      return Questions.keptBack(log, facts, album, readers, asOf);
    }

    /** The folder in which the edition of some readers stands, or will. */
    public Path place(Readers readers) {
      return new Shelf(log.folder()).of(log).published(readers.id());
    }

    /** A reminder of each full copy that stands among what may leave the workshop. */
    public List<Problem> fullCopies() {
      return new Shelf(log.folder()).of(log).fullCopies();
    }

    /**
     * The edition for some readers on a day, before it is asked what its figures give away.
     *
     * @param mayShow paths of photographs of which the maker said that they may be shown
     * @throws IOException if a picture cannot be made
     */
    public Withholder.Prepared prepare(
        Readers group, LocalDate asOf, Set<String> mayShow, Progress progress) throws IOException {
      return prepare(group, asOf, mayShow, null, progress);
    }

    /** The same with a form to be filled in. */
    Withholder.Prepared prepare(
        Readers group,
        LocalDate asOf,
        Set<String> mayShow,
        Correspondence.@Nullable Form form,
        Progress progress)
        throws IOException {
      Clearance clearance = Clearance.of(group.partyTo(), log.agreements().values(), asOf);
      return Withholder.prepare(
          log,
          facts,
          album,
          new LogPictures(log, clearance, progress),
          group,
          asOf,
          mayShow,
          new Correspondence(priced, form));
    }

    /**
     * The readers of these ids; all where none are named.
     *
     * @param problems takes an error for each that the log does not name
     */
    List<Readers> choose(List<String> wanted, Problems problems) {
      List<Readers> all = log.readers();
      if (wanted.isEmpty()) {
        return all;
      }
      List<Readers> chosen = new ArrayList<>();
      for (String id : wanted.stream().distinct().toList()) {
        Optional<Readers> found = all.stream().filter(r -> r.id().equals(id)).findFirst();
        found.ifPresentOrElse(
            chosen::add,
            () ->
                problems.error(
                    Place.of("log.yaml"),
                    Sentence.of("This log names no readers \u201c{0}\u201d.", id),
                    Suggestion.remedy(id, readerIds())));
      }
      return chosen;
    }

    List<String> readerIds() {
      return log.readers().stream().map(Readers::id).toList();
    }

    public boolean hasErrors() {
      return problems.stream().anyMatch(Problem::isError);
    }
  }
}

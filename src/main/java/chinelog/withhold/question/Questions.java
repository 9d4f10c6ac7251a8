package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Answer;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.photo.album.Album;
import chinelog.problem.Problem;
import chinelog.reckon.Facts;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.Function;

/** Asks about everything in a log that may need a mark, for some readers on a day. */
public final class Questions {

  private Questions() {}

  /**
   * What is asked.
   *
   * @param questions one for each thing found, with the places of all of its kind, worst first
   * @param reminders of answers that are about nothing any more, and of what nothing looks for
   * @param found how many things were found that no answer lets stand
   * @param standing what was found and may stand, by the maker's answers, such as "Mrs White"
   * @param sentences in which anything was found
   * @param settled those of them in which all that was found may stand
   * @param photographs paths of those of which the maker said that they may be shown
   */
  public record Asked(
      List<Asking> questions,
      List<Problem> reminders,
      int found,
      Set<String> standing,
      Set<String> sentences,
      Set<String> settled,
      Set<String> photographs) {

    /** Where nothing was asked. */
    public static final Asked NOTHING =
        new Asked(List.of(), List.of(), 0, Set.of(), Set.of(), Set.of(), Set.of());

    /** The questions in words. */
    public List<Problem> open() {
      return questions.stream().map(Asking::problem).toList();
    }
  }

  /**
   * One question, which one answer settles.
   *
   * @param ids to be named in the answer
   * @param found what stands at the place, such as "187 mm"
   * @param label what it may give away is under
   * @param problem the question in words, with its place
   */
  public record Asking(List<String> ids, String found, Label label, Problem problem) {}

  /**
   * Asks.
   *
   * @param readers those for whom editions are to be made
   * @param answers what the maker said before
   * @param asOf agreements are in force and releases are given as on this day
   * @param keptBack what {@link #keptBack} was then for some readers; nothing if never
   */
  public static Asked ask(
      Log log,
      Facts facts,
      Album album,
      Collection<Readers> readers,
      List<Answer> answers,
      LocalDate asOf,
      Function<Readers, SortedMap<String, String>> keptBack) {
    OpenPassages texts = new OpenPassages(log, album);
    FoundQuestions found = new FoundQuestions(asOf);
    for (Readers group : readers) {
      Sight sight = new Sight(log, group, asOf);
      new Lookout(log, facts, album, asOf, texts, sight, found).look();
      KeptBack.lost(log, facts, album, texts.passages(), sight, keptBack.apply(group))
          .forEach(q -> found.add(q, group.id()));
    }
    return found.asked(answers, readers.containsAll(log.readers()));
  }

  /** Words of everyday speech, which name nobody by themselves even if a name holds them. */
  public static Set<String> everydayWords() {
    return CommonWords.listed();
  }

  /** What some readers do not see on a day, by hash, with the agreements it is under. */
  public static SortedMap<String, String> keptBack(
      Log log, Facts facts, Album album, Readers readers, LocalDate asOf) {
    return KeptBack.now(log, facts, album, LogTexts.of(log, album), new Sight(log, readers, asOf));
  }
}

package chinelog.publish;

import chinelog.log.records.Readers;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** All that is asked of the maker before anything is published, worst first. */
public final class OpenQuestions {

  private OpenQuestions() {}

  /** Makes an edition for some readers. */
  public interface Editions {
    Withholder.Withheld of(Readers readers) throws IOException;
  }

  /**
   * What was asked of the log, what the audit would find in open words, and what photographs show.
   *
   * @throws IOException if a picture cannot be read or made
   */
  public static List<Questions.Asking> all(
      Workshop.Opened opened, Questions.Asked asked, Editions editions, LocalDate asOf)
      throws IOException {
    if (opened.hasErrors()) {
      return asked.questions();
    }
    SortedMap<String, OpenWords> words = new TreeMap<>();
    for (Readers group : opened.log().readers()) {
      words.put(group.id(), OpenWords.of(opened, group, editions.of(group), asked, asOf));
    }
    List<Questions.Asking> all = new ArrayList<>(asked.questions());
    all.addAll(Lookalikes.asked(opened, asOf, Progress.SILENT));
    all.addAll(OpenWords.asked(words, asOf));
    return all;
  }
}

package chinelog.log;

import chinelog.label.Agreement;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One build as its maker wrote it down: everything in the folder, read and placed, nothing
 * reckoned.
 *
 * @param folder the log's folder
 * @param head what log.yaml says of the whole
 * @param stages in the order of the plan
 * @param agreements by id
 * @param readers in the order written; never empty, as {@code public} and {@code workshop} are
 *     always there
 * @param releases in the order written
 * @param limits in the order written
 * @param posts in the order written; empty where the log leaves the division to the tool
 * @param handover in the order written
 * @param statements of facts.yaml, in the order written
 * @param requests trade reckonings asked for in facts.yaml, in the order written
 * @param stock lots, in the order bought
 * @param tables by file name
 * @param entries by date, then file name
 * @param photos by path
 * @param sheets by path
 */
public record Log(
    Path folder,
    Head head,
    List<Stage> stages,
    SortedMap<String, Agreement> agreements,
    List<Readers> readers,
    List<Release> releases,
    List<Limit> limits,
    List<PostPlan> posts,
    List<HandoverSection> handover,
    List<Statement> statements,
    List<Request> requests,
    List<Lot> stock,
    List<Table> tables,
    List<Entry> entries,
    List<PhotoFile> photos,
    List<Sheet> sheets) {

  public Log {
    stages = List.copyOf(stages);
    agreements = Collections.unmodifiableSortedMap(new TreeMap<>(agreements));
    readers = List.copyOf(readers);
    releases = List.copyOf(releases);
    limits = List.copyOf(limits);
    posts = List.copyOf(posts);
    handover = List.copyOf(handover);
    statements = List.copyOf(statements);
    requests = List.copyOf(requests);
    stock = List.copyOf(stock);
    tables = List.copyOf(tables);
    entries = List.copyOf(entries);
    photos = List.copyOf(photos);
    sheets = List.copyOf(sheets);
  }

  /** The log as it stood on a day: without the entries dated after it. */
  public Log until(LocalDate day) {
    return entries.stream().noneMatch(e -> e.date().isAfter(day))
        ? this
        : with(stock, entries.stream().filter(e -> !e.date().isAfter(day)).toList());
  }

  /** The log with other lots and entries. */
  public Log with(List<Lot> otherStock, List<Entry> otherEntries) {
    return new Log(
        folder,
        head,
        stages,
        agreements,
        readers,
        releases,
        limits,
        posts,
        handover,
        statements,
        requests,
        otherStock,
        tables,
        otherEntries,
        photos,
        sheets);
  }
}

package chinelog.log.records;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

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

  /**
   * The log as it stood on a day: without the entries dated after it, and without the photographs
   * that these alone show. One that other texts show as well stays under what these put it under.
   */
  public Log until(LocalDate day) {
    List<Entry> later = entries.stream().filter(e -> e.date().isAfter(day)).toList();
    if (later.isEmpty()) {
      return this;
    }
    Log left = with(stock, entries.stream().filter(e -> !e.date().isAfter(day)).toList());
    Map<String, Label> gone = new HashMap<>();
    for (Entry entry : later) {
      for (Block block : entry.text()) {
        Label around = entry.label().join(block.labels());
        shown(List.of(block)).forEach(path -> gone.merge(path, around, Label::join));
      }
    }
    Set<String> shown = new HashSet<>();
    left.entries.forEach(e -> shown(e.text()).forEach(shown::add));
    stages.forEach(s -> shown(s.about()).forEach(shown::add));
    handover.forEach(h -> shown(h.text()).forEach(shown::add));
    shown(head.about()).forEach(shown::add);
    shown(head.letter().text()).forEach(shown::add);
    return with(
        stock,
        left.entries,
        photos.stream()
            .map(
                p -> {
                  Label label = gone.get(p.path());
                  return label == null ? p : p.with(label, !shown.contains(p.path()));
                })
            .toList());
  }

  private static Stream<String> shown(List<Block> text) {
    return Block.runs(text)
        .filter(Inline.Image.class::isInstance)
        .map(i -> ((Inline.Image) i).path());
  }

  /** The entries that notes tell, without those that only count hours. */
  public List<Entry> notes() {
    return entries.stream().filter(Entry::isTold).toList();
  }

  /** Ids of the agreements that are promises to others. */
  public List<String> promises() {
    return agreements.keySet().stream().filter(id -> !Agreement.isOwn(id)).toList();
  }

  /** Whether some readers may see all there is, so that their edition is the workshop's own. */
  public boolean isPartyToAll(Readers group) {
    return group.partyTo().containsAll(agreements.keySet());
  }

  /** The log with other lots and entries. */
  public Log with(List<Lot> otherStock, List<Entry> otherEntries) {
    return with(otherStock, otherEntries, photos);
  }

  /** The log with other parts of what goes into figures and posts; all else stays. */
  public Log with(
      Head otherHead,
      List<Stage> otherStages,
      List<Limit> otherLimits,
      List<PostPlan> otherPosts,
      List<HandoverSection> otherHandover,
      List<Statement> otherStatements,
      List<Request> otherRequests,
      List<Lot> otherStock,
      List<Table> otherTables,
      List<Entry> otherEntries) {
    return new Log(
        folder,
        otherHead,
        otherStages,
        agreements,
        readers,
        releases,
        otherLimits,
        otherPosts,
        otherHandover,
        otherStatements,
        otherRequests,
        otherStock,
        otherTables,
        otherEntries,
        photos,
        sheets);
  }

  private Log with(List<Lot> otherStock, List<Entry> otherEntries, List<PhotoFile> otherPhotos) {
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
        otherPhotos,
        sheets);
  }
}

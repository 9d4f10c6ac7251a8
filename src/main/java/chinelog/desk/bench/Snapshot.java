package chinelog.desk.bench;

import chinelog.edition.Edition;
import chinelog.label.Agreement;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import chinelog.publish.OpenQuestions;
import chinelog.publish.Progress;
import chinelog.publish.Workshop;
import chinelog.site.SiteView;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The log as it was when its files were last read, and what was worked out from it since. */
public final class Snapshot {

  private final long version;
  private final Workshop.Opened opened;
  private final LocalDate today;
  private final Map<String, Withholder.Prepared> editions = new HashMap<>();
  private final Map<String, SiteView> sites = new HashMap<>();
  private final Object asking = new Object();
  private volatile Questions.@Nullable Asked asked;

  Snapshot(long version, Workshop.Opened opened, LocalDate today) {
    this.version = version;
    this.opened = opened;
    this.today = today;
  }

  /** Another for each reading. */
  public long version() {
    return version;
  }

  public Workshop.Opened opened() {
    return opened;
  }

  public Log log() {
    return opened.log();
  }

  public LocalDate today() {
    return today;
  }

  /** All problems, worst first, without questions. */
  public List<Problem> problems() {
    return opened.problems();
  }

  /** What is asked of the maker; nothing of a log with errors, of which too much is not known. */
  public Questions.Asked asked() {
    // It takes longer than all else, and nothing else waits for it.
    synchronized (asking) {
      Questions.Asked known = asked;
      if (known == null) {
        known = opened.hasErrors() ? Questions.Asked.NOTHING : opened.ask(log().readers(), today);
        asked = known;
        if (!known.photographs().isEmpty()) {
          forgetEditions();
        }
      }
      return known;
    }
  }

  /** The same with all else that publishing would ask. */
  public List<Questions.Asking> asking() throws IOException {
    return OpenQuestions.all(opened, asked(), this::withheld, today);
  }

  /** Until it is asked, what might be asked of a photograph keeps it out of every edition. */
  private synchronized void forgetEditions() {
    editions.clear();
    sites.clear();
  }

  /**
   * Agreements that something may be put under by hand: those with somebody, as log.yaml has them,
   * and not what is supposed where it has none.
   */
  public List<Agreement> promises() {
    return log().agreements().values().stream().filter(a -> !a.with().isBlank()).toList();
  }

  /** Their words. */
  public List<String> agreements() {
    return promises().stream().map(Agreement::id).toList();
  }

  /** Readers of the log by their id. */
  public Optional<Readers> findReaders(String id) {
    return log().readers().stream().filter(r -> r.id().equals(id)).findFirst();
  }

  /**
   * What readers of the log would get today, made like any edition.
   *
   * @throws IOException if a picture cannot be made
   */
  public synchronized Edition edition(Readers readers) throws IOException {
    return prepared(readers).edition();
  }

  /** The same with its account, as if readers had been given nothing before. */
  public synchronized Withholder.Withheld withheld(Readers readers) throws IOException {
    return prepared(readers).against(List.of());
  }

  /** The edition's ids of the entries that it tells these readers, by those of the log. */
  public synchronized Map<String, String> entryIds(Readers readers) throws IOException {
    return prepared(readers).entryIds();
  }

  /** The site that readers of the log would get today. */
  public synchronized SiteView site(Readers readers) throws IOException {
    SiteView made = sites.get(readers.id());
    if (made == null) {
      Edition edition = edition(readers);
      Path templates = log().folder().resolve("site-template");
      made =
          new SiteView(
              edition,
              Workshop.theme(log().folder(), edition.contents().theme()),
              Files.isDirectory(templates) ? templates : null);
      sites.put(readers.id(), made);
    }
    return made;
  }

  /** What readers of the log would get today, with what the maker alone may know of it. */
  public synchronized Withholder.Prepared prepared(Readers readers) throws IOException {
    Withholder.Prepared made = editions.get(readers.id());
    if (made == null) {
      Questions.Asked known = asked;
      Set<String> mayShow = known == null ? Set.of() : known.photographs();
      made = opened.prepare(readers, today, mayShow, Progress.SILENT);
      editions.put(readers.id(), made);
    }
    return made;
  }
}

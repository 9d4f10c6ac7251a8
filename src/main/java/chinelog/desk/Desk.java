package chinelog.desk;

import chinelog.desk.begin.FirstRun;
import chinelog.desk.bench.Assets;
import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.Frame;
import chinelog.desk.bench.LiveLog;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.LogFiles;
import chinelog.desk.notes.BenchClock;
import chinelog.desk.notes.Changes;
import chinelog.desk.notes.Chooser;
import chinelog.desk.notes.Editor;
import chinelog.desk.notes.NotesPages;
import chinelog.desk.pages.Answering;
import chinelog.desk.pages.Faults;
import chinelog.desk.pages.Leaving;
import chinelog.desk.pages.Live;
import chinelog.desk.pages.Today;
import chinelog.desk.pages.Undoing;
import chinelog.desk.photographs.Photographs;
import chinelog.desk.publishing.Publishing;
import chinelog.desk.seen.Beside;
import chinelog.desk.seen.SeenPages;
import chinelog.desk.settings.Agreements;
import chinelog.desk.settings.FactsPage;
import chinelog.desk.settings.Settings;
import chinelog.desk.sheets.Sheets;
import chinelog.desk.web.Routes;
import chinelog.desk.web.Server;
import java.io.Closeable;
import java.io.IOException;
import java.net.URI;
import java.nio.channels.ClosedChannelException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * A log open in the browser: {@code Desk.open(folder, clock)} serves it until it is closed. A log
 * that is open already is not opened twice: {@link #findOpen} tells where it is.
 */
public final class Desk implements Closeable {

  /** Within which the browser has the page that says that the log is closed. */
  private static final int LAST_PAGE_MILLIS = 500;

  private final Clock clock;
  private final Filing filing;
  private final Assets assets;
  private final Frame frame;
  private final Server server;
  private volatile Routes routes = new Routes();
  private final CountDownLatch left = new CountDownLatch(1);
  private @Nullable Doorplate doorplate;
  private boolean closed;

  private Desk(Clock clock, Filing filing) throws IOException {
    this.clock = clock;
    this.filing = filing;
    this.assets = new Assets();
    this.frame = new Frame(assets.path());
    this.server = new Server(() -> routes, new Faults(frame), this::changeAddress);
  }

  /** Opens the files of a log, on whatever disk they lie. */
  interface Filing {
    LogFiles open(Path log) throws IOException;
  }

  /** The address that lets a browser in, once, to a log that another run holds open. */
  public static Optional<URI> findOpen(Path folder) throws IOException {
    return Doorplate.find(folder);
  }

  /**
   * Opens a log.
   *
   * @param folder the log's
   * @param clock for the day and the time of day
   * @throws IOException if no port can be had, or nothing can be written below the folder
   */
  public static Desk open(Path folder, Clock clock) throws IOException {
    return open(folder, clock, LogFiles::open);
  }

  static Desk open(Path folder, Clock clock, Filing filing) throws IOException {
    Desk desk = new Desk(clock, filing);
    desk.admit(folder);
    desk.server.start();
    return desk;
  }

  /**
   * Opens the desk without a log: a few questions begin one.
   *
   * @param suggested where the log may lie
   */
  public static Desk begin(Path suggested, Clock clock) throws IOException {
    Desk desk = new Desk(clock, LogFiles::open);
    Routes first = new Routes();
    desk.assets.answerAt(first);
    new FirstRun(desk.frame, clock, suggested, desk::admit).answerAt(first);
    desk.routes = first;
    desk.server.start();
    return desk;
  }

  private synchronized void admit(Path folder) throws IOException {
    if (closed) {
      throw new ClosedChannelException();
    }
    Path log = folder.toRealPath();
    Doorplate plate = Doorplate.put(log);
    try {
      Bench bench = new Bench(log, new LiveLog(log, clock), filing.open(log), frame, clock);
      Routes whole = new Routes();
      pages(bench, assets).forEach(page -> page.answerAt(whole));
      new Leaving(bench, left::countDown).answerAt(whole);
      doorplate = plate;
      routes = whole;
      changeAddress();
      server.work(() -> warm(bench));
    } catch (IOException e) {
      plate.close();
      throw e;
    }
  }

  /** Reads the log and makes what readers would get before anybody asks for it. */
  private static void warm(Bench bench) {
    try {
      Snapshot now = bench.log().now();
      if (!now.opened().hasErrors()) {
        now.site(now.log().readers().get(0)).findPage("index.html");
        now.asked();
      }
    } catch (IOException | RuntimeException e) {
      // Whoever asks will be told.
    }
  }

  private static List<DeskPage> pages(Bench bench, Assets assets) {
    SeenPages seen = new SeenPages(bench, assets.path());
    return List.of(
        assets,
        seen,
        new Beside(bench),
        new Live(bench),
        new Today(bench),
        new Undoing(bench),
        new Answering(bench),
        new NotesPages(bench),
        new Editor(bench, seen),
        new Changes(),
        new Chooser(bench),
        new BenchClock(bench),
        new Photographs(bench),
        new Settings(bench),
        new Agreements(bench),
        new FactsPage(bench),
        new Sheets(bench),
        new Publishing(bench));
  }

  /** The address that lets a browser in, once. */
  public URI address() {
    return server.firstAddress();
  }

  /** Waits until somebody closes the log in the browser. */
  public void awaitLeaving() throws InterruptedException {
    left.await();
    TimeUnit.MILLISECONDS.sleep(LAST_PAGE_MILLIS);
  }

  private synchronized void changeAddress() {
    if (doorplate != null) {
      doorplate.write(server.firstAddress());
    }
  }

  @Override
  public void close() throws IOException {
    Doorplate plate;
    synchronized (this) {
      closed = true;
      plate = doorplate;
      doorplate = null;
    }
    // Outside, as whoever is being let in wants the lock for the last time.
    server.close();
    if (plate != null) {
      plate.close();
    }
  }
}

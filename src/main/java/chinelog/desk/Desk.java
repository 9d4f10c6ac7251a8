package chinelog.desk;

import chinelog.desk.bench.Assets;
import chinelog.desk.bench.Bench;
import chinelog.desk.bench.Frame;
import chinelog.desk.bench.LiveLog;
import chinelog.desk.bench.Page;
import chinelog.desk.files.LogFiles;
import chinelog.desk.notes.Changes;
import chinelog.desk.notes.Chooser;
import chinelog.desk.notes.Editor;
import chinelog.desk.notes.Notes;
import chinelog.desk.pages.Faults;
import chinelog.desk.pages.Live;
import chinelog.desk.pages.Today;
import chinelog.desk.photographs.Photographs;
import chinelog.desk.publishing.Publishing;
import chinelog.desk.seen.Seen;
import chinelog.desk.sheets.Sheets;
import chinelog.desk.web.Routes;
import chinelog.desk.web.Server;
import java.io.Closeable;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/**
 * A log open in the browser: {@code Desk.open(folder, clock)} serves it until it is closed. A log
 * that is open already is not opened twice: {@link #findOpen} tells where it is.
 */
public final class Desk implements Closeable {

  private final Server server;
  private final Doorplate doorplate;

  private Desk(Server server, Doorplate doorplate) {
    this.server = server;
    this.doorplate = doorplate;
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
    Path log = folder.toRealPath();
    Doorplate doorplate = Doorplate.put(log);
    Assets assets = new Assets();
    Frame frame = new Frame(assets.path());
    Bench bench = new Bench(log, new LiveLog(log, clock), LogFiles.open(log), frame, clock);
    Routes routes = new Routes();
    for (Page page : pages(bench, assets)) {
      page.answerAt(routes);
    }
    Desk[] desk = new Desk[1];
    Server server = new Server(() -> routes, new Faults(frame), () -> desk[0].changeAddress());
    desk[0] = new Desk(server, doorplate);
    server.start();
    desk[0].changeAddress();
    return desk[0];
  }

  private static List<Page> pages(Bench bench, Assets assets) {
    Seen seen = new Seen(bench, assets.path());
    return List.of(
        assets,
        seen,
        new Live(bench),
        new Today(bench),
        new Notes(bench),
        new Editor(bench, seen),
        new Changes(),
        new Chooser(bench),
        new Photographs(bench),
        new Sheets(bench),
        new Publishing(bench));
  }

  /** The address that lets a browser in, once. */
  public URI address() {
    return server.firstAddress();
  }

  private void changeAddress() {
    doorplate.write(server.firstAddress());
  }

  @Override
  public void close() throws IOException {
    server.close();
    doorplate.close();
  }
}

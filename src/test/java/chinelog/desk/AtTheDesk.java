package chinelog.desk;

import chinelog.desk.files.LogFiles;
import chinelog.site.Browser;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A {@link SmallDesk} for each test of a class, and a browser that was let in. */
abstract class AtTheDesk {

  @TempDir Path folder;
  Browser browser;
  SmallDesk desk;

  @BeforeEach
  final void open(Browser one) throws IOException {
    browser = one;
    browser.fresh();
    browser.size(1280, 900, 1);
    SmallDesk.layDown(folder);
    prepare();
    desk = SmallDesk.open(folder, browser, filing());
  }

  /** What is done before the log is opened. */
  void prepare() throws IOException {}

  Desk.Filing filing() {
    return LogFiles::open;
  }

  @AfterEach
  final void close() throws IOException {
    leave();
    desk.close();
  }

  /** What is done before the log is closed. */
  void leave() {}
}

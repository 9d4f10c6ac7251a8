package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.desk.files.FailingDisk;
import chinelog.site.InBrowser;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What goes wrong on the way to the disk is told where it happened, and nothing is lost. */
@InBrowser
class TroubleTest extends AtTheDesk {

  private static final String TYPED =
      "view.dispatch({changes: {from: view.state.doc.length, insert: '\\nOne line more.\\n'}});";

  private final FailingDisk disk = new FailingDisk();

  @Override
  Desk.Filing filing() {
    return disk::open;
  }

  private void awaitLeaving() {
    try {
      desk.desk().awaitLeaving();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void theLogIsClosedFromThePageAndWhatIsTypedIsKept() throws Exception {
    desk.edit(SmallDesk.NOTE);
    desk.editor(TYPED);
    Thread waiting = new Thread(this::awaitLeaving);
    waiting.start();
    desk.go("/");
    browser.evaluate("document.querySelector('form[action=\"/leave\"] button').click()");
    desk.until("document.querySelector('h1')?.textContent === 'The log is closed'");
    waiting.join(10_000);
    assertThat(waiting.isAlive()).isFalse();
    assertThat(desk.read(SmallDesk.NOTE)).isEqualTo(SmallDesk.NOTE_TEXT);
  }

  @Test
  void aDiskThatIsFullOrShutIsToldWhereverSomethingIsWritten() throws IOException {
    String before = desk.read("log.yaml");
    for (boolean full : List.of(true, false)) {
      desk.edit(SmallDesk.NOTE);
      if (full) {
        disk.fill();
      } else {
        disk.shut();
      }
      String told = full ? "See that the disk is not full" : "may not be written";
      desk.editor(TYPED);
      // The draft cannot be kept, and that is told at once.
      desk.until("document.getElementById('said').textContent.includes('" + told + "')");
      browser.evaluate("document.getElementById('said').textContent = ''");
      desk.click("#save");
      desk.until("document.getElementById('said').textContent.includes('" + told + "')");
      assertThat(desk.read(SmallDesk.NOTE)).isEqualTo(SmallDesk.NOTE_TEXT);
      assertThat(browser.text("document.querySelector('.cm-content').innerText"))
          .contains("One line more.");
      disk.mend();
      desk.save();
      desk.awaitText(SmallDesk.NOTE, SmallDesk.NOTE_TEXT + "\nOne line more.\n");
      Files.writeString(desk.folder().resolve(SmallDesk.NOTE), SmallDesk.NOTE_TEXT);

      desk.go("/agreements");
      disk.shut();
      if (full) {
        disk.mend();
        disk.fill();
      }
      desk.fill("#lines-covers", "the lines plan, and all of it,");
      desk.until(
          "(document.querySelector('.field .wrong')?.textContent +"
              + " document.getElementById('said').textContent).includes('"
              + told
              + "')");
      assertThat(desk.read("log.yaml")).isEqualTo(before);
      assertThat(browser.text("document.getElementById('lines-covers').value"))
          .contains("all of it");
      disk.mend();
    }
  }

  @Test
  void aDeskThatIsGoneIsToldAndWhatIsTypedStaysOnThePage() throws IOException {
    desk.edit(SmallDesk.NOTE);
    desk.desk().close();
    desk.editor(TYPED);
    desk.click("#save");
    desk.until("document.getElementById('said').textContent.includes('does not answer')");
    assertThat(desk.read(SmallDesk.NOTE)).isEqualTo(SmallDesk.NOTE_TEXT);
    assertThat(browser.text("document.querySelector('.cm-content').innerText"))
        .contains("One line more.");
  }

  @Test
  void twoTabsOnOneNoteLoseNeithersText() throws IOException {
    desk.edit(SmallDesk.NOTE);
    String origin = browser.text("location.origin");
    String first = browser.newTab();
    browser.open(java.net.URI.create(origin + "/notes/edit?file=" + SmallDesk.NOTE));
    desk.until("document.body.dataset.ready && document.body.dataset.looked");
    desk.editor("view.dispatch({changes: {from: view.state.doc.length, insert: 'Second.\\n'}});");
    desk.save();
    String second = SmallDesk.NOTE_TEXT + "Second.\n";
    desk.awaitText(SmallDesk.NOTE, second);
    browser.closeTab(first);
    desk.editor("view.dispatch({changes: {from: view.state.doc.length, insert: 'First.\\n'}});");
    desk.click("#save");
    desk.until("document.getElementById('both').open");
    assertThat(desk.read(SmallDesk.NOTE)).isEqualTo(second);
    assertThat(browser.text("document.getElementById('theirs').value")).isEqualTo(second);
    assertThat(browser.text("document.getElementById('mine').value"))
        .isEqualTo(SmallDesk.NOTE_TEXT + "First.\n");
    desk.click("#both button[value=mine]");
    desk.awaitText(SmallDesk.NOTE, SmallDesk.NOTE_TEXT + "First.\n");
    desk.until("document.querySelector('[data-turn=back]:not([disabled])')");
    desk.click("[data-turn=back]");
    desk.awaitText(SmallDesk.NOTE, second);
  }
}

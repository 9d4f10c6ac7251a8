package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.site.InBrowser;
import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

/** A maker writes and marks notes in the browser; the files on disk tell what came of it. */
@InBrowser
class NotesStoryTest extends AtTheDesk {

  private static final String NOTE = SmallDesk.NOTE;

  @Override
  void prepare() {
    browser.size(1440, 900, 1);
  }

  @Override
  void leave() {
    assertThat(browser.complaints()).isEmpty();
  }

  private void under(String what) {
    desk.click("[data-tool=under]");
    desk.click("#under [name=what][value=" + what + "]");
    desk.click("#under button[value=put]");
    desk.until("!document.getElementById('under').open");
  }

  private static String with(String old, String by) {
    assertThat(SmallDesk.NOTE_TEXT).contains(old);
    return SmallDesk.NOTE_TEXT.replace(old, by);
  }

  @Test
  void whatIsSelectedGoesUnderAnAgreementAndNothingElseChanges() throws IOException {
    desk.edit(NOTE);
    desk.select("187 mm");
    desk.click(".offer button");
    desk.until("document.querySelector('.under-words')");
    desk.until("document.getElementById('seen').contentDocument.querySelector('.gap')");
    assertThat(desk.read(NOTE)).isEqualTo(SmallDesk.NOTE_TEXT);
    desk.save();
    assertThat(desk.read(NOTE)).isEqualTo(with("187 mm", "[187 mm]{under=lines}"));
    desk.select("187 mm");
    desk.click("[data-tool=under]");
    desk.click("#under button[value=off]");
    desk.until("!document.getElementById('under').open");
    desk.save();
    assertThat(desk.read(NOTE)).isEqualTo(SmallDesk.NOTE_TEXT);
  }

  @Test
  void aParagraphASectionAndTheNoteGoUnderAnAgreement() throws IOException {
    desk.edit(NOTE);
    desk.select("The keel lies");
    under("paragraph");
    desk.select("Nothing of it");
    under("section");
    desk.save();
    String marked =
        with("planking.\n\n!", "planking. {under=lines}\n\n!")
            .replace("sheet says\n", "sheet says {under=lines}\n");
    assertThat(desk.read(NOTE)).isEqualTo(marked);
    under("note");
    desk.until("!document.getElementById('unseen').hidden");
    desk.save();
    assertThat(desk.read(NOTE))
        .isEqualTo(marked.replace("used: {cedar: 6}\n", "used: {cedar: 6}\nunder: lines\n"));
  }

  @Test
  void thePreviewIsWhatTheSiteTells() {
    desk.edit(NOTE);
    desk.editor(
        "const at = view.state.doc.toString().indexOf('straight');"
            + " view.dispatch({changes: {from: at, to: at + 8, insert: '*true*'}});");
    String seen = "document.getElementById('seen').contentDocument";
    desk.until(seen + ".querySelector('.entry-text em')?.textContent === 'true'");
    assertThat(browser.text(seen + ".querySelector('.entry h2').textContent"))
        .isEqualTo("The keel goes down");
    assertThat(browser.text(seen + ".querySelector('img').naturalWidth > 0")).isEqualTo("true");
  }

  @Test
  void theKeysAreAForm() throws IOException {
    desk.edit(NOTE);
    desk.fill("#key-time", "09:10-12:40, 13:30-14:00");
    desk.fill("#used-0", "8");
    desk.until("document.body.classList.contains('changed')");
    desk.fill("[data-add=measured]", "");
    browser.evaluate(
        "(() => { const line = document.querySelector('[data-add=measured]').closest('.adding');"
            + " line.querySelector('[data-new-name]').value = 'hull.beam';"
            + " line.querySelector('[data-new-value]').value = '186.5 mm'; })()");
    desk.click("[data-add=measured]");
    desk.until("document.getElementById('measured-0')");
    desk.save();
    assertThat(desk.read(NOTE))
        .isEqualTo(
            with("'09:10-12:40'", "'09:10-12:40, 13:30-14:00'")
                .replace(
                    "used: {cedar: 6}\n", "used: {cedar: 8}\nmeasured:\n  hull.beam: 186.5 mm\n"));
  }

  @Test
  void aWrongKeyIsToldAtOnce() {
    desk.edit(NOTE);
    desk.fill("#key-time", "09:10-25:40");
    desk.until("document.querySelector('.field:has(#key-time) .wrong')");
    assertThat(browser.text("document.querySelector('.field:has(#key-time) .wrong').textContent"))
        .contains("25:40");
    assertThat(browser.text("document.getElementById('wrongs').textContent")).isEmpty();
  }

  @Test
  void photographsFactsFootnotesAndTablesArePutIn() throws IOException {
    desk.edit(NOTE);
    desk.select("187 mm");
    desk.click("[data-tool=fact]");
    desk.fill("#sought", "length over");
    desk.until(
        "document.querySelector('#choices [data-fact=\"full.loa\"]')"
            + " && !document.querySelector('#choices [data-fact=\"hull.loa\"]')");
    desk.fill("#sought", "hull.lo");
    desk.until("document.querySelector('#choices [data-fact=\"hull.loa\"]')");
    desk.click("#choices [data-fact=\"hull.loa\"]");
    desk.until("document.body.classList.contains('changed')");
    desk.select("Nothing of it");
    desk.click("[data-tool=photograph]");
    desk.until("document.querySelector('#choices [data-photograph]')");
    desk.click("#choices [data-photograph]");
    desk.until("document.querySelectorAll('.cm-line').length > 11");
    desk.select("straight");
    desk.click("[data-tool=footnote]");
    desk.until("document.querySelector('.cm-content').innerText.includes('[^1]:')");
    desk.save();
    String text = desk.read(NOTE);
    assertThat(text).contains("](fact:hull.loa)").contains("straight").contains("[^1]");
    assertThat(text.split("\\.\\./photos/keel\\.png", -1)).hasSize(3);
    assertThat(text).startsWith(SmallDesk.NOTE_TEXT.substring(0, 100));
  }

  @Test
  void aNoteOfWindowsKeepsItsLineEnds() throws IOException {
    String windows = SmallDesk.NOTE_TEXT.replace("\n", "\r\n");
    Files.writeString(desk.folder().resolve(NOTE), windows);
    desk.edit(NOTE);
    desk.select("187 mm");
    under("selection");
    desk.save();
    assertThat(desk.read(NOTE)).isEqualTo(windows.replace("187 mm", "[187 mm]{under=lines}"));
  }

  @Test
  void whatAnotherProgramWroteMeanwhileIsShownAndNotOverwritten() throws IOException {
    desk.edit(NOTE);
    desk.editor("view.dispatch({changes: {from: 0, insert: 'Mine. '}});");
    String theirs = SmallDesk.NOTE_TEXT + "\nTheirs.\n";
    Files.writeString(desk.folder().resolve(NOTE), theirs);
    desk.click("#save");
    desk.until("document.getElementById('both').open");
    assertThat(desk.read(NOTE)).isEqualTo(theirs);
    assertThat(browser.text("document.getElementById('theirs').value")).isEqualTo(theirs);
    assertThat(browser.text("document.getElementById('mine').value")).contains("Mine. ");
    desk.click("#both button[value=mine]");
    desk.until("!document.body.classList.contains('changed')");
    assertThat(desk.read(NOTE)).contains("Mine. ").doesNotContain("Theirs.");
  }

  @Test
  void whatWasTypedAndNotSavedIsStillThereAfterARestart() throws IOException {
    desk.edit(NOTE);
    desk.editor("view.dispatch({changes: {from: 0, insert: 'Half a thought. '}});");
    desk.until(
        "document.getElementById('state').textContent === document.getElementById('state').dataset.draft");
    desk.close();
    assertThat(Files.readString(folder.resolve(NOTE))).isEqualTo(SmallDesk.NOTE_TEXT);
    desk = SmallDesk.open(folder, browser);
    desk.edit(NOTE);
    assertThat(browser.text("document.querySelector('.cm-content').innerText"))
        .contains("Half a thought.");
  }

  @Test
  void aNewNoteIsBegunOnADay() throws IOException {
    desk.go("/notes");
    desk.click("[data-opens=new-note]");
    desk.fill("#new-day", "2026-05-30");
    desk.fill("#new-title", "Émile's bench, tidied");
    desk.fill("#new-stage", "planking");
    desk.click("#new-note form button.main");
    desk.until("document.body.dataset.ready");
    assertThat(desk.read("entries/2026-05-30-emiles-bench-tidied.md"))
        .isEqualTo("---\nstage: planking\n---\n# Émile's bench, tidied\n\n");
  }

  @Test
  void aFileThatCannotBeReadOpensAsTextWithThePlaceOfTheFault() throws IOException {
    Files.writeString(
        desk.folder().resolve("log.yaml"),
        SmallDesk.LOG_TEXT.replace("scale: 1:16", "scale: [1:16"));
    desk.go("/");
    desk.until("document.querySelector('.errors .place a')");
    desk.click(".errors .place a");
    desk.until("document.body.dataset.ready && document.querySelector('.wrong-line')");
    desk.editor(
        "const at = view.state.doc.toString().indexOf('[1:16');"
            + " view.dispatch({changes: {from: at, to: at + 1}});");
    desk.save();
    assertThat(desk.read("log.yaml")).isEqualTo(SmallDesk.LOG_TEXT);
  }
}

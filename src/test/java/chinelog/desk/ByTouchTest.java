package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.desk.files.LogFiles;
import chinelog.site.InBrowser;
import chinelog.site.Patience;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A maker with a phone at the bench: 360 pixels wide, and nothing but a finger. */
@InBrowser
class ByTouchTest extends AtTheDesk {

  @Override
  void prepare() {
    browser.phone(true);
  }

  @Override
  void leave() {
    browser.phone(false);
  }

  private void open(String path) {
    desk.go(path);
    desk.until("!document.querySelector('[aria-busy]')");
  }

  @Test
  void aRegionIsDrawnMovedAndTakenAway() throws IOException {
    open("/photographs");
    browser.tap("[data-photo='photos/keel.png'] a");
    desk.until(
        "document.getElementById('draw') && document.querySelector('#picture img').complete");
    browser.tap("#draw");
    desk.until("document.querySelector('#picture.by-touch')");
    browser.evaluate("document.querySelector('#picture').scrollIntoView({behavior: 'instant'})");
    int[] box = box("#picture svg");
    browser.stroke(
        box[0] + box[2] / 4, box[1] + box[3] / 4, box[0] + box[2] / 2, box[1] + box[3] / 2);
    desk.until("document.querySelector('.grey') && document.getElementById('said').textContent");
    String drawn = desk.read("photos/photos.yaml");
    assertThat(drawn).contains("under: lines}").contains("sha256: ");
    browser.evaluate("document.getElementById('said').textContent = ''");
    browser.stroke(
        box[0] + box[2] * 3 / 8,
        box[1] + box[3] * 3 / 8,
        box[0] + box[2] * 5 / 8,
        box[1] + box[3] * 5 / 8);
    Patience.until(() -> !desk.read("photos/photos.yaml").equals(drawn));
    assertThat(desk.read("photos/photos.yaml")).contains("box: [0.49").doesNotContain("[0.24");
    // Until that is said, the list may still be written anew.
    desk.until("document.getElementById('said').textContent");
    browser.tap("#regions button.plain");
    Patience.until(() -> !desk.read("photos/photos.yaml").contains("box"));
    assertThat(desk.read("photos/photos.yaml")).doesNotContain("box");
  }

  @Test
  void aPhotographIsGivenToANote() throws IOException {
    Files.writeString(
        desk.folder().resolve("entries/2026-03-26-ribs.md"), "# Ribs\n\nThe first stands.\n");
    open("/photographs");
    browser.tap("[data-photo='photos/keel.png'] input");
    desk.until("!document.getElementById('chosen').hidden");
    browser.tap("#chosen [value=note]");
    desk.awaitText(
        "entries/2026-03-26-ribs.md", "# Ribs\n\nThe first stands.\n\n![](../photos/keel.png)\n");
  }

  @Test
  void aParagraphGoesUnderAnAgreementAndTheLogIsPublished() throws IOException {
    open("/notes");
    browser.tap("a[href*='2026-03-25-keel']");
    desk.until("document.body.dataset.ready && document.body.dataset.looked");
    int[] line =
        Arrays.stream(
                browser
                    .text(
                        "(e => { e.scrollIntoView({block: 'center'}); const b ="
                            + " e.getBoundingClientRect(); return [b.left + 40, b.top + 12]"
                            + ".map(Math.round).join(' '); })([...document.querySelectorAll("
                            + "'.cm-line')].find(l => l.textContent.startsWith('The keel lies')))")
                    .split(" "))
            .mapToInt(Integer::parseInt)
            .toArray();
    browser.tap(line[0], line[1]);
    desk.until("document.activeElement.matches('.cm-content')");
    browser.tap("[data-tool=under]");
    desk.until("document.getElementById('under').open");
    browser.tap("#under [value=paragraph]");
    browser.tap("#under button[value=put]");
    desk.until("!document.getElementById('under').open");
    browser.tap("#save");
    desk.awaitText(
        SmallDesk.NOTE,
        SmallDesk.NOTE_TEXT.replace("planking.\n\n!", "planking. {under=lines}\n\n!"));
    open("/publishing");
    browser.tap("#go");
    desk.until("document.querySelectorAll('#outcome .made').length === 2");
    assertThat(desk.read("published/public/site/index.html")).doesNotContainPattern("187\\hmm");
  }

  @Test
  void aSheetIsBroughtToScale(OpenDemo demo) throws IOException {
    String before = demo.text("facts.yaml");
    demo.open(browser, "/sheets/look?sheet=sheets/lines.pdf&page=1");
    browser.await("document.querySelector('.paper img')?.complete");
    browser.tap("[data-tool=along]");
    browser.evaluate(
        "document.querySelector('.paper').scrollIntoView({block: 'start', behavior: 'instant'})");
    int[] paper = box(".paper svg");
    browser.tap(paper[0] + paper[2] / 10, paper[1] + paper[3] * 2 / 5);
    browser.tap(paper[0] + paper[2] * 6 / 10, paper[1] + paper[3] * 2 / 5);
    desk.until("document.activeElement.id === 'truth'");
    desk.fill("#truth", "500 mm");
    browser.tap("#form-scale button.main");
    long end = System.nanoTime() + 20_000_000_000L;
    while (demo.text("facts.yaml").equals(before) && System.nanoTime() < end) {
      Patience.pause();
    }
    assertThat(demo.text("facts.yaml"))
        .startsWith(before + "scan.lines:\n  reckon: scan-scale\n  true_x: 500 mm\n  scan_x: ");
    demo.undoAll(browser);
    assertThat(LogFiles.open(demo.log()).findUndo()).isEmpty();
  }

  /** Left, top, width and height of something in the window. */
  private int[] box(String selector) {
    return Arrays.stream(
            browser
                .text(
                    "(b => [b.left, b.top, b.width, b.height].map(Math.round).join(' '))"
                        + "(document.querySelector(\""
                        + selector
                        + "\").getBoundingClientRect())")
                .split(" "))
        .mapToInt(Integer::parseInt)
        .toArray();
  }
}

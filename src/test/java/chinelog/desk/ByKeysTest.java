package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.site.InBrowser;
import chinelog.site.Patience;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/**
 * A maker who has no pointer: whatever is done is reached by Tab, chosen by keys, and seen to have
 * the focus.
 */
@InBrowser
class ByKeysTest extends AtTheDesk {

  private void open(String path) {
    desk.go(path);
    desk.until("!document.querySelector('[aria-busy]')");
  }

  @Test
  void wordsOfANoteGoUnderAnAgreementAndItIsPublished() throws IOException {
    open("/notes");
    desk.tabTo("a[href*='2026-03-25-keel']");
    browser.press(Keys.ENTER);
    desk.until("document.body.dataset.ready && document.body.dataset.looked");
    desk.tabTo(".cm-content");
    browser.press(Keys.CONTROL, Keys.HOME);
    int at = SmallDesk.NOTE_TEXT.indexOf("187 mm");
    String before = SmallDesk.NOTE_TEXT.substring(SmallDesk.NOTE_TEXT.indexOf("# The keel"), at);
    // The keys of the note are a form of their own; the text begins below them.
    for (int i = 0; i < before.chars().filter(c -> c == '\n').count(); i++) {
      browser.press(Keys.ARROW_DOWN);
    }
    browser.press(Keys.HOME);
    browser.press(
        Keys.ARROW_RIGHT.toString().repeat(at - SmallDesk.NOTE_TEXT.lastIndexOf('\n', at) - 1));
    browser.press(Keys.SHIFT, Keys.ARROW_RIGHT.toString().repeat("187 mm".length()));
    browser.press(List.of(Keys.CONTROL, Keys.ALT), "u");
    desk.until("document.getElementById('under').open");
    desk.tabTo("#under button[value=put]");
    browser.press(Keys.ENTER);
    desk.until("!document.getElementById('under').open");
    desk.until("document.querySelector('.under-words')");
    browser.press(Keys.CONTROL, "s");
    desk.awaitText(SmallDesk.NOTE, SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}"));
    open("/publishing");
    desk.tabTo("#go");
    browser.press(Keys.ENTER);
    desk.until("document.querySelectorAll('#outcome .made').length === 2");
    assertThat(desk.find("published/public/site/index.html")).isPresent();
    // What came of it has the focus, and from there the site is the next stop.
    desk.tabTo("#outcome .made a");
  }

  @Test
  void aRegionIsPutOnAPhotographAndStretched() throws IOException {
    open("/photographs");
    desk.tabTo("[data-photo='photos/keel.png'] a");
    browser.follow(Keys.ENTER);
    desk.until("document.getElementById('new') && !document.querySelector('[aria-busy]')");
    desk.tabTo("#new");
    browser.press(Keys.ENTER);
    desk.until("document.activeElement.matches('.drawn')");
    desk.until("document.querySelector('.grey')");
    Path photos = desk.folder().resolve("photos/photos.yaml");
    desk.until("document.getElementById('said').textContent");
    browser.press(Keys.SHIFT, Keys.ARROW_RIGHT);
    browser.press(Keys.ARROW_UP);
    String box = "{box: [0.4, 0.39, 0.61, 0.59], under: lines}";
    Patience.until(() -> Files.readString(photos).contains(box));
    assertThat(Files.readString(photos)).contains("regions:\n    - " + box);
    desk.tabTo("#side-0-0");
    browser.press(Keys.CONTROL, "a");
    browser.press("35" + Keys.TAB);
    Patience.until(() -> Files.readString(photos).contains("[0.35, 0.39"));
    assertThat(Files.readString(photos)).contains("{box: [0.35, 0.39, 0.61, 0.59], under: lines}");
  }

  /** Every stop of Tab on every page shows that it has the focus. */
  @Test
  void whereTheKeysAreIsSeen() {
    for (String page : new String[] {"/", "/photographs", "/facts", "/agreements", "/publishing"}) {
      open(page);
      int stops = 0;
      for (; stops < 60; stops++) {
        browser.press(Keys.TAB);
        String seen =
            browser.text(
                """
                (() => {
                  const e = document.activeElement;
                  if (!e || e === document.body) return "end";
                  const shown = (x) => {
                    const s = getComputedStyle(x);
                    return s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2;
                  };
                  const b = e.getBoundingClientRect();
                  const isIn = b.bottom > 0 && b.top < innerHeight && b.width > 0;
                  return (shown(e) || shown(e.parentElement)) && isIn ? "" : e.outerHTML.slice(0, 160);
                })()
                """);
        if (seen.equals("end")) {
          break;
        }
        assertThat(seen).as(page).isEmpty();
      }
      assertThat(stops).as(page).isGreaterThan(8);
    }
  }
}

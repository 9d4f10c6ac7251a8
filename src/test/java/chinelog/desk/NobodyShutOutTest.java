package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.site.Barriers;
import chinelog.site.InBrowser;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Pages and their states, narrow, middling and wide, light and dark, hold to WCAG 2.2, levels A and
 * AA, and to the checker's own good practice. Photographs seen large and sheets are looked at where
 * their own stories are told.
 */
@InBrowser
class NobodyShutOutTest extends AtTheDesk {

  private static final List<Integer> WIDTHS = List.of(360, 1024, 1440);

  /** What may differ between widths; all else is the same in each. */
  private static final List<String> OF_WIDTH = List.of("target-size", "color-contrast");

  private static final List<String> OF_COLOUR = List.of("color-contrast");

  /**
   * A page, and what is done on it before it is looked at.
   *
   * @param script what is done; empty if nothing
   * @param until when it is done
   */
  private record State(String page, String script, String until) {

    static State of(String page) {
      return new State(page, "", "true");
    }
  }

  private static final List<State> STATES =
      List.of(
          new State("/", pick("workshop"), seen()),
          State.of("/notes"),
          new State(
              "/notes", click("[data-opens=new-note]"), "document.querySelector('dialog[open]')"),
          State.of("/notes/edit?file=" + SmallDesk.NOTE),
          new State(
              "/notes/edit?file=" + SmallDesk.NOTE,
              click("[data-tool=under]"),
              "document.querySelector('dialog[open]')"),
          new State(
              "/notes/edit?file=" + SmallDesk.NOTE,
              click("[data-tool=fact]"),
              "document.querySelector('#choices button')"),
          State.of("/text?file=log.yaml"),
          new State("/photographs", pick("public"), seen()),
          new State(
              "/photographs",
              click("[name=photo]") + click("#bring"),
              "document.querySelector('dialog[open]')"),
          State.of("/photographs/words?only=all"),
          State.of("/photographs/look?photo=photos/keel.png"),
          State.of("/sheets"),
          new State("/facts", pick("public"), seen()),
          new State(
              "/facts",
              click("[data-unfolds^='/facts/limit']")
                  + click("[data-unfolds^='/facts/lots']")
                  + click("[data-unfolds$='full.loa']"),
              "document.querySelectorAll('.written').length === 3"),
          new State(
              "/facts",
              click("[data-opens=new-reckoning]")
                  + "const set = (f, v) => { f.value = v;"
                  + " for (const e of ['input', 'change'])"
                  + " f.dispatchEvent(new Event(e, {bubbles: true})); };"
                  + " set(document.getElementById('nk-key'), 'x');"
                  + " set(document.getElementById('nk-reckon'), 'water');"
                  + " new MutationObserver(() => { const t = document.getElementById('p-temperature');"
                  + " if (t && !t.value) set(t, '12 kg'); }).observe("
                  + "document.getElementById('parameters'), {childList: true});",
              "document.querySelector('#p-temperature[aria-invalid]')"),
          State.of("/agreements"),
          State.of("/agreements/seen?for=public"),
          State.of("/publishing"),
          State.of("/nowhere"));

  @Override
  void prepare() throws IOException {
    Files.writeString(
        folder.resolve("entries/2026-03-26-wrong.md"),
        "---\nstage: planking\nunder: lines\n---\nText\n");
  }

  @Override
  void leave() {
    browser.scheme("light");
  }

  private static String click(String selector) {
    return "document.querySelector(\"" + selector + "\").click();";
  }

  private static String pick(String readers) {
    return "sessionStorage.setItem('as-seen', '" + readers + "'); location.reload();";
  }

  private static String seen() {
    return "document.querySelector('#beside:not([hidden]) h2')";
  }

  private void look(State state) {
    browser.size(1440, 900, 1);
    browser.evaluate("sessionStorage.removeItem('as-seen')");
    desk.go(state.page());
    desk.until("document.readyState === 'complete' && !document.querySelector('[aria-busy]')");
    if (state.page().contains("edit") || state.page().startsWith("/text")) {
      desk.until("document.body.dataset.ready && document.body.dataset.looked");
    }
    if (!state.script().isEmpty()) {
      browser.evaluate("(() => {" + state.script() + "})()");
    }
    desk.until(state.until());
    desk.until("document.readyState === 'complete' && !document.querySelector('[aria-busy]')");
  }

  /**
   * @param rules those that are tried; all where none is named
   */
  private void holds(State state, String scheme, int width, List<String> rules) throws IOException {
    browser.scheme(scheme);
    browser.size(width, 900, 1);
    String as = state + " " + scheme + " " + width;
    assertThat(rules.isEmpty() ? Barriers.of(browser) : Barriers.of(browser, rules))
        .as(as)
        .isEmpty();
    assertThat(browser.number("document.documentElement.scrollWidth"))
        .as(as)
        .isLessThanOrEqualTo(width);
  }

  @Test
  void noPageShutsAnybodyOut() throws IOException {
    for (State state : STATES) {
      look(state);
      holds(state, "light", 360, List.of());
      holds(state, "light", 1440, OF_WIDTH);
      holds(state, "dark", 1440, OF_COLOUR);
      browser.size(WIDTHS.get(1), 900, 1);
      assertThat(browser.number("document.documentElement.scrollWidth"))
          .as(state.toString())
          .isLessThanOrEqualTo(WIDTHS.get(1));
    }
  }

  @Test
  void aLogThatCannotBeReadShutsNobodyOutEither() throws IOException {
    Files.writeString(
        desk.folder().resolve("entries/2026-03-26-wrong.md"), "---\nstage: plonking\n---\nText\n");
    for (String page : List.of("/", "/agreements/seen?for=public", "/publishing", "/facts")) {
      State state = State.of(page);
      look(state);
      holds(state, "light", 360, List.of());
      holds(state, "dark", 1440, OF_COLOUR);
    }
  }
}

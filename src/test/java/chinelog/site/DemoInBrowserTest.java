package chinelog.site;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.publish.Demo;
import chinelog.publish.DemoSites;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The published demo as a reader meets it, in Chromium, where that is installed. */
@InBrowser
class DemoInBrowserTest {

  private static final List<String> THEMES = List.of("slipway", "chartroom");
  private static final List<Integer> WIDTHS = List.of(360, 768, 1280);
  private static final List<String> SCHEMES = List.of("light", "dark");
  private static final String POST = "posts/a-roll-of-paper-and-an-empty-bench.html";
  private static final String LAST_POST = "posts/what-she-does-in-the-water.html";

  @TempDir static Path folder;
  private static Browser browser;
  private static Demo demo;

  @BeforeAll
  static void take(Browser one, Demo published) {
    browser = one;
    demo = published;
  }

  @BeforeEach
  void leaveWhatWasOpen() {
    browser.fresh();
  }

  private static Path site(String theme, String readers) throws IOException {
    return demo.site(theme, readers);
  }

  /** The pages on which the workshop sees marks that the public does not. */
  private static final List<String> MARKED =
      List.of("index.html", "figures.html", "materials.html", "about.html", LAST_POST);

  static List<String> pages(Path site) throws IOException {
    return WrittenSite.files(site).stream().filter(f -> f.endsWith(".html")).toList();
  }

  /** One page of each kind, and every post. */
  static List<String> kinds(Path site) throws IOException {
    return pages(site).stream()
        .filter(p -> !p.startsWith("plates/") || p.equals("plates/001.html"))
        .toList();
  }

  /** Of the pages that one template makes the first and the last, and those that stand alone. */
  private static List<String> oneOfEachKind(Path site) throws IOException {
    TreeMap<String, List<String>> byTemplate = new TreeMap<>();
    for (String page : pages(site)) {
      Matcher kind = KIND.matcher(Files.readString(site.resolve(page)));
      assertThat(kind.find()).as(page).isTrue();
      byTemplate.computeIfAbsent(kind.group(1), k -> new ArrayList<>()).add(page);
    }
    return byTemplate.values().stream()
        .flatMap(made -> Stream.of(made.get(0), made.get(made.size() - 1)).distinct())
        .toList();
  }

  /** The frame of every page names the template that fills it. */
  private static final Pattern KIND = Pattern.compile("<body class=\"([^\"]+)\"");

  private static final boolean IN_EVERY_STATE = Boolean.getBoolean("chinelog.every-state");

  /** Rules on what may differ between widths; all else is the same in each. */
  private static final List<String> OF_WIDTH =
      List.of("color-contrast", "link-in-text-block", "target-size", "scrollable-region-focusable");

  /**
   * How a page is looked at, and the rules that are tried: all where none is named. In the dark and
   * in another theme only what is seen is another.
   */
  private record State(String theme, int width, String scheme, List<String> rules) {

    static final List<State> ALL =
        THEMES.stream()
            .flatMap(
                theme -> Stream.of(360, 1280).map(width -> new State(theme, width, "", List.of())))
            .flatMap(s -> SCHEMES.stream().map(scheme -> s.in(scheme)))
            .toList();

    /** Each width in each scheme, each theme in both widths and both schemes. */
    static final List<State> SOME =
        List.of(
            new State("slipway", 360, "light", List.of()),
            new State("slipway", 1280, "light", OF_WIDTH),
            new State("slipway", 1280, "dark", List.of("color-contrast")),
            new State("chartroom", 1280, "light", List.of("color-contrast", "link-in-text-block")),
            new State("chartroom", 360, "dark", List.of("color-contrast")));

    private State in(String scheme) {
      boolean isLight = scheme.equals("light");
      List<String> some =
          isLight ? List.of("color-contrast", "link-in-text-block") : List.of("color-contrast");
      boolean isWhole = isLight && theme.equals(THEMES.get(0));
      return new State(theme, width, scheme, isWhole ? List.of() : some);
    }

    String barriers() throws IOException {
      browser.size(width, 900, 1);
      browser.scheme(scheme);
      return rules.isEmpty() ? Barriers.of(browser) : Barriers.of(browser, rules);
    }
  }

  /**
   * Rules of WCAG 2.2, levels A and AA, and the checker's own good practice, on a sample of every
   * template: what it writes for all its pages is the same, and the longest texts are tried for
   * their width elsewhere. The workshop sees the same pages, some with marks.
   */
  @Test
  void noPageShutsAnybodyOut() throws Exception {
    List<String> found = new ArrayList<>();
    int checked = 0;
    List<State> states = IN_EVERY_STATE ? State.ALL : State.SOME;
    for (String theme : THEMES) {
      for (String readers : List.of("public", "workshop")) {
        Path site = site(theme, readers);
        for (String page : readers.equals("public") ? oneOfEachKind(site) : MARKED) {
          browser.open(site.resolve(page).toUri());
          for (State state : states) {
            if (state.theme().equals(theme)) {
              String said = state.barriers();
              if (!said.isEmpty()) {
                found.add(String.join(" ", state.toString(), readers, page, said));
              }
              checked++;
            }
          }
        }
      }
    }
    browser.scheme("light");
    assertThat(found).isEmpty();
    assertThat(checked).isEqualTo((10 + 2 + 2 + MARKED.size()) * states.size());
  }

  @Test
  void noPageIsWiderThanTheScreen() throws Exception {
    List<String> found = new ArrayList<>();
    for (String theme : THEMES) {
      Path site = site(theme, "workshop");
      for (String page : kinds(site)) {
        browser.open(site.resolve(page).toUri());
        for (int width : List.of(320, 360, 768, 1024, 1280)) {
          browser.size(width, 800, 1);
          double wide = browser.number("document.documentElement.scrollWidth");
          if (wide > width) {
            found.add(theme + " " + page + " at " + width + " is " + wide);
          }
        }
      }
    }
    assertThat(found).isEmpty();
  }

  @Test
  void logsOfOtherScriptsAndOfLongWordsFitAPhoneTooAndAreSeenWhenOpened() throws Exception {
    for (String language : List.of("ar", "de")) {
      Path log = Files.createDirectories(folder.resolve("log-" + language));
      Files.createDirectories(log.resolve("entries"));
      String word =
          language.equals("ar") ? "\u0628\u0646\u0627\u0621" : "Rettungsringhalterungsschraube";
      Files.writeString(
          log.resolve("log.yaml"),
          "title: "
              + word
              + "\nlanguage: "
              + language
              + "\nstages: {s: {title: "
              + word
              + "}}\nagreements: {lines: {with: Skerrick Yard, covers: lines}}\n");
      Files.writeString(
          log.resolve("entries/2026-03-14-a.md"),
          "---\nstage: s\ntime: 2 h\nmeasured: {hull.loa: 700 mm ± 1 mm}\n---\n# "
              + word.repeat(3)
              + "\n\n| a | b | c |\n|---|--:|---|\n| 14. 3. | 12 | "
              + word.repeat(2)
              + " |\n");
      DemoSites.write(log, List.of("workshop"), "slipway", folder.resolve("site-" + language));
      Path site = folder.resolve("site-" + language).resolve("workshop");
      assertThat(kinds(site)).hasSizeGreaterThan(8);
      for (String page : kinds(site)) {
        browser.open(site.resolve(page).toUri());
        browser.size(360, 800, 1);
        String at = language + " " + page;
        assertThat(browser.number("document.documentElement.scrollWidth"))
            .as(at)
            .isLessThanOrEqualTo(360);
        assertThat(browser.number("document.querySelector('h1').getBoundingClientRect().left"))
            .as(at)
            .isBetween(0.0, 360.0);
      }
    }
  }

  @Test
  void onAPhoneTheFiguresOfTheMaterialsStandBesideEachOtherWithinTheScreen() throws Exception {
    browser.open(site("slipway", "public").resolve("materials.html").toUri());
    browser.size(360, 800, 1);
    String cells = "[...document.querySelectorAll('.stacked tbody tr:not(.total) td')]";
    assertThat(browser.number(cells + ".length")).isGreaterThan(60);
    assertThat(browser.number(cells + ".filter(c => c.getBoundingClientRect().right > 360).length"))
        .isZero();
  }

  @Test
  void everyPageWorksFromAFolderAndBelowAPathAndNoneComplains() throws Exception {
    browser.size(360, 760, 1);
    for (String readers : List.of("public", "workshop")) {
      Path site = site("slipway", readers);
      for (String page : kinds(site)) {
        browser.open(site.resolve(page).toUri());
        assertThat(browser.text("getComputedStyle(document.querySelector('.skip')).position"))
            .as("the style of " + page)
            .isEqualTo("absolute");
      }
      assertThat(browser.complaints()).as("from the folder").isEmpty();
      try (Loopback host = new Loopback(site)) {
        for (String page : kinds(site)) {
          browser.open(host.at(page));
          assertThat(browser.number(BROKEN_PICTURES)).as("broken pictures of " + page).isZero();
        }
        // Nothing may still be on its way when the host goes.
        browser.open(site.resolve("index.html").toUri());
        assertThat(host.missing()).isEmpty();
        assertThat(browser.complaints()).as("below a path").isEmpty();
      }
    }
  }

  private static final String BROKEN_PICTURES =
      "[...document.images].filter(i => i.complete && i.naturalWidth === 0).length";

  /** On a phone; nothing is packed on its way, as a good host would do. */
  @Test
  void theFirstViewOfAPostIsLight() throws Exception {
    Path site = site("slipway", "public");
    browser.keepNothing(true);
    try (Loopback host = new Loopback(site)) {
      for (int density : List.of(1, 2, 3)) {
        browser.size(360, 760, density);
        for (String page : pages(site).stream().filter(p -> p.startsWith("posts/")).toList()) {
          browser.open(host.at(page));
          assertThat(browser.number(FIRST_VIEW_BYTES))
              .as(page + " with " + density + " dots to a pixel")
              .isBetween(20_000.0, 250_000.0);
        }
      }
    }
  }

  /** What the page, its style and fonts, and the pictures within the first screen weigh. */
  private static final String FIRST_VIEW_BYTES =
      """
      (async () => {
        await document.fonts.ready;
        const below = new Set([...document.images]
          .filter((i) => i.getBoundingClientRect().top >= innerHeight).map((i) => i.currentSrc));
        return performance.getEntriesByType("navigation")
          .concat(performance.getEntriesByType("resource"))
          .filter((e) => !below.has(e.name))
          .reduce((sum, e) => sum + e.transferSize, 0);
      })()""";

  @Test
  void picturesComeInTheSizeThatTheirPlaceNeeds() throws Exception {
    browser.keepNothing(true);
    List<String> found = new ArrayList<>();
    int looked = 0;
    for (String theme : THEMES) {
      Path site = site(theme, "public");
      for (String page : List.of("index.html", "series.html", "plates.html", POST)) {
        for (int width : WIDTHS) {
          browser.size(width, 800, width == 360 ? 2 : 1);
          browser.open(site.resolve(page).toUri());
          for (Object said : (List<?>) browser.evaluate(SIZES)) {
            looked++;
            if (!String.valueOf(said).isEmpty()) {
              found.add(String.join(" ", theme, page, "" + width, String.valueOf(said)));
            }
          }
        }
      }
    }
    assertThat(found).isEmpty();
    assertThat(looked).isGreaterThan(100);
  }

  /** For each picture that has come: nothing, or what is wrong with the size chosen for it. */
  private static final String SIZES =
      """
      (async () => {
        const said = [];
        for (const i of [...document.images].filter((i) => i.srcset)) {
          // Most are only fetched when they are about to be seen.
          i.scrollIntoView({ behavior: "instant", block: "center" });
          while (!i.complete || !i.naturalWidth) await new Promise((r) => setTimeout(r, 5));
          const offered = i.srcset.split(", ").map((s) => parseInt(s.split(" ")[1]));
          const chosen = parseInt(i.currentSrc.match(/-(\\d+)\\.jpg$/)[1]);
          const needed = i.clientWidth * devicePixelRatio;
          const best = [1, 0.9].map((d) => offered.find((w) => w >= needed * d) ?? offered.at(-1));
          said.push(best.includes(chosen) ? "" : `${chosen} for ${needed}`);
        }
        return said;
      })()""";

  private static final String WATCH_SHIFTS =
      """
      window.shifted = 0;
      new PerformanceObserver((list) => {
        for (const shift of list.getEntries()) window.shifted += shift.value;
      }).observe({ type: "layout-shift", buffered: true });
      """;

  @Test
  void nothingMovesWhilePicturesAndFontsComeIn() throws Exception {
    browser.prepare(WATCH_SHIFTS);
    for (String theme : THEMES) {
      try (Loopback host = new Loopback(site(theme, "public"))) {
        host.late(300);
        browser.keepNothing(true);
        for (int width : WIDTHS) {
          browser.size(width, 800, 1);
          for (String page : List.of("index.html", "plates/001.html", POST)) {
            browser.open(host.at(page));
            assertThat(browser.number(SHIFTED))
                .as(theme + " " + page + " " + width)
                .isLessThan(0.02);
          }
        }
      }
    }
  }

  private static final String SHIFTED =
      "document.fonts.ready.then(() => new Promise(done => setTimeout(() => done(shifted), 150)))";

  @Test
  void theKeyboardReachesEverythingAndShowsWhereItIs() throws Exception {
    browser.size(1280, 800, 1);
    Path site = site("slipway", "public");
    for (String page : List.of("index.html", "figures.html", POST)) {
      browser.open(site.resolve(page).toUri());
      int reachable = (int) browser.number(REACHABLE);
      for (int i = 1; i <= reachable; i++) {
        browser.press(Keys.TAB);
        String at = browser.text(FOCUS);
        assertThat(at).as("stop " + i + " of " + page).startsWith(i + " ").endsWith(" shown");
      }
    }
  }

  /** Marks what can be reached with a number, in the order of the page, and tells how many. */
  private static final String REACHABLE =
      """
      (() => {
        let n = 0;
        document.querySelectorAll("a[href], summary, input, [tabindex='0']").forEach((e) => {
          const hidden = e.closest("details:not([open])") && e.tagName !== "SUMMARY";
          if (e.tabIndex === 0 && e.getClientRects().length > 0 && !hidden) e.dataset.stop = ++n;
        });
        return n;
      })()""";

  private static final String FOCUS =
      """
      (() => {
        const e = document.activeElement;
        const box = e.getBoundingClientRect();
        const style = getComputedStyle(e);
        const shown = style.outlineStyle !== "none" && box.width > 0
          && box.bottom > 0 && box.top < innerHeight && box.left >= 0 && box.right <= innerWidth;
        return e.dataset.stop + " " + e.textContent.trim() + (shown ? " shown" : " not shown");
      })()""";

  @Test
  void keysLeadFromPlateToPlateAndThroughTheSearch() throws Exception {
    browser.size(1280, 800, 1);
    Path site = site("slipway", "public");
    browser.open(site.resolve("plates/002.html").toUri());
    browser.follow(Keys.ARROW_RIGHT);
    assertThat(browser.text("location.pathname")).endsWith("/plates/003.html");
    browser.follow(Keys.ARROW_LEFT);
    assertThat(browser.text("location.pathname")).endsWith("/plates/002.html");
    browser.follow(Keys.ESCAPE);
    assertThat(browser.text("location.href")).endsWith("/plates.html#plate-2");

    browser.open(site.resolve("search.html").toUri());
    for (String letter : List.of("m", "o", "u", "l", "d")) {
      browser.press(letter);
    }
    assertThat(browser.text("document.getElementById('found').textContent")).endsWith(" places");
    browser.press(Keys.TAB);
    assertThat(browser.text("document.activeElement.closest('#places') !== null"))
        .isEqualTo("true");
    browser.follow(Keys.ENTER);
    assertThat(browser.text("document.body.textContent.toLowerCase()")).contains("mould");
  }

  @Test
  void withoutScriptsOnlyTheSearchIsMissing() throws Exception {
    browser.size(1280, 800, 1);
    Path site = site("slipway", "public");
    browser.scripts(false);
    try {
      browser.open(site.resolve("search.html").toUri());
      assertThat(browser.text("document.getElementById('search').offsetHeight")).isEqualTo("0");
      assertThat(browser.text("document.querySelector('noscript a').offsetHeight > 0"))
          .isEqualTo("true");
      browser.open(site.resolve("plates/002.html").toUri());
      assertThat(browser.text("document.querySelector('a[rel=next]').getAttribute('href')"))
          .endsWith("003.html");
      assertThat(browser.text("document.images[0].naturalWidth > 0")).isEqualTo("true");
    } finally {
      browser.scripts(true);
    }
  }

  @Test
  void onPaperControlsAreGoneAndWhatIsFoldedIsOpen() throws Exception {
    browser.size(800, 1100, 1);
    browser.open(site("slipway", "public").resolve("materials.html").toUri());
    double onScreen = browser.number("document.body.offsetHeight");
    browser.medium("print");
    try {
      assertThat(Stream.of(".masthead nav", ".skip"))
          .allMatch(
              s ->
                  browser
                      .text("getComputedStyle(document.querySelector('" + s + "')).display")
                      .equals("none"));
      assertThat(browser.number("document.body.offsetHeight"))
          .as("with all tables opened")
          .isGreaterThan(onScreen + 500);
    } finally {
      browser.medium("");
    }
  }
}

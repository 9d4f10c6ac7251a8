package chinelog.talk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Talk;
import chinelog.publish.Demo;
import chinelog.site.Browser;
import chinelog.site.InBrowser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * The demo's series as its public is told it: how fast it reads, and what a browser makes of it.
 */
@InBrowser
class DemoSeriesTest {

  private static final Talk USUAL = new Talk(1920, 1080, 140, 8, 2, List.of());
  private static final Talk BRISK = new Talk(1920, 1080, 240, 8, 2, List.of());

  private static List<List<CaptionFiles.Cue>> captions(Demo demo, Talk talk) throws IOException {
    List<List<CaptionFiles.Cue>> all = new ArrayList<>();
    for (Instalment instalment :
        new ScriptMaker(ToldEdition.of(demo.edition("public"), talk)).all()) {
      all.add(CaptionFiles.captions(instalment, Timing.of(instalment, talk)));
    }
    return all;
  }

  @Test
  void noCaptionIsTooLongOrTooFast(Demo demo) throws IOException {
    for (Talk talk : List.of(USUAL, BRISK)) {
      List<List<CaptionFiles.Cue>> series = captions(demo, talk);
      assertThat(series).hasSize(7);
      for (List<CaptionFiles.Cue> cues : series) {
        assertThat(cues).hasSizeGreaterThan(40);
        long before = 0;
        for (CaptionFiles.Cue cue : cues) {
          assertThat(cue.lines()).hasSizeBetween(1, 2).allMatch(line -> line.length() <= 42);
          long characters = String.join(" ", cue.lines()).length();
          assertThat((cue.endMs() - cue.beginMs() + 1) * 17)
              .isGreaterThanOrEqualTo(characters * 1000);
          assertThat(cue.beginMs()).isGreaterThanOrEqualTo(before);
          before = cue.endMs();
        }
      }
    }
  }

  @Test
  void mostCaptionsEndWhereClausesDo(Demo demo) throws IOException {
    List<CaptionFiles.Cue> all = captions(demo, USUAL).stream().flatMap(List::stream).toList();
    long clauses =
        all.stream()
            .filter(c -> c.lines().get(c.lines().size() - 1).matches(".*[.,;:!?…–\u201d)]"))
            .count();
    assertThat(clauses * 100.0 / all.size()).isGreaterThan(80);
  }

  /** Chromium's parser of WebVTT (W3C), which is nobody's here. */
  @Test
  void aBrowserReadsEveryCueAsItWasMeant(Demo demo, Browser browser) throws IOException {
    browser.fresh();
    List<CaptionFiles.Cue> cues = new ArrayList<>(captions(demo, USUAL).get(3));
    cues.add(new CaptionFiles.Cue(9_000_000, 9_001_500, List.of("a < b & c --> d", "1 > 0")));
    String file = CaptionFiles.webVtt(cues);
    browser.evaluate(
        "(() => { const v = document.createElement('video'), t = document.createElement('track');"
            + " t.kind = 'captions'; t.src = URL.createObjectURL(new Blob([`"
            + file.replace("\\", "\\\\").replace("`", "\\`").replace("${", "\\${")
            + "`], {type: 'text/vtt'})); t.addEventListener('load', () => window.read ="
            + " Array.from(t.track.cues).map(c => Math.round(c.startTime * 1000) + ' ' +"
            + " Math.round(c.endTime * 1000) + ' ' + c.getCueAsHTML().textContent).join('|'));"
            + " v.append(t); document.body.append(v); t.track.mode = 'hidden'; return true; })()");
    browser.await("typeof window.read === 'string'");
    assertThat(browser.text("window.read"))
        .isEqualTo(
            cues.stream()
                .map(c -> c.beginMs() + " " + c.endMs() + " " + String.join("\n", c.lines()))
                .collect(Collectors.joining("|")));
  }
}

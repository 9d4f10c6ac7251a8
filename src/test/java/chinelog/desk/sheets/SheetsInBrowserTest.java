package chinelog.desk.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.desk.OpenDemo;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.log.records.Table;
import chinelog.problem.Problem;
import chinelog.reckon.Facts;
import chinelog.reckon.Reckoner;
import chinelog.site.Browser;
import chinelog.site.InBrowser;
import chinelog.site.Patience;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.PointerInput;

/** A sheet brought to scale, measured, and taken off in Chromium, and what is in the files then. */
@InBrowser
class SheetsInBrowserTest {

  private static final String LOOK = "/sheets/look?sheet=sheets/lines.pdf&page=1";

  private static Browser browser;
  private static OpenDemo desk;

  @BeforeAll
  static void take(Browser one, OpenDemo demo) {
    browser = one;
    desk = demo;
  }

  @BeforeEach
  void freshly() {
    browser.fresh();
    browser.size(1440, 1300, 1);
  }

  @AfterEach
  void leavesAllAsItWas() throws IOException {
    desk.undoAll(browser);
  }

  /**
   * The drawing shows the hull 680 mm long; it was printed 1 % longer than wide, so to say: what is
   * 101 px up is said to be as long as 100 px along.
   */
  @Test
  void aSheetIsBroughtToScaleAndMeasured() throws IOException {
    String before = desk.text("facts.yaml");
    desk.open(browser, "/sheets");
    desk.shutsNobodyOut(browser);
    desk.open(browser, LOOK);
    tool("along");
    List<Double> ends = click(0.1, 0.4);
    ends.addAll(click(0.6, 0.4));
    browser.press("500 mm" + Keys.ENTER);
    Matcher along =
        awaitFacts(before, "  true_x: 500 mm\n  scan_x: ([0-9.]+) mm ± 0.4 mm\n  under: lines\n");
    double mmPerPx = 25.4 / 72 * 2383.94 / 2400;
    assertThat(Double.parseDouble(along.group(1)))
        .isCloseTo((ends.get(2) - ends.get(0)) * mmPerPx, Offset.offset(0.06));
    browser.await("document.querySelector('[data-tool=up]')?.disabled === false");

    tool("up");
    click(0.5, 0.2);
    double height = 500.0 / 2400 * 1.01;
    click(0.5, 0.2 + height * 2400 / 1695);
    browser.press("200 mm" + Keys.ENTER);
    awaitFacts(
        before, "  true_x: 500 mm\n  scan_x: .*\n  under: lines\n  true_y: 200 mm\n  scan_y: .*\n");
    browser.await("document.querySelectorAll('.about-sheet dl > div').length === 3");
    assertThat(facts().find("scan.lines.stretch")).isPresent();
    desk.shutsNobodyOut(browser);

    String scaled = desk.text("facts.yaml");
    tool("length");
    click(0.2, 0.5);
    click(0.45, 0.5);
    browser.await("document.querySelector('#measured').textContent !== ''");
    desk.shutsNobodyOut(browser);
    browser.press("hull.taken" + Keys.TAB);
    browser.press("Taken off the sheet" + Keys.ENTER);
    Matcher fact =
        await(
            "facts.yaml",
            Pattern.quote(scaled)
                + "hull\\.taken: \\{is: ([0-9.]+) mm ± ([0-9.]+) mm, title: Taken off the sheet,"
                + " from: sheets/lines\\.pdf, on: 2026-06-01, under: lines}\n");
    assertThat(Double.parseDouble(fact.group(1))).isCloseTo(250, Offset.offset(2.5));
    assertThat(Double.parseDouble(fact.group(2))).isBetween(0.3, 1.6);
    assertThat(facts().find("hull.taken").orElseThrow().label().agreements())
        .containsExactly("lines");
    assertThat(desk.changed()).containsExactly("facts.yaml");
  }

  @Test
  void aTableOfOffsetsIsTakenOffByKeysAndClicks() throws IOException {
    String settings = desk.text("log.yaml");
    desk.open(browser, LOOK);
    tool("along");
    click(0.1, 0.4);
    click(0.6, 0.4);
    browser.press("600 mm" + Keys.ENTER);
    browser.await("document.querySelector('[data-tool=offsets]')?.disabled === false");
    tool("offsets");
    browser.evaluate("document.querySelector('#table').value = 'taken'");
    browser.evaluate("document.querySelector('#waterlines').value = '50, 100'");
    browser.evaluate("document.querySelector('#stations').value = 'aft 0\\n1 120'");
    browser.evaluate("document.querySelector('#take').click()");
    // 0.05 of the width is 60 mm; the picture is 2400 by 1695 pixels.
    double mm = 0.5 / 600;
    double up = mm * 2400 / 1695;
    click(0.4, 0.7);
    click(0.4, 0.7 - 10 * up);
    click(0.4 - 80 * mm, 0.7 - 110 * up);
    click(0.4 - 60 * mm, 0.62);
    click(0.4 - 70 * mm, 0.5);
    click(0.4, 0.7);
    click(0.4 + 90 * mm, 0.7 - 120 * up);
    click(0.4 + 75 * mm, 0.6);
    browser.evaluate("document.querySelector('#pass').click()");
    browser.evaluate("document.querySelector('#back').click()");
    click(0.4 + 85 * mm, 0.6);
    browser.await("document.activeElement.id === 'write'");
    desk.shutsNobodyOut(browser);
    browser.press(Keys.ENTER);
    browser.await("document.querySelector('#said').textContent.includes('tables/taken.csv')");
    await("tables/taken.csv", "(?s)station,x \\[mm],keel \\[mm],sheer \\[mm].*");
    assertThat(desk.text("log.yaml"))
        .isEqualTo(
            settings.replace(
                "  runs: {columns: {time: {under: trials}}}\n",
                "  runs: {columns: {time: {under: trials}}}\n  taken:\n    under: lines\n"));
    Log log = read();
    Table table =
        log.tables().stream().filter(t -> t.name().equals("taken")).findFirst().orElseThrow();
    assertThat(table.label().agreements()).containsExactly("lines");
    double[][] expected = {{0, 10, 110, 80, 60, 70}, {120, 0, 120, 90, 75, 85}};
    for (int row = 0; row < expected.length; row++) {
      for (int column = 0; column < expected[row].length; column++) {
        String cell = table.rows().get(row).cells().get(column + 1).text();
        assertThat(Double.parseDouble(cell))
            .as("%d %d", row, column)
            .isCloseTo(expected[row][column], Offset.offset(1.2));
      }
    }
    assertThat(desk.changed()).containsExactly("facts.yaml", "log.yaml", "tables/taken.csv");
    desk.undoAll(browser);
  }

  @Test
  void aSlantedLineAndAWrongLengthAreRefused() throws IOException {
    desk.open(browser, LOOK);
    tool("along");
    click(0.1, 0.4);
    click(0.6, 0.6);
    browser.press("500 mm" + Keys.ENTER);
    browser.await("document.querySelector('#said').textContent.includes('not level enough')");
    click(0.1, 0.4);
    click(0.6, 0.4);
    browser.evaluate("document.querySelector('#truth').select()");
    browser.press("500 kg" + Keys.ENTER);
    browser.await("document.querySelector('#said').textContent.includes('is not a length')");
    assertThat(desk.changed()).isEmpty();
  }

  /** Neither a pointer nor a finger: to scale, a length, and a table of offsets. */
  @Test
  void aSheetIsBroughtToScaleMeasuredAndTakenOffByKeysAlone() throws IOException {
    desk.open(browser, LOOK);
    tabTo("[data-tool=along]");
    browser.press(Keys.ENTER);
    double[] from = point(Keys.ARROW_LEFT, 3, Keys.ARROW_UP, 2);
    double[] to = point(Keys.ARROW_RIGHT, 7, Keys.ARROW_UP, 0);
    browser.press("500 mm" + Keys.ENTER);
    browser.await("document.querySelector('[data-tool=length]')?.disabled === false");
    double mm = 500 / (to[0] - from[0]);

    tabTo("[data-tool=length]");
    browser.press(Keys.ENTER);
    double[] one = point(Keys.ARROW_LEFT, 1, Keys.ARROW_DOWN, 1);
    browser.press(Keys.ALT, Keys.ARROW_RIGHT);
    double[] other = point(Keys.ARROW_RIGHT, 4, Keys.ARROW_UP, 0);
    browser.await("document.querySelector('#measured').textContent !== ''");
    browser.press("hull.taken" + Keys.TAB);
    browser.press("By keys" + Keys.ENTER);
    Matcher fact =
        await("facts.yaml", "(?s).*hull\\.taken: \\{is: ([0-9.]+) mm .*title: By keys,.*\n");
    assertThat(Double.parseDouble(fact.group(1)))
        .isCloseTo((other[0] - one[0]) * mm, Offset.offset(1.5));

    tabTo("[data-tool=offsets]");
    browser.press(Keys.ENTER);
    tabTo("#table");
    browser.press(Keys.CONTROL, "a");
    browser.press("keys" + Keys.TAB);
    browser.press("20" + Keys.TAB);
    browser.press("aft 0");
    tabTo("#take");
    browser.press(Keys.ENTER);
    double[] origin = point(Keys.ARROW_DOWN, 2, Keys.ARROW_LEFT, 1);
    double[] keel = point(Keys.ARROW_UP, 1, Keys.ARROW_LEFT, 0);
    double[] sheer = point(Keys.ARROW_UP, 3, Keys.ARROW_RIGHT, 2);
    double[] side = point(Keys.ARROW_RIGHT, 1, Keys.ARROW_DOWN, 1);
    browser.await("document.activeElement.id === 'write'");
    browser.press(Keys.ENTER);
    Matcher row =
        await("tables/keys.csv", "(?s)station,.*\naft,0,([0-9.]+),([0-9.]+),([0-9.]+),([0-9.]+)\n");
    double[] expected = {
      (origin[1] - keel[1]) * mm,
      (origin[1] - sheer[1]) * mm,
      (sheer[0] - origin[0]) * mm,
      (side[0] - origin[0]) * mm
    };
    double[] taken = new double[4];
    for (int i = 0; i < 4; i++) {
      taken[i] = Double.parseDouble(row.group(i + 1));
    }
    Arrays.sort(expected);
    Arrays.sort(taken);
    assertThat(taken).containsExactly(expected, Offset.offset(1.5));
  }

  /** Moves the cross in long steps and sets a point there; where, in the picture's own pixels. */
  private static double[] point(Keys along, int far, Keys across, int high) {
    browser.await("document.activeElement.id === 'paper'");
    browser.press(Keys.SHIFT, along.toString().repeat(far) + across.toString().repeat(high));
    String at = "document.querySelectorAll('.paper .cross')";
    double[] point = {
      browser.number(at + "[0].getAttribute('x1')"), browser.number(at + "[1].getAttribute('y1')")
    };
    browser.press(Keys.ENTER);
    return point;
  }

  private static void tabTo(String selector) {
    for (int i = 0; i < 60; i++) {
      browser.press(Keys.TAB);
      if (browser.text("document.activeElement.matches(\"" + selector + "\")").equals("true")) {
        return;
      }
    }
    throw new AssertionError("no Tab leads to " + selector);
  }

  private static void tool(String name) {
    browser.evaluate("document.querySelector('[data-tool=" + name + "]').click()");
    browser.await("document.querySelector('.paper img').complete");
    browser.evaluate("document.querySelector('.paper').scrollIntoView({block: 'start'})");
  }

  /** Clicks at a place in parts of the picture's sides; where that is in its own pixels. */
  private static List<Double> click(double x, double y) {
    int[] box =
        Arrays.stream(
                browser
                    .text(
                        "(b => [b.left, b.top, b.width, b.height].map(Math.round).join(' '))"
                            + "(document.querySelector('.paper svg').getBoundingClientRect())")
                    .split(" "))
            .mapToInt(Integer::parseInt)
            .toArray();
    int atX = (int) Math.round(box[0] + x * box[2]);
    int atY = (int) Math.round(box[1] + y * box[3]);
    browser.drag(PointerInput.Kind.MOUSE, atX, atY, atX, atY);
    return new java.util.ArrayList<>(
        List.of((atX - box[0]) * 2400.0 / box[2], (atY - box[1]) * 1695.0 / box[3]));
  }

  private static Matcher awaitFacts(String before, String keys) throws IOException {
    return await(
        "facts.yaml", Pattern.quote(before + "scan.lines:\n  reckon: scan-scale\n") + keys);
  }

  private static Matcher await(String file, String pattern) throws IOException {
    Pattern whole = Pattern.compile(pattern);
    Path path = desk.log().resolve(file);
    Patience.until(() -> Files.exists(path) && whole.matcher(desk.text(file)).matches());
    Matcher matcher = whole.matcher(desk.text(file));
    assertThat(matcher.matches()).as(() -> browser.text("document.body.innerText")).isTrue();
    return matcher;
  }

  private static Log read() throws IOException {
    LogReader.Reading reading =
        new LogReader(LocalDate.of(2026, 6, 1), ZoneOffset.UTC).read(desk.log());
    assertThat(reading.problems().stream().filter(Problem::isError)).isEmpty();
    return reading.log();
  }

  private static Facts facts() throws IOException {
    return Reckoner.reckon(read()).facts();
  }
}

package chinelog.desk.photographs;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.desk.OpenDemo;
import chinelog.digest.Sha256;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.photo.PhotoProgress;
import chinelog.photo.album.Album;
import chinelog.photo.album.Exif;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.site.Browser;
import chinelog.site.InBrowser;
import chinelog.site.Patience;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.PointerInput;

/** What a maker does with photographs in Chromium, and what is in the files afterwards. */
@InBrowser
class PhotographsInBrowserTest {

  private static final String PHOTOS = "photos/photos.yaml";
  private static final String BOW = "photos/T20_0463.jpg";
  private static final String LOOK = "/photographs/look?photo=";

  private static final ZoneId LONDON = ZoneId.of("Europe/London");

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
    browser.size(1280, 900, 1);
  }

  @AfterEach
  void leavesAllAsItWas() throws IOException {
    desk.undoAll(browser);
  }

  @Test
  void wordsAreTypedInARow() throws IOException {
    String before = desk.text(PHOTOS);
    desk.open(browser, "/photographs/words?only=all");
    browser.evaluate(
        "document.querySelector('[data-photo=\"photos/T20_0568.jpg\"] textarea').select()");
    browser.press("Upright: the wheelhouse \u2013 three windows, one lamp" + Keys.ENTER);
    browser.await("document.activeElement.closest('li').dataset.photo === 'photos/T20_0571.jpg'");
    String old = line(before, "  alt: Upright view of the wheelhouse");
    String once =
        before.replace(old, "  alt: \"Upright: the wheelhouse \u2013 three windows, one lamp\"\n");
    desk.awaitText(PHOTOS, once);
    browser.evaluate(
        "document.activeElement.closest('li').querySelector('[data-key=caption]').focus()");
    browser.press("Her name in gold." + Keys.ENTER);
    String stern = line(before, "  alt: The launch from astern, MERROW");
    desk.awaitText(PHOTOS, once.replace(stern, stern + "  caption: Her name in gold.\n"));
    desk.shutsNobodyOut(browser);
  }

  @Test
  void photographsAreGivenToANoteByKeysAndByDragging() throws IOException {
    String note = "entries/2026-05-16-afloat.md";
    String before = desk.text(note);
    desk.open(browser, "/photographs");
    browser.evaluate("document.querySelector('[data-photo=\"photos/T20_0412.jpg\"] a').focus()");
    browser.press(Keys.ARROW_RIGHT);
    browser.press(Keys.ARROW_LEFT);
    browser.press("n");
    browser.press("2026-05-16");
    browser.press(Keys.TAB);
    browser.press(Keys.ENTER);
    String once = before + "\n![](../photos/T20_0412.jpg)\n";
    desk.awaitText(note, once);
    browser.evaluate(
        """
        (() => {
          const data = new DataTransfer();
          const at = (query, kind) => document.querySelector(query).dispatchEvent(
            new DragEvent(kind, {bubbles: true, cancelable: true, dataTransfer: data}));
          at('[data-photo="photos/T20_0421.jpg"]', 'dragstart');
          at('[data-note="2026-05-16-afloat"]', 'dragover');
          at('[data-note="2026-05-16-afloat"]', 'drop');
        })()
        """);
    desk.awaitText(note, once + "\n![](../photos/T20_0421.jpg)\n");
    assertThat(desk.changed()).containsExactly(note);
  }

  @Test
  void photographsAreLeftOutAndPutUnderAnAgreement() throws IOException {
    String before = desk.text(PHOTOS);
    desk.open(browser, "/photographs");
    browser.evaluate("document.querySelector('[data-photo=\"photos/T20_0412.jpg\"] a').focus()");
    browser.press("x");
    String first = line(before, "  alt: A bundle of pale");
    String once = before.replace(first, first + "  leave-out: true\n");
    desk.awaitText(PHOTOS, once);
    browser.await(
        "document.querySelector('.frame.out[data-photo=\"photos/T20_0412.jpg\"]') !== null");
    browser.evaluate(
        "document.querySelector('[data-photo=\"photos/DSV_1093.jpg\"] input').click()");
    browser.evaluate("document.querySelector('#to-under').value = 'trials'");
    browser.evaluate("document.querySelector('[name=do][value=under]').click()");
    String stern = line(before, "  alt: The launch afloat seen from astern");
    desk.awaitText(PHOTOS, once.replace(stern, stern + "  under: trials\n"));
    desk.shutsNobodyOut(browser);
  }

  @Test
  void aRegionIsDrawnAndExactlyWhatWillBeFilledIsSeen() throws IOException {
    String before = desk.text(PHOTOS);
    desk.open(browser, LOOK + BOW);
    browser.evaluate("document.querySelector('#agreement').value = 'lines'");
    List<Integer> seen = picture();
    int left = seen.get(0) + seen.get(2) / 4;
    int top = seen.get(1) + seen.get(3) / 4;
    browser.drag(PointerInput.Kind.MOUSE, left, top, left + seen.get(2) / 5, top + seen.get(3) / 6);
    awaitChange(PHOTOS, before);
    Photograph photo = photograph(BOW);
    assertThat(photo.file().regions()).hasSize(1);
    assertThat(photo.file().regions().get(0).left()).isCloseTo(0.25, within(0.01));
    assertThat(photo.file().regions().get(0).bottom()).isCloseTo(0.25 + 1.0 / 6, within(0.01));
    browser.await("document.querySelector('.grey') !== null");
    assertThat(grey()).isEqualTo(filled(photo));
    String bow = line(before, "  alt: The hull seen from the bow");
    String pin = Sha256.of(Files.readAllBytes(desk.log().resolve(BOW)));
    String box = written(photo.file().regions().get(0));
    assertThat(desk.text(PHOTOS))
        .isEqualTo(
            before.replace(
                bow,
                bow
                    + "  regions:\n    - {box: "
                    + box
                    + ", under: lines}\n  sha256: "
                    + pin
                    + "\n"));

    // Keys move and stretch it; the grey goes along.
    String drawn = desk.text(PHOTOS);
    browser.evaluate("document.querySelector('.drawn').focus()");
    browser.press(Keys.ARROW_RIGHT);
    browser.press(Keys.SHIFT, Keys.ARROW_DOWN);
    awaitChange(PHOTOS, drawn);
    PhotoFile.Region first = photo.file().regions().get(0);
    PhotoFile.Region moved = photograph(BOW).file().regions().get(0);
    while (moved.bottom() < first.bottom() + 0.005) {
      // Between the two keys it may have been kept already.
      awaitChange(PHOTOS, desk.text(PHOTOS));
      moved = photograph(BOW).file().regions().get(0);
    }
    browser.await("document.querySelectorAll('.grey').length === 1");
    assertThat(moved.left()).isCloseTo(first.left() + 0.01, within(0.0002));
    assertThat(moved.top()).isCloseTo(first.top(), within(0.0002));
    assertThat(moved.bottom()).isCloseTo(first.bottom() + 0.01, within(0.0002));
    awaitGrey(filled(photograph(BOW)));
    desk.shutsNobodyOut(browser);
    browser.evaluate("document.querySelector('.drawn').focus()");
    browser.press(Keys.DELETE);
    desk.awaitText(PHOTOS, before);
  }

  @Test
  void aRegionIsDrawnByTouchAndPutOnLookAlikes() throws IOException {
    String before = desk.text(PHOTOS);
    desk.open(browser, LOOK + "photos/T20_0415.jpg");
    browser.await("document.querySelector('#same') !== null");
    browser.evaluate("document.querySelector('#draw').click()");
    browser.evaluate("document.querySelector('#agreement').value = 'client'");
    List<Integer> box = picture();
    int left = box.get(0) + box.get(2) / 3;
    browser.drag(
        PointerInput.Kind.TOUCH, left, box.get(1) + 60, left + box.get(2) / 3, box.get(1) + 200);
    awaitChange(PHOTOS, before);
    String once = desk.text(PHOTOS);
    browser.evaluate("document.querySelector('#same').click()");
    awaitChange(PHOTOS, once);
    Photograph from = photograph("photos/T20_0415.jpg");
    Photograph to = photograph("photos/T20_0416.jpg");
    assertThat(to.file().regions()).hasSize(1);
    assertThat(to.file().regions().get(0).left()).isEqualTo(from.file().regions().get(0).left());
    assertThat(to.file().pinnedSha256()).isEqualTo(to.sha256());
    assertThat(desk.changed()).containsExactly(PHOTOS);
  }

  /** Written by hand in per cent and pinned to nothing: the box stays as it was typed. */
  @Test
  void aRegionTypedByHandIsPinnedByAButton() throws IOException {
    String first = desk.text(PHOTOS);
    String bow = line(first, "  alt: The hull seen from the bow");
    String typed = bow + "  regions:\n    - {box: [0, 10 %, 20 %, 30.5 %], under: lines} # mug\n";
    String before = first.replace(bow, typed);
    try {
      Files.writeString(desk.log().resolve(PHOTOS), before);
      desk.open(browser, LOOK + BOW);
      browser.await("document.querySelector('.grey') !== null");
      browser.evaluate("document.querySelector('#pin').click()");
      String pin = Sha256.of(Files.readAllBytes(desk.log().resolve(BOW)));
      desk.awaitText(PHOTOS, before.replace(typed, typed + "  sha256: " + pin + "\n"));
      desk.open(browser, LOOK + BOW);
      assertThat(browser.evaluate("document.querySelector('#pin')")).isNull();
      browser.evaluate("fetch('/turn/back', {method: 'POST'}).then(r => r.text())");
      desk.awaitText(PHOTOS, before);
    } finally {
      Files.writeString(desk.log().resolve(PHOTOS), first);
    }
  }

  /** Two more of one moment came into the folder by another program. */
  @Test
  void aBurstIsFoldedAndItsRegionsGoToAllOfIt() throws IOException {
    byte[] one = Files.readAllBytes(desk.log().resolve("photos/DSV_1093.jpg"));
    List<Path> others =
        List.of(
            desk.log().resolve("photos/DSV_1094.jpg"), desk.log().resolve("photos/DSV_1095.jpg"));
    try {
      for (int i = 0; i < others.size(); i++) {
        Files.write(others.get(i), Arrays.copyOf(one, one.length + 1 + i));
      }
      String before = desk.text(PHOTOS);
      desk.open(browser, "/photographs");
      browser.await("document.querySelector('.burst button')?.textContent === '2 more alike'");
      assertThat(browser.number("document.querySelectorAll('.frame[hidden]').length")).isEqualTo(2);
      browser.evaluate("document.querySelector('.burst button').click()");
      assertThat(browser.number("document.querySelectorAll('.frame[hidden]').length")).isZero();
      desk.shutsNobodyOut(browser);

      desk.open(browser, LOOK + "photos/DSV_1093.jpg");
      browser.evaluate("document.querySelector('#new').click()");
      awaitChange(PHOTOS, before);
      String once = desk.text(PHOTOS);
      browser.await("document.activeElement.matches('.drawn')");
      browser.press("m");
      awaitChange(PHOTOS, once);
      for (String name : List.of("DSV_1093.jpg", "DSV_1094.jpg", "DSV_1095.jpg")) {
        Photograph photo = photograph("photos/" + name);
        assertThat(photo.file().regions()).hasSize(1);
        assertThat(photo.file().regions().get(0).left()).isEqualTo(0.4);
        assertThat(photo.file().pinnedSha256()).isEqualTo(photo.sha256());
      }
      desk.open(browser, "/photographs");
      while (desk.text(PHOTOS).length() > before.length()) {
        browser.evaluate("fetch('/turn/back', {method: 'POST'}).then(r => r.text())");
      }
    } finally {
      for (Path other : others) {
        Files.deleteIfExists(other);
      }
    }
  }

  /** One that the log holds already, and one of a clock, by which the camera's is put right. */
  @Test
  void photographsAreDroppedAndTheClockPutRight() throws IOException {
    String settings = desk.text("log.yaml");
    byte[] known = Files.readAllBytes(desk.log().resolve("photos/T20_0412.jpg"));
    byte[] second = Files.readAllBytes(desk.log().resolve("photos/DSV_1093.jpg"));
    byte[] clock = Arrays.copyOf(second, second.length + 1);
    desk.open(browser, "/photographs");
    browser.evaluate(
        """
        (async () => {
          const data = new DataTransfer();
          const add = (name, base64) => data.items.add(
            new File([Uint8Array.from(atob(base64), c => c.charCodeAt(0))], name, {type: 'image/jpeg'}));
          add('again.jpg', '%s');
          add('CLOCK.JPG', '%s');
          document.body.dispatchEvent(new DragEvent('drop', {bubbles: true, cancelable: true, dataTransfer: data}));
        })()
        """
            .formatted(
                Base64.getEncoder().encodeToString(known),
                Base64.getEncoder().encodeToString(clock)));
    browser.await("document.querySelector('#previews input[value=\"CLOCK.JPG\"]') !== null");
    desk.shutsNobodyOut(browser);
    browser.evaluate("document.querySelector('#previews input[value=\"CLOCK.JPG\"]').click()");
    LocalDateTime camera = Objects.requireNonNull(Exif.read(second).taken(LONDON));
    browser.evaluate("document.querySelector('#shows').value = '" + camera.minusMinutes(12) + "'");
    browser.evaluate("document.querySelector('#bring-go').click()");
    browser.await(
        "document.querySelector('#brought').textContent.includes('1 photograph brought in')");
    assertThat(browser.text("document.querySelector('#brought').textContent"))
        .contains("1 were there already, 0 passed over");
    Path brought = desk.log().resolve("photos/2026-05-16/CLOCK.JPG");
    assertThat(brought).hasBinaryContent(clock);
    assertThat(desk.changed())
        .containsExactly("log.yaml", "photos/2026-05-16/CLOCK.JPG", "records/gathered.csv");
    assertThat(desk.text("log.yaml"))
        .isEqualTo(settings.replace("\"B-3 Compact\": 1 h 12 min", "\"B-3 Compact\": 12 min"));
    Files.delete(brought);
    Files.delete(brought.getParent());
    Files.delete(desk.log().resolve("records/gathered.csv"));
  }

  private static org.assertj.core.data.Offset<Double> within(double by) {
    return org.assertj.core.data.Offset.offset(by);
  }

  /** A whole line of a text, with its end, by how it begins. */
  private static String line(String text, String beginning) {
    int from = text.indexOf(beginning);
    assertThat(from).as(beginning).isNotNegative();
    return text.substring(from, text.indexOf('\n', from) + 1);
  }

  private static void awaitChange(String file, String before) throws IOException {
    Patience.until(() -> !desk.text(file).equals(before));
    assertThat(desk.text(file)).isNotEqualTo(before);
  }

  /** Left, top, width and height of the picture in the window. */
  private static List<Integer> picture() {
    browser.await("document.querySelector('#picture img').complete");
    browser.evaluate("document.querySelector('#picture').scrollIntoView()");
    return Arrays.stream(
            browser
                .text(
                    "(b => [b.left, b.top, b.width, b.height].map(Math.round).join(' '))"
                        + "(document.querySelector('#picture svg').getBoundingClientRect())")
                .split(" "))
        .map(Integer::valueOf)
        .toList();
  }

  private static String written(PhotoFile.Region region) {
    return Stream.of(region.left(), region.top(), region.right(), region.bottom())
        .map(side -> BigDecimal.valueOf(side).stripTrailingZeros().toPlainString())
        .collect(Collectors.joining(", ", "[", "]"));
  }

  private static String grey() {
    return browser.text(
        "[...document.querySelectorAll('.grey')].map(g => ['x', 'y', 'width', 'height']"
            + ".map(k => Number(g.getAttribute(k))).join(' ')).join(', ')");
  }

  private static void awaitGrey(String expected) throws IOException {
    Patience.until(() -> grey().equals(expected));
    assertThat(grey()).isEqualTo(expected);
  }

  private static String filled(Photograph photo) {
    return String.join(
        ", ",
        Darkroom.filled(photo, photo.file().regions()).stream()
            .map(
                b ->
                    b.left()
                        + " "
                        + b.top()
                        + " "
                        + (b.right() - b.left())
                        + " "
                        + (b.bottom() - b.top()))
            .toList());
  }

  private static Photograph photograph(String path) throws IOException {
    Log log = new LogReader(LocalDate.of(2026, 6, 1), ZoneOffset.UTC).read(desk.log()).log();
    return Album.open(log, PhotoProgress.SILENT).photographs().stream()
        .filter(p -> p.file().path().equals(path))
        .findFirst()
        .orElseThrow();
  }
}

package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.site.InBrowser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * Limits, lots, stated figures and reckonings are kept by forms; the files tell what came of it.
 */
@InBrowser
class FormsStoryTest extends AtTheDesk {

  @Test
  void aLimitAndALotAreChangedWhereTheyStand() throws IOException {
    desk.go("/facts");
    desk.click("[data-unfolds^='/facts/limit']");
    desk.until("document.getElementById('w-log-limits-length-rule')");
    desk.fill("#w-log-limits-length-rule", "hull.loa <= 30 in");
    String once = SmallDesk.LOG_TEXT.replace("hull.loa <= 36 in", "hull.loa <= 30 in");
    desk.awaitText("log.yaml", once);
    desk.fill("#w-log-limits-length-rule", "hull.loa <= 30 kg");
    desk.until("document.querySelector('#w-log-limits-length-rule[aria-invalid]')");
    assertThat(desk.read("log.yaml")).isEqualTo(once);
    String stock = desk.read("stock.yaml");
    desk.click("[data-unfolds^='/facts/lots']");
    desk.until("document.getElementById('w-stock-0-bought')");
    desk.fill("#w-stock-0-bought", "72");
    desk.awaitText("stock.yaml", stock.replace("60", "72"));
    desk.fill("#w-stock-0-price", "21.60 GBP");
    desk.awaitText("stock.yaml", stock.replace("60", "72") + "  price: 21.60 GBP\n");
  }

  @Test
  void todayTellsOfLimitsThatAreNearOrBroken() throws IOException {
    for (String[] limit :
        new String[][] {
          {"28 in", "kept, with 0.441 in ± 0.013 in to spare"},
          {"27 in", "broken by 0.559 in ± 0.013 in"},
          {"36 in", ""}
        }) {
      Files.writeString(
          desk.folder().resolve("log.yaml"), SmallDesk.LOG_TEXT.replace("36 in", limit[0]));
      desk.go("/");
      assertThat(
              browser.text(
                  "(document.querySelector('.margin dd')?.textContent ?? '').replaceAll(/\\s+/g, ' ')"))
          .isEqualTo(limit[1]);
    }
  }

  @Test
  void factsAreSoughtByTheirNamesAndTitles() throws IOException {
    Path facts = desk.folder().resolve("facts.yaml");
    Files.writeString(
        facts,
        Files.readString(facts)
            + "strip.width: {is: 6 mm, title: Width of a strip}\nhull.beam: 186.9 mm\n");
    desk.go("/facts");
    String shown =
        "[...document.querySelectorAll('#table-of-facts tbody tr')].filter(r => r.offsetHeight"
            + " && r.innerText.trim()).length";
    desk.until(shown + " > 2");
    desk.fill("#search-facts", "width of");
    desk.until(shown + " === 1");
    assertThat(browser.text("document.querySelector('#table-of-facts').innerText"))
        .contains("Width of a strip");
    desk.fill("#search-facts", "nothing of the kind");
    desk.until(shown + " === 0");
    desk.fill("#search-facts", "");
    desk.until(shown + " > 2");
  }

  @Test
  void aFigureThatStandsByItselfTakesOtherKeys() throws IOException {
    Path facts = desk.folder().resolve("facts.yaml");
    String text = Files.readString(facts) + "hull.beam: 186.9 mm  # by the tape\n";
    Files.writeString(facts, text);
    desk.go("/facts");
    desk.click("[data-unfolds$='name=hull.beam']");
    desk.until("document.getElementById('w-facts-hull.beam-is')");
    desk.fill("[id='w-facts-hull.beam-title']", "Beam of the hull");
    String grouped = text.replace("186.9 mm", "{is: 186.9 mm, title: Beam of the hull}");
    desk.awaitText("facts.yaml", grouped);
    desk.until("document.getElementById('w-facts-hull.beam-is').dataset.at === 'hull.beam/is'");
    desk.fill("[id='w-facts-hull.beam-is']", "187.2 mm");
    desk.awaitText("facts.yaml", grouped.replace("186.9", "187.2"));
    desk.click("[data-at-under='hull.beam/under'] input");
    desk.awaitText(
        "facts.yaml",
        grouped.replace("186.9", "187.2").replace("of the hull}", "of the hull, under: lines}"));
  }

  @Test
  void aReckoningIsTriedAsItsKeysAreTyped() throws IOException {
    String facts = desk.read("facts.yaml");
    desk.go("/facts");
    desk.click("[data-opens=new-reckoning]");
    desk.fill("#nk-key", "tank");
    desk.fill("#nk-reckon", "water");
    desk.until("document.querySelector('#parameters [name=temperature]')");
    assertThat(browser.text("document.querySelector('#parameters pre').textContent"))
        .contains("reckon: water");
    desk.fill("#p-water", "fresh");
    desk.fill("#p-temperature", "12 kg");
    desk.until("document.querySelector('#p-temperature[aria-invalid]')");
    assertThat(browser.text("document.querySelector('#p-temperature ~ .wrong').textContent"))
        .contains("12 kg");
    assertThat(desk.read("facts.yaml")).isEqualTo(facts);
    desk.fill("#p-temperature", "12 °C");
    desk.until("document.querySelector('#new-reckoning [data-tried] dd')");
    desk.until("!document.querySelector('#new-reckoning [aria-invalid]')");
    // Pure water of 12 °C weighs 999.50 kg/m³ (CIPM formula: Tanaka et al., Metrologia 38, 2001).
    assertThat(browser.text("document.querySelector('#new-reckoning dd').textContent"))
        .contains("999.5");
    desk.click("#new-reckoning button.main");
    desk.until("document.querySelector('[data-unfolds$=\"asked?name=tank\"]')");
    assertThat(desk.read("facts.yaml"))
        .isEqualTo(facts + "tank:\n  reckon: water\n  water: fresh\n  temperature: 12 °C\n");
    desk.click("[data-unfolds$='asked?name=tank']");
    desk.until("document.getElementById('w-facts-tank-temperature')");
    desk.fill("#w-facts-tank-temperature", "15 °C");
    desk.awaitText(
        "facts.yaml", facts + "tank:\n  reckon: water\n  water: fresh\n  temperature: 15 °C\n");
  }

  @Test
  void whatReadersGetStandsBesideEveryPage() throws IOException {
    Files.writeString(
        desk.folder().resolve(SmallDesk.NOTE),
        SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}"));
    Path secret = desk.folder().resolve("entries/2026-03-26-secret.md");
    Files.writeString(secret, "---\nunder: lines\n---\n# The sheer\n\nLow amidships.\n");
    Files.writeString(desk.folder().resolve("photos/photos.yaml"), "keel.png: {under: lines}\n");
    desk.go("/facts");
    desk.until("document.querySelector('#as-seen-by')");
    desk.fill("#as-seen-by", "public");
    String beside = "document.querySelector('#beside:not([hidden])')";
    desk.until(beside + "?.querySelector('.hatched')");
    String facts = browser.text(beside + ".innerText").replaceAll("[\\u00a0\\u2009\\u202f]", " ");
    assertThat(facts).contains("Beam", "2.99 m", "withheld under lines");
    assertThat(browser.text(besideRow("Length over all"))).contains("11.20");
    desk.go("/photographs");
    desk.until(beside + "?.querySelector('.pair .none .hatched')");
    assertThat(browser.text(beside + ".querySelector('.pair .none').innerText"))
        .contains("under lines");
    desk.go("/");
    desk.until(beside + "?.innerText.includes('The sheer')");
    assertThat(browser.text(besideRow("2026-03-26"))).endsWith("withheld under lines");
    assertThat(browser.text(besideRow("2026-03-25"))).contains("The keel goes down");
    desk.fill("#as-seen-by", "workshop");
    desk.until("!" + beside + "?.querySelector('.hatched')");
    desk.fill("#as-seen-by", "");
    desk.until("document.getElementById('beside').hidden");
  }

  private static String besideRow(String title) {
    return "[...document.querySelectorAll('#beside tbody tr')].find(r => r.innerText.includes('"
        + title
        + "')).lastElementChild.innerText";
  }
}

package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.site.Barriers;
import chinelog.site.InBrowser;
import java.io.IOException;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A maker keeps a log at the desk; the files on disk tell what came of it. */
@InBrowser
class DeskStoryTest extends AtTheDesk {

  @Test
  void aQuestionIsAnsweredByAClickOrByAMark() throws IOException {
    desk.until("document.querySelectorAll('#questions .problem').length === 1");
    desk.click("#questions [data-reveals]");
    desk.fill("#questions [name=reason]", "Everybody: she was measured on the quay.");
    desk.click("#questions form button.main");
    desk.until("!document.querySelector('#questions .problem, #questions[aria-busy]')");
    assertThat(desk.read("answers.yaml"))
        .matches(
            "- questions: \\[q[0-9a-f]{10}\\]\n"
                + "  answer: may-stand\n"
                + "  reason: [\"']Everybody: she was measured on the quay\\.[\"']\n"
                + "  on: 2026-06-01\n");
    Files.delete(desk.folder().resolve("answers.yaml"));
    desk.go("/");
    desk.until("document.querySelector('#questions a.button')");
    browser.open(URI.create(browser.text("document.querySelector('#questions a.button').href")));
    desk.until("document.getElementById('under')?.open");
    desk.click("#under button[value=put]");
    desk.until("!document.getElementById('under').open");
    desk.save();
    assertThat(desk.read(SmallDesk.NOTE))
        .isEqualTo(SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}"));
    desk.go("/");
    desk.until("!document.querySelector('#questions .problem, #questions[aria-busy]')");
  }

  /** Nothing but the audit minds the title of a withheld figure. */
  @Test
  void whatTheAuditWouldFindIsAskedAtTheDeskToo() throws IOException {
    String title = "Width across the aftermost thwart";
    String facts = desk.read("facts.yaml");
    Files.writeString(
        desk.folder().resolve("facts.yaml"), facts.replace("title: Beam", "title: " + title));
    Files.writeString(
        desk.folder().resolve(SmallDesk.NOTE),
        SmallDesk.NOTE_TEXT.replace(
            "The beam comes to 187 mm inside the planking.", "Zwieback: the " + title + "."));
    desk.go("/");
    desk.until("document.querySelectorAll('#questions .problem').length === 1");
    desk.click("#questions [data-reveals]");
    desk.fill("#questions [name=reason]", "Every boat has one.");
    desk.click("#questions form button.main");
    desk.until("!document.querySelector('#questions .problem, #questions[aria-busy]')");
    assertThat(desk.read("answers.yaml")).contains("- questions: [a");
  }

  @Test
  void agreementsAreKeptByFormsAndWhatIsWrongIsNotWritten() throws IOException {
    desk.go("/agreements");
    desk.fill("#lines-covers", "the lines plan, and what is measured off it");
    desk.until("document.querySelector('[data-turn=back]:not([disabled])')");
    String once =
        SmallDesk.LOG_TEXT.replace(
            "covers: the lines plan,", "covers: \"the lines plan, and what is measured off it\",");
    assertThat(desk.read("log.yaml")).isEqualTo(once);
    desk.fill("#lines-until", "2026-01-01");
    desk.until("document.querySelector('#lines-until[aria-invalid]')");
    assertThat(browser.text("document.querySelector('.field .wrong').textContent"))
        .contains("2026-01-01");
    assertThat(desk.read("log.yaml")).isEqualTo(once);
    desk.click("[data-opens=new-release]");
    desk.fill("#nl-name", "full.beam");
    desk.fill("#nl-by", "the yard");
    desk.fill("#nl-words", "You may tell her beam.");
    desk.click("#new-release [name=for][value=public]");
    desk.click("#new-release button.main");
    desk.until("document.querySelector('.release')");
    String released =
        once
            + """
            releases:
              - fact: full.beam
                under: lines
                by: the yard
                on: 2026-06-01
                words: You may tell her beam.
                for: [public]
            """;
    assertThat(desk.read("log.yaml")).isEqualTo(released);
    desk.until("document.querySelector('[data-turn=back]:not([disabled])')");
    for (String text : List.of(once, SmallDesk.LOG_TEXT)) {
      desk.click("[data-turn=back]");
      desk.until("document.getElementById('said')?.textContent");
      assertThat(desk.read("log.yaml")).isEqualTo(text);
      desk.go("/agreements");
      desk.until("document.querySelector('[data-turn=again]:not([disabled])')");
    }
  }

  @Test
  void whatReadersSeeStandsBesideTheWhole() throws IOException {
    Files.writeString(
        desk.folder().resolve(SmallDesk.NOTE),
        SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}"));
    desk.go("/agreements/seen?for=public");
    String page =
        browser.text(
            "[...document.getElementById('seen-page').options].find(o => o.value.startsWith('posts/')).value");
    assertThat(
            browser.text(
                "Promise.all(Array.from({length: 12}, (x, i) => fetch('/as/public/' + ['index.html', '"
                    + page
                    + "', 'figures.html'][i % 3]).then(r => r.status))).then(all => all.join())"))
        .isEqualTo("200,200,200,200,200,200,200,200,200,200,200,200");
    desk.go("/agreements/seen?for=public&page=" + page);
    desk.until("document.getElementById('theirs').contentDocument?.querySelector('.gap')");
    desk.until("document.getElementById('whole').contentDocument?.querySelector('.under-phrase')");
    desk.until("document.querySelector('#register tbody tr')");
    assertThat(browser.text("document.getElementById('whole').contentDocument.body.innerText"))
        .containsPattern("187\\hmm");
    assertThat(browser.text("document.getElementById('theirs').contentDocument.body.innerText"))
        .doesNotContainPattern("187\\hmm");
    assertThat(browser.text("document.getElementById('register').innerText"))
        .contains(SmallDesk.NOTE + ":8:44");
  }

  @Test
  void whatCouldBeWorkedOutIsToldWithTheWaysOut() throws IOException {
    Path facts = desk.folder().resolve("facts.yaml");
    String text = Files.readString(facts);
    Files.writeString(facts, text + "hull.beam: 186.9 mm\n");
    desk.go("/agreements/seen?for=public");
    desk.until("document.querySelector('#register [data-withhold]')");
    desk.click("#register [data-withhold=\"hull.beam\"]");
    desk.until(
        "document.querySelector('#register h2') && !document.querySelector('#register .errors')");
    assertThat(Files.readString(facts))
        .isEqualTo(text + "hull.beam: {is: 186.9 mm, under: lines}\n");
  }

  @Test
  void theLogIsPublishedAndWhatStopsItIsToldWithItsPlace() throws IOException {
    desk.go("/publishing");
    desk.click("#go");
    desk.until("document.querySelector('#outcome .questions [data-reveals]')");
    assertThat(desk.find("published/public/site/index.html")).isEmpty();
    assertThat(browser.text("document.querySelector('#outcome .place a').textContent"))
        .isEqualTo(SmallDesk.NOTE + ":8:44");
    Files.writeString(
        desk.folder().resolve(SmallDesk.NOTE),
        SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}"));
    desk.click("#go");
    desk.until("document.querySelectorAll('#outcome .made').length === 2");
    assertThat(desk.read("published/public/site/index.html")).contains("Building Merrow");
    assertThat(desk.read("records/public/audit.txt")).contains("Found: nothing");
    String site = browser.text("document.querySelector('#outcome .made a').pathname");
    assertThat(site).isEqualTo("/published/public/site/index.html");
    desk.go("/publishing");
    desk.until("document.querySelector('.changes p')");
    Files.writeString(
        desk.folder().resolve(SmallDesk.NOTE),
        SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}").replace("true", "very"));
    browser.open(URI.create(browser.text("location.origin") + site));
    assertThat(browser.text("document.querySelector('h1').textContent")).contains("Merrow");
  }

  @Test
  void theScriptAndTheCaptionsOfATalkAreReachedFromWhatIsPublished() throws IOException {
    Path own = desk.folder().resolve("published/public/talk/01-the-keel");
    Files.createDirectories(own.resolve("frames"));
    Files.writeString(own.resolve("script.html"), "<style>p { color: red }</style><p>Keel</p>");
    Files.writeString(own.resolve("captions.srt"), "1\n");
    desk.go("/publishing");
    assertThat(browser.text("document.querySelector('.edition li').innerText"))
        .isEqualTo("01-the-keel: captions, script with its frames");
    browser.open(
        URI.create(browser.text("document.querySelector('.edition li a[href$=html]').href")));
    assertThat(browser.text("getComputedStyle(document.querySelector('p')).color"))
        .isEqualTo("rgb(255, 0, 0)");
  }

  @Test
  void theClockBecomesTheNotesTime() throws IOException {
    desk.until("document.querySelector('[data-clock=\"/clock/start\"]')");
    desk.click("[data-clock=\"/clock/start\"]");
    desk.until("document.querySelector('.running')");
    assertThat(browser.text("document.querySelector('.running').innerText")).contains("11:00");
    desk.click("#clock form button.main");
    desk.until("document.body.dataset.ready");
    assertThat(desk.read("entries/2026-06-01-at-the-bench.md"))
        .isEqualTo("---\ntime: 11:00-11:01\n---\n\n# At the bench\n\n");
    assertThat(desk.folder().resolve(".chinelog/desk/clock")).doesNotExist();
  }

  @Test
  void aClockThatWasForgottenIsNotTakenForAnHour() throws IOException {
    Path clock = desk.folder().resolve(".chinelog/desk/clock");
    Files.writeString(clock, "2026-05-31T09:00:00Z");
    desk.go("/");
    desk.click("#clock form button.main");
    desk.until("document.querySelector('main').innerText.includes('for a day or more')");
    assertThat(clock).exists();
    assertThat(desk.folder().resolve("entries/2026-05-31-at-the-bench.md")).doesNotExist();
  }

  @Test
  void withoutScriptAPageSaysWhatItNeedsAndShowsTheText() {
    browser.scripts(false);
    desk.go("/notes/edit?file=" + SmallDesk.NOTE);
    assertThat(browser.text("document.querySelector('noscript').innerText")).contains("JavaScript");
    assertThat(browser.text("document.getElementById('text').value")).contains("187 mm");
    browser.scripts(true);
  }

  /** The other run is this very program's, on the same log. */
  @Test
  void publishingElsewhereMeanwhileIsSafe() throws IOException {
    Files.writeString(
        desk.folder().resolve(SmallDesk.NOTE),
        SmallDesk.NOTE_TEXT.replace("187 mm", "[187 mm]{under=lines}"));
    Path claim = desk.folder().resolve(".chinelog/claimed");
    Files.createDirectories(claim.getParent());
    try (FileChannel other =
        FileChannel.open(claim, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      other.lock();
      desk.go("/publishing");
      desk.click("#go");
      desk.until("document.querySelector('#outcome .errors')");
      assertThat(browser.text("document.querySelector('#outcome .errors').innerText"))
          .contains("Another run of chinelog");
      assertThat(desk.find("published/public/site/index.html")).isEmpty();
    }
    desk.click("#go");
    desk.until("document.querySelectorAll('#outcome .made').length === 2");
  }

  @Test
  void aSecondOpenFindsTheFirst() throws IOException {
    URI found = Desk.findOpen(folder).orElseThrow();
    assertThat(found).isEqualTo(desk.desk().address());
    browser.open(found);
    desk.until("location.pathname === '/' && document.querySelector('main')");
    assertThat(Desk.findOpen(folder).orElseThrow()).isNotEqualTo(found);
    desk.close();
    assertThat(Desk.findOpen(folder)).isEmpty();
  }

  @Test
  void threeQuestionsBeginALogThatCanBePublishedAtOnce(@TempDir Path home) throws IOException {
    Path log = home.resolve("wren");
    Path card = Files.createDirectories(home.resolve("card"));
    Files.copy(folder.resolve("photos/keel.png"), card.resolve("P1.png"));
    Clock clock = Clock.fixed(Instant.parse("2026-06-01T10:00:00Z"), ZoneId.of("Europe/London"));
    try (Desk first = Desk.begin(log, clock)) {
      browser.open(first.address());
      desk.until("document.getElementById('subject')");
      assertThat(Barriers.of(browser)).isEmpty();
      desk.fill("#subject", "Wren");
      desk.fill("#scale", "1:12");
      desk.fill("#photographs", card.toString());
      desk.fill("#note", "I drew the first section.");
      desk.click(".questions-first button.main");
      desk.until("document.querySelector('h1')?.textContent === 'Building Wren'");
      assertThat(Files.readString(log.resolve("log.yaml")))
          .endsWith(
              """
              title: Building Wren
              subject: Wren
              scale: 1:12
              language: en-US
              zone: Europe/London
              """);
      assertThat(Files.readString(log.resolve("entries/2026-06-01-begun.md")))
          .isEqualTo("# The log is begun\n\nI drew the first section.\n");
      assertThat(log.resolve("photos/undated/P1.png"))
          .hasSameBinaryContentAs(card.resolve("P1.png"));
      String settings = Files.readString(log.resolve("log.yaml"));
      // Photographs are dropped, too: one that is there already, and one that is new.
      byte[] other = Files.readAllBytes(card.resolve("P1.png"));
      desk.go("/photographs");
      browser.evaluate(
          """
          (() => {
            const data = new DataTransfer();
            const bytes = Uint8Array.from(atob('%s'), c => c.charCodeAt(0));
            data.items.add(new File([bytes], 'P1.png'));
            data.items.add(new File([bytes, new Uint8Array(1)], 'P2.png'));
            document.body.dispatchEvent(
              new DragEvent('drop', {bubbles: true, cancelable: true, dataTransfer: data}));
          })()
          """
              .formatted(Base64.getEncoder().encodeToString(other)));
      desk.click("#bring-go:not([hidden])");
      desk.until("document.querySelectorAll('.frame').length === 2");
      assertThat(log.resolve("photos/undated/P2.png"))
          .hasBinaryContent(Arrays.copyOf(other, other.length + 1));
      // What is selected is put under a promise that is written down on the spot.
      desk.edit("entries/2026-06-01-begun.md");
      desk.select("the first section");
      desk.click(".offer button");
      desk.fill("#na-with", "Skerrick Yard");
      desk.fill("#na-covers", "the drawings");
      desk.fill("#na-key", "yard");
      desk.click("#new-agreement button.main");
      desk.until("document.querySelector('#under-which [value=yard]')?.checked");
      desk.click("#under button[value=put]");
      desk.until("!document.getElementById('under').open");
      desk.save();
      assertThat(Files.readString(log.resolve("log.yaml")))
          .isEqualTo(
              settings
                  + """
                  agreements:
                    yard:
                      with: Skerrick Yard
                      covers: the drawings
                      presence: note
                  """);
      String note = "# The log is begun\n\nI drew [the first section]{under=yard}.\n";
      assertThat(Files.readString(log.resolve("entries/2026-06-01-begun.md"))).isEqualTo(note);
      desk.go("/publishing");
      desk.click("#go");
      desk.until("document.querySelectorAll('#outcome .made').length === 2");
      try (Stream<Path> site = Files.walk(log.resolve("published/public/site"))) {
        for (Path page : site.filter(f -> f.toString().endsWith(".html")).toList()) {
          assertThat(Files.readString(page)).contains("Wren").doesNotContain("the first section");
        }
      }
      assertThat(Files.readString(log.resolve("entries/2026-06-01-begun.md"))).isEqualTo(note);
    }
  }
}

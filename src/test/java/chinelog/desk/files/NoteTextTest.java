package chinelog.desk.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chinelog.log.records.NotePart;
import chinelog.problem.ProblemException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Marks and insertions in a note's text. */
class NoteTextTest {

  private static final List<String> LINES = List.of("lines");
  private static final String HEAD = "---\ndate: 2026-03-14\n---\n";
  private static final String BODY =
      """
      # Moulds

      Cut thirteen moulds. The beam is
      190 mm, *as the [yard] said*.

      ## What the sheet says

      - one item
      - another, with ![A mould](../photos/a.jpg) in it

      | a | b |
      |---|---|
      | 1 | 2 |

      Last words.
      """;

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void marksWhatIsChosenAndNothingElse(String end) throws ProblemException {
    String text = "\ufeff" + (HEAD + BODY).replace("\n", end);
    NoteText note = note(text);
    assertThat(chosen(note, "190 mm").text())
        .isEqualTo(text.replace("190 mm", "[190 mm]{under=lines}"));
    assertThat(chosen(note, "Last words.").text())
        .isEqualTo(text.replace("Last words.", "Last words. {under=lines}"));
    assertThat(chosen(note, "![A mould](../photos/a.jpg)").text())
        .isEqualTo(text.replace("a.jpg)", "a.jpg){under=lines}"));
    assertThat(note.sectionUnder(text.indexOf("another"), LINES).text())
        .isEqualTo(text.replace("sheet says", "sheet says {under=lines}"));
    assertThat(note.paragraphUnder(text.indexOf("beam"), LINES).text())
        .isEqualTo(text.replace("said*.", "said*. {under=lines}"));
    assertThat(note.paragraphUnder(text.indexOf("one"), LINES).text())
        .isEqualTo(text.replace("one item", "one item {under=lines}"));
    assertThat(note.noteUnder(List.of("lines", "client")).text())
        .isEqualTo(text.replace("14" + end, "14" + end + "under: [lines, client]" + end));
    int from = text.indexOf("thirteen");
    int to = text.indexOf("one item") + 3;
    assertThat(note.under(from, to, LINES).parts().stream().filter(p -> !p.marks().isEmpty()))
        .hasSize(3);
  }

  @Test
  void joinsAgreementsAndTakesThemOff() throws ProblemException {
    NoteText note = note(HEAD + BODY);
    NoteText once = chosen(note, "190 mm");
    int in = once.text().indexOf("90 mm");
    NoteText twice = once.under(in - 1, in + 5, List.of("client"));
    assertThat(twice.text()).contains("[190 mm]{under=lines,client}");
    assertThat(twice.notUnder(in).text()).isEqualTo(HEAD + BODY);
    NoteText paragraph = note.paragraphUnder(note.text().indexOf("Last"), LINES);
    assertThat(paragraph.notUnder(note.text().indexOf("words")).text()).isEqualTo(HEAD + BODY);
    assertThat(note.noteUnder(LINES).noteUnder(List.of()).text()).isEqualTo(HEAD + BODY);
  }

  @Test
  void refusesWhatNoMarkCanCover() {
    NoteText note = note(HEAD + BODY);
    for (String bad : List.of("said*.", "mm, *as", "yard] said", "| 1 | 2")) {
      assertThatThrownBy(() -> chosen(note, bad))
          .describedAs(bad)
          .isInstanceOf(ProblemException.class);
    }
    NoteText loose = note("No heading.\n");
    assertThatThrownBy(() -> loose.sectionUnder(3, LINES)).hasMessageContaining("No heading");
  }

  @Test
  void putsInPicturesFactsFootnotesAndTables() {
    NoteText note = note(HEAD + BODY);
    int at = note.text().indexOf("thirteen");
    assertThat(note.withPicture(at, "photos/a b.jpg", "The [fat] mould").text())
        .contains("said*.\n\n![The \\[fat\\] mould](<../photos/a b.jpg>)\n\n## What");
    assertThat(note.withPicture(0, "photos/a.jpg", "A").text())
        .startsWith(HEAD + "![A](../photos/a.jpg)\n\n# Moulds");
    assertThat(note.withFact(at, "hull.loa").text()).contains("Cut [](fact:hull.loa)thirteen");
    NoteText noted = note.withFootnote(at, "As drawn.");
    assertThat(noted.text()).contains("Cut [^1]thirteen").endsWith("words.\n\n[^1]: As drawn.\n");
    assertThat(noted.withFootnote(at, "More.").text()).endsWith("drawn.\n\n[^2]: More.\n");
    assertThat(note.withTable(note.text().length(), 2, 2).text())
        .endsWith("words.\n\n|   |   |\n|---|---|\n|   |   |\n|   |   |\n");
    assertThat(note("").withPicture(0, "photos/a.jpg", "A").text())
        .isEqualTo("![A](../photos/a.jpg)\n");
  }

  @Test
  void knowsItsParts() {
    assertThat(note(HEAD + BODY).parts())
        .extracting(NotePart::kind)
        .extracting(Enum::name)
        .containsExactly(
            "HEADING", "PARAGRAPH", "HEADING", "PARAGRAPH", "PARAGRAPH", "PICTURE", "PARAGRAPH");
  }

  private static NoteText chosen(NoteText note, String words) throws ProblemException {
    int from = note.text().indexOf(words);
    assertThat(from).as(words).isNotNegative();
    return note.under(from, from + words.length(), LINES);
  }

  private static NoteText note(String text) {
    return NoteText.of(new FileVersion("entries/2026-03-14-moulds.md", text, "x", true));
  }
}

package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.writing.DataTable.Column;
import chinelog.edition.Edition.Line;
import chinelog.edition.Letter;
import java.util.List;

/** Writes a letter or a form. */
public final class LetterWriter {

  private final Setting setting;
  private final Xhtml out;
  private final Letter letter;
  private final BlockWriter blocks;
  private final PlateWriter plates;

  private LetterWriter(Setting setting, Letter letter) {
    this.setting = setting;
    this.out = setting.out;
    this.letter = letter;
    RunWriter runs = new RunWriter(setting, false);
    this.plates = new PlateWriter(setting, runs);
    this.blocks = new BlockWriter(setting, runs, plates);
  }

  public static Manuscript write(Setting setting, String style, Letter letter) {
    return new LetterWriter(setting, letter).write(style);
  }

  private Manuscript write(String style) {
    Shell shell = new Shell(setting, style);
    shell.open("letter.kind", "letter.description", List.of());
    out.open("div", "class", "body");
    paragraph("sender", setting.edition.maker());
    paragraph("sender", setting.words.date(setting.edition.asOf()));
    paragraph("addressee", setting.edition.client());
    out.leaf("h1", letter.title());
    blocks.write(letter.text(), 1, List.of());
    letter.sections().forEach(this::section);
    for (String blank : letter.blanks()) {
      out.lineToWriteOn(blank, "");
    }
    paragraph("small", letter.note());
    out.close();
    return shell.close();
  }

  private void paragraph(String kind, String text) {
    if (!text.isEmpty()) {
      out.leaf("p", text, "class", kind);
    }
  }

  private void section(Letter.Section section) {
    if (!section.heading().isEmpty()) {
      out.leaf("h2", section.heading());
    }
    section.paragraphs().forEach(p -> out.leaf("p", p));
    if (!section.lines().isEmpty()) {
      Rows rows =
          new Rows(
              setting,
              Column.text(setting.words.say("letter.what")).wide(45),
              Column.text(setting.words.say("letter.is")).wide(55));
      for (Line line : section.lines()) {
        rows.add("", List.of(), "", line.title(), line.shown());
      }
      rows.write();
    }
    plates.write(section.plates(), List.of());
  }
}

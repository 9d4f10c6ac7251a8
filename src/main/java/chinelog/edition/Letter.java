package chinelog.edition;

import java.util.List;

/**
 * A letter to the readers, or a form to be filled in, on one sheet or a few.
 *
 * @param title what it is about
 * @param text in the maker's own words; may be empty
 * @param blanks titles of lines to be written on, for a signature or an answer; may be empty
 * @param note in small type at its end; may be empty
 */
public record Letter(
    Kind kind,
    String title,
    List<Text.Block> text,
    List<Section> sections,
    List<String> blanks,
    String note) {

  public Letter {
    text = List.copyOf(text);
    sections = List.copyOf(sections);
    blanks = List.copyOf(blanks);
  }

  /** What it is for. */
  public enum Kind {
    PROGRESS,
    PHOTOGRAPHS,
    QUOTATION,
    AGREEMENT,
    RELEASE
  }

  /**
   * A part of it; whatever is empty is left out.
   *
   * @param heading may be empty
   * @param paragraphs in the program's words
   * @param lines names with figures or words
   */
  public record Section(
      String heading, List<String> paragraphs, List<Edition.Line> lines, List<Plate> plates) {
    public Section {
      paragraphs = List.copyOf(paragraphs);
      lines = List.copyOf(lines);
      plates = List.copyOf(plates);
    }
  }
}

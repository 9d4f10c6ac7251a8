package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.records.Marked;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The title of a note, and its text without the heading that became the title.
 *
 * @param title as its key says, else its first heading, else its file's name
 */
record EntryTitle(Marked<String> title, List<Block> text) {

  static EntryTitle of(Fields fields, List<Block> text, String id, Place place) {
    Marked<String> written = fields.marked("title");
    if (written != null) {
      return new EntryTitle(written, text);
    }
    Block.Heading heading = firstHeading(text);
    String words = heading == null ? "" : Inline.plainText(heading.text()).strip();
    if (heading != null && !words.isEmpty()) {
      Label label = heading.label().join(label(heading)).join(fields.label());
      boolean wordsOnly = text.get(0) == heading && isWordsOnly(heading);
      return new EntryTitle(
          new Marked<>(words, label, heading.place()),
          wordsOnly ? List.copyOf(text.subList(1, text.size())) : text);
    }
    String name =
        id.substring(id.lastIndexOf('/') + 1).replaceFirst("^\\d{4}-\\d{2}-\\d{2}[-_ ]*", "");
    String title = name.isEmpty() ? id.substring(id.lastIndexOf('/') + 1) : LogReader.title(name);
    return new EntryTitle(new Marked<>(title, fields.label(), place), text);
  }

  private static Block.@Nullable Heading firstHeading(List<Block> text) {
    for (Block block : text) {
      if (block instanceof Block.Heading heading) {
        return heading;
      }
    }
    return null;
  }

  /** Words under an agreement put the title that holds them under it. */
  private static Label label(Block.Heading heading) {
    return Inline.runs(heading.text())
        .map(run -> run instanceof Inline.Phrase phrase ? phrase.label() : Label.NONE)
        .reduce(Label.NONE, Label::join);
  }

  private static boolean isWordsOnly(Block.Heading heading) {
    return Inline.runs(heading.text())
        .noneMatch(run -> run instanceof Inline.Image || run instanceof Inline.Footnote);
  }
}

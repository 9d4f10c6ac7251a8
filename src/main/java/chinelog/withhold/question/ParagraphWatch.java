package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Release;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Asks about a mark that may stand a paragraph off: it covers one that says nothing of a hull,
 * while an open one beside it does. Only agreements that cover drawings or figures are looked at.
 */
final class ParagraphWatch {

  private static final Set<String> OF_A_HULL = new HashSet<>();

  static {
    CommonWords.Resource.lines("hull-words.txt")
        .forEach(line -> OF_A_HULL.addAll(List.of(line.split(" "))));
  }

  /** An open paragraph tells of a hull if so many words of it do. */
  private static final int TELLING = 2;

  private static final int MOST_SHOWN = 60;

  private final Log log;
  private final Sight sight;
  private final Label ofDrawings;
  private final List<Question> found = new ArrayList<>();

  private ParagraphWatch(Log log, Sight sight) {
    this.log = log;
    this.sight = sight;
    Label label = Label.NONE;
    for (var sheet : log.sheets()) {
      label = label.join(sheet.label());
    }
    for (var table : log.tables()) {
      label = label.join(table.label());
    }
    for (var statement : log.statements()) {
      label = label.join(statement.label());
    }
    this.ofDrawings = label;
  }

  static List<Question> find(Log log, Sight sight) {
    ParagraphWatch watch = new ParagraphWatch(log, sight);
    for (Entry entry : log.entries()) {
      if (sight.allows(Release.Kind.ENTRY, entry.id(), entry.label())) {
        watch.look(entry.text());
      }
    }
    return watch.found;
  }

  private void look(List<Block> blocks) {
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i) instanceof Block.Paragraph marked && isDoubtful(marked)) {
        for (int beside : new int[] {i - 1, i + 1}) {
          if (beside >= 0
              && beside < blocks.size()
              && blocks.get(beside) instanceof Block.Paragraph open
              && open.label().isNone()
              && hullWords(open).size() >= TELLING) {
            ask(open, marked);
          }
        }
      }
    }
  }

  private boolean isDoubtful(Block.Paragraph marked) {
    return !sight.allows(marked.label())
        && marked.label().agreements().stream().anyMatch(ofDrawings.agreements()::contains)
        && marked.text().stream().allMatch(ParagraphWatch::isPlain)
        && words(marked).chars().noneMatch(Character::isDigit)
        && hullWords(marked).isEmpty();
  }

  private static boolean isPlain(Inline run) {
    return !(run instanceof Inline.FactLink || run instanceof Inline.Image)
        && run.children().stream().allMatch(ParagraphWatch::isPlain);
  }

  private static Set<String> hullWords(Block.Paragraph paragraph) {
    return Letters.words(words(paragraph)).stream()
        .map(Letters.Word::letters)
        .filter(OF_A_HULL::contains)
        .collect(Collectors.toSet());
  }

  private static String words(Block.Paragraph paragraph) {
    return paragraph.text().stream().map(Inline::plainText).collect(Collectors.joining()).strip();
  }

  private void ask(Block.Paragraph open, Block.Paragraph marked) {
    String about = words(open) + "\n" + words(marked);
    found.add(
        Question.of(
            Question.Kind.PLACE,
            log,
            open.place(),
            shown(open),
            about,
            "\u201c" + shown(marked) + "\u201d",
            marked.label()));
  }

  private static String shown(Block.Paragraph paragraph) {
    String words = words(paragraph);
    return words.length() <= MOST_SHOWN ? words : words.substring(0, MOST_SHOWN) + "\u2026";
  }
}

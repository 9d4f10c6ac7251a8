package chinelog.withhold;

import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.edition.Text.PlateHere.Layout;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.withhold.question.Sight;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Copies what readers may see of a text into an edition's text; what is not copied is left out, or
 * marked by a stand-in of fixed width.
 *
 * @param plates by the photograph's path; a photograph without a plate is not seen
 * @param entryIds the edition's id of each entry seen, by the log's
 */
record TextCopier(
    Account account,
    FigureMaker figures,
    HoursTold hours,
    Map<String, Plate> plates,
    Map<String, String> entryIds,
    Slugs anchors,
    Quotes quotes) {

  private static final int DEEPEST_HEADING = 4;

  private static final String SIGN = "[\u2026]";

  private Sight sight() {
    return account.sight();
  }

  /** The blocks that may be seen; neighbouring withheld ones leave one note. */
  List<Text.Block> blocks(List<Block> blocks) {
    int top =
        blocks.stream()
            .filter(b -> b instanceof Block.Heading && sight().allows(b.label()))
            .mapToInt(b -> ((Block.Heading) b).level())
            .min()
            .orElse(1);
    List<Text.Block> copied = new ArrayList<>();
    for (Block block : blocks) {
      if (!account.sees(block.label(), block.place(), Register.Kind.TEXT, "")) {
        if (sight().presence(block.label()) == Presence.NOTE) {
          addNote(copied);
        }
        continue;
      }
      copied.addAll(block.accept(new BlockCopy(top)));
    }
    return List.copyOf(copied);
  }

  private static void addNote(List<Text.Block> copied) {
    if (copied.isEmpty() || !(copied.get(copied.size() - 1) instanceof Text.Withheld)) {
      copied.add(new Text.Withheld());
    }
  }

  /** The runs of a line that may be seen, without pictures. */
  List<Text.Run> runs(List<Inline> inlines) {
    return quotes.set(runs(inlines, new ArrayList<>()));
  }

  private List<Text.Run> runs(List<Inline> inlines, List<Plate> met) {
    List<Text.Run> copied = new ArrayList<>();
    Map<Inline.FactLink, Integer> missing = new LinkedHashMap<>();
    RunCopy copy = new RunCopy(met);
    for (Inline inline : inlines) {
      List<Text.Run> own = inline.accept(copy);
      if (inline instanceof Inline.FactLink link && own.stream().allMatch(TextCopier::isGap)) {
        missing.put(link, copied.size());
      }
      for (Text.Run run : own) {
        boolean doubled = isGap(run) && !copied.isEmpty() && isGap(copied.get(copied.size() - 1));
        if (!doubled) {
          copied.add(run);
        }
      }
    }
    missing.forEach((link, at) -> figures.reads(link, sentence(copied, at)));
    return List.copyOf(copied);
  }

  private static boolean isGap(Text.Run run) {
    return run instanceof Text.Gap;
  }

  /** The sentence of a line in which a figure is missing at a place, with a sign for it. */
  private static String sentence(List<Text.Run> line, int at) {
    int after = at < line.size() && isGap(line.get(at)) ? at + 1 : at;
    String before = Text.plainText(line.subList(0, at), SIGN);
    String text = before + SIGN + Text.plainText(line.subList(after, line.size()), SIGN);
    BreakIterator sentences = BreakIterator.getSentenceInstance(Locale.ROOT);
    sentences.setText(text);
    int end = sentences.following(before.length());
    return text.substring(sentences.previous(), end).strip();
  }

  private List<Text.Run> standIn(Label label) {
    return sight().presence(label) == Presence.NOTE ? List.of(new Text.Gap()) : List.of();
  }

  private final class BlockCopy implements Block.Visitor<List<Text.Block>> {

    private final int top;

    BlockCopy(int top) {
      this.top = top;
    }

    @Override
    public List<Text.Block> heading(Block.Heading heading) {
      List<Text.Run> text = runs(heading.text());
      int level = Math.min(DEEPEST_HEADING, heading.level() - top + 1);
      String anchor = anchors.make(Text.plainText(text, ""));
      return List.of(new Text.Heading(level, anchor, text, sight().under(heading.label())));
    }

    @Override
    public List<Text.Block> paragraph(Block.Paragraph paragraph) {
      List<Plate> met = new ArrayList<>();
      List<Text.Run> text = quotes.set(runs(paragraph.text(), met));
      List<Text.Block> copied = new ArrayList<>();
      if (!Text.plainText(text, "").isBlank()
          || text.stream().anyMatch(r -> r instanceof Text.Gap)) {
        copied.add(new Text.Paragraph(text, sight().under(paragraph.label())));
      }
      met.forEach(plate -> copied.add(new Text.PlateHere(plate, List.of())));
      return copied;
    }

    @Override
    public List<Text.Block> picture(Block.Picture picture) {
      Plate plate = plates.get(picture.image().path());
      if (plate == null) {
        return List.of();
      }
      Layout layout = Layout.valueOf(picture.image().layout().name());
      return List.of(new Text.PlateHere(plate, layout, sight().under(picture.label())));
    }

    @Override
    public List<Text.Block> items(Block.Items items) {
      List<List<Text.Block>> copied =
          items.items().stream().map(TextCopier.this::blocks).filter(i -> !i.isEmpty()).toList();
      return copied.isEmpty()
          ? List.of()
          : List.of(new Text.Items(items.start(), copied, sight().under(items.label())));
    }

    @Override
    public List<Text.Block> quote(Block.Quote quote) {
      List<Text.Block> copied = blocks(quote.children());
      return copied.isEmpty()
          ? List.of()
          : List.of(new Text.Quote(copied, sight().under(quote.label())));
    }

    @Override
    public List<Text.Block> code(Block.Code code) {
      return List.of(new Text.Code(code.text(), sight().under(code.label())));
    }

    @Override
    public List<Text.Block> rule(Block.Rule rule) {
      return List.of(new Text.Rule(sight().under(rule.label())));
    }

    @Override
    public List<Text.Block> grid(Block.Grid grid) {
      return List.of(
          new Text.Grid(
              grid.head().stream().map(TextCopier.this::runs).toList(),
              grid.rows().stream()
                  .map(row -> row.stream().map(TextCopier.this::runs).toList())
                  .toList(),
              grid.rightAligned(),
              sight().under(grid.label())));
    }
  }

  /** Copies one run; none, or several, may come of it. */
  private final class RunCopy implements Inline.Visitor<List<Text.Run>> {

    private final List<Plate> met;

    RunCopy(List<Plate> met) {
      this.met = met;
    }

    @Override
    public List<Text.Run> text(Inline.Text text) {
      return List.of(new Text.Plain(text.text()));
    }

    @Override
    public List<Text.Run> emphasis(Inline.Emphasis emphasis) {
      return List.of(new Text.Emphasis(runs(emphasis.children(), met)));
    }

    @Override
    public List<Text.Run> strong(Inline.Strong strong) {
      return List.of(new Text.Strong(runs(strong.children(), met)));
    }

    @Override
    public List<Text.Run> code(Inline.Code code) {
      return List.of(new Text.CodeRun(code.text()));
    }

    @Override
    public List<Text.Run> link(Inline.Link link) {
      List<Text.Run> text = runs(link.children(), met);
      Optional<String> target = target(link);
      return target.isEmpty() ? text : List.of(new Text.Link(target.get(), text));
    }

    @Override
    public List<Text.Run> factLink(Inline.FactLink link) {
      var fact = figures.find(link.fact());
      if (fact.isEmpty()) {
        figures.missed(link);
        return figures.findUnseen(link.fact()).map(l -> unseen(link, l)).orElse(List.of());
      }
      String text =
          link.written().isBlank()
              ? figures.show(fact.get())
              : figures.written(fact.get(), link.written());
      String listed = figures.listed(fact.get());
      return List.of(listed == null ? new Text.Plain(text) : new Text.FigureLink(listed, text));
    }

    /** What the edition itself adds up in the place of a sum that it may not show. */
    private List<Text.Run> unseen(Inline.FactLink link, Label label) {
      Optional<String> told =
          sight().presence(label) == Presence.NOTE
              ? figures.findId(link.fact()).flatMap(hours::told)
              : Optional.empty();
      return told.<List<Text.Run>>map(t -> List.of(new Text.Plain(t)))
          .orElseGet(() -> standIn(label));
    }

    @Override
    public List<Text.Run> image(Inline.Image image) {
      Plate plate = plates.get(image.path());
      if (plate != null) {
        met.add(plate);
      }
      return List.of();
    }

    @Override
    public List<Text.Run> phrase(Inline.Phrase phrase) {
      return account.sees(phrase.label(), phrase.place(), Register.Kind.PHRASE, "")
          ? List.of(new Text.Phrase(runs(phrase.children(), met), sight().under(phrase.label())))
          : standIn(phrase.label());
    }

    @Override
    public List<Text.Run> footnote(Inline.Footnote footnote) {
      return account.sees(footnote.label(), footnote.place(), Register.Kind.FOOTNOTE, "")
          ? List.of(new Text.Footnote(runs(footnote.children(), met)))
          : standIn(footnote.label());
    }

    @Override
    public List<Text.Run> lineBreak(Inline.Break lineBreak) {
      return List.of(new Text.Break(lineBreak.hard()));
    }
  }

  /** Where a link may lead in this edition; empty if nowhere. */
  private Optional<String> target(Inline.Link link) {
    String target = link.target();
    if (target.matches("(?i)(https?|mailto):.*")) {
      return Optional.of(target);
    }
    return EntryLinks.entryId(link.place(), target).map(entryIds::get).map(id -> "entry:" + id);
  }

  /** Resolves links between notes. */
  static final class EntryLinks {

    private static final String ENTRIES = "entries/";

    private EntryLinks() {}

    /** The log's id of the note that a link from {@code place} leads to, if it leads to a note. */
    static Optional<String> entryId(Place place, String target) {
      String path = target.contains("#") ? target.substring(0, target.indexOf('#')) : target;
      if (!Entry.isNoteFile(path)) {
        return Optional.empty();
      }
      String decoded = URLDecoder.decode(path.replace("+", "%2B"), StandardCharsets.UTF_8);
      String file =
          Path.of(place.file()).resolveSibling(decoded).normalize().toString().replace('\\', '/');
      String id = file.startsWith(ENTRIES) ? file.substring(ENTRIES.length()) : file;
      return Optional.of(Entry.withoutEnding(id));
    }
  }
}

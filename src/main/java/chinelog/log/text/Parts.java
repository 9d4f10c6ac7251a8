package chinelog.log.text;

import chinelog.label.Label;
import java.util.List;
import java.util.stream.Stream;

/** The runs that a run or a block directly holds. */
public final class Parts implements Inline.Visitor<List<Inline>>, Block.Visitor<Stream<Inline>> {

  private static final Parts PARTS = new Parts();

  private Parts() {}

  /** Each of the runs, followed by all that it holds. */
  public static Stream<Inline> deep(List<Inline> runs) {
    return runs.stream().flatMap(r -> Stream.concat(Stream.of(r), deep(r.accept(PARTS))));
  }

  /** Every run of the blocks, at any depth. */
  static Stream<Inline> ofBlocks(List<Block> blocks) {
    return blocks.stream().flatMap(b -> b.accept(PARTS));
  }

  /** All agreements that a block or anything in it is under. */
  public static Label labels(Block block) {
    List<Block> within =
        block instanceof Block.Quote quote
            ? quote.blocks()
            : block instanceof Block.Items items
                ? items.items().stream().flatMap(List::stream).toList()
                : List.of();
    return Stream.concat(
            within.stream().map(Parts::labels), ofBlocks(List.of(block)).map(Parts::label))
        .reduce(block.label(), Label::join);
  }

  private static Label label(Inline run) {
    return run instanceof Inline.Phrase phrase
        ? phrase.label()
        : run instanceof Inline.Image image
            ? image.label()
            : run instanceof Inline.Footnote footnote ? footnote.label() : Label.NONE;
  }

  @Override
  public List<Inline> text(Inline.Text text) {
    return List.of();
  }

  @Override
  public List<Inline> emphasis(Inline.Emphasis emphasis) {
    return emphasis.text();
  }

  @Override
  public List<Inline> strong(Inline.Strong strong) {
    return strong.text();
  }

  @Override
  public List<Inline> code(Inline.Code code) {
    return List.of();
  }

  @Override
  public List<Inline> link(Inline.Link link) {
    return link.text();
  }

  @Override
  public List<Inline> factLink(Inline.FactLink factLink) {
    return List.of();
  }

  @Override
  public List<Inline> image(Inline.Image image) {
    return image.caption();
  }

  @Override
  public List<Inline> phrase(Inline.Phrase phrase) {
    return phrase.text();
  }

  @Override
  public List<Inline> footnote(Inline.Footnote footnote) {
    return footnote.text();
  }

  @Override
  public List<Inline> lineBreak(Inline.Break lineBreak) {
    return List.of();
  }

  @Override
  public Stream<Inline> heading(Block.Heading heading) {
    return deep(heading.text());
  }

  @Override
  public Stream<Inline> paragraph(Block.Paragraph paragraph) {
    return deep(paragraph.text());
  }

  @Override
  public Stream<Inline> picture(Block.Picture picture) {
    return deep(List.of(picture.image()));
  }

  @Override
  public Stream<Inline> items(Block.Items items) {
    return items.items().stream().flatMap(Parts::ofBlocks);
  }

  @Override
  public Stream<Inline> quote(Block.Quote quote) {
    return ofBlocks(quote.blocks());
  }

  @Override
  public Stream<Inline> code(Block.Code code) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline> rule(Block.Rule rule) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline> grid(Block.Grid grid) {
    return Stream.concat(Stream.of(grid.head()), grid.rows().stream())
        .flatMap(List::stream)
        .flatMap(Parts::deep);
  }
}

package chinelog.photo;

import chinelog.log.Block;
import chinelog.log.Inline;
import java.util.List;
import java.util.stream.Stream;

/** Lists the photographs that a text shows, in order. */
final class ImageFinder
    implements Block.Visitor<Stream<Inline.Image>>, Inline.Visitor<Stream<Inline.Image>> {

  private ImageFinder() {}

  static List<Inline.Image> images(List<Block> text) {
    return new ImageFinder().blocks(text).toList();
  }

  private Stream<Inline.Image> blocks(List<Block> blocks) {
    return blocks.stream().flatMap(b -> b.accept(this));
  }

  private Stream<Inline.Image> inlines(List<Inline> inlines) {
    return inlines.stream().flatMap(i -> i.accept(this));
  }

  @Override
  public Stream<Inline.Image> heading(Block.Heading heading) {
    return inlines(heading.text());
  }

  @Override
  public Stream<Inline.Image> paragraph(Block.Paragraph paragraph) {
    return inlines(paragraph.text());
  }

  @Override
  public Stream<Inline.Image> picture(Block.Picture picture) {
    return image(picture.image());
  }

  @Override
  public Stream<Inline.Image> items(Block.Items items) {
    return items.items().stream().flatMap(this::blocks);
  }

  @Override
  public Stream<Inline.Image> quote(Block.Quote quote) {
    return blocks(quote.blocks());
  }

  @Override
  public Stream<Inline.Image> code(Block.Code code) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline.Image> rule(Block.Rule rule) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline.Image> grid(Block.Grid grid) {
    return Stream.concat(
        grid.head().stream().flatMap(this::inlines),
        grid.rows().stream().flatMap(List::stream).flatMap(this::inlines));
  }

  @Override
  public Stream<Inline.Image> text(Inline.Text text) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline.Image> emphasis(Inline.Emphasis emphasis) {
    return inlines(emphasis.text());
  }

  @Override
  public Stream<Inline.Image> strong(Inline.Strong strong) {
    return inlines(strong.text());
  }

  @Override
  public Stream<Inline.Image> code(Inline.Code code) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline.Image> link(Inline.Link link) {
    return inlines(link.text());
  }

  @Override
  public Stream<Inline.Image> factLink(Inline.FactLink factLink) {
    return Stream.empty();
  }

  @Override
  public Stream<Inline.Image> image(Inline.Image image) {
    return Stream.concat(Stream.of(image), inlines(image.caption()));
  }

  @Override
  public Stream<Inline.Image> phrase(Inline.Phrase phrase) {
    return inlines(phrase.text());
  }

  @Override
  public Stream<Inline.Image> footnote(Inline.Footnote footnote) {
    return inlines(footnote.text());
  }

  @Override
  public Stream<Inline.Image> lineBreak(Inline.Break lineBreak) {
    return Stream.empty();
  }
}

package chinelog.reckon;

import chinelog.log.Block;
import chinelog.log.Inline;
import java.util.ArrayList;
import java.util.List;

/** Finds the facts that a text names. */
final class FactLinks implements Block.Visitor<Boolean>, Inline.Visitor<Boolean> {

  private final List<Inline.FactLink> found = new ArrayList<>();

  private FactLinks() {}

  static List<Inline.FactLink> in(List<Block> blocks) {
    FactLinks links = new FactLinks();
    blocks.forEach(b -> b.accept(links));
    return links.found;
  }

  static List<Inline.FactLink> inLine(List<Inline> line) {
    FactLinks links = new FactLinks();
    links.all(line);
    return links.found;
  }

  private boolean all(List<Inline> line) {
    line.forEach(i -> i.accept(this));
    return true;
  }

  private boolean allBlocks(List<Block> blocks) {
    blocks.forEach(b -> b.accept(this));
    return true;
  }

  @Override
  public Boolean heading(Block.Heading heading) {
    return all(heading.text());
  }

  @Override
  public Boolean paragraph(Block.Paragraph paragraph) {
    return all(paragraph.text());
  }

  @Override
  public Boolean picture(Block.Picture picture) {
    return picture.image().accept(this);
  }

  @Override
  public Boolean items(Block.Items items) {
    items.items().forEach(this::allBlocks);
    return true;
  }

  @Override
  public Boolean quote(Block.Quote quote) {
    return allBlocks(quote.blocks());
  }

  @Override
  public Boolean code(Block.Code code) {
    return true;
  }

  @Override
  public Boolean rule(Block.Rule rule) {
    return true;
  }

  @Override
  public Boolean grid(Block.Grid grid) {
    grid.head().forEach(this::all);
    grid.rows().forEach(row -> row.forEach(this::all));
    return true;
  }

  @Override
  public Boolean text(Inline.Text text) {
    return true;
  }

  @Override
  public Boolean emphasis(Inline.Emphasis emphasis) {
    return all(emphasis.text());
  }

  @Override
  public Boolean strong(Inline.Strong strong) {
    return all(strong.text());
  }

  @Override
  public Boolean code(Inline.Code code) {
    return true;
  }

  @Override
  public Boolean link(Inline.Link link) {
    return all(link.text());
  }

  @Override
  public Boolean factLink(Inline.FactLink factLink) {
    return found.add(factLink);
  }

  @Override
  public Boolean image(Inline.Image image) {
    return all(image.caption());
  }

  @Override
  public Boolean phrase(Inline.Phrase phrase) {
    return all(phrase.text());
  }

  @Override
  public Boolean footnote(Inline.Footnote footnote) {
    return all(footnote.text());
  }

  @Override
  public Boolean lineBreak(Inline.Break lineBreak) {
    return true;
  }
}

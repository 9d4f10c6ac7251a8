package chinelog.log.text;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.util.List;
import java.util.stream.Stream;

/** A block of an entry's text, with the agreements it is under (its section's included). */
public sealed interface Block {

  Label label();

  Place place();

  <R> R accept(Visitor<R> visitor);

  /** The blocks that it directly holds. */
  default List<Block> children() {
    return List.of();
  }

  /** The lines of its own: a heading's one, a table's one for each cell. */
  default List<List<Inline>> lines() {
    return List.of();
  }

  /** All agreements that it or anything in it is under. */
  default Label labels() {
    Stream<Label> runs = lines().stream().flatMap(Inline::runs).map(Inline::label);
    return Stream.concat(children().stream().map(Block::labels), runs).reduce(label(), Label::join);
  }

  /**
   * A heading.
   *
   * @param level from 1 to 6, as written
   */
  record Heading(int level, List<Inline> text, Label label, Place place) implements Block {
    @Override
    public List<List<Inline>> lines() {
      return List.of(text);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.heading(this);
    }
  }

  record Paragraph(List<Inline> text, Label label, Place place) implements Block {
    @Override
    public List<List<Inline>> lines() {
      return List.of(text);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.paragraph(this);
    }
  }

  /** A photograph that stands by itself. */
  record Picture(Inline.Image image, Label label, Place place) implements Block {
    @Override
    public List<List<Inline>> lines() {
      return List.of(List.of(image));
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.picture(this);
    }
  }

  /**
   * A list.
   *
   * @param start number of the first item; 0 for a list without numbers
   */
  record Items(int start, List<List<Block>> items, Label label, Place place) implements Block {
    @Override
    public List<Block> children() {
      return items.stream().flatMap(List::stream).toList();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.items(this);
    }
  }

  record Quote(List<Block> blocks, Label label, Place place) implements Block {
    @Override
    public List<Block> children() {
      return blocks;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.quote(this);
    }
  }

  record Code(String text, Label label, Place place) implements Block {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.code(this);
    }
  }

  record Rule(Label label, Place place) implements Block {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.rule(this);
    }
  }

  /**
   * A table in the text.
   *
   * @param rightAligned for each column, whether it is set to the right
   */
  record Grid(
      List<List<Inline>> head,
      List<List<List<Inline>>> rows,
      List<Boolean> rightAligned,
      Label label,
      Place place)
      implements Block {
    @Override
    public List<List<Inline>> lines() {
      return Stream.concat(Stream.of(head), rows.stream()).flatMap(List::stream).toList();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.grid(this);
    }
  }

  /** Every run of the blocks at any depth: each is followed by those that it holds. */
  static Stream<Inline> runs(List<Block> blocks) {
    return blocks.stream()
        .flatMap(b -> Stream.concat(b.lines().stream().flatMap(Inline::runs), runs(b.children())));
  }

  /** One method for each kind of block, so that the compiler finds a forgotten one. */
  interface Visitor<R> {
    R heading(Heading heading);

    R paragraph(Paragraph paragraph);

    R picture(Picture picture);

    R items(Items items);

    R quote(Quote quote);

    R code(Code code);

    R rule(Rule rule);

    R grid(Grid grid);
  }
}

package chinelog.edition;

import java.util.List;
import java.util.stream.Collectors;

/** Text as its readers may see it: the blocks and runs that a renderer turns into pages. */
public final class Text {

  private Text() {}

  /** A block; {@code under} names the agreements for editions whose readers see them all. */
  public sealed interface Block {
    List<String> under();

    <R> R accept(BlockVisitor<R> visitor);

    /** The blocks that it directly holds. */
    default List<Block> children() {
      return List.of();
    }

    /** What is read in it, line by line: of a table the cells, without its head. */
    default List<List<Run>> lines() {
      return List.of();
    }
  }

  /**
   * A heading.
   *
   * @param level from 1 (a part of an entry) to 4
   * @param anchor unique in the edition
   */
  public record Heading(int level, String anchor, List<Run> text, List<String> under)
      implements Block {
    @Override
    public List<List<Run>> lines() {
      return List.of(text);
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.heading(this);
    }
  }

  public record Paragraph(List<Run> text, List<String> under) implements Block {
    @Override
    public List<List<Run>> lines() {
      return List.of(text);
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.paragraph(this);
    }
  }

  /**
   * A plate at its place in the text.
   *
   * @param layout how it is laid out
   */
  public record PlateHere(Plate plate, Layout layout, List<String> under) implements Block {

    /** How a plate is laid out: by its shape, unless its maker says otherwise. */
    public enum Layout {
      BY_SHAPE,
      /** As wide as the text, and alone. */
      PLAIN,
      /** Smaller, with words beside it. */
      BESIDE,
      /** As large as there is room. */
      WIDE
    }

    public PlateHere(Plate plate, List<String> under) {
      this(plate, Layout.BY_SHAPE, under);
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.plate(this);
    }
  }

  /**
   * A list.
   *
   * @param start number of the first item; 0 for a list without numbers
   */
  public record Items(int start, List<List<Block>> items, List<String> under) implements Block {
    @Override
    public List<Block> children() {
      return items.stream().flatMap(List::stream).toList();
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.items(this);
    }
  }

  public record Quote(List<Block> children, List<String> under) implements Block {
    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.quote(this);
    }
  }

  public record Code(String text, List<String> under) implements Block {
    @Override
    public List<List<Run>> lines() {
      return List.of(List.of(new CodeRun(text)));
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.code(this);
    }
  }

  public record Rule(List<String> under) implements Block {
    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.rule(this);
    }
  }

  /** A table in the text; each row has as many cells as {@code head}. */
  public record Grid(
      List<List<Run>> head,
      List<List<List<Run>>> rows,
      List<Boolean> rightAligned,
      List<String> under)
      implements Block {
    @Override
    public List<List<Run>> lines() {
      return rows.stream().flatMap(List::stream).toList();
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.grid(this);
    }
  }

  /** The fixed, neutral note that stands for one or more withheld blocks. */
  public record Withheld() implements Block {
    @Override
    public List<String> under() {
      return List.of();
    }

    @Override
    public <R> R accept(BlockVisitor<R> visitor) {
      return visitor.withheld(this);
    }
  }

  /** A run inside a block. */
  public sealed interface Run {
    <R> R accept(RunVisitor<R> visitor);

    /** The runs that it directly holds. */
    default List<Run> children() {
      return List.of();
    }

    /**
     * Its words alone, without footnotes.
     *
     * @param gap stands for what is withheld
     */
    default String plainText(String gap) {
      return Text.plainText(children(), gap);
    }
  }

  /**
   * The words of a line alone, without footnotes.
   *
   * @param gap stands for what is withheld
   */
  public static String plainText(List<Run> line, String gap) {
    return line.stream().map(run -> run.plainText(gap)).collect(Collectors.joining());
  }

  public record Plain(String text) implements Run {
    @Override
    public String plainText(String gap) {
      return text;
    }

    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.plain(this);
    }
  }

  public record Emphasis(List<Run> children) implements Run {
    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.emphasis(this);
    }
  }

  public record Strong(List<Run> children) implements Run {
    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.strong(this);
    }
  }

  public record CodeRun(String text) implements Run {
    @Override
    public String plainText(String gap) {
      return text;
    }

    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.code(this);
    }
  }

  /**
   * A link within the edition or to the web.
   *
   * @param target an {@code https:}, {@code http:} or {@code mailto:} address, or {@code entry:ID}
   *     of an entry that the edition holds
   */
  public record Link(String target, List<Run> children) implements Run {
    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.link(this);
    }
  }

  /**
   * A figure named in the text.
   *
   * @param figure name of a figure that the edition holds
   * @param shown such as {@code 1.19 m}
   */
  public record FigureLink(String figure, String shown) implements Run {
    @Override
    public String plainText(String gap) {
      return shown;
    }

    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.figure(this);
    }
  }

  /** A phrase under agreements, shown in an edition whose readers may see it. */
  public record Phrase(List<Run> children, List<String> under) implements Run {
    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.phrase(this);
    }
  }

  public record Footnote(List<Run> children) implements Run {
    @Override
    public String plainText(String gap) {
      return "";
    }

    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.footnote(this);
    }
  }

  public record Break(boolean hard) implements Run {
    @Override
    public String plainText(String gap) {
      return " ";
    }

    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.lineBreak(this);
    }
  }

  /** The fixed stand-in for a withheld phrase or figure. */
  public record Gap() implements Run {
    @Override
    public String plainText(String gap) {
      return gap;
    }

    @Override
    public <R> R accept(RunVisitor<R> visitor) {
      return visitor.gap(this);
    }
  }

  /** One method for each kind of block. */
  public interface BlockVisitor<R> {
    R heading(Heading heading);

    R paragraph(Paragraph paragraph);

    R plate(PlateHere plate);

    R items(Items items);

    R quote(Quote quote);

    R code(Code code);

    R rule(Rule rule);

    R grid(Grid grid);

    R withheld(Withheld withheld);
  }

  /** One method for each kind of run. */
  public interface RunVisitor<R> {
    R plain(Plain plain);

    R emphasis(Emphasis emphasis);

    R strong(Strong strong);

    R code(CodeRun code);

    R link(Link link);

    R figure(FigureLink figure);

    R phrase(Phrase phrase);

    R footnote(Footnote footnote);

    R lineBreak(Break lineBreak);

    R gap(Gap gap);
  }
}
